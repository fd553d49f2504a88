// One chain's deal from top to bottom: its own verdict, the payback curve, our figures, theirs, and the terms to type over.
// Beside other chains its parts stand in line with theirs. Worked example: two chains at the same terms differ in doors.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import type { DealResult } from '../../domain/deals/types.ts';
import type { Account, Plan } from '../../domain/plan/index.ts';
import type { Results, Verdict } from '../../domain/results.ts';
import { dealVerdict } from '../../domain/verdicts/deal.ts';
import { EmptyState, LinkButton, VerdictLine } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { PaybackCurve } from './curve.tsx';
import { DealFigures } from './figures.tsx';
import { DealTerms } from './terms.tsx';
import { TheirSide } from './their-side.tsx';

export interface ShownDeal {
  plan: Plan;
  results: Results;
  account: Account;
  deal: DealResult;
  older: boolean;
}

/** `alone`: no other chain is shown and the verdict above is this one's, so neither name nor verdict is said again. */
export function DealColumn({ accountId, alone }: { accountId: string; alone: boolean }): VNode | null {
  const shown = useShown();
  if (shown === null) return null;
  const { plan, results, older } = shown;
  const account = plan.accounts.find(({ id }) => id === accountId);
  const deal = results.deals.find((each) => each.accountId === accountId);
  if (!account || !deal) return null;
  const at: ShownDeal = { plan, results, account, deal, older };
  return (
    <article class="ff-deal" aria-label={`Deal of ${account.name}`}>
      <div class="ff-deal-head">
        {!alone && <h2>{account.name}</h2>}
        {!alone && <OwnVerdict at={at} />}
        <LinkButton href={hashOf({ view: 'table', planId: plan.id, accountId: account.id, sheet: null })}>
          Across the table
        </LinkButton>
      </div>
      <div class="ff-deal-curve">{deal.doors === 0 ? <NoDoors /> : <PaybackCurve at={at} />}</div>
      <div class="ff-deal-figures">
        <DealFigures at={at} />
      </div>
      <div class="ff-deal-theirs">
        <TheirSide at={at} />
      </div>
      <div class="ff-deal-terms">
        <DealTerms at={at} />
        <CautionsFor place="deal" accountId={account.id} />
      </div>
    </article>
  );
}

/** The plan's verdict is its worst chain's; each chain has its own by the same lines. */
function OwnVerdict({ at }: { at: ShownDeal }): VNode | null {
  const say = useSay();
  const { plan, results, account, deal } = at;
  const verdict: Verdict = dealVerdict({ plan, deals: [deal], reading: results.reading, say });
  const text = withoutName(verdict.reason, account.name);
  return <VerdictLine verdict={verdict.state} text={text} />;
}

/** "Holds. Corner: pays back ..." stands under Corner's name as "Holds. Pays back ...". */
function withoutName(sentence: string, name: string): string {
  const start = sentence.indexOf(`${name}: `);
  if (start < 0) return sentence;
  const rest = sentence.slice(start + name.length + 2);
  return `${sentence.slice(0, start)}${rest.charAt(0).toUpperCase()}${rest.slice(1)}`;
}

function NoDoors(): VNode {
  return <EmptyState title="No doors yet. Add an opening under Doors, and the curve is drawn." />;
}
