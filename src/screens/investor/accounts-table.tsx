// Accounts in a table: how far each is agreed, its doors, the chance taken, how late it may come; papers below, by name
// and date. Worked example: "Corner · Buyer said yes · 180 · 60 % · 2, at most 8" weeks late.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Account, Plan, Standing } from '../../domain/plan/index.ts';
import { chanceOf } from '../../domain/promise/rungs.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { plannedDoors, rungText } from '../promise/words.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'account', label: 'Account', kind: 'text' },
  { key: 'rung', label: 'Agreed', kind: 'text' },
  { key: 'doors', label: 'Doors', kind: 'number' },
  { key: 'chance', label: 'Chance', kind: 'number' },
  { key: 'slip', label: 'Weeks late', kind: 'number' },
];

/** "180", with what is open beside it where there is any. */
function doorCount(account: Account, say: ScreenSay): string {
  const open = account.runningDoors.reduce((sum, { doors }) => sum + doors, 0);
  const planned = say.count(plannedDoors(account));
  return open === 0 ? planned : `${planned}, ${say.count(open)} open`;
}

function lateText(standing: Standing | null): string {
  if (standing === null || standing.slipMostWeeks === 0) return '0';
  return `${standing.slipLikelyWeeks}, at most ${standing.slipMostWeeks}`;
}

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
            doorCount(account, say),
            standing === null ? 'certain' : say.percent(chanceOf(account)),
            lateText(standing),
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
