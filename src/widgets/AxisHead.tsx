/**
 * Around the bars of a time axis: its scales, the lines of its stretches of time, and the key to what is drawn on grips.
 * Worked figure: months over 104 points of 8 px have room for every name but one beside a year.
 */
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { AXIS_DRAWINGS } from './AxisTrack.tsx';
import { type AxisDrawing, type AxisGeometry, type AxisScale, edgePx, thinned } from './axis-spec.ts';

export function AxisHead({
  scales,
  geometry,
}: {
  readonly scales: readonly AxisScale[];
  readonly geometry: AxisGeometry;
}): VNode {
  return useMemo(
    () => (
      <div class="ff-axis-head ff-least ff-number">
        {scales.map((scale) => (
          <div key={scale.id} class="ff-axis-scale">
            <span class="ff-axis-scale-name">{scale.label}</span>
            {thinned(scale, geometry).map(({ index, text, strong }) => (
              <span
                key={index}
                class={strong === true ? 'ff-axis-mark ff-axis-mark-strong' : 'ff-axis-mark'}
                style={{ left: `calc(var(--ff-axis-name) + ${edgePx(geometry, index)}px)` }}
              >
                {text}
              </span>
            ))}
          </div>
        ))}
      </div>
    ),
    [scales, geometry],
  );
}

export interface AxisLinesProps {
  readonly lines: readonly number[];
  readonly geometry: AxisGeometry;
  readonly cursorPx: number;
}

export function AxisLines({ lines, geometry, cursorPx }: AxisLinesProps): VNode {
  return (
    <svg class="ff-axis-lines" aria-hidden="true">
      {lines.map((index) => (
        <line key={index} x1={edgePx(geometry, index)} x2={edgePx(geometry, index)} y1="0" y2="100%" />
      ))}
      <line class="ff-axis-cursor" x1={cursorPx} x2={cursorPx} y1="0" y2="100%" />
    </svg>
  );
}

export interface AxisKeyProps {
  readonly entries: readonly { readonly drawing: AxisDrawing; readonly label: string }[];
}

/** What the drawings on the grips stand for. */
export function AxisKey({ entries }: AxisKeyProps): VNode {
  return (
    <ul class="ff-lane-key ff-label">
      {entries.map(({ drawing, label }) => (
        <li key={drawing}>
          <svg class="ff-lane-sample" viewBox="0 0 16 17" aria-hidden="true">
            <path class="ff-lane-mark" d={AXIS_DRAWINGS[drawing]} />
          </svg>
          {label}
        </li>
      ))}
    </ul>
  );
}
