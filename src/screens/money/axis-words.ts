// Turning points in words. Worked example: "Up to 72,400 units in the plan's weeks Alder costs less, above that Birch."

import { dec } from '../../domain/money/decimal.ts';
import type { Axis, AxisSeries, TurningPoint } from '../../domain/offers/index.ts';
import type { Turned } from '../../domain/offers/turning.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { MoneyModel } from './model.ts';
import { nameOf } from './words.ts';

export const AXIS_NAMES: Record<Axis, string> = {
  units: 'Units sold',
  exit: 'Sale price',
  growth: 'Growth',
};

export interface PairProps {
  model: MoneyModel;
  turned: Turned;
  pair: readonly [string, string];
}

/** The crossings of a pair on one axis, in order. */
export function pointsOf({ points }: Turned, pair: readonly [string, string], on: Axis): TurningPoint[] {
  return points
    .filter((point) => point.on === on && pair.every((id) => point.between.includes(id)))
    .sort((a, b) => a.at - b.at);
}

/** A place of an axis: units, money, or times the plan's sales and the units that are. */
export function placeWords(axis: Axis, { at, units }: Place, say: ScreenSay): string {
  const counted = (count: number) =>
    `${say.count(Math.round(count))} ${Math.round(count) === 1 ? 'unit' : 'units'}`;
  if (axis === 'units') return counted(at);
  if (axis === 'exit') return say.money(Math.round(at));
  const shown = say.number(dec(at.toFixed(2)));
  const times = shown === '1' ? 'the planned sales' : `${shown} times the planned sales`;
  return units === null ? times : `${times} (${counted(units)})`;
}

export type Place = Pick<TurningPoint, 'at' | 'units'>;

/** The place of a series at an index of its grid. */
export function placeAt({ places, units }: AxisSeries, index: number): Place {
  return { at: places[index] ?? 0, units: units[index] ?? null };
}

/** What is better about the better one. */
const BETTER: Record<Axis, string> = {
  units: 'costs less by date',
  exit: 'leaves us more',
  growth: 'leaves us more',
};

export function pointSentence({
  model: { plan },
  point: { on, at, units, below, above },
  say,
}: {
  model: MoneyModel;
  point: TurningPoint;
  say: ScreenSay;
}): string {
  const names = [nameOf(plan, below), nameOf(plan, above)];
  return `Below ${placeWords(on, { at, units }, say)} ${names[0]} ${BETTER[on]}, above that ${names[1]}.`;
}

/** Kinds whose price is a part of the company, which no payment by date shows. */
const SHARES: ReadonlySet<string> = new Set(['equity', 'convertibleNote', 'cappedAgreement']);

/** On units, what shares of a pair get at a sale is missing: said, or the line would read as if they cost nothing. */
export function sharesSentence({ plan }: MoneyModel, pair: readonly [string, string]): string {
  const holding = plan.offers
    .filter(({ id, parts }) => pair.includes(id) && parts.some(({ kind }) => SHARES.has(kind)))
    .map(({ name }) => name);
  if (holding.length === 0) return '';
  return `What ${holding.join(' and ')} would get at a sale isn’t in it: see the sale price, or growth.`;
}

/** No crossing: who is better at the plan's own place, or that they are alike. */
export function standsSentence({
  model: { plan },
  series,
  pair,
  say,
}: {
  model: MoneyModel;
  series: AxisSeries;
  pair: readonly [string, string];
  say: ScreenSay;
}): string {
  const [one, other] = pair.map((id) => series.lines.find(({ offerId }) => offerId === id)?.values ?? []);
  const gaps = (one ?? []).map((value, at) => value - (other?.[at] ?? value));
  const from = placeWords(series.on, placeAt(series, 0), say);
  const to = placeWords(series.on, placeAt(series, series.places.length - 1), say);
  const sum = gaps.reduce((all, gap) => all + gap, 0);
  if (gaps.every((gap) => Math.abs(gap) < 1)) return `Alike from ${from} to ${to}.`;
  const firstIsBetter = series.shows === 'paid' ? sum < 0 : sum > 0;
  return `${nameOf(plan, firstIsBetter ? pair[0] : pair[1])} ${BETTER[series.on]} all the way from ${from} to ${to}.`;
}
