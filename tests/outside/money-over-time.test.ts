/**
 * Present value, rates of return and payments against published examples of spreadsheet functions and numpy-financial, and
 * against two general-purpose libraries (formulajs, HyperFormula; development dependencies) on random flows. Published values
 * are written from memory of the pages named; each was confirmed by both libraries where they have the function.
 */
import * as formulajs from '@formulajs/formulajs';
import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../src/domain/calendar.ts';
import { irr, mirr, npv, pmt, type Return, xirr, xnpv } from '../../src/domain/offers/money-over-time.ts';

/** A formula of a spreadsheet library, on flows in A1, A2, ... and dates, as serial numbers, in B1, B2, ... */
function spreadsheet(formula: string, flows: readonly number[], days: readonly number[] = []): number {
  const rows = flows.map((flow, at) => [flow, (days[at] ?? 0) + 25_569]);
  const engine = HyperFormula.buildFromArray(rows, { licenseKey: 'gpl-v3' });
  const value = engine.calculateFormula(formula.replaceAll('#', String(flows.length)), 0);
  engine.destroy();
  return Number(value);
}

const rateOf = (found: Return): number => (found.found === 'one' ? found.rate : Number.NaN);

test('numpy-financial documentation, npv (Gitman 2003): 8 % on -40000, 5000, 8000, 12000, 30000', () => {
  const flows = [-40_000, 5000, 8000, 12_000, 30_000];
  expect(npv(0.08, flows)).toBeCloseTo(3065.22267, 5);
  expect(spreadsheet('=NPV(0.08,A2:A#)+A1', flows)).toBeCloseTo(3065.22267, 5);
});

describe('numpy-financial documentation, irr', () => {
  test.each([
    [[-100, 39, 59, 55, 20], 0.28095],
    [[-100, 0, 0, 74], -0.0955],
    [[-100, 100, 0, 7], 0.06206],
  ])('%j is %f', (flows, rate) => {
    expect(rateOf(irr(flows))).toBeCloseTo(rate, 4);
    expect(spreadsheet('=IRR(A1:A#)', flows)).toBeCloseTo(rate, 4);
  });

  test('-100, 100, 0, -7 changes sign twice: the published -0.0833 is one of two rates, and both are said', () => {
    const found = irr([-100, 100, 0, -7]);
    if (found.found !== 'several') throw new Error(JSON.stringify(found));
    expect(found.rates).toHaveLength(2);
    expect(found.rates[1]).toBeCloseTo(-0.0833, 4);
    for (const rate of found.rates) expect(npv(rate, [-100, 100, 0, -7])).toBeCloseTo(0, 8);
  });
});

const DATES = ['2008-01-01', '2008-03-01', '2008-10-30', '2009-02-15', '2009-04-01'].map(dayNumber);
const DATED = [-10_000, 2750, 4250, 3250, 2750].map((amount, at) => ({ amount, day: DATES[at] ?? 0 }));

test('spreadsheet function reference, XIRR: .373362535', () => {
  const amounts = DATED.map(({ amount }) => amount);
  expect(rateOf(xirr(DATED))).toBeCloseTo(0.373362535, 8);
  expect(spreadsheet('=XIRR(A1:A#,B1:B#)', amounts, DATES)).toBeCloseTo(0.373362535, 6);
});

test('spreadsheet function reference, XNPV at 9 %: 2086.6476', () => {
  const amounts = DATED.map(({ amount }) => amount);
  expect(xnpv(0.09, DATED)).toBeCloseTo(2086.6476, 4);
  expect(spreadsheet('=XNPV(0.09,A1:A#,B1:B#)', amounts, DATES)).toBeCloseTo(2086.6476, 4);
});

test('spreadsheet function reference, MIRR: 12.609413 %', () => {
  const flows = [-120_000, 39_000, 30_000, 21_000, 37_000, 46_000];
  expect(mirr(flows, 0.1, 0.12)).toBeCloseTo(0.12609413, 8);
  expect(formulajs.MIRR(flows, 0.1, 0.12)).toBeCloseTo(0.12609413, 8);
});

