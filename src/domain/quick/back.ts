// From a quick plan back to its seven numbers, so that they can be read and typed over in the plan itself.
// Worked figure: with 350 stores in place of 60 the doors a week follow, 44 in place of 8, unless someone typed them.
import type { BasisNote, Plan } from '../plan/index.ts';
import { getAt, hasAt, isUnder, setAt } from '../plan/path.ts';
import { fine, type Outcome } from '../problems.ts';
import { ACCOUNT_ID, DISTRIBUTOR_ID, ITEM_ID, SHOP_ID } from './defaults.ts';
import { quickPlan } from './plan.ts';
import { otherRegion, REGIONS, type Region } from './regions.ts';
import { SEVEN_KEYS, type SevenKey, type SevenNumbers } from './seven.ts';

/** Where each number, and the free-fill switch, is kept in a quick plan. */
export const SEVEN_PATHS: Record<SevenKey | 'freeFill', string> = {
  shelfPrice: `accounts/${ACCOUNT_ID}/listings/${ITEM_ID}/shelf/amount`,
  landedPerUnit: `items/${ITEM_ID}/costLines/landed/rule/amount`,
  retailerMarginRate: `accounts/${ACCOUNT_ID}/hands/${SHOP_ID}/rule/rate`,
  moneyDownPerStore: `accounts/${ACCOUNT_ID}/slotting/amount`,
  stores: `accounts/${ACCOUNT_ID}/waves/first/doors`,
  unitsPerStoreWeek: `accounts/${ACCOUNT_ID}/listings/${ITEM_ID}/unitsPerStoreWeek`,
  cash: 'business/openingCashAmount',
  freeFill: `accounts/${ACCOUNT_ID}/listings/${ITEM_ID}/freeCasesPerDoor`,
};

/** Defaults that follow from the numbers: they are made anew with them for as long as nobody typed over them. */
const DERIVED_PATHS = [
  `accounts/${ACCOUNT_ID}/allowances/freight/amount`,
  `accounts/${ACCOUNT_ID}/waves/first/doorsPerWeek`,
];

const HANDS_PATH = `accounts/${ACCOUNT_ID}/hands`;
const PAID_IN_PATH = 'business/openingBooks/paidInAmount';

/** The seven numbers of a plan that has a quick plan's shape, or null: then the plan holds more than seven numbers say. */
export function sevenOf(plan: Plan): SevenNumbers | null {
  const [account] = plan.accounts;
  const [item] = plan.items;
  if (!account || !item || plan.accounts.length > 1 || plan.items.length > 1) return null;
  if (!Object.values(SEVEN_PATHS).every((path) => hasAt(plan, path))) return null;
  const shape = [
    item.costLines.length === 1,
    account.listings.length === 1,
    account.waves.length === 1,
    account.runningDoors.length === 0,
    account.hands.length === (account.hands.some(({ id }) => id === DISTRIBUTOR_ID) ? 2 : 1),
    account.slotting?.per === 'door',
  ];
  if (shape.includes(false)) return null;
  const typed = Object.fromEntries(SEVEN_KEYS.map((key) => [key, getAt(plan, SEVEN_PATHS[key])]));
  return {
    ...(typed as Pick<SevenNumbers, SevenKey>),
    freeFill: getAt(plan, SEVEN_PATHS.freeFill) !== 0,
    distributor: account.hands.length === 2,
    productName: item.name,
    chainName: account.name,
  };
}

/**
 * A quick plan with other numbers: everything else typed into it stays, defaults that follow from the numbers follow,
 * and names and route are as `seven` says. A plan of another shape is a bug: ask sevenOf first.
 */
export function withSeven(plan: Plan, seven: SevenNumbers): Outcome<Plan> {
  const before = sevenOf(plan);
  if (!before) throw new Error(`plan ${plan.id} is not of a quick plan's shape`);
  const made = quickPlan({ seven, region: regionLike(plan), startDate: plan.startDate, planId: plan.id });
  if (!made.ok) return made;
  const fresh = made.value;
  const noted = (path: string) => plan.basis.some((note) => note.path === path);
  const reroutes = before.distributor !== seven.distributor;
  const follow = [
    ...(reroutes ? [HANDS_PATH] : []),
    ...Object.values(SEVEN_PATHS),
    ...DERIVED_PATHS.filter(noted),
    ...(before.cash === getAt(plan, PAID_IN_PATH) ? [PAID_IN_PATH] : []),
    `items/${ITEM_ID}/name`,
    `accounts/${ACCOUNT_ID}/name`,
    `${HANDS_PATH}/${SHOP_ID}/name`,
  ];
  const changed = follow.reduce((next, path) => setAt(next, path, getAt(fresh, path)), plan);
  return fine({ ...changed, basis: notesAfter(plan.basis, fresh.basis, reroutes) });
}

/** Notes still standing, the derived ones with their new ends; of another route, the notes of that route. */
function notesAfter(old: readonly BasisNote[], fresh: readonly BasisNote[], reroutes: boolean): BasisNote[] {
  const kept = old.filter(({ path }) => !(reroutes && isUnder(path, HANDS_PATH)));
  const renewed = kept.map((note) =>
    DERIVED_PATHS.includes(note.path) ? (fresh.find(({ path }) => path === note.path) ?? note) : note,
  );
  return reroutes ? [...renewed, ...fresh.filter(({ path }) => isUnder(path, HANDS_PATH))] : renewed;
}

function regionLike(plan: Plan): Region {
  const known = REGIONS.find(({ market, currency }) => market === plan.market && currency === plan.currency);
  return { ...(known ?? otherRegion(plan.currency)), market: plan.market, tax: plan.shelfTax };
}
