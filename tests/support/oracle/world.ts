/**
 * Everything the oracle remembers from week to week, and the few ways to change the books: posting an entry, relieving
 * stock at its moving average, and noting a claim.
 * Worked figure: 300 units valued at 1,000.00 together; 100 leave at round(100000 x 100 / 300) = 333.33.
 */
import {
  type BalanceName,
  type FlowName,
  UNIT_NAMES,
  type UnitName,
} from '../../../src/domain/rollout/types.ts';
import type { Entry } from './books.ts';
import { type Cell, newCells } from './cell.ts';
import { type Depot, newDepots } from './depot.ts';
import type { Facts } from './facts.ts';
import { unlimitedShipments } from './free.ts';
import type { Lot } from './lots.ts';
import { nearest } from './numbers.ts';

/** One part of one invoice, with what it carries off itself. */
export interface InvoicePart {
  dueWeek: number;
  gross: bigint;
  deductions: bigint;
  discount: bigint;
  /** Per advance in the plan's order. */
  advanced: bigint[];
}

export interface Ledger {
  parts: InvoicePart[];
  claims: { dueWeek: number; left: bigint }[];
  quietWeeks: number;
  receivables: bigint;
}

export interface Instalment {
  itemAt: number;
  /** 0 is the first supplier; see suppliers.ts. */
  supplierAt: number;
  week: number;
  units: number;
  goods: bigint;
  freight: bigint;
  /** What a rush order costs on top. */
  rush: bigint;
  deposit: bigint;
}

export interface Loan {
  balance: bigint;
  rate: bigint;
  /** Principal parts by the month they are due in. */
  parts: { month: number; amount: bigint }[];
}

export interface Dated {
  week: number;
  amount: bigint;
}

export interface World {
  facts: Facts;
  week: number;
  entries: Entry[];
  cells: Cell[];
  depots: Depot[];
  /** By item: units and money of the stock balance (held by us, on scan, or held for review). */
  pools: { units: number; money: bigint }[];
  ours: number[];
  /** By item, `ours` by the week it landed in; null for what keeps. */
  lots: (Lot[] | null)[];
  instalments: Instalment[];
  /** By item: units of orders that step 6 of last week could not ship, cancelled ones too. */
  unshipped: number[];
  unlimited: number[][];
  ledgers: Ledger[];
  loans: Loan[];
  /** Per receivables advance. */
  advances: { fromWeek: number; part: bigint; rate: bigint; balance: bigint }[];
  supplierInvoices: Dated[];
  baseIn: Dated[];
  baseOut: Dated[];
  /** Owed from this week and from before. */
  brokerOwed: { before: bigint; now: bigint };
  interestOwed: { before: bigint; now: bigint };
  /** By quarter. */
  royaltyOwed: Map<number, bigint>;
  vatOwed: Map<number, bigint>;
  units: Record<UnitName, number[]>[];
  accountWeeks: {
    doors: number[];
    invoiced: bigint[];
    remitted: bigint[];
    sold: number[];
    lost: number[];
    receivables: bigint[];
    heldBack: number[];
  }[];
  /** Won back of what was deducted without a right to it, by the week it comes in. */
  recoveries: Dated[];
}

export function newWorld(facts: Facts): World {
  const { plan } = facts;
  const weeks = plan.horizonWeeks;
  const furthest = Math.max(...plan.items.map(({ supply }) => supply.leadWeeks + supply.coverWeeks));
  const zeros = () => new Array<number>(weeks).fill(0);
  const nothing = () => new Array<bigint>(weeks).fill(0n);
  const cells = newCells(facts);
  return {
    facts,
    week: -1,
    entries: [],
    cells,
    depots: newDepots(facts, cells),
    pools: plan.items.map(() => ({ units: 0, money: 0n })),
    ours: plan.items.map(() => 0),
    lots: plan.items.map(({ supply }) => (supply.shelfLife === null ? null : [])),
    instalments: [],
    unshipped: plan.items.map(() => 0),
    unlimited: unlimitedShipments(facts, weeks - 1 + furthest),
    ledgers: plan.accounts.map(() => ({ parts: [], claims: [], quietWeeks: 0, receivables: 0n })),
    loans: [],
    advances: [],
    supplierInvoices: [],
    baseIn: [],
    baseOut: [],
    brokerOwed: { before: 0n, now: 0n },
    interestOwed: { before: 0n, now: 0n },
    royaltyOwed: new Map(),
    vatOwed: new Map(),
    units: plan.items.map(
      () => Object.fromEntries(UNIT_NAMES.map((name) => [name, zeros()])) as Record<UnitName, number[]>,
    ),
    accountWeeks: plan.accounts.map(() => ({
      doors: zeros(),
      invoiced: nothing(),
      remitted: nothing(),
      sold: zeros(),
      lost: zeros(),
      receivables: nothing(),
      heldBack: zeros(),
    })),
    recoveries: [],
  };
}

export function post(world: World, debit: BalanceName, credit: BalanceName, amount: bigint): void {
  world.entries.push({ week: world.week, debit, credit, amount, flow: null });
}

export function pay(world: World, debit: BalanceName, amount: bigint, flow: FlowName): void {
  world.entries.push({ week: world.week, debit, credit: 'cash', amount, flow });
}

export function receive(world: World, credit: BalanceName, amount: bigint, flow: FlowName): void {
  world.entries.push({ week: world.week, debit: 'cash', credit, amount, flow });
}

/** Units leave the stock balance at its moving average; the cost goes to profit and loss. */
export function relieve(world: World, itemAt: number, units: number): void {
  const pool = world.pools[itemAt];
  if (!pool || units === 0) return;
  if (units > pool.units)
    throw new Error(`week ${world.week}: ${units} of ${pool.units} units leave the stock balance`);
  const cost = units === pool.units ? pool.money : nearest(pool.money * BigInt(units), BigInt(pool.units));
  pool.units -= units;
  pool.money -= cost;
  post(world, 'retained', 'stock', cost);
}

/** Units enter the stock balance; the caller posts where the money comes from. */
export function addToPool(world: World, itemAt: number, units: number, money: bigint): void {
  const pool = world.pools[itemAt];
  if (!pool) throw new Error(`no item ${itemAt}`);
  pool.units += units;
  pool.money += money;
}

/** What an account earns off us: accrued now, taken off remittances from `lagWeeks` later on. */
export function claim(world: World, accountAt: number, amount: bigint, lagWeeks: number): void {
  if (amount === 0n) return;
  post(world, 'retained', 'accrued', amount);
  openClaim(world, accountAt, amount, lagWeeks);
}

/** A claim on money that is accrued already. */
export function openClaim(world: World, accountAt: number, amount: bigint, lagWeeks: number): void {
  if (amount > 0n) world.ledgers[accountAt]?.claims.push({ dueWeek: world.week + lagWeeks, left: amount });
}

export function count(world: World, itemAt: number, name: UnitName, units: number): void {
  const row = world.units[itemAt]?.[name];
  if (row && world.week >= 0) row[world.week] = (row[world.week] ?? 0) + units;
}

export function addTo(owed: Map<number, bigint>, quarter: number, amount: bigint): void {
  owed.set(quarter, (owed.get(quarter) ?? 0n) + amount);
}
