// Counters about when money moves and who else is served, valued by the weekly pass: slotting paid unit by unit as goods
// ship instead of at the opening, and a window in which no other chain opens.
// Worked figure: slotting of 2,500 over 3,120 units of the first year is 0.8013 a unit.
import { storeWeeks, YEAR_WEEKS } from '../deals/store-weeks.ts';
import { withAccount } from '../ladder/rungs.ts';
import { Decimal, dec, round4 } from '../money/decimal.ts';
import { priceText } from '../money/plain.ts';
import type { Account, Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import type { Results } from '../results.ts';
import { type BesideArgs, type BesideOffer, inWeeks, moneyOf, unvalued } from './beside-types.ts';
import { droppedAfter } from './review.ts';
import { oneDeal, wholePlan } from './run.ts';

/** A claim stands so long after the goods shipped. Common practice, no source. */
const CLAIM_LAG_WEEKS = 4;
const REORDERS_ID = 'talks-slotting-by-unit';

/** The same slotting, as a claim on each unit shipped in the first year: later, and only as far as goods move. */
export function reordersOffer({ now, reviewWeeks }: BesideArgs, whole: Results): Outcome<BesideOffer> {
  const { plan, account, deal } = now;
  const base = { id: 'reorders', label: 'Slotting against reorders', measure: 'cashNeed' } as const;
  const asked = deal.fixedLines.find(({ id }) => id === 'slotting')?.amount ?? dec(0);
  const units = Decimal.sum(0, ...deal.items.map(({ firstYearUnits }) => firstYearUnits));
  if (asked.isZero())
    return fine(unvalued({ ...base, what: 'No slotting is asked: there is nothing to spread.' }));
  if (units.isZero()) {
    return fine(unvalued({ ...base, what: 'No unit sells in the first year: none can carry the slotting.' }));
  }
  const perUnit = round4(asked.div(units));
  const spread = withAccount(plan, slottingByUnit(account, perUnit));
  const changed = oneDeal(spread, account.id);
  if (!changed.ok) return changed;
  const wholeSpread = wholePlan(spread);
  if (!wholeSpread.ok) return wholeSpread;
  const dropped = {
    now: droppedAfter(now, reviewWeeks).amount,
    spread: droppedAfter(changed.value, reviewWeeks).amount,
  };
  const cash = { now: whole.reading, spread: wholeSpread.value.reading };
  const money = (minor: number) => minor / 10 ** now.minorDigits + 0;
  return fine({
    ...base,
    what: `Slotting as ${priceText(perUnit)} on each unit shipped, until all of it is paid.`,
    value: money(cash.now.cashNeed - cash.spread.cashNeed),
    lines: [
      { label: 'Cash need, slotting as asked', amount: money(-cash.now.cashNeed) },
      { label: 'Cash need, by the unit', amount: money(-cash.spread.cashNeed) },
      { label: 'Lowest cash, slotting as asked', amount: money(cash.now.lowestCash) },
      { label: 'Lowest cash, by the unit', amount: money(cash.spread.lowestCash) },
      { label: 'Dropped at the review, slotting as asked', amount: dropped.now },
      { label: 'Dropped at the review, by the unit', amount: dropped.spread },
    ],
    assumed: `Paid by the planned units of the first year, claimed ${inWeeks(CLAIM_LAG_WEEKS)} after they ship; common practice, no source`,
  });
}

export function slottingByUnit(account: Account, perUnit: Decimal): Account {
  const byUnit = {
    kind: 'billBack',
    id: REORDERS_ID,
    amountPerUnit: perUnit.toFixed(),
    fromWeek: storeWeeks(account).firstWeek,
    weeks: YEAR_WEEKS,
    lagWeeks: CLAIM_LAG_WEEKS,
  } as const;
  return { ...account, slotting: null, allowances: [...account.allowances, byUnit] };
}

/** What it costs us when every other chain's openings from ours on come so many weeks later. */
export function windowGivenOffer({ now, guesses }: BesideArgs, whole: Results): Outcome<BesideOffer> {
  const { plan, account } = now;
  const weeks = guesses.windowWeeks;
  const base = { id: 'windowGiven', label: 'A window for this chain alone', measure: 'endCash' } as const;
  const what = `No other chain opens for ${inWeeks(weeks)} after this one does.`;
  const { plan: later, openings } = othersLater(plan, account, weeks);
  if (openings === 0) {
    const none = `${what} No other chain opens in this plan from then on: it costs nothing that is known.`;
    return fine(unvalued({ ...base, what: none }));
  }
  const changed = wholePlan(later);
  if (!changed.ok) return changed;
  const money = (minor: number) => moneyOf(minor / 10 ** now.minorDigits, now);
  const end = { now: whole.reading.endCash, moved: changed.value.reading.endCash };
  const need = { now: whole.reading.cashNeed, moved: changed.value.reading.cashNeed };
  return fine({
    ...base,
    what,
    value: money(end.moved - end.now),
    lines: [
      { label: `Cash after ${inWeeks(plan.horizonWeeks)}, as planned`, amount: money(end.now) },
      { label: `Cash after ${inWeeks(plan.horizonWeeks)}, others later`, amount: money(end.moved) },
      { label: 'Cash need, as planned', amount: money(-need.now) },
      { label: 'Cash need, others later', amount: money(-need.moved) },
    ],
    assumed: `${inWeeks(weeks)}; the other chains wait and change nothing else; guess`,
  });
}

/** Waves of the others that open with this account or after it, moved; doors that open before it stay. */
export function othersLater(plan: Plan, account: Account, weeks: number): { plan: Plan; openings: number } {
  const from = storeWeeks(account).firstWeek;
  let openings = 0;
  const accounts = plan.accounts.map((other) => {
    if (other.id === account.id) return other;
    const waves = other.waves.map((wave) => {
      if (wave.openWeek < from) return wave;
      openings += 1;
      return { ...wave, openWeek: wave.openWeek + weeks };
    });
    return { ...other, waves };
  });
  return { plan: { ...plan, accounts }, openings };
}

/** The other way round: nothing in a plan says what a rival's product would take. */
export function windowAskedOffer({ guesses }: BesideArgs): BesideOffer {
  return unvalued({
    id: 'windowAsked',
    label: 'A window for us alone',
    measure: 'firstYear',
    what: `No rival of ours on that shelf for ${inWeeks(guesses.windowWeeks)}: not valued, for nothing here says what one would take.`,
  });
}
