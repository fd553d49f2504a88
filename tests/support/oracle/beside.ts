/**
 * What an account does beside its terms, in step 6: a limit to what it may owe, charges for short deliveries, what its
 * deliveries cost by drop and pallet.
 * Worked figure: a limit of 1,000.00 with 700.00 owed leaves 115 units at 2.60: 9 cases of 12.
 */
import { type Buyer, freeUnits } from './buyers.ts';
import type { Order } from './cell.ts';
import { doorsIn, invoicePrice, type Line } from './facts.ts';
import { millionths, nearest, scaled, total } from './numbers.ts';
import { times } from './opening-fees.ts';
import { claim, pay, type World } from './world.ts';

/** An order as step 6 looked at it. */
export type Looked = Buyer & { open: number; heldBack: number; units: number; free: number };

export interface Wish {
  order: Order;
  /** What stock lets leave, in whole multiples. */
  could: number;
}

/** Of what stock lets leave, what the account may still owe for; `looked` has this step's orders before it. */
export function withinLimit(
  world: World,
  buyer: Buyer,
  looked: readonly Looked[],
  { order, could }: Wish,
): number {
  const { account, accountAt } = buyer.line;
  if (account.creditLimitAmount === null || account.sale.by === 'scan') return could;
  const p = priceWithTax(world, buyer.line);
  if (p === 0n) return could;
  let used = 0n;
  for (const before of looked) {
    if (before.line.accountAt !== accountAt) continue;
    const free = account.freeFill.settled === 'billedBack' ? 0 : before.free;
    used += BigInt(before.units - free) * priceWithTax(world, before.line);
  }
  // Unit prices are 1/10,000: so are all of these.
  const owed = (world.ledgers[accountAt]?.receivables ?? 0n) * 10n ** BigInt(4 - world.facts.minorDigits);
  const limit =
    scaled(account.creditLimitAmount, world.facts.minorDigits) * 10n ** BigInt(4 - world.facts.minorDigits);
  const room = limit - owed - used;
  const affordable = room > 0n ? Number(room / p) : 0;
  const free = freeUnits(buyer, order);
  return Math.floor(Math.min(could, free + affordable) / buyer.q) * buyer.q;
}

function priceWithTax(world: World, line: Line): bigint {
  const { vat } = world.facts.plan.business;
  const rate = vat === null ? 0n : millionths(vat.salesRate);
  return nearest(invoicePrice(line, world.week) * (1_000_000n + rate), 1_000_000n);
}

/** After the documents of step 6. */
export function bookBeside(world: World, looked: readonly Looked[]): void {
  world.facts.plan.accounts.forEach((_, accountAt) => {
    const own = looked.filter(({ line }) => line.accountAt === accountAt);
    const row = world.accountWeeks[accountAt];
    if (row) row.heldBack[world.week] = total(own.map(({ heldBack }) => heldBack));
    payForDeliveries(world, accountAt, own);
    chargeShort(world, accountAt, own);
  });
}

function payForDeliveries(world: World, accountAt: number, own: readonly Looked[]): void {
  const { plan, minorDigits } = world.facts;
  const account = plan.accounts[accountAt];
  const left = own.filter(({ line, units }) => units > 0 && !line.prices.pickUp);
  if (!account || account.delivery === null || left.length === 0) return;
  let pallets = 0;
  for (const line of world.facts.lines) {
    const units = total(left.filter((each) => each.line === line).map((each) => each.units));
    pallets += Math.ceil(units / (line.item.palletCases * line.item.caseUnits));
  }
  const { amountPerDrop, amountPerPallet } = account.delivery;
  pay(world, 'retained', times(amountPerDrop, dropsOf(world, left), minorDigits), 'freightOut');
  pay(world, 'retained', times(amountPerPallet, pallets, minorDigits), 'freightOut');
}

function dropsOf(world: World, left: readonly Looked[]): number {
  let drops = 0;
  for (const cohort of world.facts.cohorts) {
    const multiples = left.flatMap(({ cell, units, q }) => (cell?.cohort === cohort ? [units / q] : []));
    if (multiples.length === 0) continue;
    drops += Math.min(doorsIn(cohort, Math.max(world.week, cohort.openWeek)), total(multiples));
  }
  return left.some(({ depot }) => depot !== null) ? 1 : drops;
}

function chargeShort(world: World, accountAt: number, own: readonly Looked[]): void {
  const { facts, week } = world;
  const service = facts.plan.accounts[accountAt]?.service ?? null;
  if (service === null) return;
  const dueOf = (orders: readonly Looked[]) => total(orders.map(({ open, heldBack }) => open - heldBack));
  const sentOf = (orders: readonly Looked[]) => total(orders.map(({ units }) => units));
  const [due, sent] = [dueOf(own), sentOf(own)];
  if (due <= 0 || BigInt(sent) * 1_000_000n >= BigInt(due) * millionths(service.leastFillRate)) return;
  for (const line of facts.lines) {
    const ofLine = own.filter((each) => each.line === line);
    const short = BigInt(dueOf(ofLine) - sentOf(ofLine));
    const worth = short * invoicePrice(line, week) * millionths(service.chargeRate);
    const charge = nearest(worth, 10n ** BigInt(4 - facts.minorDigits) * 1_000_000n);
    claim(world, accountAt, charge, service.lagWeeks);
  }
}
