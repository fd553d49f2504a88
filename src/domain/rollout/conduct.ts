// How an account behaves beside its terms, in step 6: what its credit limit holds back, what a short delivery is charged,
// what drops and pallets cost. Only plans with such an account come here (state.conduct); PASS.md says it in words.
// Worked figure: a limit of 1,000.00, 376.00 owed, 2.60 a unit: room for 240 units, 20 cases of 12.
import { mulDiv, timesPrice, timesPriceAndRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import type { Cohort, Compiled, CompiledAccount, CompiledConduct, CompiledListing } from './compiled.ts';
import type { AccountState, ListingWeek, State } from './state.ts';

/** Of the week at hand: what orders asked for, let go and were held back, summed as they are looked at. */
export interface ConductState {
  /** By account, in 1/10,000: what has been shipped this week and will be invoiced, tax included. */
  used: Float64Array;
  /** By listing: units open less units held back. */
  due: Float64Array;
  /** By cohort: whole cases (or layers, or pallets) that left for it. */
  cases: Float64Array;
}

/** Null when no account of the plan asks for anything of it. */
export function newConduct({ accounts, listings, cohorts }: Compiled): ConductState | null {
  if (accounts.every(({ conduct }) => conduct === null)) return null;
  return {
    used: new Float64Array(accounts.length),
    due: new Float64Array(listings.length),
    cases: new Float64Array(cohorts.length),
  };
}

/** One order in its turn. */
export interface OrderInTurn {
  listing: number;
  /** -1: an order of the account's depot. */
  cohort: number;
  /** What it is made up in: a case, a layer, a pallet. */
  caseUnits: number;
  /** Units of it not shipped yet, and what stock lets leave of them. */
  open: number;
  could: number;
  /** Units of it that would leave free and not be invoiced. */
  free: number;
  week: number;
}

/** Units of the order that may leave; what a limit holds back is not due. */
export function unitsWithinTerms(state: State, own: ConductState, order: OrderInTurn): number {
  const { compiled } = state;
  const { account } = compiled.listings[order.listing] as CompiledListing;
  const { conduct } = compiled.accounts[account] as CompiledAccount;
  if (conduct === null) return order.could;
  const ships =
    conduct.creditLimit === null ? order.could : withinLimit(state, own, order, conduct.creditLimit);
  const heldBack = order.could - ships;
  (state.accounts[account] as AccountState).heldBack += heldBack;
  own.due[order.listing] = (own.due[order.listing] ?? 0) + order.open - heldBack;
  if (order.cohort >= 0) own.cases[order.cohort] = (own.cases[order.cohort] ?? 0) + ships / order.caseUnits;
  return ships;
}

/** Whole cases as far as the limit leaves room for what will be invoiced; free units need none. */
function withinLimit(state: State, own: ConductState, order: OrderInTurn, limit: number): number {
  const { compiled } = state;
  const { account, invoicePrice } = compiled.listings[order.listing] as CompiledListing;
  const vat = compiled.business.vat?.sales ?? 0;
  const price = mulDiv(invoicePrice[order.week] ?? 0, 1_000_000 + vat, 1_000_000);
  if (price === 0) return order.could;
  const owed = (state.accounts[account] as AccountState).receivable;
  const room = Math.max(0, (limit - owed) * compiled.perMinor - (own.used[account] ?? 0));
  const most = Math.min(order.could, order.free + Math.floor(room / price));
  const ships = Math.floor(most / order.caseUnits) * order.caseUnits;
  own.used[account] = (own.used[account] ?? 0) + (ships - Math.min(order.free, ships)) * price;
  return ships;
}

/** After the documents of shipping: short deliveries are charged, drops and pallets paid; the week's sums begin anew. */
export function postConduct(state: State, own: ConductState, week: number): void {
  const { accounts } = state.compiled;
  for (let a = 0; a < accounts.length; a++) {
    const { conduct } = accounts[a] as CompiledAccount;
    if (conduct?.service) chargeShort(state, own, conduct.service, a, week);
    if (conduct?.delivery) payDeliveries(state, own, conduct.delivery, a, week);
  }
  own.used.fill(0);
  own.due.fill(0);
  own.cases.fill(0);
}

type Service = NonNullable<CompiledConduct['service']>;
type Delivery = NonNullable<CompiledConduct['delivery']>;

const shippedOf = ({ shippedPaid, shippedFree }: ListingWeek): number => shippedPaid + shippedFree;

/** Where less left than the account's least share of what was due: a charge on the value of what is short, by item. */
function chargeShort(state: State, own: ConductState, terms: Service, a: number, week: number): void {
  const { compiled, books } = state;
  const { listings } = compiled.accounts[a] as CompiledAccount;
  let due = 0;
  let shipped = 0;
  for (const l of listings) {
    due += own.due[l] ?? 0;
    shipped += shippedOf(state.listings[l] as ListingWeek);
  }
  if (due === 0 || shipped * 1_000_000 >= due * terms.leastFillRate) return;
  for (const l of listings) {
    const { invoicePrice, item } = compiled.listings[l] as CompiledListing;
    const short = (own.due[l] ?? 0) - shippedOf(state.listings[l] as ListingWeek);
    const price = { tenThousandths: invoicePrice[week] ?? 0, perMinor: compiled.perMinor };
    const amount = timesPriceAndRate(short, price, terms.chargeRate);
    if (amount === 0) continue;
    post(books, E.shortCharged, amount, a, item);
    (state.accounts[a] as AccountState).claims.push({ amount, fromWeek: week + terms.lagWeeks });
  }
}

/** A sum a drop and a sum a pallet begun, over what left for the account this week. */
function payDeliveries(state: State, own: ConductState, terms: Delivery, a: number, week: number): void {
  const { compiled, books } = state;
  const { listings } = compiled.accounts[a] as CompiledAccount;
  let pallets = 0;
  for (const l of listings) {
    const { item } = compiled.listings[l] as CompiledListing;
    const units = shippedOf(state.listings[l] as ListingWeek);
    pallets += Math.ceil(units / (compiled.items[item]?.palletUnits ?? 1));
  }
  if (pallets === 0) return;
  const drops = terms.toDepot ? 1 : dropsAtDoors(state, own, a, week);
  post(books, E.dropsPaid, timesPrice(drops, terms.perDrop, compiled.perMinor), a);
  post(books, E.palletsPaid, timesPrice(pallets, terms.perPallet, compiled.perMinor), a);
}

/** Doors that get something: no more than the cohort has (at its opening, for its fill), no more than cases left for it. */
function dropsAtDoors({ compiled }: State, { cases }: ConductState, a: number, week: number): number {
  let drops = 0;
  for (const c of compiled.accounts[a]?.cohorts ?? []) {
    const { doors, openWeek } = compiled.cohorts[c] as Cohort;
    drops += Math.min(doors[Math.max(week, openWeek)] ?? 0, cases[c] ?? 0);
  }
  return drops;
}
