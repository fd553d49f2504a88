// Commands about an item and its cost lines.
// Worked example: removing the line "carton" also takes "carton" out of the bases that a duty line names.
import type { BasisNote, Item, Plan } from '../../domain/plan/index.ts';
import { type Outcome, trouble } from '../../domain/problems.ts';
import { removeListing } from './accounts.ts';
import { append, changed, removePlace, withNotes } from './field.ts';

type CostLine = Item['costLines'][number];

export function addItem(plan: Plan, args: { item: Item; notes: readonly BasisNote[] }): Outcome<Plan> {
  const added = append(plan, 'items', args.item);
  return added.ok ? { ok: true, value: withNotes(added.value, args.notes) } : added;
}

/** Its listings and its evidence go with it; where it is the only item an account lists, the account has to go, or list another, first. */
export function removeItem(plan: Plan, { itemId }: { itemId: string }): Outcome<Plan> {
  const only = plan.accounts.find(({ listings }) => listings.every((listing) => listing.itemId === itemId));
  if (only) {
    const got = 'the removal of the only item it lists';
    return trouble({
      code: 'reference-unknown',
      path: `accounts/${only.id}/listings`,
      got,
      expected: 'another listed item first',
    });
  }
  const unlisted = plan.accounts
    .filter((account) => account.listings.some((listing) => listing.itemId === itemId))
    .reduce<Outcome<Plan>>(
      (before, { id }) => (before.ok ? removeListing(before.value, { accountId: id, itemId }) : before),
      { ok: true, value: plan },
    );
  return unlisted.ok
    ? removePlace(withoutEvidence(unlisted.value, itemId), { path: `items/${itemId}` })
    : unlisted;
}

function withoutEvidence(plan: Plan, itemId: string): Plan {
  const { scans, reorders, priors } = plan.promise;
  const others = <T extends { itemId: string }>(list: readonly T[]): T[] =>
    list.filter((each) => each.itemId !== itemId);
  const promise = {
    ...plan.promise,
    scans: others(scans),
    reorders: others(reorders),
    priors: others(priors),
  };
  return { ...plan, promise };
}

export function addCostLine(plan: Plan, args: { itemId: string; costLine: CostLine }): Outcome<Plan> {
  return append(plan, `items/${args.itemId}/costLines`, args.costLine);
}

/** A line that took a share of it and of nothing else goes too: a share of nothing is no cost. */
export function removeCostLine(plan: Plan, args: { itemId: string; costLineId: string }): Outcome<Plan> {
  const item = plan.items.find(({ id }) => id === args.itemId);
  const leaning = (item?.costLines ?? []).filter(
    ({ rule }) => rule.by === 'share' && rule.of.length === 1 && rule.of[0] === args.costLineId,
  );
  const alone = leaning.reduce<Outcome<Plan>>(
    (before, { id }) => (before.ok ? removeCostLine(before.value, { ...args, costLineId: id }) : before),
    { ok: true, value: plan },
  );
  if (!alone.ok) return alone;
  const items = changed(alone.value.items, args.itemId, (each) => ({
    ...each,
    costLines: each.costLines.map((line) => withoutBase(line, args.costLineId)),
  }));
  return removePlace(
    { ...alone.value, items },
    { path: `items/${args.itemId}/costLines/${args.costLineId}` },
  );
}

function withoutBase(line: CostLine, id: string): CostLine {
  if (line.rule.by !== 'share' || !line.rule.of.includes(id)) return line;
  return { ...line, rule: { ...line.rule, of: line.rule.of.filter((base) => base !== id) } };
}
