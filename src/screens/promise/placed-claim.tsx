// The claim placed: the ruler, where the claim lies on it, what would have to be true, multiples of what runs today; or
// what is missing for that. Worked example: 170 doors claimed by 29 Jun 2026, above 55 % of futures.
import type { VNode } from 'preact';
import { useMemo, useRef, useState } from 'preact/hooks';
import type { NotPlaced } from '../../domain/promise/place-claim.ts';
import { EmptyState } from '../../widgets/index.ts';
import { Fold, Part } from '../shared/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import { ClaimFields } from './claim.tsx';
import type { FollowedClaim } from './claim-work.ts';
import { type Placed, placedOf, timesTodayText } from './placed.ts';
import { PromiseRuler } from './ruler.tsx';
import { claimText } from './words.ts';

const MISSING: Record<NotPlaced, string> = {
  noClaim: 'No claim yet. Add what was promised: doors, units or revenue, and by when.',
  tooWide:
    'With a rate of sale that may be anything nothing can be said of units or revenue. Give it less room under “How far things may come out otherwise”: 30 % for instance.',
  partMissing: 'Still being fetched …',
  noEvidence: 'Nothing speaks for the claim yet. Say how far each account is agreed, or add store sales.',
  beforeStart: 'The claim is for a date before the plan begins. Give it a date inside the plan.',
  pastEnd:
    'The claim is for a date after the plan’s last week. Give the plan more weeks, or the claim a nearer date.',
};

export interface PlacedClaimProps {
  shown: Shown;
  followed: FollowedClaim;
  /** Its fields stand below it, one tap away: what is typed moves the ruler above. */
  canChange?: boolean;
}

export function PlacedClaim({ shown, followed, canChange = false }: PlacedClaimProps): VNode {
  const say = useSay();
  const { plan } = shown;
  const { claim } = plan.promise;
  const { placed, settling } = usePlaced(shown);
  const times = timesTodayText(followed.plan, followed.work?.timesToday ?? null, say);
  const wasMissing = useRef(false);
  if (claim === null) {
    wasMissing.current = true;
    return (
      <EmptyState title={MISSING.noClaim}>
        <div class="ff-no-print">
          <ClaimFields />
        </div>
      </EmptyState>
    );
  }
  return (
    <Part title="The claim in what the evidence supports">
      <p>
        <strong>{claimText(plan, claim, say)}</strong>
        {claim.who !== '' && <span class="ff-quiet ff-promise-who"> {claim.who}</span>}
      </p>
      {placed.why === null ? (
        <div class={settling ? 'ff-stack ff-is-older' : 'ff-stack'}>
          <PromiseRuler figures={placed.ruler} />
          <div class="ff-said">
            {placed.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            {times !== null && <p class={followed.older ? 'ff-is-older' : undefined}>{times}</p>}
          </div>
        </div>
      ) : (
        <EmptyState title={MISSING[placed.why]}>
          {placed.why === 'noEvidence' && (
            <p class="ff-least">
              A friendly word is not a purchase order: doors count by how far they are agreed.
            </p>
          )}
        </EmptyState>
      )}
      {canChange && (
        <ClaimFold
          isAsked={wasMissing.current || (placed.why !== null && ASKS_FOR_ANOTHER.has(placed.why))}
        />
      )}
    </Part>
  );
}

/** Where only another claim can be placed. */
const ASKS_FOR_ANOTHER: ReadonlySet<NotPlaced> = new Set(['beforeStart', 'pastEnd']);

/** Open from the start where it is asked for, or was just added; a claim that can be placed again leaves it open. */
function ClaimFold({ isAsked }: { isAsked: boolean }): VNode {
  const [open] = useState(isAsked);
  return (
    <Fold label="Change the claim" open={open}>
      <ClaimFields />
    </Fold>
  );
}

/** Doors at once; units and revenue take longer than a frame has, so theirs come when typing rests. */
function usePlaced({ plan, results }: Shown): { placed: Placed; settling: boolean } {
  const say = useSay();
  const isQuick = plan.promise.claim === null || plan.promise.claim.of === 'doors';
  const from = [plan, results, say];
  const settled = useSettled(from, () => placedOf(plan, results, say));
  const quick = useMemo(() => (isQuick ? placedOf(plan, results, say) : null), from);
  return { placed: quick ?? settled.value, settling: quick === null && settled.settling };
}
