// Units or revenue by a date: the doors that may come, each selling as the weekly pass has it, times a rate of sale that
// is not known exactly. What may come is convolved as in door-odds.ts, in 256ths of the most, what is sure beside it exact; the
// rate is lognormal, and both lean on the same common factor. Supply is the plan's: what many more doors could not be sold is
// not looked for here.
// Worked figure: 10,000 units for certain at a rate known to within a factor of e^0.3: 13,500 have a chance of 0.16.
import { dayNumber } from '../calendar.ts';
import type { Account, Plan } from '../plan/index.ts';
import type { AccountWeeks, PassResult } from '../rollout/types.ts';
import { type DoorOdds, type Fate, isSettled, type Level, mostOf, oddsByLevel } from './door-odds.ts';
import { evidenceFor } from './evidence.ts';
import { bringSales } from './place-claim.ts';
import { USUAL_RATE_SPREAD } from './range/usual.ts';
import { chanceOf, slipShares } from './rungs.ts';
import { shareBelowScore } from './score.ts';

export interface SalesThen {
  /** Whole weeks of the plan over by the date. */
  weeks: number;
  expected: number;
  /** As the plan has it. */
  planned: number;
  /** The rate of sale's spread (of its logarithm), all listings together. */
  spread: number;
  chanceOfAtLeast: (amount: number) => number;
  at: (share: number) => number;
}

export interface SalesArgs {
  plan: Plan;
  pass: Pick<PassResult, 'accounts' | 'weeks' | 'minorDigits'>;
  of: 'units' | 'revenue';
  byDate: string;
}

const PARTS = 256;
/** Width of an 80 % range of a normal, in standard deviations. */
const WIDTH_80 = 2.5631;

export function salesThen({ plan, pass, of, byDate }: SalesArgs): SalesThen {
  const days = dayNumber(byDate) - dayNumber(plan.startDate) + 1;
  const weeks = Math.min(pass.weeks, Math.max(0, Math.floor(days / 7)));
  const unit = of === 'units' ? 1 : 10 ** pass.minorDigits;
  const own = plan.accounts.map((account, a) =>
    salesOf({ account, weeks, rate: rateOf(plan, account), by: pass.accounts[a] as AccountWeeks, of, unit }),
  );
  const planned = own.reduce((sum, { planned }) => sum + planned, 0);
  const shared = Number(plan.promise.spreads.sharedRate);
  const moving =
    own.reduce((sum, { planned, moving }) => sum + planned * moving, 0) / Math.max(1e-9, planned);
  const growth: Growth = { moving, ...rateSpread(own, shared) };
  const fates = own.map(({ fate }) => fate);
  const sure = mostOf(fates.filter(isSettled));
  const open = fates.filter((fate) => !isSettled(fate));
  const part = Math.max(1e-9, mostOf(open) / PARTS);
  const levels = Array.from(oddsByLevel(inParts(open, part), shared), ({ odds, ...level }) => {
    return { ...level, odds: odds.slice() };
  });
  const chanceOfAtLeast = (amount: number) =>
    Math.min(
      1,
      sumOver(levels, (n, level) => {
        const there = sure + n * part;
        return chanceToGrow(growth, amount === 0 ? 0 : amount / there, level);
      }),
    );
  const expected = sumOver(levels, (n, level) => (sure + n * part) * meanGrowth(growth, level));
  const most = sure + mostOf(open);
  const highest = most * Math.exp(6 * growth.spread);
  const at = (share: number) =>
    halved((amount) => 1 - chanceOfAtLeast(amount) >= share, highest, most * 1e-6);
  return { weeks, expected, planned, spread: growth.spread, chanceOfAtLeast, at };
}

/** The mean over all futures of a value that hangs on the parts that came and on the common factor's level. */
function sumOver(
  levels: readonly (Level & { odds: DoorOdds })[],
  value: (n: number, level: number) => number,
): number {
  let sum = 0;
  for (const { level, weight, odds } of levels) {
    odds.forEach((share, n) => {
      if (share > 1e-12) sum += weight * share * value(n, level);
    });
  }
  return sum;
}

/** How an amount moves with the rate of sale, whose middle is 1. */
interface Growth {
  /** The part of it that does. */
  moving: number;
  spread: number;
  onShared: number;
}

/** Chance that it grows so many times, or more, at a level of the common factor. */
function chanceToGrow({ moving, spread, onShared }: Growth, times: number, level: number): number {
  // Of nothing.
  if (times === Number.POSITIVE_INFINITY) return 0;
  if (moving <= 0 || spread <= 0) return times <= 1 + 1e-9 ? 1 : 0;
  const rate = 1 + (times - 1) / moving;
  if (rate <= 0) return 1;
  return shareBelowScore((onShared * level - Math.log(rate) / spread) / Math.sqrt(1 - onShared ** 2));
}

function meanGrowth({ moving, spread, onShared }: Growth, level: number): number {
  return 1 + moving * (Math.exp(spread * onShared * level + (spread ** 2 * (1 - onShared ** 2)) / 2) - 1);
}

