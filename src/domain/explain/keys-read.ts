// The parts of a key's text that are read the same for several kinds of figure: names out of a list, weeks, stretches of weeks.
// Worked figure: "plan/9/low" is { of: 'week', run: 'plan', week: 9, figure: 'low' }; "plan/09/low" is null.
import { EVENTS, type EventName } from '../rollout/events.ts';
import { BALANCE_NAMES, FLOW_NAMES } from '../rollout/types.ts';
import { LINES, type LineName } from '../statements/lines.ts';
import type { FigureKey } from './types.ts';

const RUNS = ['plan', 'unfunded'] as const;
export const WEEK_FIGURES = [...BALANCE_NAMES, 'low'] as const;

export function namedInWeek<Name extends string>(
  text: string,
  names: readonly Name[],
  name: string,
  key: (name: Name, week: number) => FigureKey,
): FigureKey | null {
  const week = weekOf(text);
  return week === null ? null : found(names, name, (each) => key(each, week));
}

export function weekKey(runName: string, weekText: string, name: string): FigureKey | null {
  const week = weekOf(weekText);
  if (week === null) return null;
  return found(RUNS, runName, (run) =>
    found(WEEK_FIGURES, name, (figure) => ({ of: 'week', run, week, figure })),
  );
}

export function flowKey(runName: string, name: string, from: string, to: string): FigureKey | null {
  const weeks = weeksOf(from, to);
  if (weeks === null) return null;
  return found(RUNS, runName, (run) =>
    found(FLOW_NAMES, name, (flow) => ({ of: 'flow', run, flow, ...weeks })),
  );
}

export function statementKey(name: string, from: string, to: string): FigureKey | null {
  const weeks = weeksOf(from, to);
  if (weeks === null) return null;
  return found(Object.keys(LINES) as LineName[], name, (line) => ({ of: 'statement', line, ...weeks }));
}

export function eventKey(name: string, balance: string, from: string, to: string): FigureKey | null {
  const weeks = weeksOf(from, to);
  if (weeks === null) return null;
  return found(Object.keys(EVENTS) as EventName[], name, (event) =>
    found(BALANCE_NAMES, balance, (on) => ({ of: 'event', event, on, ...weeks })),
  );
}

export function inWeek(text: string, key: (week: number) => FigureKey): FigureKey | null {
  const week = weekOf(text);
  return week === null ? null : key(week);
}

function weeksOf(from: string, to: string): { fromWeek: number; toWeek: number } | null {
  const fromWeek = weekOf(from);
  const toWeek = weekOf(to);
  return fromWeek === null || toWeek === null || fromWeek > toWeek ? null : { fromWeek, toWeek };
}

function weekOf(text: string): number | null {
  return /^(?:0|[1-9]\d{0,2})$/.test(text) ? Number(text) : null;
}

export function found<Name extends string>(
  names: readonly Name[],
  name: string,
  key: (name: Name) => FigureKey | null,
): FigureKey | null {
  const known = names.find((each) => each === name);
  return known === undefined ? null : key(known);
}
