/**
 * Numbers of GS1 against its worked examples: "How to calculate a check digit" and the General Specifications.
 * Worked figure: 629104150021 is checked by 3.
 */
import { expect, test } from 'vitest';
import { caseGtinOf, checkDigitOf, isGtin, isSscc, ssccOf } from '../../src/domain/readiness/gs1.ts';

test.each([
  ['629104150021', 3, 'GS1, how to calculate a check digit: GTIN-13'],
  ['890400021003', 7, 'GS1: GTIN-13'],
  ['03600024145', 7, 'GS1 US: GTIN-12'],
  ['37610425002123456', 9, 'GS1, how to calculate a check digit: SSCC (from memory)'],
])('%s is checked by %i (%s)', (digits, digit) => {
  expect(checkDigitOf(digits)).toBe(digit);
});

test.each([
  ['6291041500213', 1, '16291041500210'],
  ['036000241457', 1, '10036000241454'],
])('the case of %s with indicator %i is %s (GS1 General Specifications)', (unit, indicator, gtin) => {
  expect(caseGtinOf(unit, indicator)).toBe(gtin);
  expect(isGtin(gtin)).toBe(true);
});

test('a case made from 12 digits is the one made from the same 13', () => {
  expect(caseGtinOf('036000241457', 3)).toBe(caseGtinOf('0036000241457', 3));
});

test('every single wrong digit is seen, and every swap of neighbours that don’t differ by 5 (GS1: what the digit catches)', () => {
  const right = '6291041500213';
  for (let at = 0; at < right.length; at++) {
    for (let digit = 0; digit <= 9; digit++) {
      const wrong = `${right.slice(0, at)}${digit}${right.slice(at + 1)}`;
      expect(isGtin(wrong), wrong).toBe(wrong === right);
    }
    const [one, other] = [Number(right[at]), Number(right[at + 1])];
    if (Number.isNaN(other) || one === other) continue;
    const swapped = `${right.slice(0, at)}${other}${one}${right.slice(at + 2)}`;
    expect(isGtin(swapped), swapped).toBe(Math.abs(one - other) === 5);
  }
});

test('an SSCC has 18 digits, whatever the prefix; what doesn’t fit is refused', () => {
  const sscc = ssccOf({ extension: 3, companyPrefix: '7610425', serial: 2123456 });
  expect(sscc).toBe('376104250021234569');
  expect(isSscc(sscc)).toBe(true);
  expect(isSscc('376104250021234568')).toBe(false);
  expect(() => ssccOf({ extension: 0, companyPrefix: '762010012345', serial: 123456 })).toThrow('no SSCC');
  expect(() => caseGtinOf('16291041500210', 1)).toThrow('is not the GTIN of a unit');
  expect(() => caseGtinOf('6291041500213', 9)).toThrow('an indicator is 1 to 8');
});

test('lengths that are no GTIN’s are none', () => {
  expect(isGtin('')).toBe(false);
  expect(isGtin('0')).toBe(false);
  expect(isGtin('00000000000')).toBe(false);
  expect(isGtin('96385074')).toBe(true); // GTIN-8, GS1 General Specifications (from memory)
});
