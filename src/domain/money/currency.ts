// How many decimals money of a currency has: ISO 4217, list one, published 2024-06-25. Codes whose minor unit is "not
// applicable" (gold, drawing rights, test codes) are no currency a plan can be in.
// Worked figure: USD has 2, JPY 0, KWD 3, CLF 4, XAU and ABC none (null).

const NONE = 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF';
const TWO =
  'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY ' +
  'COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR ' +
  'IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN ' +
  'NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB ' +
  'TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG ZWL';
const THREE = 'BHD IQD JOD KWD LYD OMR TND';
const FOUR = 'CLF UYW';

const digits = new Map<string, number>([
  ...listed(NONE, 0),
  ...listed(TWO, 2),
  ...listed(THREE, 3),
  ...listed(FOUR, 4),
]);

/** Decimals of a currency's minor unit, 0 to 4; null for a code that isn't a currency of the list. */
export function minorDigitsOf(code: string): number | null {
  return digits.get(code) ?? null;
}

/** Every code of the list that has a minor unit, in alphabetical order. */
export const CURRENCY_CODES: readonly string[] = [...digits.keys()].sort();

function listed(codes: string, minorDigits: number): [string, number][] {
  return codes.split(' ').map((code) => [code, minorDigits]);
}
