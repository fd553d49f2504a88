// The plan's cash with one offer's money laid over it, week by week, its lowest point named; what the plan has without new
// money is dotted behind it. Worked figure: −12,300 in week 9 becomes 7,700 with 20,000 in week 0.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { OfferResult } from '../../domain/offers/index.ts';
import { CashPicture, type ChartSeries, type TableColumn } from '../../widgets/index.ts';
import { tick } from '../deal/curve.tsx';
import { captionOf, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import type { MoneyModel } from './model.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'Week', kind: 'text' },
  { key: 'without', label: 'Without', kind: 'number' },
  { key: 'low', label: 'Lowest', kind: 'number' },
  { key: 'cash', label: 'At its end', kind: 'number' },
];

export function OfferCash({ model, result }: { model: MoneyModel; result: OfferResult }): VNode {
  const say = useSay();
  const { basis } = model.money;
  const perMinor = 10 ** basis.minorDigits;
  const [chosen, setChosen] = useState<number | null>(null);
  const week = Math.min(chosen ?? result.lowestWeek, basis.weeks - 1);
  const values = useMemo(() => result.cash.map((cash) => cash / perMinor), [result, perMinor]);
  const without = useMemo(
    (): ChartSeries[] => [
      {
        id: 'without',
        label: 'Without new money',
        values: Array.from(basis.cash, (cash) => cash / perMinor),
        style: 'dotted',
        colour: 'ink2',
        fill: 'none',
      },
    ],
    [basis, perMinor],
  );
  const xLabels = useMemo(() => values.map((_, index) => String(index)), [values.length]);
  const formatTick = useMemo(() => (value: number) => tick(value, say), [say]);
  const rows = useSettled([result, basis, say], () =>
    result.cash.map((cash, at) => ({
      id: String(at),
      strong: at === result.lowestWeek,
      cells: [
        say.week(at),
        say.moneyExact(basis.cash[at] ?? 0),
        say.moneyExact(result.low[at] ?? 0),
        say.moneyExact(cash),
      ],
    })),
  );
  const lowest = `${say.money(result.lowestCash)} · week ${result.lowestWeek}`;
  return (
    <CashPicture
      alt={`Cash by week with ${result.name}: lowest ${lowest}, ${say.money(result.cash.at(-1) ?? 0)} at the end.`}
      balanceLabel={`With ${result.name}`}
      values={values}
      range={without}
      xLabels={xLabels}
      formatTick={formatTick}
      low={{ index: result.lowestWeek, value: result.lowestCash / perMinor, tagText: lowest, noteText: '' }}
      lanes={[]}
      heightRem={13}
      tableLabel="The weeks as a table"
      table={{
        caption: captionOf(`Cash by week with ${result.name}`, rows),
        columns: COLUMNS,
        rows: rows.value,
        compact: true,
        bounded: true,
      }}
      scrubber={{
        label: `Week of the cash with ${result.name}`,
        index: week,
        onScrub: setChosen,
        pointText: say.week(week),
        valueText: `${say.money(result.cash[week] ?? 0)} at its end`,
        previousLabel: 'A week earlier',
        nextLabel: 'A week later',
      }}
    />
  );
}
