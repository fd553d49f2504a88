// 13 weeks of cash in a table: receipts, payments and funding line by line, their sums, the lowest within each week.
// Worked figure: opens 41,840.69, receipts 12,018.83, payments −19,112.68: closes 34,746.84.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { FLOW_WORDS } from '../../domain/explain/flow-words.ts';
import type { FlowLine, ThirteenWeeks } from '../../domain/lender/index.ts';
import { Table, type TableRow } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';

export function CashTable({ weeks, currency }: { weeks: ThirteenWeeks; currency: string }): VNode {
  const say = useSay();
  const rows = useMemo(() => rowsOf(weeks, say.moneyExact), [weeks, say]);
  const columns = weeks.opens.map((_, place) => {
    const week = weeks.fromWeek + place;
    return { key: String(week), label: `${week} · ${say.weekDay(week)}`, kind: 'number' as const };
  });
  return (
    <Table
      caption={`Direct cash flow, weeks ${weeks.fromWeek} to ${weeks.untilWeek - 1}, ${currency}`}
      columns={[
        { key: 'line', label: 'Week', kind: 'text' },
        ...columns,
        { key: 'sum', label: 'All', kind: 'number' },
      ]}
      rows={rows}
      compact
    />
  );
}

function rowsOf(weeks: ThirteenWeeks, money: (minorUnits: number) => string): TableRow[] {
  const { receipts, payments, funding, opens, low, closes } = weeks;
  const line = ({ flow, amounts, sum }: FlowLine): TableRow => ({
    id: flow,
    cells: [FLOW_WORDS[flow].label, ...amounts.map(money), money(sum)],
  });
  const total = (id: string, label: string, lines: readonly FlowLine[]): TableRow[] => {
    const sums = opens.map((_, week) => lines.reduce((sum, { amounts }) => sum + (amounts[week] ?? 0), 0));
    const all = sums.reduce((sum, amount) => sum + amount, 0);
    return [{ id, strong: true, cells: [label, ...sums.map(money), money(all)] }];
  };
  return [
    { id: 'opens', strong: true, cells: ['Opens with', ...opens.map(money), money(opens[0] ?? 0)] },
    ...receipts.map(line),
    ...total('receipts', 'Receipts', receipts),
    ...payments.map(line),
    ...total('payments', 'Payments', payments),
    ...funding.map(line),
    ...(funding.length > 0 ? total('funding', 'Funding, and what it costs', funding) : []),
    { id: 'low', cells: ['Lowest within the week', ...low.map(money), money(Math.min(...low))] },
    { id: 'closes', strong: true, cells: ['Closes with', ...closes.map(money), money(closes.at(-1) ?? 0)] },
  ];
}
