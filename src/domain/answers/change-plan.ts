// A plan with one change of the answers in: the same the lifts are run on and the screen puts into the plan.
// Worked figure: 14 days earlier makes payment days of 30 to 16, and an early discount's 20 days to 16 with them.
import { dec } from '../money/decimal.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import { fillPerDoor, multipleOf } from '../rollout/cells.ts';
import type { Change } from './types.ts';

/** Cost of what nobody has priced: it is said beside the lift (`withoutItsCost`). */
const UNPRICED = { capitalAmount: '0', leadWeeks: 0, lifeWeeks: 1 } as const;

/** The changed plan; it still has to pass the rules. Throws for an id that is not in the plan (a bug). */
export function changedPlan(plan: Plan, change: Change): Plan {
  if ('accountId' in change)
    return onAccount(plan, change.accountId, (account) => accountWith(plan, account, change));
  if ('lineId' in change) return withShifts(plan, change);
  return onItem(plan, change.itemId, (item) => itemWith(item, change));
}

/** The fields a change writes, for a plan that has it in: what is typed there counts as typed. */
export function pathsOfChange(plan: Plan, change: Change): string[] {
  if ('lineId' in change) return [`business/lines/${change.lineId}/steps`];
  if ('itemId' in change) return [`items/${change.itemId}/supply/${ITEM_FIELDS[change.kind]}`];
  const base = `accounts/${change.accountId}`;
  switch (change.kind) {
    case 'paidEarlier':
      return [`${base}/terms/paymentDays`, `${base}/terms/earlyDiscount`];
    case 'paidOnTime':
      return [`${base}/terms/latenessDays`];
    case 'earlyDiscount':
      return [`${base}/terms/earlyDiscount`];
    case 'slottingOffRemittances':
      return [`${base}/slotting/settled`];
    case 'creditLimit':
      return [`${base}/creditLimitAmount`];
    case 'waveLater':
      return [`${base}/waves/${change.waveId}/openWeek`];
    case 'slowerDoors':
      return [`${base}/waves/${change.waveId}/doorsPerWeek`];
    case 'smallerFill': {
      const listings = plan.accounts.find(({ id }) => id === change.accountId)?.listings ?? [];
      return listings.flatMap(({ itemId }) => [
        `${base}/listings/${itemId}/depthUnits`,
        `${base}/listings/${itemId}/backStockUnits`,
      ]);
    }
  }
}

const ITEM_FIELDS: Record<ItemChange['kind'], keyof Item['supply']> = {
  capacityFrom: 'capacitySteps',
  stepEarlier: 'capacitySteps',
  rushOrders: 'expedite',
  depositShare: 'depositRate',
  supplierDays: 'supplierDays',
  coverWeeks: 'coverWeeks',
  smallerMinimum: 'minimumOrderUnits',
};

type AccountChange = Extract<Change, { accountId: string }>;
type ItemChange = Extract<Change, { itemId: string }>;

function accountWith(plan: Plan, account: Account, change: AccountChange): Account {
  const { terms } = account;
  switch (change.kind) {
    case 'paidEarlier': {
      const paymentDays = terms.paymentDays - change.days;
      const early = terms.earlyDiscount;
      const earlyDiscount = early && { ...early, days: Math.min(early.days, paymentDays) };
      return { ...account, terms: { ...terms, paymentDays, earlyDiscount } };
    }
    case 'paidOnTime':
      return { ...account, terms: { ...terms, latenessDays: terms.latenessDays - change.days } };
    case 'earlyDiscount': {
      const days = Math.min(change.days, terms.paymentDays);
      return { ...account, terms: { ...terms, earlyDiscount: { rate: change.rate, days, takenShare: '1' } } };
    }
    case 'slottingOffRemittances': {
      const slotting = account.slotting && { ...account.slotting, settled: 'offRemittances' as const };
      return { ...account, slotting };
    }
    case 'creditLimit':
      return { ...account, creditLimitAmount: change.amount };
    case 'waveLater':
      return onWave(account, change.waveId, (wave) => ({ ...wave, openWeek: wave.openWeek + change.weeks }));
    case 'slowerDoors':
      return onWave(account, change.waveId, (wave) => ({ ...wave, doorsPerWeek: change.doorsPerWeek }));
    case 'smallerFill':
      return { ...account, listings: account.listings.map((listing) => caseLess(plan, account, listing)) };
  }
}

