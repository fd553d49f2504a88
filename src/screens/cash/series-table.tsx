// Every cash flow, or every balance, by week: as many columns as there are names with anything in them.
// Worked figure: assets of each week's balances add up to what is owed and owned.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { BALANCE_WORDS, FLOW_WORDS } from '../../domain/explain/flow-words.ts';
import { BALANCE_NAMES, FLOW_NAMES, type PassResult } from '../../domain/rollout/types.ts';
import { Table, type TableColumn } from '../../widgets/index.ts';
import { captionOf, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';

interface Series {
  key: string;
  label: string;
  values: Float64Array;
}

export function FlowsTable({ pass }: { pass: PassResult }): VNode {
  const series = useMemo(
    () =>
      FLOW_NAMES.filter((name) => pass.flows[name].some((value) => value !== 0)).map(
        (name): Series => ({
          key: name,
          label: FLOW_WORDS[name].label,
          values: pass.flows[name],
        }),
      ),
    [pass],
  );
  return <SeriesTable caption="Cash flows by week: in is positive, out negative" series={series} summed />;
}

export function BalancesTable({ pass }: { pass: PassResult }): VNode {
  const series = useMemo(
    () =>
      BALANCE_NAMES.map(
        (name): Series => ({
          key: name,
          label: BALANCE_WORDS[name].label,
          values: pass.balances[name],
        }),
      ),
    [pass],
  );
  return (
    <SeriesTable
      caption="Balances at each week’s end: the first five come to the last five"
      series={series}
      summed={false}
    />
  );
}

interface SeriesTableProps {
  caption: string;
  series: readonly Series[];
  /** A last row with the sums over all weeks. */
  summed: boolean;
}

function SeriesTable({ caption, series, summed }: SeriesTableProps): VNode {
  const say = useSay();
  const made = useSettled([series, say], () => {
    const weeks = series[0]?.values.length ?? 0;
    const all: TableColumn[] = [
      { key: 'week', label: 'Week', kind: 'text' },
      ...series.map(({ key, label }) => ({ key, label, kind: 'number' as const })),
    ];
    return {
      columns: all,
      rows: Array.from({ length: weeks }, (_, week) => ({
        id: String(week),
        cells: [say.week(week), ...series.map(({ values }) => say.moneyExact(values[week] ?? 0))],
      })),
      footer: {
        id: 'all',
        cells: [
          'All weeks',
          ...series.map(({ values }) => say.moneyExact(values.reduce((sum, value) => sum + value, 0))),
        ],
      },
    };
  });
  const { columns, rows, footer } = made.value;
  return (
    <Table
      caption={captionOf(caption, made)}
      columns={columns}
      rows={rows}
      footer={summed ? footer : undefined}
      compact
      bounded
    />
  );
}
