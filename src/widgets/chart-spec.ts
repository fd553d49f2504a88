/**
 * What a chart shows, as plain data, and where it landed on the page. Shared by the frame (always loaded) and the
 * engine (loaded when a chart is first needed). Worked figure: 104 weeks over 300 px are steps of 2.9 px.
 */
export type ChartColour = 'ours' | 'theirs' | 'between' | 'atRisk' | 'ink' | 'ink2';

export interface ChartSeries {
  readonly id: string;
  readonly label: string;
  /** One value a label; null where there is none. */
  readonly values: readonly (number | null)[];
  /** step: level through each label; thin: 1 px. Bars carry their owner's fill. */
  readonly style: 'line' | 'step' | 'bar' | 'dashed' | 'dotted' | 'dashDot' | 'thin';
  readonly colour: ChartColour;
  /** zero: solid in its colour above zero, at-risk dots below; next: 8 % tint down to the next series. */
  readonly fill: 'none' | 'zero' | 'next';
}

export interface ChartSpec {
  readonly series: readonly ChartSeries[];
  /** Short texts under the axis, one a value. */
  readonly xLabels: readonly string[];
  /** The axis' numbers as text. */
  readonly formatTick: (value: number) => string;
  /** The axis reaches at least this far down and up; undefined leaves it to the values (zero is always in). */
  readonly leastY?: number | undefined;
  readonly mostY?: number | undefined;
  /** Half a step is left at both ends even without bars, to share the axis of a picture below that has some. */
  readonly endsInset?: boolean | undefined;
}

/** Plain numbers, in px from the upper left of the plot's box. */
export interface ChartGeometry {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
  /** Middle of the first label, and the way to the next one. */
  readonly firstPx: number;
  readonly stepPx: number;
  readonly lowY: number;
  readonly highY: number;
}

/** The colours of the page, as the engine needs them. */
export type ChartColours = Readonly<Record<ChartColour | 'line' | 'hair' | 'paper', string>> & {
  readonly face: string;
  readonly remPx: number;
};

export interface ChartHandle {
  readonly update: (spec: ChartSpec, colours: ChartColours) => void;
  /** To the size of the place it stands in, where that changed without being seen. */
  readonly fit: () => void;
  readonly destroy: () => void;
}

/** Px from the left of the label at an index. */
export function xOf(geometry: ChartGeometry, index: number): number {
  return geometry.firstPx + geometry.stepPx * index;
}

/** Px from the top of a value. */
export function yOf({ topPx, bottomPx, lowY, highY }: ChartGeometry, value: number): number {
  return highY === lowY ? bottomPx : bottomPx - ((value - lowY) / (highY - lowY)) * (bottomPx - topPx);
}

/** The index nearest to a place, kept within the labels. */
export function indexAt({ firstPx, stepPx }: ChartGeometry, xPx: number, count: number): number {
  const index = stepPx === 0 ? 0 : Math.round((xPx - firstPx) / stepPx);
  return Math.max(0, Math.min(count - 1, index));
}
