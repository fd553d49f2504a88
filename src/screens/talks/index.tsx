// Across the table: one chain's talks on one screen that never scrolls at 360 x 560: what is said, where it stands to our
// target, what could be said instead, and a key for each side's offer. Ink only, since a colour can be read across a desk.
// Worked figure: head 44, verdict 92, figures 44, review 20, five terms of 48, counter 44, log keys 56: 540 px.
import type { VNode } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { setDraft } from '../../app/commands/talks.ts';
import { hashOf } from '../../app/route.ts';
import { coverWhenHidden } from '../../app/their-side.ts';
import type { Account, Plan } from '../../domain/plan/index.ts';
import { Button, ButtonRow, EmptyState, LinkButton, ProblemNote, useWide } from '../../widgets/index.ts';
import { addBlankChain } from '../deal/chains.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useTitle } from '../shared/title.ts';
import { useUndoneKept } from './kept.ts';
import { Meeting } from './meeting.tsx';
import { talksOf } from './model.ts';
import { useWakeLock } from './wake-lock.ts';
import './talks.css';
import './rows.css';
import './sheets.css';

export function TalksScreen(): VNode {
  const plan = usePlan();
  const account = useAccount(plan);
  useTitle(`Across the table · ${account?.name ?? plan.name}`);
  useEffect(() => coverWhenHidden(), []);
  useWakeLock();
  return (
    <>
      <h1 class="ff-spoken">Across the table</h1>
      {account === null ? <NoChain /> : <OfAccount key={account.id} plan={plan} account={account} />}
    </>
  );
}

/** The chain of the address, else the one the deal's verdict speaks of, else the first. */
function useAccount(plan: Plan): Account | null {
  const session = useSession();
  const route = session.route.value;
  const binding = session.results.value?.results.verdicts.deal.accountId ?? null;
  const wanted = [route.view === 'table' ? route.accountId : null, binding];
  const found = wanted.flatMap((id) => plan.accounts.find((account) => account.id === id) ?? []);
  return found[0] ?? plan.accounts[0] ?? null;
}

function OfAccount({ plan, account }: { plan: Plan; account: Account }): VNode {
  const wide = useWide();
  const read = useMemo(() => talksOf(plan, account), [plan, account]);
  const kept = useUndoneKept(account.id);
  if (!read.ok) return <NotReckoned plan={plan} account={account} read={read} />;
  if (kept === null) return <p class="ff-starting ff-quiet">Opening …</p>;
  return <Meeting model={read.value} wide={wide} kept={kept} />;
}

function NoChain(): VNode {
  const session = useSession();
  const plan = usePlan();
  return (
    <EmptyState title="No chain yet. Add one to see what its terms cost.">
      <ButtonRow>
        <Button kind="primary" onPress={() => addBlankChain(session)}>
          Add a chain
        </Button>
        <LinkButton href={hashOf({ view: 'deal', planId: plan.id, accountId: null, sheet: null })}>
          Deal
        </LinkButton>
      </ButtonRow>
    </EmptyState>
  );
}

/** The plan, or the draft in it, has no figures: why, and the way on. */
function NotReckoned(props: {
  plan: Plan;
  account: Account;
  read: Extract<ReturnType<typeof talksOf>, { ok: false }>;
}): VNode {
  const session = useSession();
  const { plan, account, read } = props;
  const at = { planId: plan.id, accountId: account.id, sheet: null };
  return (
    <div class="ff-talks-trouble ff-stack">
      <ProblemNote>
        <p>
          {read.isDraft
            ? `What is on the table with ${account.name} doesn’t fit the plan any more.`
            : `The deal with ${account.name} can’t be computed yet.`}
        </p>
        {read.problems.map((problem) => (
          <p key={`${problem.path} ${problem.code}`}>{problemSentence(plan, problem)}</p>
        ))}
      </ProblemNote>
      <ButtonRow>
        {read.isDraft && (
          <Button
            kind="primary"
            onPress={() => {
              session.endStep();
              session.run(setDraft, { accountId: account.id, terms: {} }, 'talks/draft');
              session.endStep();
            }}
          >
            Clear the table
          </Button>
        )}
        <Button disabled={!session.canUndo.value} onPress={() => session.undo()}>
          Undo
        </Button>
        <LinkButton href={hashOf({ view: 'deal', ...at })}>Deal</LinkButton>
      </ButtonRow>
    </div>
  );
}
