// One statement as a table: its lines down, periods across, every amount opening what it is made of. By week each column
// also opens the documents of that week. Worked figure: a year by month is twelve columns and the whole plan beside them.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { STATEMENT_WORDS } from '../../domain/explain/statement-words.ts';
import { ledgerOf, type Period, type StatementName } from '../../domain/statements/index.ts';
import { Table, type TableColumn, type TableRow, useWide, WhereFrom } from '../../widgets/index.ts';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { BY_KIND, periodWords } from './period-words.ts';
import { rowsOf, type StatementRow, type Weeks } from './rows.ts';

export interface StatementTableProps {
  shown: Shown;
  statement: StatementName;
  periods: readonly Period[];
  /** The plan's first morning stands before the first period. */
  withOpening: boolean;
  /** All weeks of the plan in a column of their own. */
  withWhole: boolean;
  parts: boolean;
}

interface Column extends Weeks {
  key: string;
  label: string;
}

export function StatementTable(props: StatementTableProps): VNode {
  const { shown, statement, periods } = props;
  const { plan, results } = shown;
  const say = useSay();
  const why = useWhy();
  const wide = useWide();
  const columns = columnsOf(props, (period) => periodWords(period, say));
  const ledger = ledgerOf(results);
  const rows = useMemo(
    () => rowsOf({ ledger, statement, columns, parts: props.parts }),
    [ledger, statement, props.parts, columns.map(({ key }) => key).join()],
  );
  const amountCell = (row: StatementRow, index: number): VNode | string => {
    const cell = row.cells[index];
    if (cell === undefined) return '';
    const text = say.moneyExact(cell.amount);
    if (cell.amount === 0 || cell.key === null)
      return <span class={cell.amount === 0 ? 'ff-quiet ff-number' : 'ff-number'}>{text}</span>;
    const label = `${row.label}, ${columns[index]?.label}: ${text}. Where from?`;
    return (
      <WhereFrom key={`${row.id} ${index}`} open={why(cell.key)} label={label}>
        {text}
      </WhereFrom>
    );
  };
  const kind = periods[0]?.kind ?? 'plan';
  return (
    <Table
      caption={`${STATEMENT_WORDS[statement]} ${BY_KIND[kind]}, ${plan.currency}`}
      columns={[
        { key: 'line', label: 'Line', kind: 'text' },
        ...columns.map(({ key, label }): TableColumn => ({ key, label, kind: 'number' })),
      ]}
      rows={rows.map(
        (row): TableRow => ({
          id: row.id,
          strong: row.level === 'total',
          cells: [<Label key="label" row={row} />, ...row.cells.map((_, index) => amountCell(row, index))],
        }),
      )}
      footer={kind === 'week' ? documentsRow(columns, why) : undefined}
      compact={wide}
    />
  );
}

function Label({ row: { level, label } }: { row: StatementRow }): VNode {
  return <span class={level === 'part' ? 'ff-statement-part' : undefined}>{label}</span>;
}

/** By week, under each column: the documents it is made of. */
function documentsRow(columns: readonly Column[], why: ReturnType<typeof useWhy>): TableRow {
  return {
    id: 'documents',
    cells: [
      'Documents',
      ...columns.map(({ key, label, fromWeek, toWeek }) =>
        fromWeek === toWeek ? (
          <WhereFrom key={key} open={why({ of: 'documents', week: toWeek })} label={`Documents of ${label}`}>
            Show
          </WhereFrom>
        ) : (
          ''
        ),
      ),
    ],
  };
}

function columnsOf(
  { shown, periods, withOpening, withWhole }: StatementTableProps,
  words: (period: Period) => string,
): Column[] {
  const { weeks } = shown.results.pass;
  return [
    ...(withOpening ? [{ key: 'opening', label: 'First day', fromWeek: 0, toWeek: -1 }] : []),
    ...periods.map((period) => ({
      key: `${period.kind} ${period.key}`,
      label: words(period),
      fromWeek: period.fromWeek,
      toWeek: period.toWeek,
    })),
    ...(withWhole ? [{ key: 'whole', label: 'Whole plan', fromWeek: 0, toWeek: weeks - 1 }] : []),
  ];
}
