// What a plan may come to and still be computed: so many groups of doors, so many units wanted in a week, sums that stay
// exact in whole minor units. Past it a plan is a problem in words, never a rounded answer.
// Worked figure: 100,000 doors that open in one week and sell 1,000 each want 100,000,000 units a week, the most.
import { dayNumber } from './calendar.ts';
import type { Account, Item, Listing, Plan } from './plan/index.ts';
import type { Problem } from './problems.ts';
import { promotionByWeek, seasonByWeek } from './rollout/cells.ts';
import { countCells } from './rollout/cohorts.ts';
import { LARGEST_EXACT } from './rollout/exact.ts';

/** More groups of doors than this, and the weekly pass no longer fits a phone. */
const CELLS_MOST = 6000;

/** The pass adds demand up in millionths of a unit over as many as 90 weeks: this keeps those sums below 2^53. */
const UNITS_MOST = 100_000_000;

/** Weeks past the horizon that demand is worked out for: lead time, cover, what an order looks ahead, the week itself. */
const WEEKS_AHEAD = 104 + 52 + 92;

/** Sizes that no field's own limits keep in bounds; empty when the plan can be computed. */
export function sizeProblems(plan: Plan): Problem[] {
  const cells = countCells(plan);
  if (cells > CELLS_MOST) {
    return [
      {
        code: 'number-too-large',
        path: 'accounts',
        got: `${cells} groups of doors, each item counted`,
        expected: `at most ${CELLS_MOST}: open more doors a week in fewer weeks, or list fewer items`,
      },
    ];
  }
  const items = new Map(plan.items.map((item) => [item.id, item]));
  return plan.accounts.flatMap((account) =>
    account.listings.flatMap((listing) => {
      const item = items.get(listing.itemId);
      return item && wantsTooMuch({ plan, account, listing, item }) ? [tooManyUnits(account, listing)] : [];
    }),
  );
}

interface Wanted {
  plan: Plan;
  account: Account;
  listing: Listing;
  item: Item;
}

/** Every lift at once, and the peak of the season with it, is seldom too much; only then are the weeks looked at. */
function wantsTooMuch(wanted: Wanted): boolean {
  const { account, listing, item } = wanted;
  const groups = [
    ...account.runningDoors.map(({ doors }) => doors),
    ...account.waves.map(({ doors, doorsPerWeek }) => Math.min(doors, doorsPerWeek)),
  ];
  const doors = groups.reduce((most, each) => Math.max(most, each), 0);
  const { display } = account;
  const lift =
    display === null ? 1 : 1 + Math.max(Number(display.liftRate), Number(display.liftEndRate ?? 0));
  const units = doors * Number(listing.unitsPerStoreWeek) * lift;
  const season = (item.seasonFactors ?? []).reduce((most, factor) => Math.max(most, Number(factor)), 1);
  const lifts = account.promotions.reduce((product, { liftRate }) => product * (1 + Number(liftRate)), 1);
  if (units * season * lifts <= UNITS_MOST) return false;
  // Written so that what is no number (endless lifts in a week of no season) is too much as well.
  return !(units * peakOf(wanted) <= UNITS_MOST);
}

function peakOf({ plan, account, listing, item }: Wanted): number {
  const weeks = plan.horizonWeeks + WEEKS_AHEAD;
  const season = seasonByWeek(item, dayNumber(plan.startDate), weeks);
  const promotion = promotionByWeek(account, listing.itemId, weeks);
  let peak = 0;
  for (let week = 0; week < weeks; week++) {
    peak = Math.max(peak, (season?.[week] ?? 1) * (promotion?.[week] ?? 1));
  }
  return peak;
}

function tooManyUnits({ id, name }: Account, { itemId }: Listing): Problem {
  return {
    code: 'number-too-large',
    path: `accounts/${id}/listings/${itemId}/unitsPerStoreWeek`,
    got: `more than 100,000,000 units wanted in one week where doors of ${name} open together`,
    expected: 'fewer doors a week, a lower rate of sale, or smaller lifts and season factors',
  };
}

/** Sums of money outgrew exact arithmetic in the weekly pass. */
export function sumsTooLarge(minorDigits: number): Problem {
  const whole = String(Math.floor(LARGEST_EXACT / 10 ** minorDigits));
  const most = `${whole.slice(0, 2)}${'0'.repeat(whole.length - 2)}`.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return {
    code: 'number-too-large',
    path: '',
    got: `sums past what can be kept exact to the ${minorDigits === 2 ? 'cent' : 'last decimal'}`,
    expected: `doors, rates of sale and prices whose sums stay below ${most} in money`,
  };
}
