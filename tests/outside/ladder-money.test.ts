/**
 * How money is kept and shown, against outside sources: the minor units of ISO 4217 (list one of 2024-06-25), and the
 * platform's own locale-aware number formatter (Unicode CLDR) for grouping, separators, digits and signs.
 */
import { describe, expect, test } from 'vitest';
import { CURRENCY_CODES, minorDigitsOf } from '../../src/domain/money/currency.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import * as format from '../../src/domain/money/format.ts';
import { type NumberLook, numberLook, plainLook } from '../../src/domain/money/look.ts';
import { roundToMinor } from '../../src/domain/money/rounding.ts';

describe('minor units (ISO 4217, list one, 2024-06-25)', () => {
  test.each([
    [
      0,
      [
        'JPY',
        'KRW',
        'VND',
        'CLP',
        'ISK',
        'UGX',
        'XAF',
        'XOF',
        'XPF',
        'PYG',
        'RWF',
        'UYI',
        'VUV',
        'BIF',
        'DJF',
        'GNF',
        'KMF',
      ],
    ],
    [3, ['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND']],
    [4, ['CLF', 'UYW']],
    [2, ['USD', 'EUR', 'GBP', 'CAD', 'CHF', 'INR', 'MXN', 'HUF', 'IDR', 'COP', 'ZWG', 'ZWL', 'MRU', 'MGA']],
  ])('%d digits: %s', (digits, codes) => {
    for (const code of codes) expect(minorDigitsOf(code), code).toBe(digits);
  });

  test('these are all that have 0, 3 or 4; the rest have 2', () => {
    const count = (digits: number) => CURRENCY_CODES.filter((code) => minorDigitsOf(code) === digits).length;
    expect([count(0), count(3), count(4)]).toEqual([17, 7, 2]);
    expect(count(2)).toBe(CURRENCY_CODES.length - 26);
    expect(new Set(CURRENCY_CODES).size).toBe(CURRENCY_CODES.length);
  });

  test('codes without a minor unit, unknown and withdrawn ones are none', () => {
    for (const code of ['XAU', 'XDR', 'XTS', 'XUA', 'ABC', 'usd', '', 'HRK', 'DEM'])
      expect(minorDigitsOf(code)).toBeNull();
  });

  test('the platform knows every code of the list as a currency, but for fund codes and the newest', () => {
    const known = new Set(Intl.supportedValuesOf('currency'));
    const funds = ['BOV', 'CHE', 'CHW', 'CLF', 'COU', 'MXV', 'USN', 'UYI', 'UYW'];
    const newest = ['VED', 'SLE', 'ZWG'];
    const unknown = CURRENCY_CODES.filter((code) => !known.has(code));
    expect(unknown.filter((code) => !funds.includes(code) && !newest.includes(code))).toEqual([]);
  });

  test.each([
    ['31062.5', 0, '31063'],
    ['-2.5', 0, '-3'],
    ['1.005', 2, '1.01'],
    ['-1.005', 2, '-1.01'],
    ['1.0045', 3, '1.005'],
    ['1.00449999', 3, '1.004'],
  ])('%s to %d decimals is %s: halves go away from zero', (amount, digits, expected) => {
    expect(roundToMinor(dec(amount), digits).toFixed()).toBe(expected);
  });
});

const LOCALES = [
  'en-US',
  'en-GB',
  'en-IN',
  'de-DE',
  'de-CH',
  'fr-FR',
  'es-ES',
  'pl-PL',
  'pt-PT',
  'sv-SE',
  'hi-IN',
  'ar-EG',
  'ja-JP',
  'tr-TR',
];

function lookOf(locale: string, currency: string): NumberLook {
  return numberLook({
    partsOf: (value, shape) => new Intl.NumberFormat(locale, shape).formatToParts(value),
    currency,
    minorDigits: minorDigitsOf(currency) ?? 2,
  });
}

