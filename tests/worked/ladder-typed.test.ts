/**
 * What people type into a field, row by row: the text, the look it is typed in, and what a plan keeps. Common practice,
 * no source, but for the separators: they are those the platform's own locale data gives for each country.
 */
import { describe, expect, test } from 'vitest';
import { type NumberLook, numberLook } from '../../src/domain/money/look.ts';
import { parseTyped, type TypedKind } from '../../src/domain/money/parse-typed.ts';

function look(locale: string, currency: string): NumberLook {
  return numberLook({
    partsOf: (value, shape) => new Intl.NumberFormat(locale, shape).formatToParts(value),
    currency,
    minorDigits: 2,
  });
}
const us = look('en-US', 'USD');
const de = look('de-DE', 'EUR');
const fr = look('fr-FR', 'EUR');
const ch = look('de-CH', 'CHF');
const india = look('en-IN', 'INR');
const se = look('sv-SE', 'SEK');

const read: [NumberLook, TypedKind, string, string, string | null][] = [
  [us, 'amount', '3.4', '3.4', null],
  [us, 'amount', '3.40', '3.40', null],
  [us, 'amount', '3,40', '3.40', null],
  [us, 'amount', '$3.40', '3.40', null],
  [us, 'amount', '3.40 USD', '3.40', null],
  [us, 'amount', 'usd 3.40', '3.40', null],
  [us, 'amount', '1.2k', '1200', null],
  [us, 'amount', '36k', '36000', null],
  [us, 'amount', '36 K', '36000', null],
  [us, 'amount', '1.5m', '1500000', null],
  [us, 'amount', '1,200', '1200', '1.200'],
  [us, 'amount', '1.200', '1.200', '1200'],
  [us, 'amount', '1,20', '1.20', null],
  [us, 'amount', '1 200', '1200', null],
  [us, 'amount', '1\u00a0200.50', '1200.50', null],
  [us, 'amount', '1’200', '1200', null],
  [us, 'amount', "1'200'000.5", '1200000.5', null],
  [us, 'amount', '1,200,000', '1200000', null],
  [us, 'amount', '1,200.50', '1200.50', null],
  [us, 'amount', '1.200,50', '1200.50', null],
  [us, 'amount', '−5', '-5', null],
  [us, 'amount', '-$5', '-5', null],
  [us, 'amount', '$-5', '-5', null],
  [us, 'amount', '+5', '5', null],
  [us, 'amount', '-0', '0', null],
  [us, 'amount', '007', '7', null],
  [us, 'amount', '.5', '0.5', null],
  [us, 'amount', '5.', '5', null],
  [us, 'amount', '0,500', '0.500', null],
  [us, 'amount', '1234,567', '1234.567', null],
  [us, 'amount', '　１２．５０　', '12.50', null],
  [us, 'amount', '٣٫٥', '3.5', null],
  [de, 'amount', '1,200', '1.200', '1200'],
  [de, 'amount', '1.200', '1200', '1.200'],
  [de, 'amount', '3,40 €', '3.40', null],
  [de, 'amount', '1.200.000,5', '1200000.5', null],
  [fr, 'amount', '1\u202f200,50', '1200.50', null],
  [fr, 'amount', '1.200', '1.200', '1200'],
  [ch, 'amount', 'CHF 1’200.50', '1200.50', null],
  [india, 'amount', '₹1,20,000', '120000', null],
  [se, 'amount', '36 000 kr', '36000', null],
  [us, 'percent', '33', '0.33', null],
  [us, 'percent', '33 %', '0.33', null],
  [us, 'percent', '33%', '0.33', null],
  [us, 'percent', '33,5 %', '0.335', null],
  [us, 'percent', '0.33 %', '0.0033', null],
  [us, 'percent', '0.33', '0.0033', null],
  [us, 'percent', '100', '1', null],
  [us, 'percent', '％３３', '0.33', null],
  [us, 'percent', '-2.5 %', '-0.025', null],
  [us, 'whole', '60', '60', null],
  [us, 'whole', '1,200', '1200', null],
  [us, 'whole', '1.200', '1200', null],
  [us, 'whole', '12.0', '12', null],
  [us, 'whole', '2k', '2000', null],
  [de, 'whole', '1.200', '1200', null],
  [us, 'rateOfSale', '4.5', '4.5', null],
  [de, 'rateOfSale', '4,5', '4.5', null],
];

describe('what a typed text is read as', () => {
  test.each(read.map(([each, ...row]) => ({ each, row })))('$row', ({ each, row }) => {
    const [kind, typed, text, couldBe] = row;
    expect(parseTyped(each, kind, typed)).toEqual({ ok: true, text, couldBe });
  });
});

const refused: [TypedKind, string, string, string][] = [
  ['amount', 'lots', 'lots', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '', 'nothing', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '   ', 'nothing', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '$', '$', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '1.2.3', '1.2.3', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '1,2,3', '1,2,3', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '12 34', '12 34', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '3.4.', '3.4.', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', 'NaN', 'NaN', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', 'Infinity', 'Infinity', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '1e9', '1e9', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '0x10', '0x10', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '--5', '--5', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '5 %', '5 %', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '5²', '5²', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '½', '½', 'an amount, like 3.40, 36000 or 36k'],
  ['amount', '€3.40', '€3.40', 'an amount in USD'],
  ['amount', '3.40 EUR', '3.40 EUR', 'an amount in USD'],
  [
    'amount',
    '12345678901234567',
    '12345678901234567',
    'an amount, like 3.40, 36000 or 36k, with at most 15 digits and 10 decimals',
  ],
  ['percent', 'a third', 'a third', 'a percentage, like 33 or 33.5 %'],
  ['percent', '33k', '33k', 'a percentage, like 33 or 33.5 %'],
  ['percent', '$33', '$33', 'a percentage, like 33 or 33.5 %'],
  ['whole', '1.5', '1.5', 'a whole number, like 60 or 1200'],
  ['whole', '1,20', '1,20', 'a whole number, like 60 or 1200'],
  ['rateOfSale', 'six', 'six', 'units per store per week, like 6 or 4.5'],
];

describe('what is refused, and the sentence part that says so', () => {
  test.each(refused)('%s: "%s"', (kind, typed, got, expected) => {
    expect(parseTyped(us, kind, typed)).toEqual({ ok: false, got, expected });
  });

  test('what is typed without end is shown at most 80 characters long', () => {
    const answer = parseTyped(us, 'amount', 'x'.repeat(500));
    expect(answer.ok ? '' : answer.got).toHaveLength(80);
  });
});
