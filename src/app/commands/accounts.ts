// Commands about an account: its hands, listings, waves, allowances and fees. What is added is passed in whole; what
// would leave the plan unsound (an account with no listing, a ladder with nothing to solve) is refused by the checks.
// Worked example: addWave(plan, { accountId: 'corner', wave: { id: 'second', openWeek: 26, doors: 290, doorsPerWeek: 30 } })
import type { Account, BasisNote, Hand, Listing, Plan } from '../../domain/plan/index.ts';
import type { Outcome } from '../../domain/problems.ts';
import { withoutAccount, withoutWave } from '../../domain/readiness/leave-out.ts';
import { addPlace, append, changed, removePlace, setField, withNotes } from './field.ts';

type Wave = Account['waves'][number];
type Allowance = Account['allowances'][number];
type Fee = Account['openingFees'][number];
type Promotion = Account['promotions'][number];
type Of<Key extends string> = Record<'accountId' | Key, string>;

export function addAccount(
  plan: Plan,
  args: { account: Account; notes: readonly BasisNote[] },
): Outcome<Plan> {
  const added = append(plan, 'accounts', args.account);
  return added.ok ? { ok: true, value: withNotes(added.value, args.notes) } : added;
}

export function removeAccount(plan: Plan, { accountId }: Of<never>): Outcome<Plan> {
  const left = withoutAccount(withScansOfNoChain(plan, accountId), accountId);
  return removePlace(left, { path: `accounts/${accountId}` });
}

/** What its stores sold stays evidence, of a chain that the plan doesn't name. */
function withScansOfNoChain(plan: Plan, accountId: string): Plan {
  const { scans, reorders } = plan.promise;
  const free = <T extends { accountId: string | null }>(each: T): T =>
    each.accountId === accountId ? { ...each, accountId: null } : each;
  return { ...plan, promise: { ...plan.promise, scans: scans.map(free), reorders: reorders.map(free) } };
}

/** `index` counts from us to the shelf; the last hand is the shelf's. */
export function addHand(plan: Plan, args: { accountId: string; hand: Hand; index: number }): Outcome<Plan> {
  return addPlace(plan, {
    listPath: `accounts/${args.accountId}/hands`,
    index: args.index,
    place: args.hand,
  });
}

/** Its locks on the account's ladders go with it. */
export function removeHand(plan: Plan, { accountId, handId }: Of<'handId'>): Outcome<Plan> {
  const accounts = changed(plan.accounts, accountId, (account) => ({
    ...account,
    listings: account.listings.map((listing) => ({
      ...listing,
      lockedRungs: listing.lockedRungs.filter((rung) => rung !== handId),
    })),
  }));
  return removePlace({ ...plan, accounts }, { path: `accounts/${accountId}/hands/${handId}` });
}

export function addListing(plan: Plan, args: { accountId: string; listing: Listing }): Outcome<Plan> {
  return append(plan, `accounts/${args.accountId}/listings`, args.listing);
}

/** Promotions of that item alone go with it; those of others too go on without it. */
export function removeListing(plan: Plan, { accountId, itemId }: Of<'itemId'>): Outcome<Plan> {
  const account = plan.accounts.find(({ id }) => id === accountId);
  const promoted = account?.promotions.filter(({ itemIds }) => itemIds?.includes(itemId)) ?? [];
  const left = promoted.reduce<Outcome<Plan>>(
    (before, promotion) => (before.ok ? unpromoted(before.value, { accountId, itemId, promotion }) : before),
    { ok: true, value: plan },
  );
  return left.ok ? removePlace(left.value, { path: `accounts/${accountId}/listings/${itemId}` }) : left;
}

function unpromoted(plan: Plan, args: Of<'itemId'> & { promotion: Promotion }): Outcome<Plan> {
  const { accountId, itemId, promotion } = args;
  const path = `accounts/${accountId}/promotions/${promotion.id}`;
  const others = promotion.itemIds?.filter((id) => id !== itemId) ?? [];
  return others.length === 0
    ? removePlace(plan, { path })
    : setField(plan, { path: `${path}/itemIds`, value: others });
}

export function addWave(plan: Plan, args: { accountId: string; wave: Wave }): Outcome<Plan> {
  return append(plan, `accounts/${args.accountId}/waves`, args.wave);
}

/** Gates that held back nothing else go with it. */
export function removeWave(plan: Plan, { accountId, waveId }: Of<'waveId'>): Outcome<Plan> {
  return removePlace(withoutWave(plan, { accountId, waveId }), {
    path: `accounts/${accountId}/waves/${waveId}`,
  });
}

/** Last in the order; movePlace changes it, which counts for discounts in series. */
export function addAllowance(plan: Plan, args: { accountId: string; allowance: Allowance }): Outcome<Plan> {
  return append(plan, `accounts/${args.accountId}/allowances`, args.allowance);
}

export function removeAllowance(plan: Plan, { accountId, allowanceId }: Of<'allowanceId'>): Outcome<Plan> {
  return removePlace(plan, { path: `accounts/${accountId}/allowances/${allowanceId}` });
}

export function addFee(plan: Plan, args: { accountId: string; fee: Fee }): Outcome<Plan> {
  return append(plan, `accounts/${args.accountId}/openingFees`, args.fee);
}

export function removeFee(plan: Plan, { accountId, feeId }: Of<'feeId'>): Outcome<Plan> {
  return removePlace(plan, { path: `accounts/${accountId}/openingFees/${feeId}` });
}
