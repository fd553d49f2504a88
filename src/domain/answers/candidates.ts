// Which changes are worth a run: those that move money or goods sooner in time at the accounts, waves and items that
// weigh most. What a chain or supplier would ask in return nobody knows here; the sizes tried are judgement, no source.
// Worked figure: a lid of 1,000 used up from week 18 on asks for 2,000 from week 18 on.
import type { Account, Item, Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { fillPerDoor, multipleOf } from '../rollout/cells.ts';
import { halfOf, twice } from './change-plan.ts';
import { lidUsedSince } from './lid.ts';
import type { Binding, Change } from './types.ts';

/** So many of the largest accounts, waves and items are tried. */
const MOST_ACCOUNTS = 3;
const MOST_WAVES = 8;
const MOST_ITEMS = 3;

const EARLIER_DAYS = 14;
const DISCOUNT = { rate: '0.02', days: 10 } as const;
const LATER_WEEKS = 4;
const SUPPLIER_DAYS = 30;
const COVER_WEEKS = 2;

interface From {
  plan: Plan;
  results: Results;
  binding: Binding;
}

/** The changes to try, in no order of merit. Each still has to pass the rules of a plan. */
export function candidatesFor(from: From): Change[] {
  const accounts = largest(from.plan.accounts, MOST_ACCOUNTS, (_, a) =>
    sum(from.results.pass.accounts[a]?.invoiced ?? []),
  );
  const items = largest(from.plan.items, MOST_ITEMS, (_, i) => {
    const made = sum(from.results.pass.units[i]?.made ?? []);
    return made * (from.results.compiled.items[i]?.landed ?? 0);
  });
  return [
    ...accounts.flatMap((account, place) => ofAccount(from.plan, account, place)),
    ...ofCreditLimits(from),
    ...ofWaves(from.plan),
    ...items.flatMap(ofSupply),
    ...ofShortItems(from),
  ];
}

function ofAccount(plan: Plan, account: Account, place: number): Change[] {
  const { id: accountId, terms, slotting } = account;
  const changes: Change[] = [];
  const earlier = Math.min(EARLIER_DAYS, terms.paymentDays);
  if (earlier > 0) changes.push({ kind: 'paidEarlier', accountId, days: earlier });
  if (terms.latenessDays > 0) changes.push({ kind: 'paidOnTime', accountId, days: terms.latenessDays });
  if (terms.earlyDiscount === null && terms.paymentDays > DISCOUNT.days && place < MOST_ACCOUNTS - 1)
    changes.push({ kind: 'earlyDiscount', accountId, ...DISCOUNT });
  if (slotting?.settled === 'atOpening') changes.push({ kind: 'slottingOffRemittances', accountId });
  if (account.waves.length > 0 && account.listings.some((listing) => hasCaseToSpare(plan, account, listing)))
    changes.push({ kind: 'smallerFill', accountId });
  return changes;
}

function hasCaseToSpare(plan: Plan, account: Account, listing: Account['listings'][number]): boolean {
  const item = plan.items.find(({ id }) => id === listing.itemId);
  if (!item) return false;
  const multiple = multipleOf(account.ordering.orderIn, item);
  return fillPerDoor(account, listing, item) - multiple >= Math.max(listing.facings, multiple);
}

/** Twice the limit, where it holds orders back. */
function ofCreditLimits({ plan, results }: From): Change[] {
  const held = (a: number) => sum(results.pass.accounts[a]?.heldBack ?? []);
  const most = largest(plan.accounts, MOST_ACCOUNTS, (_, a) => held(a));
  return most.flatMap(({ id: accountId, creditLimitAmount }): Change[] => {
    const a = plan.accounts.findIndex(({ id }) => id === accountId);
    if (creditLimitAmount === null || held(a) === 0) return [];
    return [{ kind: 'creditLimit', accountId, amount: twice(creditLimitAmount) }];
  });
}

/** Later, and at half the pace, as far as all doors still open within the plan. */
function ofWaves(plan: Plan): Change[] {
  const all = plan.accounts.flatMap(({ id, waves }) => waves.map((wave) => ({ accountId: id, wave })));
  return largest(all, MOST_WAVES, ({ wave }) => wave.doors).flatMap(({ accountId, wave }) => {
    const changes: Change[] = [];
    const weeks = Math.ceil(wave.doors / wave.doorsPerWeek);
    if (wave.openWeek + LATER_WEEKS + weeks <= plan.horizonWeeks)
      changes.push({ kind: 'waveLater', accountId, waveId: wave.id, weeks: LATER_WEEKS });
    const slower = Math.ceil(Math.min(wave.doors, wave.doorsPerWeek) / 2);
    const slowerWeeks = Math.ceil(wave.doors / slower);
    if (slowerWeeks > weeks && wave.openWeek + slowerWeeks <= plan.horizonWeeks)
      changes.push({ kind: 'slowerDoors', accountId, waveId: wave.id, doorsPerWeek: slower });
    return changes;
  });
}

function ofSupply({ id: itemId, supply }: Item): Change[] {
  const changes: Change[] = [];
  if (Number(supply.depositRate) > 0)
    changes.push({ kind: 'depositShare', itemId, rate: halfOf(supply.depositRate) });
  if (supply.supplierDays + SUPPLIER_DAYS <= 365)
    changes.push({ kind: 'supplierDays', itemId, days: SUPPLIER_DAYS });
  const fewer = Math.min(COVER_WEEKS, supply.coverWeeks);
  if (fewer > 0) changes.push({ kind: 'coverWeeks', itemId, weeks: -fewer });
  if (supply.coverWeeks + COVER_WEEKS <= 52) changes.push({ kind: 'coverWeeks', itemId, weeks: COVER_WEEKS });
  if (supply.minimumOrderUnits > 1)
    changes.push({ kind: 'smallerMinimum', itemId, units: Math.ceil(supply.minimumOrderUnits / 2) });
  return changes;
}

/** Where goods run short: more capacity from the first week its lid is in the way, and rush orders. */
function ofShortItems({ plan, results, binding }: From): Change[] {
  const short = new Map<number, number | null>();
  for (const { week, what, items } of binding.weeks) {
    for (const item of items) {
      if (what === 'capacity' && (short.get(item) ?? null) === null) short.set(item, week);
      else if (!short.has(item)) short.set(item, null);
    }
  }
  for (const [i, { lost, backlog }] of results.pass.units.entries()) {
    if (!short.has(i) && (sum(lost) > 0 || sum(backlog) > 0)) short.set(i, null);
  }
  const worst = largest([...short], MOST_ITEMS, ([i]) => sum(results.pass.units[i]?.lost ?? []));
  return worst.flatMap(([i, heldFrom]) => {
    const item = plan.items[i];
    if (!item) return [];
    const { supply, id: itemId } = item;
    const rush: Change[] =
      supply.expedite === null && supply.leadWeeks >= 2
        ? [{ kind: 'rushOrders', itemId, leadWeeks: Math.floor(supply.leadWeeks / 2) }]
        : [];
    const more = heldFrom === null ? [] : moreCapacity({ plan, item, i, results }, heldFrom);
    return [...more, ...rush];
  });
}

function moreCapacity(
  of: { plan: Plan; item: Item; i: number; results: Results },
  heldFrom: number,
): Change[] {
  const { plan, item, i, results } = of;
  const fromWeek = lidUsedSince(results, i, heldFrom);
  const changes: Change[] = [];
  const lid = results.compiled.items[i]?.buying.suppliers[0]?.capacity[fromWeek] ?? Number.POSITIVE_INFINITY;
  if (Number.isFinite(lid))
    changes.push({
      kind: 'capacityFrom',
      itemId: item.id,
      fromWeek,
      unitsPerWeek: Math.min(10_000_000, 2 * lid),
    });
  const steps = item.supply.capacitySteps;
  const at = steps.findIndex((step) => step.fromWeek > fromWeek);
  const step = steps[at];
  if (step) {
    const before = steps[at - 1];
    const earliest = Math.max(fromWeek, step.leadWeeks, before ? before.fromWeek + 1 : 0);
    if (earliest < step.fromWeek)
      changes.push({ kind: 'stepEarlier', itemId: item.id, stepId: step.id, fromWeek: earliest });
  }
  const line = plan.business.lines.find(({ id }) => id === item.supply.line?.lineId);
  if (line) {
    const now = [...line.steps].reverse().find((each) => each.fromWeek <= fromWeek)?.shifts ?? line.shifts;
    if (now < 21) changes.push({ kind: 'shiftFrom', lineId: line.id, fromWeek, shifts: now + 1 });
  }
  return changes;
}

function largest<T>(list: readonly T[], most: number, size: (each: T, place: number) => number): T[] {
  const sized = list.map((each, place) => ({ each, size: size(each, place) }));
  sized.sort((one, other) => other.size - one.size);
  return sized.slice(0, most).map(({ each }) => each);
}

function sum(series: ArrayLike<number>): number {
  let total = 0;
  for (let w = 0; w < series.length; w++) total += series[w] ?? 0;
  return total;
}
