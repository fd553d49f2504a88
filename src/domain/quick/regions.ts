// Where a plan is sold: its currency, and whether the price on the tag has the tax in it. A region is a default, listed
// under the answer and to be checked: many goods, food among them, pay less than the standard rate.
// Worked figure: 4.99 on a German tag at 19 % is 4.99 / 1.19 = 4.1933 before tax; on a US tag it is 4.99.
import type { Plan } from '../plan/index.ts';

export interface Region {
  /** Country code (ISO 3166-1), or "other". */
  id: string;
  name: string;
  market: Plan['market'];
  /** ISO 4217. */
  currency: string;
  tax: Plan['shelfTax'];
}

/** Standard VAT rates in percent, by country: national law as of 2025 (European Commission, Taxes in Europe). */
const EU_STANDARD_VAT: readonly (readonly [id: string, name: string, percent: string, currency: string])[] = [
  ['AT', 'Austria', '20', 'EUR'],
  ['BE', 'Belgium', '21', 'EUR'],
  ['BG', 'Bulgaria', '20', 'EUR'],
  ['HR', 'Croatia', '25', 'EUR'],
  ['CY', 'Cyprus', '19', 'EUR'],
  ['CZ', 'Czechia', '21', 'CZK'],
  ['DK', 'Denmark', '25', 'DKK'],
  ['EE', 'Estonia', '24', 'EUR'],
  ['FI', 'Finland', '25.5', 'EUR'],
  ['FR', 'France', '20', 'EUR'],
  ['DE', 'Germany', '19', 'EUR'],
  ['GR', 'Greece', '24', 'EUR'],
  ['HU', 'Hungary', '27', 'HUF'],
  ['IE', 'Ireland', '23', 'EUR'],
  ['IT', 'Italy', '22', 'EUR'],
  ['LV', 'Latvia', '21', 'EUR'],
  ['LT', 'Lithuania', '21', 'EUR'],
  ['LU', 'Luxembourg', '17', 'EUR'],
  ['MT', 'Malta', '18', 'EUR'],
  ['NL', 'Netherlands', '21', 'EUR'],
  ['PL', 'Poland', '23', 'PLN'],
  ['PT', 'Portugal', '23', 'EUR'],
  ['RO', 'Romania', '21', 'RON'],
  ['SK', 'Slovakia', '23', 'EUR'],
  ['SI', 'Slovenia', '22', 'EUR'],
  ['ES', 'Spain', '21', 'EUR'],
  ['SE', 'Sweden', '25', 'SEK'],
];

const inPrice = (percent: string): Plan['shelfTax'] => ({ rate: shareOf(percent), shown: 'inPrice' });
const atTill: Plan['shelfTax'] = { rate: '0', shown: 'atTill' };

/** "25.5" percent is the share "0.255". */
function shareOf(percent: string): string {
  const [whole = '0', decimals = ''] = percent.split('.');
  return `0.${whole.padStart(2, '0')}${decimals}`.replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '');
}

/** In the order a list of them is offered. */
export const REGIONS: readonly Region[] = [
  { id: 'US', name: 'United States', market: 'US', currency: 'USD', tax: atTill },
  { id: 'CA', name: 'Canada', market: 'CA', currency: 'CAD', tax: atTill },
  { id: 'GB', name: 'United Kingdom', market: 'UK', currency: 'GBP', tax: inPrice('20') },
  ...EU_STANDARD_VAT.map(([id, name, percent, currency]) => ({
    id,
    name,
    market: 'EU' as const,
    currency,
    tax: inPrice(percent),
  })),
  { id: 'AU', name: 'Australia', market: 'other', currency: 'AUD', tax: inPrice('10') },
  { id: 'CH', name: 'Switzerland', market: 'other', currency: 'CHF', tax: inPrice('8.1') },
  { id: 'JP', name: 'Japan', market: 'other', currency: 'JPY', tax: inPrice('10') },
  { id: 'NO', name: 'Norway', market: 'other', currency: 'NOK', tax: inPrice('25') },
  { id: 'NZ', name: 'New Zealand', market: 'other', currency: 'NZD', tax: inPrice('15') },
];

/** The region of a country code, or null when it isn't in the table: then otherRegion asks for the currency. */
export function regionOf(id: string): Region | null {
  return REGIONS.find((region) => region.id === id) ?? null;
}

/** Anywhere else: the currency is typed, and so is the tax if the tag has it in it. */
export function otherRegion(currency: string): Region {
  return { id: 'other', name: 'Elsewhere', market: 'other', currency, tax: atTill };
}

/** How the tax default is named where defaults are listed. */
export function taxSource({ name, tax }: Region): string {
  if (tax.shown === 'atTill') return `${name}: sales tax is added at the till, so the tag has none in it`;
  return `Standard rate, ${name}, 2025, in the price on the tag; some goods, food among them, pay less: check yours`;
}
