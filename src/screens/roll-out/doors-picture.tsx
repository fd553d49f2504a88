// Doors open over the weeks: all of them, and each chain's where there are several. Its table is one tap away.
// Worked figure: 180 doors opening 45 a week from week 10 stand at 180 from week 13.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { PassResult } from '../../domain/rollout/types.ts';
import { ChartFrame, type ChartSeries, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { captionOf, useForKey, useSettled } from '../ladder/settled.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekCursor } from './week-cursor.tsx';

export interface PictureProps {
  plan: Plan;
  pass: PassResult;
  /** The week looked at. */
  week: number;
  heightRem: number;
}

/** Lines of single chains are drawn up to this many; more would not be told apart. */
const LINES_MOST = 4;

export function DoorsPicture({ plan, pass, week, heightRem }: PictureProps): VNode {
  const say = useSay();
  const names = plan.accounts.map(({ name }) => name);
  const key = `${names.join('\n')}\n${pass.accounts.map(({ doors }) => doors.join(' ')).join('\n')}`;
  const drawn = useForKey(key, () => drawnOf(names, pass));
  const rows = useSettled([key, say], () => rowsOf(names, pass, say));
  const formatTick = useMemo(() => (value: number) => say.count(Math.round(value)), [say]);
  return (
    <ChartFrame
      alt={`Doors open by week: ${say.count(drawn.first)} in the first week, at most ${say.count(drawn.most)}, ${say.count(drawn.last)} in the last.`}
      series={drawn.series}
      xLabels={drawn.xLabels}
      formatTick={formatTick}
      heightRem={heightRem}
      endsInset
      showKey={drawn.series.length > 1}
      tableLabel="Doors as a table"
      table={{
        caption: captionOf('Doors open, by week', rows),
        columns: drawn.columns,
        rows: rows.value,
        compact: true,
        bounded: true,
      }}
      overlay={(geometry) => <WeekCursor geometry={geometry} week={week} />}
    />
  );
}

function drawnOf(names: readonly string[], pass: PassResult) {
  const byAccount = pass.accounts.map(({ doors }) => doors);
  const total = totalOf(pass);
  const several = byAccount.length > 1;
  const all: ChartSeries = {
    id: 'all',
    label: 'All doors',
    values: total,
    style: 'step',
    colour: 'ink',
    fill: 'none',
  };
  const styles = ['dashed', 'dotted', 'thin', 'dashDot'] as const;
  const own =
    several && byAccount.length <= LINES_MOST
      ? byAccount.map(
          (doors, index): ChartSeries => ({
            id: String(index),
            label: names[index] ?? '',
            values: Array.from(doors),
            style: styles[index] ?? 'thin',
            colour: 'ink2',
            fill: 'none',
          }),
        )
      : [];
  const columns: TableColumn[] = [
    { key: 'week', label: 'Week', kind: 'text' },
    ...(several ? [...names] : []).map((label, index) => ({
      key: String(index),
      label,
      kind: 'number' as const,
    })),
    { key: 'all', label: 'Doors', kind: 'number' },
  ];
  return {
    series: [all, ...own],
    xLabels: total.map((_, week) => String(week)),
    columns,
    first: total[0] ?? 0,
    last: total.at(-1) ?? 0,
    most: Math.max(0, ...total),
  };
}

function totalOf(pass: PassResult): number[] {
  return Array.from({ length: pass.weeks }, (_, week) =>
    pass.accounts.reduce((sum, { doors }) => sum + (doors[week] ?? 0), 0),
  );
}

function rowsOf(names: readonly string[], pass: PassResult, say: ScreenSay): TableRow[] {
  const several = names.length > 1 ? pass.accounts : [];
  return totalOf(pass).map((count, week) => ({
    id: String(week),
    cells: [say.week(week), ...several.map(({ doors }) => say.count(doors[week] ?? 0)), say.count(count)],
  }));
}
