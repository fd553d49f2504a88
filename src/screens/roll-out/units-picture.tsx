// Units over the weeks: what lands from the maker under the lid of its capacity, what shoppers want, and what they find.
// Where wanted and sold part, shelves are empty. Worked figure: a lid of 6,000 a week cuts an order of 9,000 in two.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { mostLanding } from '../../domain/rollout/buying.ts';
import type { Compiled } from '../../domain/rollout/compiled.ts';
import type { PassResult } from '../../domain/rollout/types.ts';
import {
  ChartFrame,
  type ChartGeometry,
  type ChartSeries,
  type ScrubberProps,
  type TableColumn,
  type TableRow,
} from '../../widgets/index.ts';
import { captionOf, useForKey, useSettled } from '../ladder/settled.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { unitSeries } from './unit-words.ts';
import { WeekCursor } from './week-cursor.tsx';

export interface UnitsPictureProps {
  compiled: Compiled;
  pass: PassResult;
  /** Its place in the plan; null for all products together. */
  item: number | null;
  name: string;
  week: number;
  heightRem: number;
  /** Undefined where another picture above has the slider. */
  onWeek: ((week: number) => void) | undefined;
}

export function UnitsPicture(props: UnitsPictureProps): VNode {
  const { compiled, pass, item, name, week, heightRem, onWeek } = props;
  const say = useSay();
  const data = seriesOf(compiled, pass, item);
  const key = `${item} ${Object.values(data)
    .map((each) => each?.join(' '))
    .join('\n')}`;
  const drawn = useForKey(key, () => drawnOf(data));
  const rows = useSettled([key, say], () => rowsOf(data, say));
  const formatTick = useMemo(() => (value: number) => say.count(Math.round(value)), [say]);
  const { sold, wanted, landed, lid } = data;
  const scrubber: ScrubberProps | undefined = onWeek && {
    label: 'Week of the roll-out',
    index: week,
    onScrub: onWeek,
    pointText: say.week(week),
    valueText: `${say.count(sold[week] ?? 0)} sold`,
    previousLabel: 'A week earlier',
    nextLabel: 'A week later',
  };
  return (
    <ChartFrame
      alt={`${name}, units by week: ${say.count(total(wanted))} wanted, ${say.count(total(sold))} sold, ${say.count(total(landed))} landed${lidWords(lid, say)}.`}
      series={drawn.series}
      xLabels={drawn.xLabels}
      formatTick={formatTick}
      heightRem={heightRem}
      showKey
      tableLabel="Units as a table"
      table={{
        caption: captionOf(`${name}: units by week`, rows),
        columns: COLUMNS,
        rows: rows.value,
        compact: true,
        bounded: true,
      }}
      scrubber={scrubber}
      overlay={
        onWeek ? undefined : (geometry: ChartGeometry) => <WeekCursor geometry={geometry} week={week} />
      }
    />
  );
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'Week', kind: 'text' },
  { key: 'landed', label: 'Landed', kind: 'number' },
  { key: 'lid', label: 'Capacity', kind: 'number' },
  { key: 'wanted', label: 'Wanted', kind: 'number' },
  { key: 'sold', label: 'Sold', kind: 'number' },
];

interface UnitData {
  landed: Float64Array;
  wanted: Float64Array;
  sold: Float64Array;
  lid: number[] | null;
}

function seriesOf(compiled: Compiled, pass: PassResult, item: number | null): UnitData {
  return {
    landed: unitSeries(pass, item, 'made'),
    wanted: unitSeries(pass, item, 'demand'),
    sold: unitSeries(pass, item, 'sold'),
    lid: lidOf(compiled, item, pass.weeks),
  };
}

function drawnOf({ landed, wanted, sold, lid }: UnitData) {
  const line = (
    id: string,
    label: string,
    values: Float64Array,
    more: Partial<ChartSeries>,
  ): ChartSeries => ({
    id,
    label,
    values: Array.from(values),
    style: 'line',
    colour: 'ink',
    fill: 'none',
    ...more,
  });
  const series = [
    line('landed', 'Landed from the maker', landed, { style: 'bar', colour: 'atRisk' }),
    line('wanted', 'Wanted by shoppers', wanted, { style: 'dashed', colour: 'ink2' }),
    line('sold', 'Sold', sold, { colour: 'ours' }),
  ];
  if (lid !== null) {
    series.push({
      id: 'lid',
      label: 'Capacity a week',
      values: lid,
      style: 'step',
      colour: 'ink',
      fill: 'none',
    });
  }
  return { series, xLabels: Array.from(sold, (_, week) => String(week)) };
}

function rowsOf({ landed, wanted, sold, lid }: UnitData, say: ScreenSay): TableRow[] {
  return Array.from(sold, (count, week) => ({
    id: String(week),
    cells: [
      say.week(week),
      say.count(landed[week] ?? 0),
      lid === null ? 'no lid' : say.count(lid[week] ?? 0),
      say.count(wanted[week] ?? 0),
      say.count(count),
    ],
  }));
}

function lidWords(lid: readonly number[] | null, say: ScreenSay): string {
  return lid === null ? ', no lid on capacity' : `, capacity at most ${say.count(Math.max(...lid))} a week`;
}

/** What can land at most in each week; null where a product has no lid. */
function lidOf(compiled: Compiled, item: number | null, weeks: number): number[] | null {
  const items = item === null ? compiled.items : compiled.items.slice(item, item + 1);
  const lid = Array.from({ length: weeks }, (_, week) =>
    items.reduce((sum, { buying }) => sum + mostLanding(compiled, buying, week), 0),
  );
  return lid.every(Number.isFinite) ? lid : null;
}

function total(series: Float64Array): number {
  return series.reduce((sum, value) => sum + value, 0);
}
