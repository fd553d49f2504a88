// Which ladder the address names, and the links between ladders. Where it names none, the one the verdict speaks of is
// shown, else the plan's first.
// Worked example: #/p/spring/ladder/corner is Corner's first listed product.
import { hashOf } from '../../app/route.ts';
import type { Place } from '../../domain/ladder/rungs.ts';
import type { LadderResult } from '../../domain/ladder/types.ts';
import type { Account, Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import { useSession, useShown } from '../shared/session-context.ts';

export interface ShownLadder extends Place {
  ladder: LadderResult;
  results: Results;
  older: boolean;
}

/** The ladder at hand; null while the plan has no chain, or it has not been computed. */
export function useLadder(): ShownLadder | null {
  const shown = useShown();
  const { route } = useSession();
  if (shown === null || route.value.view !== 'ladder') return null;
  const { plan, results, older } = shown;
  const { accountId, itemId } = route.value;
  const { verdicts } = results;
  const account =
    accountNamed(plan, accountId) ?? accountNamed(plan, verdicts.ladder.accountId) ?? plan.accounts[0];
  if (!account) return null;
  const wanted = itemId ?? (verdicts.ladder.accountId === account.id ? verdicts.ladder.itemId : null);
  const listing = account.listings.find((each) => each.itemId === wanted) ?? account.listings[0];
  const item = plan.items.find(({ id }) => id === listing?.itemId);
  const ladder = results.ladders.find(
    (each) => each.accountId === account.id && each.itemId === listing?.itemId,
  );
  return listing && item && ladder ? { plan, account, listing, item, ladder, results, older } : null;
}

/** The ladder's address. */
export function ladderHash(planId: string, accountId: string, itemId: string): string {
  return hashOf({ view: 'ladder', planId, accountId, itemId, sheet: null });
}

function accountNamed(plan: Plan, id: string | null): Account | undefined {
  return plan.accounts.find((account) => account.id === id);
}
