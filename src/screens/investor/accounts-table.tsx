// Accounts in a table: how far each is agreed, its doors, the chance taken, how late it may come; papers below, by name
// and date. Worked example: "Corner · Buyer said yes · 180 · 60 % · 2, at most 8" weeks late.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { dec } from '../../domain/money/decimal.ts';
import { tenths } from '../../domain/money/format.ts';
import type { Account, Standing } from '../../domain/plan/index.ts';
import { placeClaim } from '../../domain/promise/place-claim.ts';
import { chanceOf } from '../../domain/promise/rungs.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { plannedDoors, rungText } from '../promise/words.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'account', label: 'Account', kind: 'text' },
  { key: 'rung', label: 'Agreed', kind: 'text' },
  { key: 'doors', label: 'Doors', kind: 'number' },
  { key: 'chance', label: 'Chance', kind: 'number' },
  { key: 'slip', label: 'Weeks late', kind: 'number' },
];

/** Beside them where there is a claim, by whose date doors are to be expected. */
const EXPECTED: TableColumn = { key: 'expected', label: 'Doors expected', kind: 'number' };
const WITH_EXPECTED = [...COLUMNS, EXPECTED];

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

export function AccountsTable({ plan, results }: Pick<Shown, 'plan' | 'results'>): VNode {
  const say = useSay();
  const expected = useMemo(() => {
    const { placed } = placeClaim(plan, results.pass);
    return placed && new Map(placed.doors.accounts.map((doors) => [doors.accountId, doors.expected]));
  }, [plan, results]);
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
            ...(expected === null ? [] : [tenths(say.look, dec(expected.get(id) ?? 0))]),
          ],
        };
      }),
    [plan, say, expected],
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
        columns={expected === null ? COLUMNS : WITH_EXPECTED}
        rows={rows}
        compact
      />
      {papers.length > 0 && (
        <div class="ff-keep">
          <h3 class="ff-label">Papers</h3>
          <ul class="ff-said">
            {papers.map(({ id, name, date, who, what }) => (
              <li key={id}>
                {name}: {what}, {say.date(date)}
                {who !== '' && `, ${who}`}.
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
