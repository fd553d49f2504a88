/**
 * A balance over time around a water line at zero: the lowest point hangs on a plumb line with its tag, lanes above
 * carry what happened when (carton, truck, tag), and a scrubber reads any point. Built on ChartFrame.
 * Worked figure: values 36,000 … −12,300 with low index 8 hang the tag "−12,300 · week 9" under the ninth point.
 */
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { ChartFrame } from './ChartFrame.tsx';
import type { ScrubberProps } from './ChartScrubber.tsx';
import { type ChartGeometry, type ChartSeries, xOf, yOf } from './chart-spec.ts';
import type { TableProps } from './Table.tsx';

export interface LaneMark {
  readonly index: number;
  /** Spoken, e.g. "week 2: 40 cases". */
  readonly label: string;
}

export interface Lane {
  readonly id: string;
  readonly label: string;
  readonly drawing: 'carton' | 'truck' | 'tag';
  readonly marks: readonly LaneMark[];
}

export interface LowPoint {
  readonly index: number;
  readonly value: number;
  /** e.g. "−12,300 · week 9". */
  readonly tagText: string;
  /** Beneath, e.g. "need 48,300, have 36,000"; may be empty. */
  readonly noteText: string;
}

export interface CashPictureProps {
  readonly alt: string;
  readonly balanceLabel: string;
  /** Balance at the end of each point. */
  readonly values: readonly number[];
  /** Further lines: the fan of a computed range (thin, dashed, thin). */
  readonly range: readonly ChartSeries[];
  readonly xLabels: readonly string[];
  readonly formatTick: (value: number) => string;
  readonly low: LowPoint;
  readonly lanes: readonly Lane[];
  readonly scrubber: ScrubberProps;
  readonly table: TableProps;
  readonly tableLabel: string;
  readonly heightRem: number;
}

/** The picture with its lanes, plumb line, scrubber and table. */
export function CashPicture(props: CashPictureProps): VNode {
  const { values, low, range, balanceLabel } = props;
  // A fan has to be seen through: with one, the balance is a line.
  const fill = range.length === 0 ? 'zero' : 'none';
  const series = useMemo(
    (): readonly ChartSeries[] => [
      ...range,
      { id: 'balance', label: balanceLabel, values, style: 'step', colour: 'ours', fill },
    ],
    [range, balanceLabel, values, fill],
  );
  const high = Math.max(0, ...values);
  const deep = Math.min(0, low.value);
  const tagShare = 68 / (props.heightRem * 16 - 32); // room for the tag below the lowest point
  return (
    <ChartFrame
      alt={props.alt}
      series={series}
      xLabels={props.xLabels}
      formatTick={props.formatTick}
      leastY={deep < 0 ? (deep - tagShare * high) / (1 - tagShare) : 0}
      mostY={deep < 0 ? undefined : highAround(values, low.index) / (1 - tagShare)}
      heightRem={props.heightRem}
      table={props.table}
      tableLabel={props.tableLabel}
      showKey={props.range.length > 0}
      scrubber={props.scrubber}
      lanes={(geometry) => <Lanes lanes={props.lanes} geometry={geometry} />}
      overlay={(geometry) => <Plumb geometry={geometry} low={low} values={values} />}
    />
  );
}

/** The highest value where the tag may come to stand, a quarter of the points to each side of the lowest. */
function highAround(values: readonly number[], index: number): number {
  const reach = Math.ceil(values.length / 4);
  return Math.max(0, ...values.slice(Math.max(0, index - reach), index + reach + 1));
}

interface PlumbProps {
  readonly geometry: ChartGeometry;
  readonly low: LowPoint;
  readonly values: readonly number[];
}

