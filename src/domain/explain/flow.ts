// One cash flow: over weeks, week by week; in one week, document by document.
// Worked figure: chains pay 1,223.04 in week 10: due 1,248.00, taken off −24.96.
import { EVENTS, type EventName } from '../rollout/events.ts';
import type { FlowName } from '../rollout/types.ts';
import { FLOW_WORDS } from './flow-words.ts';
import { entriesOf, entryLines } from './posting-lines.ts';
import { remittanceLines } from './remittance.ts';
import { journalOf, passOf, sumSeries } from './runs.ts';
import type { WeekAt } from './splits.ts';
import type { ExplanationLine, FigureKey } from './types.ts';
import { amountOf, type Draft, moneyPart, type Scene, sumFormula } from './write.ts';

type FlowKey = Extract<FigureKey, { of: 'flow' }>;

/** Null when a week lies beyond the plan's horizon. */
export function flowFigure(scene: Scene, key: FlowKey): Draft | null {
  const { run, flow, fromWeek, toWeek } = key;
  const pass = passOf(scene, run);
  if (toWeek >= pass.weeks || fromWeek > toWeek) return null;
  const amount = sumSeries(pass.flows[flow], fromWeek, toWeek);
  const { label, meaning } = FLOW_WORDS[flow];
  const single = fromWeek === toWeek;
  const lines = single ? documentLines(scene, key) : weekLines(scene, key, pass.flows[flow]);
  const { week } = scene.say;
  return {
    title: single ? `${label}, ${week(toWeek)}` : `${label}, ${week(fromWeek)} to ${week(toWeek)}`,
    value: scene.say.money(amount),
    exact: amountOf(scene, amount).toFixed(),
    meaning,
    formula: lines.length === 0 ? 'nothing moves' : sumFormula(scene, lines, amountOf(scene, amount)),
    lines,
    caution: run === 'unfunded' ? 'On the plan without the new funding it counts on.' : null,
  };
}

function weekLines(
  scene: Scene,
  { run, flow, fromWeek, toWeek }: FlowKey,
  series: Float64Array,
): ExplanationLine[] {
  const lines: ExplanationLine[] = [];
  for (let week = fromWeek; week <= toWeek; week++) {
    const amount = series[week] ?? 0;
    if (amount === 0) continue;
    const explains = { of: 'flow', run, flow, fromWeek: week, toWeek: week } as const;
    const { owner } = FLOW_WORDS[flow];
    lines.push(moneyPart(scene, amount, { label: scene.say.week(week), owner, explains }));
  }
  return lines;
}

function documentLines(scene: Scene, { run, flow, toWeek: week }: FlowKey): ExplanationLine[] {
  const journal = journalOf(scene, run);
  const at: WeekAt = { scene, compiled: scene.results.compiled, week, journal };
  if (flow === 'remittances') return remittanceLines(at);
  return entriesOf(journal, week, (event) => flowOf(event) === flow).flatMap((entry) =>
    entryLines(at, entry, signOf(entry.event)),
  );
}

function flowOf(event: EventName): FlowName | null {
  const entry: { dr: string; flow?: FlowName } = EVENTS[event];
  return entry.flow ?? null;
}

function signOf(event: EventName): 1 | -1 {
  return EVENTS[event].dr === 'cash' ? 1 : -1;
}
