// Two offers over one axis: what the funder is paid, or what we keep, at each place; crossings marked where they are, and the
// plan's own place. Worked figure: two lines that cross at 72,400 units, the plan at 90,000.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { Axis, AxisSeries, TurningPoint } from '../../domain/offers/index.ts';
import {
  ChartFrame,
  type ChartGeometry,
  type ChartSeries,
  type TableProps,
  type TableRow,
  xOf,
} from '../../widgets/index.ts';
import { tick } from '../deal/curve.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import {
  AXIS_NAMES,
  type PairProps,
  type Place,
  placeAt,
  placeWords,
  pointSentence,
  pointsOf,
} from './axis-words.ts';
import { nameOf } from './words.ts';

export function AxisPicture({ model, turned, axis, pair }: PairProps & { axis: Axis }): VNode {
  const say = useSay();
  const series = turned.series.find(({ on }) => on === axis);
  const points = pointsOf(turned, pair, axis);
  if (series === undefined || series.places.length < 2) {
    return (
      <p class="ff-quiet">
        {axis === 'growth'
          ? 'The picture by growth is on its way, or can’t be worked out.'
          : axis === 'units'
            ? 'No picture by units: the plan sells none.'
            : 'No picture of this.'}
      </p>
    );
  }
  return <Drawn {...{ model, turned, pair, series, points, say }} />;
}

interface DrawnProps extends PairProps {
  series: AxisSeries;
  points: readonly TurningPoint[];
  say: ScreenSay;
}

function Drawn(props: DrawnProps): VNode {
  const { model, pair, series, points, say } = props;
  const [chosen, setChosen] = useState<number | null>(null);
  const index = Math.min(chosen ?? nearest(series.places, series.here), series.places.length - 1);
  const names = pair.map((id) => nameOf(model.plan, id));
  const values = useMemo(
    () => pair.map((id) => series.lines.find(({ offerId }) => offerId === id)?.values ?? []),
    [series, pair[0], pair[1]],
  );
  const perMinor = 10 ** model.money.basis.minorDigits;
  const lines = useMemo(() => linesOf(values, names, perMinor), [values, names.join('|'), perMinor]);
  const xLabels = useMemo(
    () => series.places.map((place) => tickPlace(series.on, place, perMinor, say)),
    [series, perMinor, say],
  );
  const formatTick = useMemo(() => (value: number) => tick(value, say), [say]);
  const what = series.shows === 'paid' ? 'Paid to them by date' : 'We keep';
  const axis = AXIS_NAMES[series.on].toLowerCase();
  const crossings = points.map((point) => pointSentence({ model, point, say })).join(' ');
  return (
    <div class="ff-money-picture">
      <p class="ff-least ff-quiet">
        {what}, by {axis}. The plan stands at {placeWords(series.on, hereOf(series), say)}.
      </p>
      <ChartFrame
        alt={`${what} under ${names.join(' and ')} by ${axis}. ${crossings || 'They do not cross.'}`}
        series={lines}
        xLabels={xLabels}
        formatTick={formatTick}
        heightRem={14}
        showKey
        tableLabel="The lines as a table"
        table={useTable({ ...props, names, values, what })}
        scrubber={{
          label: `Place on ${axis}`,
          index,
          onScrub: setChosen,
          pointText: placeWords(series.on, placeAt(series, index), say),
          valueText: values
            .map((each, at) => `${names[at]} ${say.money(Math.round(each[index] ?? 0))}`)
            .join('; '),
          previousLabel: 'Less',
          nextLabel: 'More',
        }}
        overlay={(geometry) => <Marks geometry={geometry} series={series} points={points} say={say} />}
      />
    </div>
  );
}

