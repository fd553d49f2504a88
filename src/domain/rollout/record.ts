// Writes each closed week into the result, and asserts what must be true of it: the change in cash is the sum of the
// flows, units are conserved, stock that isn't there carries no amount. Worked figure: 1,200 opened, 2,400 made, 900
// sold, 500 in stores, 200 in transit, 1,950 ours, 50 gone: 3,600 either way.
import { CASH } from './books.ts';
import type { ItemState } from './item-state.ts';
import { seriesOf } from './series.ts';
import type { AccountState, State } from './state.ts';
import { BALANCE_NAMES, FLOW_NAMES, type PassResult, PROFIT_NAMES, UNIT_NAMES } from './types.ts';

/** The result as it is filled, and its series in the order of their names: nothing is looked up by name in the loops. */
export interface PassRecord {
  result: PassResult;
  flows: Float64Array[];
  balances: Float64Array[];
  profit: Float64Array[];
}

const ACCOUNT_NAMES = ['doors', 'invoiced', 'remitted', 'sold', 'lost', 'receivables', 'heldBack'] as const;

export function newRecord(state: State): PassRecord {
  const { compiled } = state;
  const { weeks, items, accounts } = compiled;
  const names = FLOW_NAMES.length + BALANCE_NAMES.length + PROFIT_NAMES.length + 1;
  const places = names + UNIT_NAMES.length * items.length + ACCOUNT_NAMES.length * accounts.length;
  const cut = seriesOf(places * weeks);
  const flows = FLOW_NAMES.map(() => cut(weeks));
  const balances = BALANCE_NAMES.map(() => cut(weeks));
  const profit = PROFIT_NAMES.map(() => cut(weeks));
  const opening = items.map((item) => item.openingUnits);
  for (const { item, openingStock } of [...compiled.cells, ...compiled.depots])
    opening[item] = (opening[item] ?? 0) + openingStock;
  const result: PassResult = {
    weeks,
    minorDigits: compiled.minorDigits,
    flows: named(FLOW_NAMES, flows),
    balances: named(BALANCE_NAMES, balances),
    low: cut(weeks),
    units: items.map(() =>
      named(
        UNIT_NAMES,
        UNIT_NAMES.map(() => cut(weeks)),
      ),
    ),
    accounts: accounts.map(() =>
      named(
        ACCOUNT_NAMES,
        ACCOUNT_NAMES.map(() => cut(weeks)),
      ),
    ),
    profit: named(PROFIT_NAMES, profit),
    openingCash: compiled.business.openingCash,
    openingUnits: opening,
    unplacedUnits: [],
  };
  for (const cohort of compiled.cohorts) {
    const open = result.accounts[cohort.account]?.doors as Float64Array;
    for (let w = 0; w < weeks; w++) open[w] = (open[w] ?? 0) + (cohort.doors[w] ?? 0);
  }
  return { result, flows, balances, profit };
}

type Named<Name extends string> = { [each in Name]: Float64Array };

function named<Name extends string>(names: readonly Name[], series: readonly Float64Array[]): Named<Name> {
  const out: Partial<Named<Name>> = {};
  names.forEach((name, i) => {
    out[name] = series[i] as Float64Array;
  });
  return out as Named<Name>;
}

interface WeekArgs {
  state: State;
  record: PassRecord;
  week: number;
  /** Cash at the end of the week before. */
  opening: number;
  /** Step 1's money: it is there before anything is paid. */
  moneyIn: number;
}

export function recordWeek(args: WeekArgs): void {
  const { state, record, week, opening, moneyIn } = args;
  const { balances, flows, profit } = state.books;
  write(record.flows, flows, week);
  write(record.balances, balances, week);
  write(record.profit, profit, week);
  let net = 0;
  let paid = 0;
  for (const flow of flows) {
    net += flow;
    if (flow < 0) paid += flow;
  }
  record.result.low[week] = opening + moneyIn + paid;
  const closing = balances[CASH] ?? 0;
  if (closing - opening !== net)
    throw new Error(`cash moved ${closing - opening}, flows say ${net}, week ${week}`);
  recordUnits(state, record.result, week);
  recordAccounts(state, record.result, week);
}

function write(series: readonly Float64Array[], now: Float64Array, week: number): void {
  for (let i = 0; i < now.length; i++) (series[i] as Float64Array)[week] = now[i] ?? 0;
}

function recordUnits(state: State, record: PassResult, week: number): void {
  addUpStores(state);
  for (let i = 0; i < state.items.length; i++) {
    const item = state.items[i] as ItemState;
    const out = record.units[i] as PassResult['units'][number];
    out.made[week] = item.made;
    out.ordered[week] = item.ordered;
    out.rushed[week] = item.rushed;
    out.shipped[week] = item.shipped;
    out.fillShipped[week] = item.fillShipped;
    out.received[week] = item.received;
    out.demand[week] = item.demand;
    out.sold[week] = item.sold;
    out.lost[week] = item.lost;
    out.returned[week] = item.returned;
    out.gone[week] = item.gone;
    out.ours[week] = item.ours;
    out.inTransit[week] = item.inTransit;
    out.inStores[week] = item.inStores;
    out.atDepot[week] = item.atDepot;
    out.backlog[week] = item.backlog;
    out.onOrder[week] = item.onOrder;
    item.known += item.made - item.sold - item.gone;
    const there = item.ours + item.inTransit + item.inStores + item.atDepot;
    if (item.known !== there)
      throw new Error(`item ${i}: ${item.known} units known, ${there} there, week ${week}`);
    if (item.held === 0 && item.stockAmount !== 0)
      throw new Error(`item ${i}: no stock, yet ${item.stockAmount}`);
  }
}

/** What stands in stores and is on its way to them, by item, counted where it stands. */
function addUpStores(state: State): void {
  const { stock, transit } = state.cells;
  const { firstOfListing } = state.compiled.hot;
  for (const item of state.items) {
    item.inStores = 0;
    item.inTransit = 0;
    item.atDepot = 0;
  }
  for (let l = 0; l < state.listings.length; l++) {
    let inStores = 0;
    let inTransit = 0;
    const until = firstOfListing[l + 1] ?? 0;
    for (let index = firstOfListing[l] ?? 0; index < until; index++) {
      inStores += stock[index] ?? 0;
      inTransit += transit[index] ?? 0;
    }
    const item = state.items[state.compiled.listings[l]?.item ?? -1] as ItemState;
    item.inStores += inStores;
    item.inTransit += inTransit;
  }
  for (const { place, item: i } of state.compiled.depots) {
    const item = state.items[i] as ItemState;
    item.atDepot += stock[place] ?? 0;
    item.inTransit += transit[place] ?? 0;
  }
}

function recordAccounts(state: State, record: PassResult, week: number): void {
  const { sold, lost } = state.accountUnits;
  for (let a = 0; a < state.accounts.length; a++) {
    const out = record.accounts[a] as PassResult['accounts'][number];
    const own = state.accounts[a] as AccountState;
    out.invoiced[week] = own.invoiced;
    out.remitted[week] = own.remitted;
    out.sold[week] = sold[a] ?? 0;
    out.lost[week] = lost[a] ?? 0;
    out.receivables[week] = own.receivable;
    out.heldBack[week] = own.heldBack;
  }
  sold.fill(0);
  lost.fill(0);
}
