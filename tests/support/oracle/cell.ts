/**
 * One cell (a listed item in a cohort of doors) and how units move through it, without any money: the same moves serve
 * the pass and the pass without limits. Whole units; fractions are carried in millionths.
 * Worked figure: 100 units on the shelves of 8 doors of which 3 close: floor(100 x 3 / 8) = 37 leave.
 */
import type { Charge } from '../../../src/domain/allowances/contract.ts';
import { fillOfDoor, freeOfDoor, reorderUnits, wanted } from './demand.ts';
import { doorsIn, type Facts, opens, type Place } from './facts.ts';
import { millionths, total } from './numbers.ts';

export type ReturnsCharge = Extract<Charge, { settles: 'returns' }>;

export interface Order {
  placedWeek: number;
  isFill: boolean;
  left: number;
  freeLeft: number;
}

export interface Cell extends Place {
  /** Place in file order. */
  at: number;
  shelf: number;
  demandCarried: number;
  /** Shipped and not yet there. */
  coming: { week: number; units: number }[];
  orders: Order[];
  /** Units that reached the shelf, by week. */
  received: Map<number, number>;
  /** One for each returns allowance. */
  returns: { charge: ReturnsCharge; owed: bigint; resaleCarried: bigint }[];
  heldCarried: bigint;
  held: number;
  heldMoney: bigint;
  shrinkOwed: bigint;
}

export function newCells({ places }: Facts): Cell[] {
  return places.map((place, at) => ({
    ...place,
    at,
    shelf: place.cohort.isRunning ? place.cohort.doorsAtOpening * place.cohort.unitsPerDoor : 0,
    demandCarried: 0,
    coming: [],
    orders: [],
    received: new Map(),
    returns: place.line.prices.charges.flatMap(({ charge }) =>
      charge.settles === 'returns' ? [{ charge, owed: 0n, resaleCarried: 0n }] : [],
    ),
    heldCarried: 0n,
    held: 0,
    heldMoney: 0n,
    shrinkOwed: 0n,
  }));
}

/**
 * Units that leave the shelf with the doors that closed since last week; with the last door its open orders are lost, of
 * which those that should have left before this week are told.
 */
export function leaveWithDoors(cell: Cell, week: number): { units: number; lostOrders: number } {
  const before = doorsIn(cell.cohort, week - 1);
  const now = doorsIn(cell.cohort, week);
  if (now >= before) return { units: 0, lostOrders: 0 };
  const units = now === 0 ? cell.shelf : Math.floor((cell.shelf * (before - now)) / before);
  cell.shelf -= units;
  if (now > 0) return { units, lostOrders: 0 };
  const lostOrders = total(cell.orders.filter((each) => each.placedWeek < week - 1).map((each) => each.left));
  cell.orders = [];
  return { units, lostOrders };
}

export function lastDoorCloses({ cohort }: Cell, week: number): boolean {
  return doorsIn(cohort, week) === 0 && doorsIn(cohort, week - 1) > 0;
}

/** Units held for review that come back off the shelf; null when no review is due this week. */
export function reviewed(cell: Cell, week: number): number | null {
  const { sale } = cell.line.account;
  if (sale.by !== 'guaranteed' || cell.held === 0) return null;
  if (week !== cell.cohort.openWeek + sale.reviewWeeks && !lastDoorCloses(cell, week)) return null;
  const back = Math.min(cell.held, cell.shelf);
  cell.shelf -= back;
  return back;
}

/** Of paid units shipped now, those held until the review. */
export function hold(cell: Cell, week: number, paidUnits: number): number {
  const { sale, terms } = cell.line.account;
  if (sale.by !== 'guaranteed') return 0;
  if (week + terms.transitWeeks >= cell.cohort.openWeek + sale.reviewWeeks) return 0;
  cell.heldCarried += BigInt(paidUnits) * millionths(sale.expectedReturnRate);
  const whole = cell.heldCarried / 1_000_000n;
  cell.heldCarried -= whole * 1_000_000n;
  cell.held += Number(whole);
  return Number(whole);
}

