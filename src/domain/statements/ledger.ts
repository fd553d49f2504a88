// What statements are made from: the pass's flows, balances and parts of the result, the balances it opened with, and every
// event added up by week (the pass run once more with each posting told). All are whole minor units.
// Worked figure: freight out of 1,240 and 760 posted in week 4 is 2,000 at events.freightOut[4].
import type { Results } from '../results.ts';
import type { Compiled } from '../rollout/compiled.ts';
import { EVENTS, type EventName } from '../rollout/events.ts';
import { replay } from '../rollout/index.ts';
import { openingBalances } from '../rollout/opening.ts';
import type { BalanceName, FlowName, PassResult, ProfitName } from '../rollout/types.ts';
import { BALANCE_SIDES } from './lines.ts';

/** A plan's pass with what it ran on. */
export type Run = Pick<Results, 'compiled' | 'free' | 'pass'>;

export interface Ledger {
  pass: PassResult;
  /** Before week 0. */
  opening: Record<BalanceName, number>;
  /** [event][week]: what was posted, as posted. */
  events: Record<EventName, Float64Array>;
}

/** An event's two sides, with its flow and its part of the result where it has them. */
export interface EventEntry {
  dr: BalanceName;
  cr: BalanceName;
  flow?: FlowName;
  profit?: ProfitName;
}

export const EVENT_NAMES = Object.keys(EVENTS) as EventName[];

export function entryOf(event: EventName): EventEntry {
  return EVENTS[event];
}

const made = new WeakMap<Compiled, Ledger>();

/** Of the plan's own pass; made once for the same results. */
export function ledgerOf({ compiled, free, pass }: Pick<Results, 'compiled' | 'free' | 'pass'>): Ledger {
  const known = made.get(compiled);
  if (known && known.pass === pass) return known;
  const events = Object.fromEntries(
    EVENT_NAMES.map((event) => [event, new Float64Array(pass.weeks)]),
  ) as Ledger['events'];
  replay({ compiled, free }, ({ event, week, amount }) => {
    events[event][week] = (events[event][week] ?? 0) + amount;
  });
  const ledger = { pass, opening: openingBalances(compiled.business), events };
  made.set(compiled, ledger);
  return ledger;
}

/** Events that move value added tax within the accrued balance. One that is added has to be named here to compile. */
const VAT_EVENTS = {
  vatOnSale: true,
  vatOnPayable: true,
  vatOnFreight: true,
  vatPaid: true,
  vatRefunded: true,
} as const satisfies Record<Extract<EventName, `vat${string}`>, true>;

export const VAT_EVENT_NAMES = Object.keys(VAT_EVENTS) as (keyof typeof VAT_EVENTS)[];

/** +1, −1 or 0: what an event does to a balance, each balance in its natural sign. */
export function effectOf(event: EventName, balance: BalanceName): 1 | -1 | 0 {
  const rises = BALANCE_SIDES[balance] === 'assets' ? 1 : -1;
  const { dr, cr } = entryOf(event);
  if (dr === balance) return rises;
  if (cr === balance) return rises === 1 ? -1 : 1;
  return 0;
}

/** A series added up over weeks, both counted in. */
export function sumOfWeeks(series: Float64Array, fromWeek: number, toWeek: number): number {
  let total = 0;
  for (let week = fromWeek; week <= toWeek; week++) total += series[week] ?? 0;
  return total;
}

/** A balance at a week's end; week −1 is the plan's first morning. */
export function balanceAt({ pass, opening }: Ledger, balance: BalanceName, week: number): number {
  return week < 0 ? opening[balance] : (pass.balances[balance][week] ?? 0);
}

/** Value added tax owed at a week's end, negative when it is to come back. The opening books hold none. */
export function vatOwedAt({ events }: Ledger, week: number): number {
  return VAT_EVENT_NAMES.reduce(
    (sum, event) => sum + effectOf(event, 'accrued') * sumOfWeeks(events[event], 0, week),
    0,
  );
}
