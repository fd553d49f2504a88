// Accounts in a table: how far each is agreed, its doors, the chance taken, how late it may come; papers below, by name
// and date. Worked example: "Corner · Buyer said yes · 180 · 60 % · up to 8 weeks late, most likely 2".
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import { chanceOf } from '../../domain/promise/rungs.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { doorsText, rungText, slipText } from '../promise/words.ts';
import { useSay } from '../shared/use-say.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'account', label: 'Account', kind: 'text' },
  { key: 'rung', label: 'Agreed', kind: 'text' },
  { key: 'doors', label: 'Doors', kind: 'number' },
  { key: 'chance', label: 'Chance', kind: 'number' },
  { key: 'slip', label: 'Late', kind: 'text' },
];

export function AccountsTable({ plan }: { plan: Plan }): VNode {
  const say = useSay();
  const rows = useMemo(
    () =>
      plan.accounts.map((account): TableRow => {
        const { id, name, standing } = account;
        return {
          id,
          cells: [
            name,
            rungText(standing),
            doorsText(account, say),
            standing === null ? 'certain' : say.percent(chanceOf(account)),
            slipText(standing),
          ],
        };
      }),
    [plan, say],
  );
  if (plan.accounts.length === 0) return <p>The plan has no chain yet.</p>;
  const papers = plan.accounts.flatMap(({ name, standing }) =>
    (standing?.papers ?? []).map((paper) => ({ ...paper, name })),
  );
  return (
    <>
      <Table
        caption="Accounts by how far they are agreed"
        captionHidden
        columns={COLUMNS}
        rows={rows}
        compact
      />
      {papers.length > 0 && (
        <>
          <h3 class="ff-label">Papers</h3>
          <ul class="ff-said">
            {papers.map(({ id, name, date, who, what }) => (
              <li key={id}>
                {name}: {what}, {say.date(date)}
                {who !== '' && `, ${who}`}.
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