/** Our minus is a true minus; some locales put marks of writing direction about theirs. */
const plain = (text: string) => text.replace(/[\u200e\u200f\u061c]/g, '').replace(/^[-−]/, '−');

describe('the look of numbers, against the platform’s formatter (Unicode CLDR)', () => {
  const amounts = [
    '0',
    '0.5',
    '7',
    '12.25',
    '999',
    '1234.5',
    '12345.75',
    '123456',
    '-1234.25',
    '98765432.125',
  ];

  test.each(LOCALES)('%s: money and units', (locale) => {
    const look = lookOf(locale, 'USD');
    for (const amount of amounts) {
      const exactly = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
      expect(plain(format.moneyExact(look, dec(amount)))).toBe(plain(exactly.format(Number(amount))));
      const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
      const rounded = dec(amount).toDecimalPlaces(0).toNumber();
      expect(plain(format.whole(look, dec(amount)))).toBe(plain(whole.format(rounded)));
    }
  });

  test.each(LOCALES)('%s: percent and currency signs', (locale) => {
    const look = lookOf(locale, 'EUR');
    const percent = new Intl.NumberFormat(locale, {
      style: 'percent',
      minimumFractionDigits: 1,
      maximumFractionDigits: 1,
    });
    for (const rate of ['0', '0.333', '0.0025', '1', '12.5']) {
      expect(plain(format.percent(look, dec(rate)))).toBe(plain(percent.format(Number(rate))));
    }
    const money = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency: 'EUR',
      currencyDisplay: 'narrowSymbol',
    });
    for (const amount of ['0.5', '1234.5', '98765.25']) {
      expect(plain(format.withCurrency(look, format.moneyExact(look, dec(amount))))).toBe(
        plain(money.format(Number(amount))),
      );
    }
  });

  test('a yen has no decimals, a dinar three', () => {
    expect(format.unitPrice(lookOf('en-US', 'JPY'), dec('298.5'))).toBe('299');
    expect(format.unitPrice(lookOf('en-US', 'KWD'), dec('1.2345'))).toBe('1.235');
  });
});

describe('what is shown (rules of the product)', () => {
  const look = plainLook({ currency: 'USD', minorDigits: 2 });

  test.each([
    [format.money(look, dec('9999.5')), '9,999.50'],
    [format.money(look, dec('12300.4')), '12,300'],
    [format.money(look, dec('-12300.5')), '−12,301'],
    [format.moneyExact(look, dec('12300.4')), '12,300.40'],
    [format.moneyOfMinor(look, -1_230_000), '−12,300'],
    [format.moneyExactOfMinor(look, 5), '0.05'],
    [format.money(look, dec('-0.004')), '0.00'],
    [format.unitPrice(look, dec('2.8942')), '2.89'],
    [format.unitPriceExact(look, dec('2.8942')), '2.8942'],
    [format.percent(look, dec('0.41666')), '41.7 %'],
    [format.percent(look, dec('-0.088645')), '−8.9 %'],
    [format.percentExact(look, dec('0.125')), '12.5 %'],
    [format.percentWhole(look, dec('0.125')), '13 %'],
    [format.chance(look, dec('0.12')), '10 %'],
    [format.chance(look, dec('0.13')), '15 %'],
    [format.points(look, dec('0.0351')), '3.5'],
    [format.tenths(look, dec('5.35')), '5.4'],
    [format.exact(look, dec('1234.5678')), '1,234.5678'],
    [format.withCurrency(look, format.money(look, dec('-5'))), '−5.00 USD'],
    [format.withPlus(look, format.money(look, dec('5'))), '+5.00'],
    [format.withPlus(look, format.money(look, dec('-5'))), '−5.00'],
    [format.withPlus(look, format.money(look, dec('0'))), '0.00'],
    [format.exact(look, dec('12345678901234567890.12')), '12,345,678,901,234,567,890.12'],
  ])('%s', (shown, expected) => {
    expect(shown).toBe(expected);
  });
});
