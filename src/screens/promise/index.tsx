// Promise: is what somebody claims believable on the evidence there is? The claim against the range the evidence
// supports, what would have to be true, the evidence, how far each account is agreed, what hangs on one customer, and
// the range of the plan drawn many times over.
// Worked example: 1,900 doors claimed, 340 to 1,120 in 8 of 10 futures: a chance under 5 %, and doors bind first.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { chanceWords } from '../../domain/promise/chance-words.ts';
import { placeClaim } from '../../domain/promise/place-claim.ts';
import { ButtonRow, Caution, EmptyState, LinkButton, useWide } from '../../widgets/index.ts';
import { Part, Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { type FollowedClaim, useClaimWork } from './claim-work.ts';
import { EvidencePart } from './evidence.tsx';
import { accountNote, LeaningPart } from './leaning.tsx';
import { MustPart } from './must-be-true.tsx';
import { PlacedClaim } from './placed-claim.tsx';
import { RangePart } from './range.tsx';
import { AccountStanding } from './standing.tsx';
import { EvidenceWarnings } from './warnings.tsx';
import './promise.css';

export function PromiseScreen(): VNode {
  const shown = useShown();
  return (
    <View title="Promise" verdict="promise">
      {shown !== null && (
        <Whole older={shown.older}>
          <PromiseParts shown={shown} />
        </Whole>
      )}
    </View>
  );
}

/** On a phone what the verdict says comes first; where it is wide it stands between evidence and range. */
function PromiseParts({ shown }: { shown: Shown }): VNode {
  const wide = useWide();
  const followed = useClaimWork(shown.plan);
  const leaning = <LeaningPart key="leaning" followed={followed} />;
  const middle = (
    <div class="ff-promise-column" key="reasons">
      <PlacedClaim shown={shown} followed={followed} canChange />
      <MustPart followed={followed} />
      <EvidenceWarnings plan={shown.plan} />
      {wide && leaning}
    </div>
  );
  const left = (
    <div class="ff-promise-column" key="evidence">
      <EvidencePart />
      <AccountsPart shown={shown} followed={followed} />
    </div>
  );
  const right = (
    <div class="ff-promise-column" key="range">
      {!wide && leaning}
      <RangePart shown={shown} />
      <Caution>Computed, not advice. It knows the evidence that was entered, and nothing else.</Caution>
    </div>
  );
  return <div class="ff-promise">{wide ? [left, middle, right] : [middle, left, right]}</div>;
}

function AccountsPart({
  shown: { plan, results },
  followed,
}: {
  shown: Shown;
  followed: FollowedClaim;
}): VNode {
  const say = useSay();
  const chance = (share: number) => chanceWords(share, say.percent);
  const doors = useMemo(() => {
    const { placed } = placeClaim(plan, results.pass);
    return new Map(placed?.doors.accounts.map(({ accountId, expected }) => [accountId, expected]));
  }, [plan, results]);
  const expectedOf = (accountId: string) => doors.get(accountId) ?? null;
  const noteOf = (accountId: string) =>
    accountNote(
      followed.plan,
      followed.work?.byAccount.find((each) => each.accountId === accountId),
      chance,
    );
  if (plan.accounts.length === 0) {
    return (
      <Part title="How far each account is agreed">
        <EmptyState title="No chain yet. Add one to say how far it is agreed.">
          <LinkButton kind="primary" href={hashOf({ view: 'inputs', planId: plan.id, sheet: null })}>
            Add a chain in the inputs
          </LinkButton>
        </EmptyState>
      </Part>
    );
  }
  return (
    <Part title="How far each account is agreed">
      <div>
        {plan.accounts.map((account) => (
          <AccountStanding
            key={account.id}
            account={account}
            note={noteOf(account.id)}
            expected={expectedOf(account.id)}
          />
        ))}
      </div>
      <ButtonRow>
        <LinkButton href={hashOf({ view: 'investor', planId: plan.id, sheet: null })}>
          For an investor: all of it on paper
        </LinkButton>
      </ButtonRow>
    </Part>
  );
}