test('numpy-financial documentation, pmt: 200,000 over 15 years at 7.5 % is 1,854.02 a month', () => {
  expect(pmt(0.075 / 12, 12 * 15, 200_000)).toBeCloseTo(-1854.0247200054619, 8);
  expect(spreadsheet('=PMT(0.075/12,180,200000)', [0])).toBeCloseTo(-1854.0247200054619, 6);
});

test('pmt: at a rate without measure the payment is the interest alone, and is a number', () => {
  // (1 + 100/12)^360 is past what a double holds; a loan that long at that rate is a perpetuity: rate x money.
  expect(pmt(100 / 12, 360, 40_000)).toBeCloseTo((-100 / 12) * 40_000, 6);
  expect(pmt(100 / 12, 360, 40_000, -10_000)).toBeCloseTo((-100 / 12) * 40_000, 6);
  // Next to none: the parts alone, and interest on half of it, 361 periods over 2.
  expect(pmt(1e-9, 360, 360_000)).toBeCloseTo(-1000 * (1 + (1e-9 * 361) / 2), 9);
});

test('a rate of -100 % or less has no present value: it is refused, not without end', () => {
  expect(() => npv(-1, [-100, 50])).toThrow('above -100 %');
  expect(() => xnpv(-1, [{ day: 0, amount: 1 }])).toThrow('above -100 %');
});

test('Brigham & Ehrhardt, Financial Management: -52,125 and 12,000 for 8 years at 12 %: NPV 7,486.68, IRR 16 %', () => {
  const flows = [-52_125, ...Array.from({ length: 8 }, () => 12_000)];
  expect(npv(0.12, flows)).toBeCloseTo(7486.68, 2);
  expect(rateOf(irr(flows))).toBeCloseTo(0.16, 4);
});

test('finance exercise: a perpetuity that begins at 104 and grows by 4 % is worth 1,733.33 at 10 %', () => {
  const flows = Array.from({ length: 2000 }, (_, year) => (year === 0 ? 0 : 100 * 1.04 ** year));
  expect(npv(0.1, flows)).toBeCloseTo(1733.33, 2);
});

test('two rates close together are both found: 10 % and 11 %', () => {
  // (1.10 v - 1)(1.11 v - 1) x -100 000: one factor for each rate.
  const found = irr([-100_000, 221_000, -122_100]);
  if (found.found !== 'several') throw new Error(JSON.stringify(found));
  expect(found.rates.map((rate) => rate.toFixed(6))).toEqual(['0.100000', '0.110000']);
});

test('no money in, nothing back, no rate: each is said', () => {
  expect(irr([100, 20])).toEqual({ found: 'none', why: 'noMoneyIn' });
  expect(irr([-100, -20])).toEqual({ found: 'none', why: 'nothingBack' });
  // 10 in, 30 back, 30 in again: 30v² - 30v + 10 has no real root.
  expect(irr([-10, 30, -30])).toEqual({ found: 'none', why: 'noRate' });
});

const flowsOf = fc.tuple(
  fc.integer({ min: 100, max: 90_000 }),
  fc.array(fc.integer({ min: 1, max: 30_000 }), { minLength: 2, maxLength: 12 }),
);

test('random flows: NPV, IRR, PMT as formulajs and a spreadsheet have them', () => {
  const property = fc.property(flowsOf, fc.integer({ min: 1, max: 400 }), ([money, backs], milli) => {
    const rate = milli / 1000;
    const flows = [-money, ...backs];
    expect(npv(rate, flows) + money).toBeCloseTo(formulajs.NPV(rate, ...backs) as number, 6);
    const found = rateOf(irr(flows));
    expect(npv(found, flows) / money).toBeCloseTo(0, 9);
    const guess = Number(found.toFixed(2));
    const theirs = spreadsheet(`=IRR(A1:A#,${guess})`, flows);
    if (Number.isFinite(theirs)) expect(found).toBeCloseTo(theirs, 5);
    expect(pmt(rate, backs.length, money)).toBeCloseTo(formulajs.PMT(rate, backs.length, money) as number, 6);
  });
  fc.assert(property, { numRuns: 60 });
});
