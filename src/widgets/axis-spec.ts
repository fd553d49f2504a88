/**
 * What stands on a time axis, as plain data: groups of bars that can be moved, graphs that share their points, and
 * where it all lands in px. Points are counted from 0.
 * Worked figure: at 12 px a point and 24 px before the first one, a bar from point 10 begins 144 px from the left.
 */
import type { ChartColour } from './chart-spec.ts';

/** Drawn on the grip, and in the key. */
export type AxisDrawing = 'truck' | 'tag' | 'shelf' | 'closed';

export interface AxisBar {
  readonly id: string;
  /** First and last point, both counted in. */
  readonly from: number;
  readonly to: number;
  /** Written beside it. */
  readonly text: string;
  readonly drawing: AxisDrawing;
  /** Points before and after it that belong to it: a thin line. */
  readonly lead?: number | undefined;
  readonly tail?: number | undefined;
  /** Null where it can't be moved. */
  readonly move: AxisMove | null;
}

export interface AxisMove {
  /** Spoken name of the grip. */
  readonly label: string;
  /** Spoken where it stands, e.g. "week 9 (2 Mar), 180 doors". */
  readonly valueText: string;
}

/** One of several things drawn over each other in a graph, the last on top. */
export type AxisShape =
  | { readonly by: 'step'; readonly values: ArrayLike<number>; readonly colour: ChartColour }
  | { readonly by: 'bars'; readonly values: ArrayLike<number>; readonly colour: ChartColour }
  /** A level above which nothing goes; null where there is none. */
  | { readonly by: 'lid'; readonly values: readonly (number | null)[] }
  /** From a point at the top to those at the foot, as thick as its size among the others. */
  | { readonly by: 'links'; readonly links: readonly AxisLink[] }
  /** A line from the water to one value: the lowest. */
  | { readonly by: 'plumb'; readonly index: number; readonly value: number };

export interface AxisLink {
  readonly from: number;
  readonly first: number;
  readonly last: number;
  readonly size: number;
}

export interface AxisGraph {
  readonly id: string;
  readonly label: string;
  /** Said instead of the drawing. */
  readonly alt: string;
  readonly heightRem: number;
  readonly shapes: readonly AxisShape[];
  /** Short texts in the graph: what changes where. */
  readonly notes: readonly { readonly index: number; readonly text: string }[];
}

export interface AxisGroup {
  readonly id: string;
  readonly name: string;
  /** Under the name. */
  readonly note: string;
  readonly bars: readonly AxisBar[];
  readonly graphs: readonly AxisGraph[];
}

/** A row of the head: marks that are thinned out to what fits. */
export interface AxisScale {
  readonly id: string;
  readonly label: string;
  readonly marks: readonly { readonly index: number; readonly text: string; readonly strong?: boolean }[];
}

export interface AxisGeometry {
  readonly count: number;
  readonly pointPx: number;
  readonly laneHeightPx: number;
  /** px of one rem against the usual 16. */
  readonly typeScale: number;
}

export const AXIS_BEFORE_PX = 24;
export const AXIS_AFTER_PX = 128;
export const GRIP_PX = 26;
const HIT_PX = 44;
const LETTER_PX = 7;
export const STILL_LANE_SHARE = 0.6;

/** Left edge of a point; the right edge of the one before. */
export function edgePx({ pointPx }: Pick<AxisGeometry, 'pointPx'>, index: number): number {
  return AXIS_BEFORE_PX + index * pointPx;
}

export function axisWidthPx(geometry: AxisGeometry): number {
  return edgePx(geometry, geometry.count) + AXIS_AFTER_PX * geometry.typeScale;
}

/** Where the text beside a bar begins. */
export function textPx(geometry: AxisGeometry, bar: AxisBar): number {
  const end = edgePx(geometry, Math.min(geometry.count, bar.to + 1));
  const start = edgePx(geometry, bar.from);
  return Math.max(end, bar.move === null ? start + 6 : start + GRIP_PX) + 6;
}

/** About as wide as a text is in the label type. */
export function widthOfText({ typeScale }: AxisGeometry, text: string): number {
  return text.length * LETTER_PX * typeScale;
}

export interface Lanes {
  /** By bar: which lane it stands in. */
  readonly laneOf: ReadonlyMap<string, number>;
  readonly count: number;
}

/** Puts bars into as few lanes as keep grips and texts apart, in the order given. */
export function lanesOf(bars: readonly AxisBar[], geometry: AxisGeometry): Lanes {
  const taken: { from: number; to: number }[][] = [];
  const laneOf = new Map<string, number>();
  for (const bar of bars) {
    const start = edgePx(geometry, bar.from - (bar.lead ?? 0));
    const hit = (HIT_PX * Math.max(1, geometry.typeScale) - GRIP_PX) / 2;
    const room = {
      from: bar.move === null ? start : Math.min(start, edgePx(geometry, bar.from) - hit),
      to: Math.max(
        textPx(geometry, bar) + widthOfText(geometry, bar.text) + 8,
        edgePx(geometry, bar.to + 1 + (bar.tail ?? 0)),
        edgePx(geometry, bar.from) + (bar.move === null ? 0 : GRIP_PX + hit),
      ),
    };
    const free = taken.findIndex((lane) =>
      lane.every((each) => each.to <= room.from || each.from >= room.to),
    );
    const lane = free === -1 ? taken.push([]) - 1 : free;
    taken[lane]?.push(room);
    laneOf.set(bar.id, lane);
  }
  return { laneOf, count: taken.length };
}

/** The marks of a scale that have room: strong ones first, then from the left, each as wide as its text. */
export function thinned(scale: AxisScale, geometry: AxisGeometry): AxisScale['marks'] {
  const kept: AxisScale['marks'][number][] = [];
  const room = (text: string): number => Math.ceil((widthOfText(geometry, text) + 8) / geometry.pointPx);
  const fits = (mark: AxisScale['marks'][number]): boolean =>
    kept.every((each) =>
      each.index < mark.index
        ? each.index + room(each.text) <= mark.index
        : mark.index + room(mark.text) <= each.index,
    );
  for (const mark of scale.marks) if (mark.strong === true && fits(mark)) kept.push(mark);
  for (const mark of scale.marks) if (mark.strong !== true && fits(mark)) kept.push(mark);
  return kept;
}
