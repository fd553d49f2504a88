/**
 * The ladder of the one listing of a built plan, and short ways to say a hand and a cost. Throws with the problem's own
 * sentence where there is no ladder, so that a test shows why.
 */
import { ladderFor } from '../../src/domain/ladder/ladder.ts';
import type { LadderResult } from '../../src/domain/ladder/types.ts';
import type { Hand, Plan } from '../../src/domain/plan/index.ts';
import { type Outcome, type Problem, sentence } from '../../src/domain/problems.ts';
import { aCostLine, aHand, aListing, anAccount, anItem, aPlan } from './builders.ts';

/** The first listing's outcome. */
export function outcomeOf(plan: Plan): Outcome<LadderResult> {
  const account = plan.accounts[0];
  const listing = account?.listings[0];
  const item = plan.items.find(({ id }) => id === listing?.itemId);
  if (!account || !listing || !item) throw new Error('the plan lists nothing');
  return ladderFor({ plan, account, listing, item });
}

export function ladderOf(plan: Plan): LadderResult {
  return got(outcomeOf(plan));
}

export function got<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(outcome.problems.map(sentence).join(' '));
}

export function problemsOf(outcome: Outcome<unknown>): readonly Problem[] {
  if (outcome.ok) throw new Error('expected a problem');
  return outcome.problems;
}

/** A plan of one item landed at `landed` on one account's shelf. */
export function priced(args: {
  landed: string;
  list: Plan['accounts'][number]['listings'][number]['list'];
  hands: readonly Hand['rule'][];
  shelf: Plan['accounts'][number]['listings'][number]['shelf'];
  account?: Partial<Plan['accounts'][number]>;
  plan?: Partial<Plan>;
}): Plan {
  const hands = args.hands.map((rule, place) => aHand({ id: `hand-${place}`, name: `Hand ${place}`, rule }));
  return aPlan({
    items: [anItem({ costLines: [aCostLine({ rule: { by: 'unit', amount: args.landed } })] })],
    accounts: [
      anAccount({ hands, listings: [aListing({ list: args.list, shelf: args.shelf })], ...args.account }),
    ],
    ...args.plan,
  });
}