/** Store receipts of the week: onto the shelf, or gone where no door is left. */
export function arrive(cell: Cell, week: number): { received: number; gone: number } {
  const units = total(cell.coming.filter((each) => each.week === week).map((each) => each.units));
  cell.coming = cell.coming.filter((each) => each.week !== week);
  if (doorsIn(cell.cohort, week) === 0) return { received: 0, gone: units };
  cell.shelf += units;
  cell.received.set(week, (cell.received.get(week) ?? 0) + units);
  return { received: units, gone: 0 };
}

/** Ordinary returns under one allowance: off the shelf, and of them fit to sell again. */
export function sendBack(cell: Cell, at: number, week: number): { back: number; resaleable: number } {
  const owing = cell.returns[at];
  if (!owing) return { back: 0, resaleable: 0 };
  const { charge } = owing;
  owing.owed += BigInt(cell.received.get(week - charge.lagWeeks) ?? 0) * BigInt(charge.rateMillionths);
  const back = Math.min(Number(owing.owed / 1_000_000n), cell.shelf);
  owing.owed -= BigInt(back) * 1_000_000n;
  cell.shelf -= back;
  owing.resaleCarried += BigInt(back) * BigInt(charge.resaleableMillionths);
  const resaleable = owing.resaleCarried / 1_000_000n;
  owing.resaleCarried -= resaleable * 1_000_000n;
  return { back, resaleable: Number(resaleable) };
}

/** Sales of the week. */
export function sell(facts: Facts, cell: Cell, week: number): { demand: number; sold: number } {
  const m = wanted(facts, cell, week, doorsIn(cell.cohort, week)) + cell.demandCarried;
  const demand = Math.floor(m / 1_000_000);
  cell.demandCarried = m - demand * 1_000_000;
  const sold = Math.min(demand, cell.shelf);
  cell.shelf -= sold;
  return { demand, sold };
}

/** Goods on scan: whole units that are lost off the shelf with what was sold. */
export function shrink(cell: Cell, sold: number): number {
  const { sale } = cell.line.account;
  if (sale.by !== 'scan') return 0;
  cell.shrinkOwed += BigInt(sold) * millionths(sale.shrinkRate);
  const lost = Math.min(Number(cell.shrinkOwed / 1_000_000n), cell.shelf);
  cell.shrinkOwed -= BigInt(lost) * 1_000_000n;
  cell.shelf -= lost;
  return lost;
}

/** Orders of a week's end: the fill of a cohort that is to open, and what the store orders again. */
export function order(facts: Facts, cell: Cell, week: number): void {
  const { cohort, line } = cell;
  if (opens(cohort) && cohort.openWeek - line.account.terms.transitWeeks - 1 === week) {
    const units = cohort.doorsAtOpening * fillOfDoor(cell);
    const free = cohort.doorsAtOpening * freeOfDoor(cell);
    if (units > 0) cell.orders.push({ placedWeek: week, isFill: true, left: units, freeLeft: free });
  }
  if (week < 0) return;
  const coming = total(cell.coming.map((each) => each.units));
  const open = total(cell.orders.map((each) => each.left));
  const units = reorderUnits(facts, cell, week, cell.shelf + coming + open);
  if (units > 0) cell.orders.push({ placedWeek: week, isFill: false, left: units, freeLeft: 0 });
}

/** Ship some of an order: full cases are the caller's care; the free units of a fill leave first. */
export function ship(cell: Cell, order: Order, week: number, units: number): { free: number } {
  const free = Math.min(units, order.freeLeft);
  order.left -= units;
  order.freeLeft -= free;
  cell.coming.push({ week: week + cell.line.account.terms.transitWeeks, units });
  cell.orders = cell.orders.filter((each) => each.left > 0);
  return { free };
}
