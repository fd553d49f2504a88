// The week looked at, as a dotted line over a picture that shares its weeks with another.
// Worked figure: week 9 of 52 on a plot of 300 px stands about 53 px from its left.
import type { VNode } from 'preact';
import { type ChartGeometry, xOf } from '../../widgets/index.ts';

export function WeekCursor({ geometry, week }: { geometry: ChartGeometry; week: number }): VNode {
  const x = xOf(geometry, week);
  return (
    <svg class="ff-chart-svg" aria-hidden="true">
      <path class="ff-chart-cursor" d={`M${x} ${geometry.topPx}V${geometry.bottomPx}`} />
    </svg>
  );
}