function itemWith(item: Item, change: ItemChange): Item {
  const { supply } = item;
  const with_ = (changes: Partial<Item['supply']>): Item => ({ ...item, supply: { ...supply, ...changes } });
  switch (change.kind) {
    case 'capacityFrom': {
      const { fromWeek, unitsPerWeek } = change;
      const raised = supply.capacitySteps.map((step) =>
        step.fromWeek < fromWeek
          ? step
          : { ...step, unitsPerWeek: Math.max(step.unitsPerWeek, unitsPerWeek) },
      );
      if (raised.some((step) => step.fromWeek === fromWeek)) return with_({ capacitySteps: raised });
      const step = { id: freeId(raised), fromWeek, unitsPerWeek, ...UNPRICED };
      return with_({ capacitySteps: inOrder([...raised, step]) });
    }
    case 'stepEarlier': {
      const moved = supply.capacitySteps.map((step) =>
        step.id === change.stepId ? { ...step, fromWeek: change.fromWeek } : step,
      );
      return with_({ capacitySteps: inOrder(moved) });
    }
    case 'rushOrders':
      return with_({
        expedite: { leadWeeks: change.leadWeeks, extraAmountPerUnit: '0', mostUnitsPerWeek: null },
      });
    case 'depositShare':
      return with_({ depositRate: change.rate });
    case 'supplierDays':
      return with_({ supplierDays: supply.supplierDays + change.days });
    case 'coverWeeks':
      return with_({ coverWeeks: supply.coverWeeks + change.weeks });
    case 'smallerMinimum':
      return with_({ minimumOrderUnits: change.units });
  }
}

/** One shift more from a week on; later steps have at least as many. */
function withShifts(plan: Plan, change: Extract<Change, { kind: 'shiftFrom' }>): Plan {
  const { fromWeek, shifts } = change;
  const lines = plan.business.lines.map((line) => {
    if (line.id !== change.lineId) return line;
    const raised = line.steps.map((step) =>
      step.fromWeek < fromWeek ? step : { ...step, shifts: Math.max(step.shifts, shifts) },
    );
    if (raised.some((step) => step.fromWeek === fromWeek)) return { ...line, steps: raised };
    const step = { id: freeId(raised), fromWeek, shifts, ...UNPRICED };
    return { ...line, steps: inOrder([...raised, step]) };
  });
  return { ...plan, business: { ...plan.business, lines } };
}

/** A door's opening fill one case (layer, pallet) smaller: back stock goes first, then units behind the facings. */
function caseLess(
  plan: Plan,
  account: Account,
  listing: Account['listings'][number],
): Account['listings'][number] {
  const item = plan.items.find(({ id }) => id === listing.itemId);
  if (!item) return listing;
  const most = fillPerDoor(account, listing, item) - multipleOf(account.ordering.orderIn, item);
  const { facings, depthUnits } = listing;
  if (most < facings) return listing;
  const depth = Math.min(depthUnits, Math.floor(most / facings));
  return {
    ...listing,
    depthUnits: depth,
    backStockUnits: Math.min(listing.backStockUnits, most - depth * facings),
  };
}

/** A credit limit twice as high, as decimal text. */
export function twice(amount: string): string {
  return dec(amount).times(2).toFixed();
}

/** A deposit share half as large, as decimal text. */
export function halfOf(rate: string): string {
  return dec(rate).div(2).toDecimalPlaces(6).toFixed();
}

function onAccount(plan: Plan, id: string, change: (account: Account) => Account): Plan {
  return { ...plan, accounts: replaced(plan.accounts, id, change) };
}

function onItem(plan: Plan, id: string, change: (item: Item) => Item): Plan {
  return { ...plan, items: replaced(plan.items, id, change) };
}

function onWave(
  account: Account,
  id: string,
  change: (wave: Account['waves'][number]) => Account['waves'][number],
) {
  return { ...account, waves: replaced(account.waves, id, change) };
}

function replaced<T extends { id: string }>(list: readonly T[], id: string, change: (each: T) => T): T[] {
  if (!list.some((each) => each.id === id)) throw new Error(`there is no ${id} in this plan`);
  return list.map((each) => (each.id === id ? change(each) : each));
}

function inOrder<T extends { fromWeek: number }>(steps: readonly T[]): T[] {
  return [...steps].sort((one, other) => one.fromWeek - other.fromWeek);
}

function freeId(list: readonly { id: string }[]): string {
  let at = list.length + 1;
  while (list.some(({ id }) => id === `added${at}`)) at++;
  return `added${at}`;
}
