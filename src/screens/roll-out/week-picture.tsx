// Series over the weeks as one picture with its table: what the pictures of units, stock and capacity share. The week
// looked at is a slider under the first picture and a dotted line through the others.
// Worked figure: three series over 104 weeks are three lines and a table of 104 rows.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import {
  ChartFrame,
  type ChartGeometry,
  type ChartSeries,
  type ScrubberProps,
  type TableColumn,
  type TableRow,
} from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { captionOf, useForKey, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekCursor } from './week-cursor.tsx';

export interface WeekSeries {
  id: string;
  /** In the key. */
  label: string;
  /** Over its column. */
  column: string;
  values: ArrayLike<number>;
  style: ChartSeries['style'];
  colour: ChartSeries['colour'];
}

export interface WeekPictureProps {
  /** "Units by week", the table's caption. */
  title: string;
  alt: string;
  series: readonly WeekSeries[];
  week: number;
  heightRem: number;
  tableLabel: string;
  /** Undefined where another picture above has the slider. */
  scrubber: Pick<ScrubberProps, 'onScrub' | 'valueText'> | undefined;
}

export function WeekPicture(props: WeekPictureProps): VNode {
  const { title, alt, series, week, heightRem, tableLabel, scrubber } = props;
  const say = useSay();
  const key = `${title}\n${series.map(({ id, values }) => `${id} ${Array.from(values).join(' ')}`).join('\n')}`;
  const drawn = useForKey(key, () => drawnOf(series));
  const rows = useSettled([key, say], () => rowsOf(series, say));
  const formatTick = useMemo(() => (value: number) => say.count(Math.round(value)), [say]);
  return (
    <ChartFrame
      alt={alt}
      series={drawn.series}
      xLabels={drawn.xLabels}
      formatTick={formatTick}
      heightRem={heightRem}
      endsInset
      showKey={series.length > 1}
      tableLabel={tableLabel}
      table={{
        caption: captionOf(title, rows),
        columns: drawn.columns,
        rows: rows.value,
        compact: true,
        bounded: true,
      }}
      scrubber={
        scrubber && {
          ...scrubber,
          label: 'Week of the roll-out',
          index: week,
          pointText: say.week(week),
          previousLabel: 'A week earlier',
          nextLabel: 'A week later',
        }
      }
      overlay={
        scrubber ? undefined : (geometry: ChartGeometry) => <WeekCursor geometry={geometry} week={week} />
      }
    />
  );
}

function drawnOf(series: readonly WeekSeries[]) {
  const columns: TableColumn[] = [
    { key: 'week', label: 'Week', kind: 'text' },
    ...series.map(({ id, column }) => ({ key: id, label: column, kind: 'number' as const })),
  ];
  const weeks = series[0]?.values.length ?? 0;
  return {
    columns,
    series: series.map(
      ({ id, label, values, style, colour }): ChartSeries => ({
        id,
        label,
        values: Array.from(values),
        style,
        colour,
        fill: 'none',
      }),
    ),
    xLabels: Array.from({ length: weeks }, (_, week) => String(week)),
  };
}

function rowsOf(series: readonly WeekSeries[], say: ScreenSay): TableRow[] {
  const weeks = series[0]?.values.length ?? 0;
  return Array.from({ length: weeks }, (_, week) => ({
    id: String(week),
    cells: [say.week(week), ...series.map(({ values }) => say.count(Math.round(values[week] ?? 0)))],
  }));
}
