// The latest week an item's first purchase order can go out: the plan run again with nothing ordered before a later
// week, until a fill ships later or a unit more is lost than in the plan.
// Worked figure: two weeks of lead, a fill shipped in week 3 (on the shelf in 4): ordered in week 1 at the latest.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { runPass } from '../rollout/pass.ts';
import type { PassResult } from '../rollout/types.ts';
import { halve, isSteadyUpTo, remembering } from './search.ts';
import type { LatestOrder } from './types.ts';

/** One an item that the plan buys at all, in plan order. Other items are bought as planned. */
export function latestOrders(plan: Plan, results: Results): LatestOrder[] {
  return plan.items.flatMap(({ id }, item) => {
    const plannedWeek = results.pass.units[item]?.ordered.findIndex((units) => units > 0) ?? -1;
    return plannedWeek < 0 ? [] : [latestOf({ results, item, itemId: id, plannedWeek })];
  });
}

interface OrderArgs {
  results: Results;
  item: number;
  itemId: string;
  plannedWeek: number;
}

function latestOf({ results, item, itemId, plannedWeek }: OrderArgs): LatestOrder {
  const last = results.pass.weeks - 1;
  const missing = new Map<number, Missing>();
  const tried = remembering((week) => {
    const found = missedBy(results.pass, ordersFrom(results, item, week), item);
    missing.set(week, found);
    return found.late === 0 && found.lost === 0;
  });
  let held = plannedWeek;
  const confirmedHere = tried.holds(held);
  let step = 1;
  while (held < last) {
    const next = Math.min(held + step, last);
    if (!tried.holds(next)) {
      held = halve(tried, held, next);
      break;
    }
    held = next;
    step *= 2;
  }
  const beyond = missing.get(held + 1) ?? null;
  return {
    itemId,
    plannedWeek,
    week: held,
    lateUnitsNext: beyond?.late ?? null,
    lostUnitsNext: beyond?.lost ?? null,
    confirmed: confirmedHere && tried.holds(held) && (held === last || beyond !== null),
    steady: isSteadyUpTo(tried, held),
  };
}

/** The plan's pass with no purchase order of the item before a week. */
export function ordersFrom({ compiled, free }: Results, item: number, week: number): PassResult {
  const items = compiled.items.map((each, i) => (i === item ? { ...each, ordersFrom: week } : each));
  return runPass({ compiled: { ...compiled, items }, shippable: free.shippable, recorder: null });
}

interface Missing {
  /** The most fill units that, at some week's end, have not left yet and in the plan had. */
  late: number;
  lost: number;
}

function missedBy(planned: PassResult, there: PassResult, item: number): Missing {
  const [was, is] = [planned.units[item], there.units[item]];
  let late = 0;
  let lost = 0;
  let behind = 0;
  for (let w = 0; w < planned.weeks; w++) {
    behind += (was?.fillShipped[w] ?? 0) - (is?.fillShipped[w] ?? 0);
    late = Math.max(late, behind);
    lost += (is?.lost[w] ?? 0) - (was?.lost[w] ?? 0);
  }
  return { late, lost: Math.max(0, lost) };
}
