// Writes each closed week into the result, and asserts what must be true of it: the change in cash is the sum of the
// flows, units are conserved, stock that isn't there carries no amount. Worked figure: 1,200 opened, 2,400 made, 900
// sold, 500 in stores, 200 in transit, 1,950 ours, 50 gone: 3,600 either way.
import { CASH } from './books.ts';
import { plus } from './cell-states.ts';
import type { State } from './state.ts';
import { BALANCE_NAMES, FLOW_NAMES, type PassResult, PROFIT_NAMES, UNIT_NAMES } from './types.ts';

function series<Name extends string>(names: readonly Name[], weeks: number): Record<Name, Float64Array> {
  const pairs = names.map((name) => [name, new Float64Array(weeks)]);
  return Object.fromEntries(pairs) as Record<Name, Float64Array>;
}

export function newRecord(state: State): PassResult {
  const { compiled } = state;
  const { weeks } = compiled;
  const opening = compiled.items.map((item) => item.openingUnits);
  for (const cell of compiled.cells) opening[cell.item] = (opening[cell.item] ?? 0) + cell.openingStock;
  return {
    weeks,
    minorDigits: compiled.minorDigits,
    flows: series(FLOW_NAMES, weeks),
    balances: series(BALANCE_NAMES, weeks),
    low: new Float64Array(weeks),
    units: compiled.items.map(() => series(UNIT_NAMES, weeks)),
    accounts: compiled.accounts.map(() =>
      series(['doors', 'invoiced', 'remitted', 'sold', 'lost', 'receivables'] as const, weeks),
    ),
    profit: series(PROFIT_NAMES, weeks),
    openingCash: compiled.business.openingCash,
    openingUnits: opening,
    unplacedUnits: [],
  };
}

interface WeekArgs {
  state: State;
  record: PassResult;
  week: number;
  /** Cash at the end of the week before. */
  opening: number;
  /** Step 1's money: it is there before anything is paid. */
  moneyIn: number;
}

export function recordWeek(args: WeekArgs): void {
  const { state, record, week, opening, moneyIn } = args;
  const { balances, flows, profit } = state.books;
  let net = 0;
  let paid = 0;
  FLOW_NAMES.forEach((name, i) => {
    const flow = flows[i] ?? 0;
    record.flows[name][week] = flow;
    net += flow;
    if (flow < 0) paid += flow;
  });
  BALANCE_NAMES.forEach((name, i) => {
    record.balances[name][week] = balances[i] ?? 0;
  });
  PROFIT_NAMES.forEach((name, i) => {
    record.profit[name][week] = profit[i] ?? 0;
  });
  record.low[week] = opening + moneyIn + paid;
  const closing = balances[CASH] ?? 0;
  if (closing - opening !== net)
    throw new Error(`cash moved ${closing - opening}, flows say ${net}, week ${week}`);
  recordUnits(state, record, week);
  recordAccounts(state, record, week);
}

function recordUnits(state: State, record: PassResult, week: number): void {
  const { compiled } = state;
  const inStores = new Float64Array(state.items.length);
  const inTransit = new Float64Array(state.items.length);
  const { count, item: itemOf } = compiled.hot;
  for (let index = 0; index < count; index++) {
    plus(inStores, itemOf[index] ?? 0, state.cells.stock[index] ?? 0);
    plus(inTransit, itemOf[index] ?? 0, state.cells.transit[index] ?? 0);
  }
  state.items.forEach((item, i) => {
    const out = record.units[i];
    if (!out) return;
    out.made[week] = item.made;
    out.ordered[week] = item.ordered;
    out.shipped[week] = item.shipped;
    out.fillShipped[week] = item.fillShipped;
    out.received[week] = item.received;
    out.demand[week] = item.demand;
    out.sold[week] = item.sold;
    out.lost[week] = item.lost;
    out.returned[week] = item.returned;
    out.gone[week] = item.gone;
    out.ours[week] = item.ours;
    out.inTransit[week] = inTransit[i] ?? 0;
    out.inStores[week] = inStores[i] ?? 0;
    out.backlog[week] = item.backlog;
    out.onOrder[week] = item.onOrder;
    item.known += item.made - item.sold - item.gone;
    const there = item.ours + (inTransit[i] ?? 0) + (inStores[i] ?? 0);
    if (item.known !== there)
      throw new Error(`item ${i}: ${item.known} units known, ${there} there, week ${week}`);
    if (item.held === 0 && item.stockAmount !== 0)
      throw new Error(`item ${i}: no stock, yet ${item.stockAmount}`);
  });
}

function recordAccounts(state: State, record: PassResult, week: number): void {
  const { compiled } = state;
  compiled.accounts.forEach((account, a) => {
    const out = record.accounts[a];
    const own = state.accounts[a];
    if (!out || !own) return;
    let doors = 0;
    for (const c of account.cohorts) doors += compiled.cohorts[c]?.doors[week] ?? 0;
    out['doors'][week] = doors;
    out['invoiced'][week] = own.invoiced;
    out['remitted'][week] = own.remitted;
    out['sold'][week] = state.accountUnits.sold[a] ?? 0;
    out['lost'][week] = state.accountUnits.lost[a] ?? 0;
    out['receivables'][week] = own.receivable;
  });
  state.accountUnits.sold.fill(0);
  state.accountUnits.lost.fill(0);
}
