// Weeks in an order that can happen: nothing opens before its first delivery can be there, nothing ends before it
// begins, and what is dated falls inside the plan.
// Worked figure: with two transit weeks and a horizon of 52 a wave may open in weeks 2 to 51.
import type { Problem } from '../../problems.ts';
import type { Account, Plan } from '../index.ts';

export function accountDates(plan: Plan): Problem[] {
  return plan.accounts.flatMap((account) => [
    ...waveWeeks(account, plan.horizonWeeks),
    ...cutWeek(account),
    ...discountDays(account),
    ...dealWeeks(account, plan.horizonWeeks),
  ]);
}

export function itemDates({ items, horizonWeeks }: Plan): Problem[] {
  return items.flatMap((item) => {
    const path = `items/${item.id}`;
    return [
      ...stepWeeks(item.supply.capacitySteps, `${path}/supply/capacitySteps`, horizonWeeks),
      ...item.opening.onOrder.flatMap(({ id, landsWeek }) =>
        inside(`${path}/opening/onOrder/${id}/landsWeek`, landsWeek, horizonWeeks),
      ),
      ...item.removals.flatMap(({ id, week }) => inside(`${path}/removals/${id}/week`, week, horizonWeeks)),
    ];
  });
}

interface DatedStep {
  id: string;
  fromWeek: number;
  leadWeeks: number;
}

/** Steps of a capacity or a line: each after the one before, late enough to be set up, inside the plan. */
export function stepWeeks(steps: readonly DatedStep[], path: string, horizonWeeks: number): Problem[] {
  return steps.flatMap((step, index) => {
    const at = `${path}/${step.id}/fromWeek`;
    const before = steps[index - 1];
    if (before && step.fromWeek <= before.fromWeek) {
      const expected = `a week after the step before it, week ${before.fromWeek}`;
      return [outOfOrder(at, `week ${step.fromWeek}`, expected)];
    }
    if (step.fromWeek >= step.leadWeeks) return inside(at, step.fromWeek, horizonWeeks);
    const got = `week ${step.fromWeek}, and setting it up takes ${weeks(step.leadWeeks)}`;
    return [outOfOrder(at, got, `a week from ${step.leadWeeks} on`)];
  });
}

export function businessDates({ business, horizonWeeks }: Plan): Problem[] {
  const { openingBooks: books, overheads, capital, funding } = business;
  const dated = (['receivables', 'payables', 'accrued'] as const).flatMap((list) =>
    books[list].map(({ id, week }) => ({ path: `openingBooks/${list}/${id}/week`, week })),
  );
  const placed = [
    ...dated,
    ...overheads.map(({ id, fromWeek }) => ({ path: `overheads/${id}/fromWeek`, week: fromWeek })),
    ...capital.map(({ id, week }) => ({ path: `capital/${id}/week`, week })),
    ...funding.map((offer) =>
      'fromWeek' in offer
        ? { path: `funding/${offer.id}/fromWeek`, week: offer.fromWeek }
        : { path: `funding/${offer.id}/week`, week: offer.week },
    ),
  ];
  return [
    ...placed.flatMap(({ path, week }) => inside(`business/${path}`, week, horizonWeeks)),
    ...overheads.flatMap(({ id, fromWeek, untilWeek }) =>
      untilWeek === null || untilWeek > fromWeek
        ? []
        : [
            outOfOrder(
              `business/overheads/${id}/untilWeek`,
              `week ${untilWeek}`,
              `a week after ${fromWeek}, where it begins`,
            ),
          ],
    ),
  ];
}

function waveWeeks(account: Account, horizonWeeks: number): Problem[] {
  const { id, waves } = account;
  const { least, why } = firstDelivery(account);
  return waves.flatMap((wave) => {
    const { openWeek } = wave;
    const path = `accounts/${id}/waves/${wave.id}`;
    if (openWeek >= least) {
      return [...inside(`${path}/openWeek`, openWeek, horizonWeeks), ...lastOpening(path, wave)];
    }
    const got = `week ${openWeek}, and ${why}`;
    return [outOfOrder(`${path}/openWeek`, got, `a week from ${least} to ${horizonWeeks - 1}`)];
  });
}

/** The first week a fill can be on the shelf. Stores order theirs before week 0; a depot waits for its first order week. */
export function firstDelivery({ depot, terms, ordering }: Account): { least: number; why: string } {
  const { transitWeeks } = terms;
  if (depot === null) return { least: transitWeeks, why: `a delivery takes ${weeks(transitWeeks)}` };
  const why =
    `the depot orders at the end of week ${ordering.firstWeek} at first, ` +
    `${weeks(depot.transitWeeks)} from us and ${weeks(transitWeeks)} from the shelf`;
  return { least: ordering.firstWeek + 1 + depot.transitWeeks + transitWeeks, why };
}

/** The last week that any field of a plan can name (fields.ts); a wave is open by then, whatever the horizon. */
const LAST_WEEK = 519;

/** 100,000 doors one a week would open for 1,923 years. */
function lastOpening(path: string, { openWeek, doors, doorsPerWeek }: Account['waves'][number]): Problem[] {
  const opens = Math.ceil(doors / doorsPerWeek);
  if (openWeek + opens - 1 <= LAST_WEEK) return [];
  const got = `${doorsPerWeek} a week, so that ${doors} doors take ${weeks(opens)} to open`;
  const least = Math.ceil(doors / (LAST_WEEK + 1 - openWeek));
  return [outOfOrder(`${path}/doorsPerWeek`, got, `at least ${least} a week, the last by week ${LAST_WEEK}`)];
}

function cutWeek({ id, cutWeek: cut, waves, runningDoors }: Account): Problem[] {
  if (cut === null || waves.length === 0 || runningDoors.length > 0) return [];
  const first = Math.min(...waves.map(({ openWeek }) => openWeek));
  if (cut > first) return [];
  return [
    outOfOrder(`accounts/${id}/cutWeek`, `week ${cut}`, `a week after the first opening, week ${first}`),
  ];
}

function discountDays({ id, terms }: Account): Problem[] {
  const { earlyDiscount, paymentDays } = terms;
  if (earlyDiscount === null || earlyDiscount.days <= paymentDays) return [];
  const expected = `at most the ${paymentDays} days of the payment terms`;
  return [outOfOrder(`accounts/${id}/terms/earlyDiscount/days`, `${earlyDiscount.days} days`, expected)];
}

/** Deals that run in weeks of their own: promotions, scan-backs, bill-backs. One of no weeks is switched off. */
function dealWeeks({ id, promotions, allowances }: Account, horizonWeeks: number): Problem[] {
  const deals = [
    ...promotions.map((deal) => ({ path: `promotions/${deal.id}`, deal })),
    ...allowances.flatMap((deal) => ('fromWeek' in deal ? [{ path: `allowances/${deal.id}`, deal }] : [])),
  ];
  return deals
    .filter(({ deal }) => deal.weeks > 0)
    .flatMap(({ path, deal }) => inside(`accounts/${id}/${path}/fromWeek`, deal.fromWeek, horizonWeeks));
}

export function inside(path: string, week: number, horizonWeeks: number): Problem[] {
  if (week < horizonWeeks) return [];
  const expected = `a week inside the plan's ${horizonWeeks} weeks, 0 to ${horizonWeeks - 1}`;
  return [outOfOrder(path, `week ${week}`, expected)];
}

function outOfOrder(path: string, got: string, expected: string): Problem {
  return { code: 'dates-out-of-order', path, got, expected };
}

function weeks(count: number): string {
  return count === 1 ? '1 week' : `${count} weeks`;
}
