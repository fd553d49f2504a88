// Two to four deals side by side: chains of the plan, and the chain looked at by another way to its shelf. A figure a row,
// a deal a column; wider than the screen, the table scrolls sideways in its own box. Fetched when it is first opened.
// Worked example: Fernmarket as planned and with a distributor between: 1.60 and 1.07 a unit.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import {
  type ComparedDeal,
  compareDeals,
  type DealPick,
  PICKS_LEAST,
  PICKS_MOST,
  routesOf,
} from '../../domain/talks/compare.ts';
import { Button, ProblemNote, Table, type TableColumn } from '../../widgets/index.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { useSay } from '../shared/use-say.ts';
import { figureRows } from './side-by-side-rows.ts';

export interface SideBySideProps {
  plan: Plan;
  accountId: string;
}

export function SideBySide({ plan, accountId }: SideBySideProps): VNode {
  const offered = useMemo(() => offeredPicks(plan, accountId), [plan, accountId]);
  const [chosen, setChosen] = useState<readonly string[] | null>(null);
  const kept = offered.filter((pick) => chosen?.includes(keyOf(pick)));
  const picks = kept.length >= PICKS_LEAST ? kept : offered.slice(0, 3);
  const keys = picks.map(keyOf);
  return (
    <div class="ff-stack">
      {offered.length > PICKS_LEAST && (
        <PickKeys plan={plan} offered={offered} keys={keys} onChange={setChosen} />
      )}
      <Compared plan={plan} picks={picks} />
    </div>
  );
}

interface PickKeysProps {
  plan: Plan;
  offered: readonly DealPick[];
  keys: readonly string[];
  onChange: (keys: readonly string[]) => void;
}

/** A key for each deal that stays down while its column is there. */
function PickKeys({ plan, offered, keys, onChange }: PickKeysProps): VNode {
  return (
    // biome-ignore lint/a11y/useSemanticElements: keys that stay down, not a form
    <div class="ff-button-row" role="group" aria-label="Deals to compare">
      {offered.map((pick) => {
        const key = keyOf(pick);
        const on = keys.includes(key);
        return (
          <Button
            key={key}
            pressed={on}
            disabled={on ? keys.length <= PICKS_LEAST : keys.length >= PICKS_MOST}
            onPress={() => onChange(on ? keys.filter((each) => each !== key) : [...keys, key])}
          >
            {nameOf(plan, pick)}
          </Button>
        );
      })}
    </div>
  );
}

/** The chain looked at as planned and by its other way, then the other chains as planned. */
function offeredPicks(plan: Plan, accountId: string): DealPick[] {
  const own = routesOf(plan, accountId).map((route): DealPick => ({ accountId, route }));
  const others = plan.accounts.filter(({ id }) => id !== accountId);
  return [...own, ...others.map(({ id }): DealPick => ({ accountId: id, route: 'asPlanned' }))];
}

function keyOf({ accountId, route }: DealPick): string {
  return `${route} ${accountId}`;
}

function nameOf(plan: Plan, { accountId, route }: DealPick): string {
  const name = plan.accounts.find(({ id }) => id === accountId)?.name ?? accountId;
  if (route === 'asPlanned') return name;
  return route === 'direct' ? `${name}, direct` : `${name}, distributor`;
}

function Compared({ plan, picks }: { plan: Plan; picks: readonly DealPick[] }): VNode {
  const say = useSay();
  const key = picks.map(keyOf).join('|');
  const found = useMemo(() => compareDeals(plan, picks), [plan, key]);
  const deals = found.ok ? found.value : [];
  const columns: TableColumn[] = [
    { key: 'figure', label: 'Figure', kind: 'text' },
    ...deals.map(({ pick }) => ({ key: keyOf(pick), label: nameOf(plan, pick), kind: 'number' as const })),
  ];
  const rows = useMemo(() => figureRows(deals, say), [found, say]);
  return (
    <>
      {!found.ok && (
        <ProblemNote>
          {found.problems.map((problem) => (
            <p key={problem.path}>{problemSentence(plan, problem)}</p>
          ))}
        </ProblemNote>
      )}
      {deals.length > 0 && (
        <div class="ff-side-by-side">
          <Table caption="Deals side by side" captionHidden columns={columns} rows={rows} />
        </div>
      )}
      <NotComputed plan={plan} deals={deals} />
      <div class="ff-least ff-quiet">
        <p>
          Cash need is the whole plan’s with this deal in it. First year: contribution, money down taken off.
        </p>
        {assumptions(plan, deals).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </>
  );
}

/** Why a column has no figures, in words. */
function NotComputed({ plan, deals }: { plan: Plan; deals: readonly ComparedDeal[] }): VNode | null {
  const failed = deals.filter(({ figures }) => figures === null);
  if (failed.length === 0) return null;
  return (
    <ProblemNote>
      {failed.flatMap(({ pick, problems }) =>
        problems.map((problem) => (
          <p key={`${keyOf(pick)} ${problem.path}`}>
            {nameOf(plan, pick)}: {problemSentence(plan, problem)}
          </p>
        )),
      )}
    </ProblemNote>
  );
}

function assumptions(plan: Plan, deals: readonly ComparedDeal[]): string[] {
  return deals.flatMap(({ pick, assumed }) =>
    assumed === null ? [] : [`${nameOf(plan, pick)}: ${assumed}.`],
  );
}
