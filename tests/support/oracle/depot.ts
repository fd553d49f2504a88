/**
 * A depot between us and the stores: one stock of each item an account lists. How units move through it, without any
 * money: the same moves serve the pass and the pass without limits.
 * Worked figure: stock 100, on its way 60, stores have 40 open with it: 120 count; a need of 300 orders 180.
 */
import { type Cell, type Order, ship } from './cell.ts';
import { fillOfDoor, freeOfDoor, isOrderWeek, multiple, wanted } from './demand.ts';
import { doorsIn, type Facts, type Line, opens } from './facts.ts';
import { nearest, total } from './numbers.ts';

export interface Depot {
  line: Line;
  terms: NonNullable<Line['account']['depot']>;
  cells: Cell[];
  stock: number;
  coming: { week: number; units: number }[];
  /** Its orders with us. */
  orders: Order[];
  /** Free units of fills that its orders have been placed for, still to leave us. */
  free: number;
  /** Cells whose free units are in `free` already. */
  counted: Set<Cell>;
  /** The first week without a door of the account, and none to open; null: there is always one, or never any. */
  endsIn: number | null;
}

/** Weeks the pass without limits looks past the horizon, at the very most. */
const PAST_HORIZON = 260;

export function newDepots(facts: Facts, cells: readonly Cell[]): Depot[] {
  return facts.lines.flatMap((line) => {
    const terms = line.account.depot;
    if (terms === null) return [];
    const own = cells.filter((cell) => cell.line === line);
    const rate = Number(line.listing.unitsPerStoreWeek);
    const stock = own
      .filter(({ cohort }) => cohort.isRunning)
      .map(({ cohort }) => Math.round(cohort.doorsAtOpening * rate * terms.openingWeeks));
    return [
      {
        line,
        terms,
        cells: own,
        stock: total(stock),
        coming: [],
        orders: [],
        free: 0,
        counted: new Set<Cell>(),
        endsIn: endOf(facts, own),
      },
    ];
  });
}

function endOf(facts: Facts, cells: readonly Cell[]): number | null {
  const cohorts = cells.map(({ cohort }) => cohort);
  const isEver = (cohort: Cell['cohort']) => cohort.isRunning || hasOpening(cohort);
  if (!cohorts.some(isEver)) return null;
  for (let week = 0; week < facts.plan.horizonWeeks + PAST_HORIZON; week++) {
    const isOpen = cohorts.some((each) => doorsIn(each, week) > 0);
    const isToOpen = cohorts.some((each) => each.openWeek > week && hasOpening(each));
    if (!isOpen && !isToOpen) return week;
  }
  return null;
}

/** Whether a cohort of a wave opens with at least one door. */
function hasOpening(cohort: Cell['cohort']): boolean {
  return opens(cohort) && doorsIn(cohort, cohort.openWeek) > 0;
}

/** In the week it ends: all its stock, and of its orders those that should have left us before this week. */
export function leaveDepot(depot: Depot, week: number): { units: number; lostOrders: number } {
  if (week !== depot.endsIn) return { units: 0, lostOrders: 0 };
  const units = depot.stock;
  const late = depot.orders.filter(({ placedWeek }) => placedWeek < week - 1);
  depot.stock = 0;
  depot.orders = [];
  return { units, lostOrders: total(late.map(({ left }) => left)) };
}

/** What we shipped comes in; units that come too late are told, and are gone. */
export function receiveInDepot(depot: Depot, week: number): number {
  const units = total(depot.coming.filter((each) => each.week === week).map((each) => each.units));
  depot.coming = depot.coming.filter((each) => each.week !== week);
  if (depot.endsIn !== null && week >= depot.endsIn) return units;
  depot.stock += units;
  return 0;
}

/** So much of one of its orders leaves us; free units first. */
export function shipToDepot(depot: Depot, order: Order, week: number, units: number): { free: number } {
  const free = Math.min(units, depot.free);
  depot.free -= free;
  order.left -= units;
  depot.coming.push({ week: week + depot.terms.transitWeeks, units });
  depot.orders = depot.orders.filter(({ left }) => left > 0);
  return { free };
}

/** Its stores' orders, in their order, as far as its stock reaches. */
export function supplyStores(depot: Depot, week: number): void {
  const open = depot.cells.flatMap((cell) => cell.orders.map((order) => ({ cell, order })));
  open.sort(
    (a, b) =>
      a.order.placedWeek - b.order.placedWeek ||
      Number(b.order.isFill) - Number(a.order.isFill) ||
      a.cell.at - b.cell.at,
  );
  const q = multiple(depot.line);
  for (const { cell, order } of open) {
    const units = Math.floor(Math.min(order.left, depot.stock) / q) * q;
    if (units === 0) continue;
    depot.stock -= units;
    ship(cell, order, week, units);
  }
}

/** At the end of an order week, after its stores: what it will need and neither has nor is to get. */
export function orderForDepot(facts: Facts, depot: Depot, week: number): void {
  const { line, terms, cells } = depot;
  const { account } = line;
  if (!isOrderWeek(account, week)) return;
  const { everyWeeks } = account.ordering;
  const lastFill = week + terms.transitWeeks + everyWeeks - 1;
  countFree(depot, lastFill);
  const there = week + 1 + terms.transitWeeks + account.terms.transitWeeks;
  const served = cells.filter(({ cohort }) => doorsIn(cohort, there) > 0);
  const filled = cells.filter((cell) => {
    const placed = fillWeek(cell);
    return placed !== null && placed > week && placed <= lastFill;
  });
  if (served.length === 0 && filled.length === 0) return;
  let ahead = 0n;
  for (const cell of served) {
    if (cell.cohort.openWeek > week) continue;
    const doors = doorsIn(cell.cohort, week);
    const last = week + everyWeeks + terms.transitWeeks + terms.coverWeeks;
    for (let t = week + 1; t <= last; t++) ahead += BigInt(wanted(facts, cell, t, doors));
  }
  const rate = Number(line.listing.unitsPerStoreWeek);
  const fills = filled.map((cell) => {
    const doors = cell.cohort.doorsAtOpening;
    return doors * fillOfDoor(cell) + Math.round(doors * rate * terms.fillWeeks);
  });
  const missing = Number(nearest(ahead, 1_000_000n)) + total(fills) - position(depot);
  if (missing <= 0) return;
  const qd = multiple(line, terms.orderIn);
  const units = Math.ceil(Math.max(missing, terms.minimumOrderUnits) / qd) * qd;
  depot.orders.push({ placedWeek: week, isFill: false, left: units, freeLeft: 0 });
}

/** The week at whose end a cell's fill is placed; null when it has none. */
function fillWeek({ cohort, line }: Cell): number | null {
  return hasOpening(cohort) ? cohort.openWeek - line.account.terms.transitWeeks - 1 : null;
}

function countFree(depot: Depot, lastFill: number): void {
  for (const cell of depot.cells) {
    const placed = fillWeek(cell);
    if (placed === null || placed > lastFill || depot.counted.has(cell)) continue;
    depot.counted.add(cell);
    depot.free += cell.cohort.doorsAtOpening * freeOfDoor(cell);
  }
}

function position({ stock, coming, orders, cells }: Depot): number {
  const open = cells.flatMap((cell) => cell.orders.map(({ left }) => left));
  return (
    stock + total(coming.map(({ units }) => units)) + total(orders.map(({ left }) => left)) - total(open)
  );
}
