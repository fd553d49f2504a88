/**
 * Where everything of the ladder picture goes, in px down from its top. Pure geometry: heights in, places out.
 * Worked figure: heights 3, 1 and 1 in a 500 px picture put rungs at 200, 100 and 0 px, zero at 500 px.
 */
export interface LadderBand {
  /** Upper and lower edge. */
  readonly topPx: number;
  readonly bottomPx: number;
  /** Where the running total stands after this hand. */
  readonly rungPx: number;
  /** Takes away instead of adding: hangs beside the ladder. */
  readonly negative: boolean;
}

export interface LadderLayout {
  readonly heightPx: number;
  readonly zeroPx: number;
  readonly bands: readonly LadderBand[];
  /** Top of each label row, in the order of the rungs (foot first). */
  readonly labelTopsPx: readonly number[];
  /** How much of the caller's height unit one px is; 0 for a ladder without height. */
  readonly unitsPerPx: number;
}

export interface LadderMeasures {
  /** What each hand keeps, foot first, in any one unit; negative when it takes away. */
  readonly heights: readonly number[];
  /** Height of each label row, foot first. */
  readonly rowHeightsPx: readonly number[];
  /** The picture is at least this high, and higher if its labels need it. */
  readonly leastHeightPx: number;
}

/** Stacks the hands to scale and gives each label a row near the middle of its band, none overlapping. */
export function layOutLadder({ heights, rowHeightsPx, leastHeightPx }: LadderMeasures): LadderLayout {
  const heightPx = Math.max(leastHeightPx, sum(rowHeightsPx));
  const levels = runningTotals(heights);
  const low = Math.min(0, ...levels);
  const range = Math.max(0, ...levels) - low;
  const unitsPerPx = range / heightPx;
  const place = (level: number): number =>
    range === 0 ? heightPx : heightPx - ((level - low) / range) * heightPx;
  const bands = heights.map((height, index): LadderBand => {
    const before = place(index === 0 ? 0 : (levels[index - 1] ?? 0));
    const after = place(levels[index] ?? 0);
    return {
      topPx: Math.min(before, after),
      bottomPx: Math.max(before, after),
      rungPx: after,
      negative: height < 0,
    };
  });
  return {
    heightPx,
    zeroPx: place(0),
    bands,
    labelTopsPx: placeLabels(bands, rowHeightsPx, heightPx),
    unitsPerPx,
  };
}

/** From the top down each label goes to its band's middle or below its neighbour; then up again from the foot. */
function placeLabels(
  bands: readonly LadderBand[],
  rowHeightsPx: readonly number[],
  heightPx: number,
): readonly number[] {
  const tops = bands.map((band, index) => (band.topPx + band.bottomPx) / 2 - (rowHeightsPx[index] ?? 0) / 2);
  let ceiling = 0;
  for (let index = tops.length - 1; index >= 0; index -= 1) {
    const top = Math.max(tops[index] ?? 0, ceiling);
    tops[index] = top;
    ceiling = top + (rowHeightsPx[index] ?? 0);
  }
  let floor = heightPx;
  for (let index = 0; index < tops.length; index += 1) {
    const top = Math.min(tops[index] ?? 0, floor - (rowHeightsPx[index] ?? 0));
    tops[index] = top;
    floor = top;
  }
  return tops;
}

function runningTotals(heights: readonly number[]): readonly number[] {
  let total = 0;
  return heights.map((height) => {
    total += height;
    return total;
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
