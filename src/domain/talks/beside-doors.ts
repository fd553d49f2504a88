// Counters in doors and weeks: a test in some doors before the rest, and weeks on the shelf that are promised. Both are
// held against being dropped at the first review. Worked figure: of 60 doors 6 open first and 54 after 26 weeks.

import { withAccount } from '../ladder/rungs.ts';
import { numberOf } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { type BesideArgs, type BesideOffer, inWeeks, moneyOf, unvalued } from './beside-types.ts';
import { droppedAfter, lossByWeeks } from './review.ts';
import { oneDeal } from './run.ts';

/** First-year change of opening some doors first, beside what a stop at the review costs then and now. */
export function testOffer({ now, reviewWeeks, guesses }: BesideArgs): Outcome<BesideOffer> {
  const { plan, account } = now;
  const planned = account.waves.reduce((sum, { doors }) => sum + doors, 0);
  const base = { id: 'test', label: 'A test first', measure: 'firstYear' } as const;
  if (planned < 2) {
    const what = `${planned === 1 ? 'One door is opened' : 'No door is opened'}: there is nothing to test before the rest.`;
    return fine(unvalued({ ...base, what }));
  }
  const first = Math.min(planned - 1, Math.max(1, Math.round(planned * guesses.testShare)));
  const tested = oneDeal(withAccount(plan, testedFirst(account, first, reviewWeeks)), account.id);
  if (!tested.ok) return tested;
  const year = {
    now: numberOf(now.deal.firstYearAfterFixed),
    tested: numberOf(tested.value.deal.firstYearAfterFixed),
  };
  return fine({
    ...base,
    what: `${first} of ${planned} doors first; the other ${planned - first} each ${inWeeks(reviewWeeks)} later, once the test has held.`,
    value: moneyOf(year.tested - year.now, now),
    lines: [
      { label: 'First year, all doors at once', amount: moneyOf(year.now, now) },
      { label: 'First year, test first', amount: moneyOf(year.tested, now) },
      { label: 'Stopped at the review, all doors', amount: droppedAfter(now, reviewWeeks).amount },
      { label: 'Stopped at the review, test only', amount: droppedAfter(tested.value, reviewWeeks).amount },
    ],
    assumed: `${first} of ${planned} doors in the test, and the rate of sale as planned; guess`,
  });
}

/** The first doors to open stay where they are; every other one opens so many weeks later, at its wave's own pace. */
export function testedFirst(account: Account, doors: number, laterWeeks: number): Account {
  let left = doors;
  const inOrder = account.waves
    .map((wave, index) => ({ wave, index }))
    .sort((x, y) => x.wave.openWeek - y.wave.openWeek || x.index - y.index);
  const waves = inOrder.flatMap(({ wave, index }) => {
    const tested = Math.min(left, wave.doors);
    left -= tested;
    const openWeek = wave.openWeek + Math.floor(tested / wave.doorsPerWeek) + laterWeeks;
    const later = { ...wave, id: `after-test-${index}`, openWeek, doors: wave.doors - tested };
    return [{ ...wave, doors: tested }, later].filter((each) => each.doors > 0);
  });
  return { ...account, waves };
}

/** What a promise of weeks on the shelf saves of the loss at the review; the weeks are the fewest that pay back. */
export function guaranteeOffer({ now, reviewWeeks }: BesideArgs): BesideOffer {
  const base = { id: 'guarantee', label: 'Guaranteed weeks on shelf', measure: 'atReview' } as const;
  const { termWeeks, doors } = now.deal;
  if (doors === 0) return unvalued({ ...base, what: 'No door is opened: there are no weeks to guarantee.' });
  const atReview = droppedAfter(now, reviewWeeks);
  const enough = leastWeeksPaidBack(now);
  const weeks = Math.max(enough ?? termWeeks, reviewWeeks);
  const kept = droppedAfter(now, weeks);
  return {
    ...base,
    what: guaranteeWords(enough, { reviewWeeks, termWeeks }),
    value: moneyOf(kept.amount - atReview.amount, now),
    lines: [
      { label: `Dropped after ${inWeeks(reviewWeeks)}`, amount: atReview.amount },
      ...(weeks === reviewWeeks ? [] : [{ label: `Dropped after ${inWeeks(weeks)}`, amount: kept.amount }]),
    ],
    assumed: null,
  };
}

/** The fewest weeks on the shelf from which on, up to the end of the term, being dropped loses nothing; null: none. */
export function leastWeeksPaidBack(now: BesideArgs['now']): number | null {
  const lossAfter = lossByWeeks(now);
  const { termWeeks } = now.deal;
  let weeks = termWeeks;
  while (weeks > 0 && lossAfter(weeks).amount >= 0) weeks -= 1;
  return weeks === termWeeks ? null : weeks + 1;
}

function guaranteeWords(enough: number | null, of: { reviewWeeks: number; termWeeks: number }): string {
  if (enough === null) {
    return `Kept on the shelf for the ${inWeeks(of.termWeeks)} of the term: even then it has not paid back.`;
  }
  if (enough <= of.reviewWeeks) {
    return `After ${inWeeks(enough)} on the shelf nothing is lost any more, and the review comes after that.`;
  }
  return `Kept on the shelf for at least ${inWeeks(enough)}: from then on being dropped loses nothing.`;
}
