/**
 * Speed of rival offers on the big plan (104 weeks, 12 accounts, 3 items), three and eight offers of three kinds, beside the whole
 * recalculation of the same plan in the same run, in Node. The figures depend on the machine; the ratio is what is judged: a
 * recalculation may take 5 ms and the offers of a step 50 (DEVELOPERS.md, Where a test goes).
 */
import { expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { moneyOf, turningOf } from '../../src/domain/offers/index.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { bigPlan } from '../support/big-plan.ts';
import { anOffer, equityPart, loanPart, royaltyPart } from '../support/offers.ts';

const MOST_RATIO = 10;

function median(work: () => void): number {
  const times = Array.from({ length: 31 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[15] ?? Number.NaN;
}

const kinds = [
  (id: string) => anOffer([equityPart()], { id }),
  (id: string) => anOffer([royaltyPart({ amountPerUnit: '0.1' })], { id }),
  (id: string) => anOffer([loanPart()], { id }),
];

test.each([3, 8])(
  '%s offers and the turning points of the pair shown, on a step, beside the whole recalculation',
  (count) => {
    const offers = Array.from({ length: count }, (_, at) => kinds[at % 3]?.(`offer-${at}`) ?? anOffer([]));
    const plan = { ...bigPlan(), offers };
    const results = evaluate(plan, sayFor);
    if (!results.ok) throw new Error('the big plan can’t be computed');
    const found = moneyOf(plan, results.value);
    expect(new Set(found.offers.map(({ founder }) => founder.amount)).size).toBe(3);
    // a royalty and a loan: both have to be paid out again at every place of the picture
    const pair = ['offer-1', 'offer-2'];
    const recalculation = median(() => evaluate(plan, sayFor));
    const step = median(() => moneyOf(plan, results.value));
    const turned = median(() => turningOf(plan, found, pair));
    console.log(
      `${count} offers: ${(step / recalculation).toFixed(2)} x, turning points: ${(turned / recalculation).toFixed(2)} x a recalculation`,
    );
    // the Money view works out both in the frame of a step
    expect((step + turned) / recalculation).toBeLessThan(MOST_RATIO);
  },
);
