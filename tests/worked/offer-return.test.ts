/**
 * What a funder makes, and where it comes from: of money for shares in closed form (one payment in, one at the sale), of a
 * loan against XIRR of a general-purpose library (formulajs) and payments added up by hand; what has no return says so.
 */
import * as formulajs from '@formulajs/formulajs';
import { expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { moneyOf } from '../../src/domain/offers/index.ts';
import type { RivalOffer } from '../../src/domain/plan/offer-terms.ts';
import { aPlan } from '../support/builders.ts';
import { explained, type Subject, subjectOf } from '../support/explained.ts';
import { anOffer, equityPart, loanPart, royaltyPart } from '../support/offers.ts';

const offered = (offer: RivalOffer): Subject => subjectOf(aPlan({ offers: [offer] }));
const number = (text: string): number => Number(text.replace('−', '-'));

function asked(subject: Subject, figure: 'return' | 'multiple') {
  const { id = '' } = subject.plan.offers[0] ?? {};
  const [result] = moneyOf(subject.plan, subject.results).offers;
  if (result === undefined) throw new Error('no offer');
  return { sheet: explained(subject, { of: 'offer', offerId: id, figure }), result, subject };
}

test('money for shares, in closed form: in and out are worth the same on the day the money comes', () => {
  const part = equityPart({ amount: '40000', when: { by: 'week', week: 3 } });
  const { sheet, result, subject } = asked(offered(anOffer([part])), 'return');
  const days = 7 * (subject.results.compiled.weeks - 3);
  const yearly = (result.payout / 4_000_000) ** (365 / days) - 1;
  expect(Number(sheet.exact)).toBeCloseTo(yearly, 9);
  expect(sheet.lines.map(({ label, value }) => [label, number(value)])).toEqual([
    ['Money in', -40_000],
    ['When the company is sold', 40_000],
  ]);
  expect(sheet.lines[1]?.reason).toContain('in 1 payment');
  const multiple = asked(offered(anOffer([part])), 'multiple').sheet;
  expect(Number(multiple.exact)).toBeCloseTo(result.payout / 4_000_000, 12);
});

test('a loan: XIRR of formulajs on the same dates, and what it is worth on the first day comes to nothing', () => {
  const loan = loanPart({ amount: '40000', yearlyRate: '0.12', principalMonths: 10, feeRate: '0.02' });
  const { sheet, result, subject } = asked(offered(anOffer([loan])), 'return');
  const { startDay } = subject.results.compiled;
  const dates = result.flows.map(({ week }) => new Date(isoDateOf(startDay + 7 * week)));
  const theirs = formulajs.XIRR(
    result.flows.map(({ amount }) => -amount / 100),
    dates,
    0.1,
  );
  expect(Number(sheet.exact)).toBeCloseTo(Number(theirs), 6);
  expect(Math.abs(sheet.lines.reduce((sum, { value }) => sum + number(value), 0))).toBeLessThan(0.05);
  expect(sheet.lines.map(({ label }) => label)).toEqual(['Money in', 'Fee', 'Interest', 'Paid back']);
  // Under each line what is really paid: as lent, no more and no less.
  expect(sheet.lines[3]?.reason).toBe('40000.00 in 10 payments');
});

test('what makes no return says why, and has its lines', () => {
  const late = anOffer([equityPart({ when: { by: 'doors', doors: 100_000, accountId: null } })]);
  const { sheet } = asked(offered(late), 'return');
  expect([sheet.value, sheet.exact, sheet.caution]).toEqual([
    'none',
    null,
    'No money comes in, so there is nothing to make a return on.',
  ]);
  expect(sheet.lines).toHaveLength(1);
  const silent = anOffer([royaltyPart({ amount: '40000', amountPerUnit: '0' })]);
  expect(asked(offered(silent), 'return').sheet.caution).toBe('Nothing goes back to the funder.');
});
