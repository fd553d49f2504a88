// The passes behind cash figures: the plan's own, and the one without new funding that the cash need is read off. The
// journal is the pass run once more with every posting told.
// Worked figure: a plan that counts on no funding has one pass for both.
import type { PlacedInstalment, Posting } from '../rollout/books.ts';
import type { Compiled } from '../rollout/compiled.ts';
import { replay } from '../rollout/index.ts';
import type { FlowName, PassResult } from '../rollout/types.ts';
import type { Run } from './types.ts';
import type { Scene } from './write.ts';

/** A pass is made once for each compiled plan. */
const unfunded = new WeakMap<Compiled, PassResult>();

export function passOf({ results }: Scene, run: Run): PassResult {
  if (run === 'plan' || results.compiled.business.funding.length === 0) return results.pass;
  const known = unfunded.get(results.compiled);
  if (known) return known;
  const made = replay({ compiled: withoutFunding(results.compiled), free: results.free }, () => {});
  unfunded.set(results.compiled, made);
  return made;
}

/** What one run told its recorder. */
interface Told {
  postings: readonly Posting[];
  instalments: readonly PlacedInstalment[];
}

const told = new WeakMap<Compiled, Partial<Record<Run, Told>>>();

/** Every posting of a run, in order. */
export function journalOf(scene: Scene, run: Run): readonly Posting[] {
  return toldBy(scene, run).postings;
}

const weekly = new WeakMap<readonly Posting[], Map<number, readonly Posting[]>>();

/** Those of one week, in order: a journal of a large plan is long, and is asked week by week. */
export function postingsIn(journal: readonly Posting[], week: number): readonly Posting[] {
  const known = weekly.get(journal);
  if (known) return known.get(week) ?? [];
  const weeks = new Map<number, Posting[]>();
  for (const posting of journal) {
    const own = weeks.get(posting.week);
    if (own) own.push(posting);
    else weeks.set(posting.week, [posting]);
  }
  weekly.set(journal, weeks);
  return weeks.get(week) ?? [];
}

/** Every instalment of the plan's purchase orders, in the order they were placed. */
export function instalmentsOf(scene: Scene): readonly PlacedInstalment[] {
  return toldBy(scene, 'plan').instalments;
}

function toldBy({ results }: Scene, run: Run): Told {
  const known = told.get(results.compiled) ?? {};
  const before = known[run];
  if (before) return before;
  const compiled = run === 'plan' ? results.compiled : withoutFunding(results.compiled);
  const postings: Posting[] = [];
  const instalments: PlacedInstalment[] = [];
  const record = (posting: Posting): void => {
    postings.push(posting);
  };
  const placed = (instalment: PlacedInstalment): void => {
    instalments.push(instalment);
  };
  replay({ compiled, free: results.free }, Object.assign(record, { placed }));
  const made = { postings, instalments };
  told.set(results.compiled, { ...known, [run]: made });
  return made;
}

function withoutFunding(compiled: Compiled): Compiled {
  return { ...compiled, business: { ...compiled.business, funding: [] } };
}

/** Money that is there before anything is paid: the low of a week has it, and none of the week's other money in. */
const FIRST_IN: readonly FlowName[] = ['equityIn', 'loanIn'];

/** Whether a flow of the week is already there, or gone, at its lowest moment. */
export function countsToLow(flow: FlowName, amount: number): boolean {
  return amount < 0 || FIRST_IN.includes(flow);
}

/** What a flow adds to the lowest cash of a week: all of it before, in the week itself only what comes first. */
export function flowToLow(
  pass: PassResult,
  flow: FlowName,
  week: number,
): { amount: number; toWeek: number } {
  const series = pass.flows[flow];
  let amount = 0;
  for (let w = 0; w < week; w++) amount += series[w] ?? 0;
  const now = series[week] ?? 0;
  return countsToLow(flow, now) ? { amount: amount + now, toWeek: week } : { amount, toWeek: week - 1 };
}

export function sumSeries(series: Float64Array, fromWeek: number, toWeek: number): number {
  let total = 0;
  for (let w = fromWeek; w <= toWeek; w++) total += series[w] ?? 0;
  return total;
}
