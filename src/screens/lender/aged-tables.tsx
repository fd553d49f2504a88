// Who owes us and whom we owe at a week's end, by days from the invoice date; both add up to the balance sheet.
// Worked figure: 31,754.32 of Dornwies, all of it up to 30 days old.
import type { VNode } from 'preact';
import { AGES, type Aged, type AgedLine, agedPayables, agedReceivables } from '../../domain/lender/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { useSay } from '../shared/use-say.ts';

type AgedArgs = Parameters<typeof agedReceivables>[0];

export function AgedTables(args: AgedArgs): VNode {
  const end = `at the end of week ${args.week}`;
  const receivables = agedReceivables(args);
  const payables = agedPayables(args);
  return (
    <Part title="Who owes since when">
      <AgedTable
        plan={args.plan}
        aged={receivables}
        caption={`Receivables ${end}`}
        none="Nobody owes us anything then."
      />
      <AgedTable
        plan={args.plan}
        aged={payables}
        caption={`Payables ${end}`}
        none="We owe no supplier anything then."
      />
      <p class="ff-least ff-quiet">
        Days from the invoice date: ours is the last day of its week, a supplier’s the first. The opening
        books know only when they will be paid.
      </p>
    </Part>
  );
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'name', label: 'Days', kind: 'text' },
  { key: 'to30', label: '0 to 30', kind: 'number' },
  { key: 'to60', label: '31 to 60', kind: 'number' },
  { key: 'to90', label: '61 to 90', kind: 'number' },
  { key: 'over90', label: 'Over 90', kind: 'number' },
  { key: 'unknown', label: 'Not known', kind: 'number' },
  { key: 'sum', label: 'All', kind: 'number' },
];

function AgedTable({
  plan,
  aged,
  caption,
  none,
}: {
  plan: Plan;
  aged: Aged;
  caption: string;
  none: string;
}): VNode {
  const say = useSay();
  if (aged.lines.length === 0) return <p>{none}</p>;
  const row = (id: string, name: string, { ages, unknown, sum }: AgedLine): TableRow => ({
    id,
    strong: id === 'total',
    cells: [name, ...[...AGES.map((age) => ages[age]), unknown, sum].map(say.moneyExact)],
  });
  return (
    <Table
      caption={caption}
      columns={COLUMNS}
      rows={[
        ...aged.lines.map((line) => row(`${line.kind} ${line.id}`, nameOf(plan, line), line)),
        row('total', 'All', aged.total),
      ]}
      compact
    />
  );
}

function nameOf(plan: Plan, { kind, id }: AgedLine): string {
  if (kind === 'base') return 'Sales beside the plan';
  if (kind === 'opening') return 'From the opening books';
  const list: readonly { id: string; name: string }[] = kind === 'account' ? plan.accounts : plan.items;
  const name = list.find((each) => each.id === id)?.name ?? '';
  return kind === 'item' ? `Supplier of ${name}` : name;
}
