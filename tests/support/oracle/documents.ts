/**
 * The documents of a sale: of a shipment, or of a week's scans where goods are paid on scan.
 * Worked figure: 120 units at 2.60 are an invoice of 312.00; spoils of 2 % are 6.24; half paid early at 2 % off is 156.00
 * less 3.12 and 3.12, the rest 156.00 less 3.12.
 */

import { quarterOf } from './dates.ts';
import { invoicePrice, type Line } from './facts.ts';
import { millionths, priced, share, totalOf } from './numbers.ts';
import { oweMonthly, oweQuarterly } from './owed.ts';
import { addTo, claim, type InvoicePart, pay, post, receive, relieve, type World } from './world.ts';

export interface Sale {
  units: number;
  /** Of them, units of a fill that are free (or billed back). */
  free: number;
  /** Of them, units that stay in the stock balance until a review. */
  held: number;
}

/** Freight out and picking, on all units, in cash. */
export function payForLeaving(world: World, { prices }: Line, units: number): void {
  for (const flow of ['freightOut', 'pickAndPack'] as const) {
    if (flow === 'freightOut' && prices.pickUp) continue;
    let price = 0n;
    for (const { charge } of prices.charges) {
      if (charge.settles === 'shipment' && charge.flow === flow) price += BigInt(charge.priceTenThousandths);
    }
    pay(world, 'retained', priced(units, price, world.facts.minorDigits), flow);
  }
}

export function bookSale(world: World, line: Line, { units, free, held }: Sale): void {
  const { facts, week } = world;
  const { plan, minorDigits } = facts;
  const { account, accountAt, itemAt, prices } = line;
  const billedBack = account.freeFill.settled === 'billedBack';
  const price = invoicePrice(line, week);
  const paid = billedBack ? units : units - free;
  const invoice = priced(paid, price, minorDigits);
  relieve(world, itemAt, units - held);
  post(world, 'receivables', 'retained', invoice);
  const vat = plan.business.vat === null ? 0n : share(invoice, millionths(plan.business.vat.salesRate));
  post(world, 'receivables', 'accrued', vat);
  addTo(world.vatOwed, quarterOf(plan.startDate, week), vat);
  const row = world.accountWeeks[accountAt];
  if (row) row.invoiced[week] = (row.invoiced[week] ?? 0n) + invoice;

  const deductions = prices.charges.flatMap(({ charge }) =>
    charge.settles === 'remittance' ? [share(invoice, BigInt(charge.rateMillionths))] : [],
  );
  const { disputed } = account;
  const wrong = disputed === null ? 0n : share(invoice, millionths(disputed.wrongRate));
  for (const each of [...deductions, wrong]) post(world, 'retained', 'accrued', each);
  bookParts(world, line, invoice + vat, { right: deductions, wrong });
  bookSellingCosts(world, line, { invoice, paid, free: billedBack ? 0 : free });
  bookBillBacks(world, line, paid);
  if (billedBack && free > 0) {
    const first = BigInt(prices.firstHandSellsTenThousandths);
    claim(world, accountAt, priced(free, first, minorDigits), account.freeFill.lagWeeks);
  }
}

/** Percentage deductions of an invoice, and the one that isn't owed. */
interface Deducted {
  right: readonly bigint[];
  wrong: bigint;
}

/** Of what is taken wrongly off a remittance, the part that comes back some weeks after it. */
function recover(world: World, { account }: Line, dueWeek: number, wrong: bigint): void {
  if (account.disputed === null) return;
  const { recoveredShare, recoveryWeeks } = account.disputed;
  const amount = share(wrong, millionths(recoveredShare));
  world.recoveries.push({ week: dueWeek + recoveryWeeks, amount });
}

/** The invoice as it will be collected: early, late, or both. */
function bookParts(world: World, line: Line, gross: bigint, deducted: Deducted): void {
  const deductions = [...deducted.right, deducted.wrong];
  const { paymentDays, latenessDays, earlyDiscount } = line.account.terms;
  const dueWeek = world.week + Math.ceil((paymentDays + latenessDays) / 7);
  const all = totalOf(deductions);
  if (earlyDiscount === null) {
    openPart(world, line, { dueWeek, gross, deductions: all, discount: 0n, advanced: [] });
    recover(world, line, dueWeek, deducted.wrong);
    return;
  }
  const taken = millionths(earlyDiscount.takenShare);
  const early: InvoicePart = {
    dueWeek: world.week + Math.ceil(earlyDiscount.days / 7),
    gross: share(gross, taken),
    deductions: totalOf(deductions.map((each) => share(each, taken))),
    discount: 0n,
    advanced: [],
  };
  const wrongEarly = share(deducted.wrong, taken);
  recover(world, line, early.dueWeek, wrongEarly);
  recover(world, line, dueWeek, deducted.wrong - wrongEarly);
  early.discount = share(early.gross, millionths(earlyDiscount.rate));
  post(world, 'retained', 'accrued', early.discount);
  openPart(world, line, early);
  openPart(world, line, {
    dueWeek,
    gross: gross - early.gross,
    deductions: all - early.deductions,
    discount: 0n,
    advanced: [],
  });
}

function openPart(world: World, { accountAt }: Line, part: InvoicePart): void {
  const ledger = world.ledgers[accountAt];
  if (!ledger || (part.gross === 0n && part.deductions === 0n)) return;
  part.advanced = world.advances.map((advance) => {
    if (world.week < advance.fromWeek) return 0n;
    const amount = share(part.gross, advance.part);
    receive(world, 'loans', amount, 'advanceIn');
    advance.balance += amount;
    return amount;
  });
  ledger.parts.push(part);
  ledger.receivables += part.gross;
}

function bookSellingCosts(
  world: World,
  line: Line,
  sale: { invoice: bigint; paid: number; free: number },
): void {
  const { minorDigits } = world.facts;
  const price = invoicePrice(line, world.week);
  for (const { charge } of line.prices.charges) {
    if (charge.settles !== 'monthly' && charge.settles !== 'quarterly') continue;
    const owe = charge.settles === 'monthly' ? oweMonthly : oweQuarterly;
    const on = (base: bigint, units: number) =>
      share(base, BigInt(charge.rateMillionths)) +
      priced(units, BigInt(charge.priceTenThousandths), minorDigits);
    owe(world, on(sale.invoice, sale.paid));
    if (charge.onFreeGoods) owe(world, on(priced(sale.free, price, minorDigits), sale.free));
  }
}

function bookBillBacks(world: World, line: Line, units: number): void {
  for (const { charge } of line.prices.charges) {
    if (charge.settles !== 'claim' || charge.per !== 'unitShipped') continue;
    if (world.week < charge.fromWeek || world.week >= charge.untilWeek) continue;
    const amount = priced(units, BigInt(charge.priceTenThousandths), world.facts.minorDigits);
    claim(world, line.accountAt, amount, charge.lagWeeks);
  }
}
