// For an investor: the claim and what speaks for it, on paper. The claim in the range the evidence supports, what would
// have to be true, store sales, how far each account is agreed with its papers, the range of cash, what hangs on one
// customer, and what none of it is. Worked example: two pages of A4 for the first example.
import type { VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { Button, ButtonRow, Caution, LinkButton } from '../../widgets/index.ts';
import { useClaimWork } from '../promise/claim-work.ts';
import { EvidenceTable } from '../promise/evidence-table.tsx';
import { LeaningPart } from '../promise/leaning.tsx';
import { MustPart } from '../promise/must-be-true.tsx';
import { PlacedClaim } from '../promise/placed-claim.tsx';
import { DrawnRange, useRange } from '../promise/range.tsx';
import { EvidenceWarnings } from '../promise/warnings.tsx';
import { Part, Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { VerdictHead, View } from '../shared/view.tsx';
import { AccountsTable } from './accounts-table.tsx';
import './investor.css';

export function InvestorScreen(): VNode {
  const shown = useShown();
  return (
    <View title="For an investor" verdict={null}>
      {shown !== null && (
        <Whole older={shown.older}>
          <Investor shown={shown} />
        </Whole>
      )}
    </View>
  );
}

function Investor({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const { plan } = shown;
  const followed = useClaimWork(plan);
  return (
    <div class="ff-investor ff-stack">
      <div>
        <p class="ff-investor-name">{plan.name}</p>
        <p class="ff-least ff-quiet">
          A plan of {plan.horizonWeeks} weeks from {say.date(plan.startDate)}, in {plan.currency}.
        </p>
      </div>
      <VerdictHead verdict="promise" />
      <Caution>
        Computed, not advice. It is worked out from what was typed into this plan, and from nothing else; a
        licensed professional should confirm terms.
      </Caution>
      <div class="ff-no-print">
        <ButtonRow>
          <Button kind="primary" onPress={() => window.print()}>
            Print these pages
          </Button>
          <LinkButton href={hashOf({ view: 'promise', planId: plan.id, sheet: null })}>
            Back to Promise
          </LinkButton>
        </ButtonRow>
      </div>
      <PlacedClaim shown={shown} followed={followed} />
      <MustPart followed={followed} />
      <Part title="What stores sold">
        <EvidenceTable plan={plan} />
        <EvidenceWarnings plan={plan} />
      </Part>
      <Part title="How far each account is agreed">
        <AccountsTable plan={plan} results={shown.results} />
      </Part>
      <RangePaper shown={shown} />
      <LeaningPart followed={followed} />
      <Part title="What this is not">
        <ul class="ff-said">
          <li>
            No forecast: ranges say how far the evidence reaches, if what it doesn’t hold stays as it is.
          </li>
          <li>
            Chances of accounts are judgement, by how far each is agreed; papers are named, not verified here.
          </li>
          <li>
            A wider range than shown is likely where stores were few, of one chain, or chosen for being good.
          </li>
        </ul>
      </Part>
    </div>
  );
}

/** Drawn as the page is opened: it is one of the things that the page is for. */
function RangePaper({ shown: of }: { shown: Shown }): VNode {
  const { view, shown, ask } = useRange();
  const isIdle = view.at === 'idle';
  useEffect(() => {
    if (isIdle) ask();
  }, []);
  return (
    <Part title="How it may come out">
      {shown === null && view.at !== 'running' && <p>The range of cash has not been drawn.</p>}
      {view.at === 'trouble' && <p role="alert">{view.trouble}</p>}
      {shown !== null && <DrawnRange of={of} range={shown} isOlder={view.older} />}
      {view.at === 'running' && <p class="ff-least ff-no-print">Drawing …</p>}
      {view.at !== 'running' && (view.at !== 'whole' || view.older) && (
        <div class="ff-no-print">
          <Button onPress={ask}>Draw the range</Button>
        </div>
      )}
    </Part>
  );
}