/** Told apart by how they are drawn: hue is for whose money it is. */
function linesOf(values: readonly number[][], names: readonly string[], perMinor: number): ChartSeries[] {
  return values.map((each, at) => ({
    id: String(at),
    label: names[at] ?? '',
    values: each.map((value) => value / perMinor),
    style: at === 0 ? 'line' : 'dashed',
    colour: at === 0 ? 'ink' : 'ink2',
    fill: 'none',
  }));
}

interface TableOf extends DrawnProps {
  names: readonly string[];
  values: readonly number[][];
  what: string;
}

function useTable({ series, names, values, what, say }: TableOf): TableProps {
  const rows = useMemo(
    (): TableRow[] =>
      series.places.map((_, at) => ({
        id: String(at),
        current: at === nearest(series.places, series.here),
        cells: [
          placeWords(series.on, placeAt(series, at), say),
          ...values.map((each) => say.money(Math.round(each[at] ?? 0))),
        ],
      })),
    [series, values, say],
  );
  const columns = [
    { key: 'place', label: AXIS_NAMES[series.on], kind: 'text' as const },
    ...names.map((name, at) => ({ key: String(at), label: name, kind: 'number' as const })),
  ];
  return { caption: `${what}: ${names.join(' and ')}`, columns, rows, compact: true, bounded: true };
}

/** Crossings with their place, and the plan's own place. */
function Marks({
  geometry,
  series,
  points,
  say,
}: { geometry: ChartGeometry } & Pick<DrawnProps, 'series' | 'points' | 'say'>): VNode {
  const { leftPx, rightPx, topPx, bottomPx } = geometry;
  const at = (place: number): number => xOf(geometry, indexOf(series.places, place));
  const here = at(series.here);
  return (
    <>
      <svg class="ff-chart-svg" aria-hidden="true">
        <path class="ff-water" d={`M${here} ${topPx}V${bottomPx}`} stroke-dasharray="2 4" />
        {points.map((point) => (
          <path key={point.at} class="ff-plumb-line" d={`M${at(point.at)} ${topPx + 24}V${bottomPx}`} />
        ))}
      </svg>
      {points.map((point, order) => {
        const share = rightPx === leftPx ? 0 : (at(point.at) - leftPx) / (rightPx - leftPx);
        return (
          <div
            key={point.at}
            class="ff-plumb-tag"
            style={{
              left: `${at(point.at)}px`,
              top: `${topPx + 26 * order}px`,
              transform: `translateX(${-100 * share}%)`,
            }}
          >
            <span class="ff-money-crossing ff-number">{tagWords(series.on, point, say)}</span>
          </div>
        );
      })}
    </>
  );
}

/** The plan's own place; on growth it is one of the grid. */
function hereOf(series: AxisSeries): Place {
  return { at: series.here, units: placeAt(series, nearest(series.places, series.here)).units };
}

/** At a crossing there is room for the place alone. */
function tagWords(axis: Axis, { at }: TurningPoint, say: ScreenSay): string {
  return placeWords(axis, { at, units: null }, say);
}

/** Where a place lies among the places, in steps and parts of one. */
function indexOf(places: readonly number[], place: number): number {
  const after = places.findIndex((each) => each >= place);
  if (after <= 0) return after < 0 ? places.length - 1 : 0;
  const [low = 0, high = 0] = [places[after - 1], places[after]];
  return high === low ? after : after - 1 + (place - low) / (high - low);
}

function nearest(places: readonly number[], place: number): number {
  return Math.round(indexOf(places, place));
}

/** Under the axis: "72k", "1.4M", "1.5 ×". */
function tickPlace(axis: Axis, place: number, perMinor: number, say: ScreenSay): string {
  if (axis === 'growth') return `${say.number(Number(place.toFixed(2)))} ×`;
  const amount = axis === 'exit' ? place / perMinor : place;
  if (amount >= 1e6) return `${say.number(Number((amount / 1e6).toPrecision(2)))}M`;
  return amount >= 1000 ? `${say.count(Math.round(amount / 1000))}k` : say.count(Math.round(amount));
}
