// Whether the hole closes: the rate of sale under which cash is never back above its opening within the plan, and the
// week from which on nothing more has to be put in. Both without new funding, each confirmed by runs of the whole model.
// Worked figure: back by week 70 at 81 % of the planned rates, not within 78 weeks at 80 %.
import { dec } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { wholePlan } from '../talks/run.ts';
import { halve, remembering, type Tried } from './search.ts';
import type { FundsItself, NeverCloses } from './types.ts';

/** Hundredths of the planned rates: the lowest and highest tried, and the steps between them. */
const LEAST = 5;
const MOST = 400;
const STEP_DOWN = 10;
const STEP_UP = 50;
const AS_PLANNED = 100;

/** Null for a plan without doors: there is no sale to change. */
export function neverCloses(plan: Plan): NeverCloses | null {
  if (plan.accounts.every(({ waves, runningDoors }) => waves.length + runningDoors.length === 0)) return null;
  const backWeeks = new Map<number, number | null>();
  const tried = remembering((hundredths) => {
    const there = wholePlan(atRate(plan, hundredths));
    const week = there.ok ? there.value.reading.backAboveOpeningWeek : null;
    backWeeks.set(hundredths, week);
    return week !== null;
  });
  const { neverAt, closesAt } = tried.holds(AS_PLANNED) ? below(tried) : above(tried);
  return {
    neverAt,
    closesAt,
    backWeek: closesAt === null ? null : (backWeeks.get(closesAt) ?? null),
    rateNever: neverAt === null ? null : rateAt(plan, neverAt),
    rateCloses: closesAt === null ? null : rateAt(plan, closesAt),
    confirmed: isBracket(tried, neverAt, closesAt),
    steady: [...tried.seen].every(([value, closes]) => closes === value > (neverAt ?? 0)),
  };
}

/** Both ends were run, and lie side by side where there are two. */
function isBracket({ seen }: Tried, neverAt: number | null, closesAt: number | null): boolean {
  const isNever = neverAt === null || seen.get(neverAt) === false;
  const isClosing = closesAt === null || seen.get(closesAt) === true;
  return isNever && isClosing && (neverAt === null || closesAt === null || closesAt === neverAt + 1);
}

interface Bracket {
  neverAt: number | null;
  closesAt: number | null;
}

function below(tried: Tried): Bracket {
  let closes = AS_PLANNED;
  while (closes > LEAST) {
    const next = Math.max(LEAST, closes - STEP_DOWN);
    if (!tried.holds(next)) return around(halve(tried, closes, next));
    closes = next;
  }
  return { neverAt: null, closesAt: LEAST };
}

function above(tried: Tried): Bracket {
  let never = AS_PLANNED;
  while (never < MOST) {
    const next = Math.min(MOST, never + STEP_UP);
    if (tried.holds(next)) return around(halve(tried, next, never));
    never = next;
  }
  return { neverAt: MOST, closesAt: null };
}

function around(closesAt: number): Bracket {
  return { neverAt: closesAt - 1, closesAt };
}

const MOST_RATE = 1000;
const LEAST_RATE = 0.000001;

/** The plan with all rates of sale, and the sales beside it left as they are, at so many hundredths. */
export function atRate(plan: Plan, hundredths: number): Plan {
  const accounts = plan.accounts.map((account) => ({
    ...account,
    listings: account.listings.map((listing) => ({
      ...listing,
      unitsPerStoreWeek: rateText(listing.unitsPerStoreWeek, hundredths),
    })),
  }));
  return { ...plan, accounts };
}

function rateText(rate: string, hundredths: number): string {
  const scaled = dec(rate).times(hundredths).div(100).toDecimalPlaces(6).toNumber();
  return dec(String(Math.min(MOST_RATE, Math.max(LEAST_RATE, scaled)))).toFixed();
}

function rateAt(plan: Plan, hundredths: number): string | null {
  const rate = plan.accounts[0]?.listings[0]?.unitsPerStoreWeek;
  return rate === undefined ? null : rateText(rate, hundredths);
}

/** The week after the lowest cash without new funding, confirmed by putting in what is missing, and one unit less. */
export function fundsItself(plan: Plan, results: Results): FundsItself {
  const bare: Plan = { ...plan, business: { ...plan.business, funding: [] } };
  const reading = readingOf(bare);
  const opening = results.pass.openingCash;
  const amount = Math.max(0, -reading.lowestCash);
  const there = readingOf(withMore(bare, opening + amount, results.minorDigits));
  const below = amount === 0 ? null : readingOf(withMore(bare, opening + amount - 1, results.minorDigits));
  const neverBelow = reading.lowestCash >= opening;
  const week = neverBelow ? 0 : reading.lowestWeek + 1;
  return {
    week: reading.floorNotSeen && !neverBelow ? null : week,
    amount,
    lowestThere: there.lowestCash,
    lowestBelow: below?.lowestCash ?? null,
    confirmed: there.lowestCash >= 0 && (below === null || below.lowestCash < 0),
  };
}

function withMore(plan: Plan, minorUnits: number, minorDigits: number): Plan {
  const openingCashAmount = dec(minorUnits)
    .div(10 ** minorDigits)
    .toFixed();
  return { ...plan, business: { ...plan.business, openingCashAmount } };
}

/** Of a plan that was computed with other cash or other rates: it can be computed again. */
function readingOf(plan: Plan): RolloutReading {
  const results = wholePlan(plan);
  if (!results.ok) throw new Error(`the plan was computed, and can't be with other cash`);
  return results.value.reading;
}