/** Below the lowest point, or at the top over it where the balance never falls below zero: the curve stays in sight. */
function Plumb({ geometry, low, values }: PlumbProps): VNode {
  const x = xOf(geometry, low.index);
  const y = yOf(geometry, low.value);
  const zero = yOf(geometry, 0);
  const { leftPx, rightPx, topPx, bottomPx } = geometry;
  const top = low.value >= 0 && yOf(geometry, highAround(values, low.index)) - topPx > 52;
  const below = !top && bottomPx - y > 52;
  const tagPx = top ? topPx : below ? y + 8 : y - 12;
  const share = rightPx === leftPx ? 0 : (x - leftPx) / (rightPx - leftPx);
  return (
    <>
      <svg class="ff-chart-svg" aria-hidden="true">
        <path class="ff-water" d={`M${leftPx} ${zero}H${rightPx}`} />
        <path class="ff-water-sign" d={`M${rightPx - 14} ${zero + 4}h14M${rightPx - 10} ${zero + 7}h6`} />
        <path class="ff-plumb-line" d={`M${x} ${top ? topPx : zero}V${y}`} />
        <path class="ff-plumb-bob" d={`M${x - 5} ${y - 6}h10l-5 10z`} />
      </svg>
      <div
        class="ff-plumb-tag"
        style={{
          left: `${x}px`,
          width: 'max-content',
          maxWidth: `${rightPx - leftPx}px`,
          top: `${tagPx}px`,
          transform: `translate(${-100 * share}%, ${top || below ? '0' : '-100%'})`,
        }}
      >
        <span class="ff-plumb-amount ff-number">{low.tagText}</span>
        {low.noteText !== '' && <span class="ff-plumb-note ff-number">{low.noteText}</span>}
      </div>
    </>
  );
}

interface LanesProps {
  readonly lanes: readonly Lane[];
  readonly geometry: ChartGeometry | undefined;
}

/** A key of the drawings, then row by row above the plot: a drawing where something starts, a bar while it goes on. */
function Lanes({ lanes, geometry }: LanesProps): VNode {
  return (
    <div class="ff-lanes">
      <ul class="ff-lane-key ff-label">
        {lanes.map((lane) => (
          <li key={lane.id}>
            <svg class="ff-lane-sample" viewBox="0 0 16 17" aria-hidden="true">
              <path class={`ff-lane-mark ff-lane-${lane.drawing}`} d={drawings[lane.drawing]} />
            </svg>
            {lane.label}
            <span class="ff-spoken">: {lane.marks.map((mark) => mark.label).join('; ')}</span>
          </li>
        ))}
      </ul>
      {lanes.map((lane) => (
        <svg key={lane.id} class="ff-lane" aria-hidden="true">
          {geometry !== undefined && <LaneRow lane={lane} geometry={geometry} />}
        </svg>
      ))}
    </div>
  );
}

function LaneRow({ lane, geometry }: { readonly lane: Lane; readonly geometry: ChartGeometry }): VNode {
  return (
    <>
      <path class="ff-lane-line" d={`M${geometry.leftPx} 19.5H${geometry.rightPx}`} />
      {findRuns(lane.marks, geometry).map(({ startPx, endPx }) => (
        <g key={startPx} class="ff-lane-mark">
          {endPx > startPx && <path class="ff-lane-run" d={`M${startPx - 5} 18.5H${endPx + 1}`} />}
          <path
            class={`ff-lane-${lane.drawing}`}
            d={drawings[lane.drawing]}
            transform={`translate(${startPx - 8} 1)`}
          />
        </g>
      ))}
    </>
  );
}

const drawings: Record<Lane['drawing'], string> = {
  carton: 'M2.5 3.5h11v12h-11zM8 3.5v4',
  truck: 'M.5 3.5h9v9h-9zM9.5 6.5h3.5l2.5 3v3h-6M3.5 12.5v3M12.5 12.5v3',
  tag: 'M2.5 3.5h8l3 3v9h-11zM5 8h4',
};

interface Run {
  readonly startPx: number;
  readonly endPx: number;
}

/** Marks too close to be drawn one by one become a run from the first to the last of them. */
function findRuns(marks: readonly LaneMark[], geometry: ChartGeometry): readonly Run[] {
  const runs: Run[] = [];
  for (const { index } of marks) {
    const xPx = xOf(geometry, index);
    const last = runs.at(-1);
    if (last !== undefined && xPx - last.endPx < 18) runs[runs.length - 1] = { ...last, endPx: xPx };
    else runs.push({ startPx: xPx, endPx: xPx });
  }
  return runs;
}
