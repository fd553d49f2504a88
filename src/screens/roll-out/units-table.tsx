// Every unit of one product by week: ordered, landed, shipped, sold, lost, and where the rest stands at the week's end.
// Worked figure: opening and landed units are sold, in stores, on the way, with us, or gone.
import type { VNode } from 'preact';
import { type PassResult, UNIT_NAMES } from '../../domain/rollout/types.ts';
import { Table, type TableColumn } from '../../widgets/index.ts';
import { captionOf, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import { sumOf, UNIT_WORDS, unitSeries } from './unit-words.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'Week', kind: 'text' },
  ...UNIT_NAMES.map((name) => ({ key: name, label: UNIT_WORDS[name], kind: 'number' as const })),
];

/** Sums make sense for what happens in a week, not for what stands at its end. */
const STANDING = new Set<string>(['ours', 'inTransit', 'inStores', 'atDepot', 'backlog', 'onOrder']);

export function UnitsTable({
  pass,
  item,
  name,
}: {
  pass: PassResult;
  item: number | null;
  name: string;
}): VNode {
  const say = useSay();
  const made = useSettled([pass, item, say], () => {
    const series = UNIT_NAMES.map((unit) => unitSeries(pass, item, unit));
    const cells = (week: number) => series.map((each) => say.count(each[week] ?? 0));
    return {
      rows: Array.from({ length: pass.weeks }, (_, week) => ({
        id: String(week),
        cells: [say.week(week), ...cells(week)],
      })),
      footer: {
        id: 'all',
        cells: [
          'All weeks',
          ...UNIT_NAMES.map((unit, index) => {
            const each = series[index];
            return each && !STANDING.has(unit) ? say.count(sumOf(each)) : '';
          }),
        ],
      },
    };
  });
  const { rows, footer } = made.value;
  return (
    <Table
      caption={captionOf(`${name}: every unit by week`, made)}
      columns={COLUMNS}
      rows={rows}
      footer={footer}
      compact
      bounded
    />
  );
}
