// The plan with things going wrong, side by side with the plan as it is; run beside the page.
// Worked example: a fifth less sold, paid 15 days later: short of 50,611 in week 42 instead of nothing.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { LenderTrials, Trial } from '../../domain/lender/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useFollowing } from '../shared/use-following.ts';
import { useSay } from '../shared/use-say.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'what', label: 'What happens', kind: 'text' },
  { key: 'need', label: 'Cash needed', kind: 'number' },
  { key: 'low', label: 'Lowest cash', kind: 'number' },
  { key: 'week', label: 'In week', kind: 'number' },
  { key: 'lost', label: 'Units lost', kind: 'number' },
];

export function Trials({ plan, week }: { plan: Plan; week: number }): VNode {
  const say = useSay();
  const job = useMemo(() => ({ kind: 'lenderTrials' as const, plan, week }), [plan, week]);
  const followed = useFollowing(job);
  const older = followed !== null && followed.job !== job;
  return (
    <Part title="If things go wrong">
      {followed === null && <p class="ff-quiet">Running the plan with things going wrong …</p>}
      {followed?.answer.ok === false && <p>{followed.answer.trouble}</p>}
      {followed?.answer.ok === true && (
        <div class={older ? 'ff-is-older' : undefined}>
          <Table
            caption="The plan as it is, and with one thing going wrong"
            captionHidden
            columns={COLUMNS}
            rows={rowsOf(followed.job.plan, followed.answer.value, say)}
            compact
          />
          {older && <p class="ff-least ff-quiet">Of before the last change; being run again …</p>}
        </div>
      )}
      <p class="ff-least ff-quiet">
        Goods are bought on the plan’s forecast until it happens. “Dropped” is 26 weeks after a chain’s first
        opening, common practice, no source; what the deal made or lost by then counts the goods left on its
        shelves.
      </p>
    </Part>
  );
}

function rowsOf(plan: Plan, { downside, failure, drops }: LenderTrials, say: ScreenSay): TableRow[] {
  const name = (accountId: string) => plan.accounts.find(({ id }) => id === accountId)?.name ?? '';
  const rows: TableRow[] = [];
  const base = downside?.plan ?? failure?.plan;
  if (base) rows.push(row('plan', 'As planned', base, say));
  if (downside)
    rows.push(row('downside', 'A fifth less sold, everybody pays 15 days later', downside.there, say));
  if (failure) {
    const what = `${name(failure.accountId)} fails in ${say.week(failure.week)}, owing ${say.money(failure.receivable)}`;
    rows.push(row('failure', what, failure.there, say));
  }
  for (const { accountId, week, dealAmount, there } of drops) {
    const what = `${name(accountId)} drops us in ${say.week(week)}; the deal by then ${say.moneySigned(dealAmount)}`;
    rows.push(row(`drop ${accountId}`, what, there, say));
  }
  return rows;
}

function row(id: string, what: string, trial: Trial, say: ScreenSay): TableRow {
  const { cashNeed, lowestCash, lowestWeek, unitsLost } = trial;
  return {
    id,
    strong: id === 'plan',
    cells: [
      <span key="what" class="ff-trial">
        {what}
      </span>,
      say.money(cashNeed),
      say.money(lowestCash),
      String(lowestWeek),
      say.count(unitsLost),
    ],
  };
}