/** The least amount up to the highest that the test holds for, and at most `fine` more. */
function halved(holds: (amount: number) => boolean, highest: number, fine: number): number {
  let [low, high] = [0, highest];
  for (let turn = 0; turn < 100 && high - low > fine; turn++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

interface OfAccount {
  fate: Fate;
  planned: number;
  /** Part of it that moves with the rate of sale: opening fills don't. */
  moving: number;
  listings: readonly ListingRate[];
}

interface ListingRate {
  itemId: string;
  /** Its part of the account's units, by rates of sale. */
  share: number;
  /** Middle of what is believed over the plan's rate; spread of its logarithm. */
  middle: number;
  spread: number;
  /** Whether all accounts' rates of the item move as one: what scans say holds for all. */
  isCommon: boolean;
}

interface AccountArgs {
  account: Account;
  weeks: number;
  rate: readonly ListingRate[];
  by: AccountWeeks;
  of: 'units' | 'revenue';
  unit: number;
}

function salesOf({ account, weeks, rate, by, of, unit }: AccountArgs): OfAccount {
  const series = of === 'units' ? by.sold : by.invoiced;
  const running = account.runningDoors.reduce((sum, { doors }) => sum + doors, 0);
  const slips = slipShares(account);
  let [without, waves] = [0, 0];
  const upTo = [0];
  for (let w = 0; w < weeks; w++) {
    const amount = (series[w] ?? 0) / unit;
    // Doors open from the start sell their part of a week, new ones theirs.
    const doors = by.doors[w] ?? 0;
    const old = account.waves.length === 0 ? amount : doors > 0 ? amount * Math.min(1, running / doors) : 0;
    without += old;
    waves += amount - old;
    upTo.push(waves);
  }
  const moving = of === 'units' ? 1 : movingPart(by, weeks);
  const middle = rate.reduce((sum, listing) => sum + listing.share * listing.middle, 0);
  const times = rate.length === 0 ? 1 : 1 + moving * (middle - 1);
  return {
    fate: {
      chance: chanceOf(account),
      slips,
      ifLate: slips.map((_, slip) => times * (without + (upTo[Math.max(0, weeks - slip)] ?? 0))),
      without: times * without,
    },
    planned: without + waves,
    moving,
    listings: rate,
  };
}

/**
 * Units sold to shoppers over units invoiced are not known by account; what was sold so far, at the price of the last
 * half year's invoices a unit sold, is near enough: fills weigh on the first weeks, reorders follow sales.
 */
function movingPart(by: AccountWeeks, weeks: number): number {
  const last = by.invoiced.length;
  const sum = (series: Float64Array, from: number, to: number) =>
    series.slice(from, to).reduce((s, x) => s + x, 0);
  const from = Math.max(0, last - 26);
  const sold = sum(by.sold, from, last);
  const invoiced = sum(by.invoiced, 0, weeks);
  if (sold === 0 || invoiced === 0) return 1;
  return Math.min(1, (sum(by.sold, 0, weeks) * sum(by.invoiced, from, last)) / sold / invoiced);
}

/** What is held of each listing's rate: typed spread about the plan's, scans, or the usual spread. */
function rateOf(plan: Plan, account: Account): ListingRate[] {
  const typed = plan.promise.spreads.rateOfSaleRate;
  const total = account.listings.reduce((sum, { unitsPerStoreWeek }) => sum + Number(unitsPerStoreWeek), 0);
  return account.listings.map(({ itemId, unitsPerStoreWeek }) => {
    const planned = Number(unitsPerStoreWeek);
    const share = total > 0 ? planned / total : 1 / account.listings.length;
    const seen = typed === null ? evidenceFor(plan, itemId) : null;
    if (seen === null) {
      const spread = typed === null ? USUAL_RATE_SPREAD : Number(typed);
      return { itemId, share, middle: 1, spread, isCommon: false };
    }
    const { low80, high80 } = seen.rate.ofMean;
    const middle = Math.sqrt(low80 * high80) / planned;
    return { itemId, share, middle, spread: Math.log(high80 / low80) / WIDTH_80, isCommon: true };
  });
}

/** Spread of all listings together, each weighed by its units, and how far it leans on the common factor. */
function rateSpread(accounts: readonly OfAccount[], shared: number): { spread: number; onShared: number } {
  const total = accounts.reduce((sum, { planned }) => sum + planned, 0);
  if (total <= 0) return { spread: 0, onShared: 0 };
  const parts = accounts.flatMap(({ planned, listings }) =>
    listings.map(({ itemId, share, spread, isCommon }) => ({
      itemId: isCommon ? itemId : null,
      own: (planned / total) * share * spread,
    })),
  );
  const sum = parts.reduce((all, { own }) => all + own, 0);
  let square = 0;
  parts.forEach((one, i) => {
    parts.forEach((other, j) => {
      const isSame = i === j || (one.itemId !== null && one.itemId === other.itemId);
      square += one.own * other.own * (isSame ? 1 : shared);
    });
  });
  const spread = Math.sqrt(square);
  if (spread === 0) return { spread: 0, onShared: 0 };
  return { spread, onShared: Math.min(0.99, (Math.sqrt(shared) * sum) / spread) };
}

/** In whole parts: rounded so that all of them together come to what they came to, to half a part. */
function inParts(fates: readonly Fate[], part: number): Fate[] {
  let exact = 0;
  let given = 0;
  return fates.map((fate) => {
    const most = mostOf([fate]);
    exact += most;
    const own = Math.round(exact / part) - given;
    given += own;
    const parts = (amount: number) => Math.round((amount / most) * own);
    return { ...fate, ifLate: fate.ifLate.map(parts), without: parts(fate.without) };
  });
}

bringSales(salesThen);
