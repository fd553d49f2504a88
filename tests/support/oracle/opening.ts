/**
 * Before week 0: the opening balances, what is on order, loans that run, and the fills of cohorts that open as soon as a
 * delivery can be there.
 * Worked figure: cash 500.00, receivables 200.00, payables 100.00, paid in 400.00 leave 200.00 retained.
 */
import { order } from './cell.ts';
import { monthOf } from './dates.ts';
import { sum } from './facts.ts';
import { millionths, nearest, priced } from './numbers.ts';
import { addToPool, type Loan, post, type World } from './world.ts';

export function openBooks(world: World): void {
  const { facts } = world;
  const { business, items } = facts.plan;
  const { openingBooks: books } = business;
  post(world, 'cash', 'retained', sum(facts, business.openingCashAmount ?? '0'));
  for (const { amount } of books.receivables) post(world, 'receivables', 'retained', sum(facts, amount));
  for (const { amount } of books.equipment) post(world, 'equipment', 'retained', sum(facts, amount));
  for (const { amount } of books.payables) post(world, 'retained', 'payables', sum(facts, amount));
  for (const { amount } of books.accrued) post(world, 'retained', 'accrued', sum(facts, amount));
  post(world, 'retained', 'paidIn', sum(facts, books.paidInAmount));
  for (const loan of books.loans) {
    const amount = sum(facts, loan.amount);
    post(world, 'retained', 'loans', amount);
    world.loans.push(runningLoan(world, loan, amount, 0));
  }
  for (let itemAt = 0; itemAt < items.length; itemAt++) openItem(world, itemAt);
  for (const offer of business.funding) {
    if (offer.kind !== 'receivablesAdvance') continue;
    const { fromWeek, advanceRate, yearlyRate } = offer;
    world.advances.push({
      fromWeek,
      part: millionths(advanceRate),
      rate: millionths(yearlyRate),
      balance: 0n,
    });
  }
  for (const cell of world.cells) order(facts, cell, -1);
}

function openItem(world: World, itemAt: number): void {
  const { facts } = world;
  const item = facts.plan.items[itemAt];
  const landed = facts.landed[itemAt];
  if (!item || !landed) throw new Error(`no item ${itemAt}`);
  const { opening } = item;
  const money = sum(facts, opening.stockAmount);
  post(world, 'stock', 'retained', money);
  addToPool(world, itemAt, opening.units, money);
  world.ours[itemAt] = opening.units;
  if (opening.units > 0) world.lots[itemAt]?.push({ landed: 0, units: opening.units });
  for (const { landsWeek, units, depositPaidAmount } of opening.onOrder) {
    const deposit = sum(facts, depositPaidAmount);
    post(world, 'deposits', 'retained', deposit);
    const goods = priced(units, BigInt(landed.goods), facts.minorDigits);
    const freight = priced(units, BigInt(landed.freight), facts.minorDigits);
    world.instalments.push({
      itemAt,
      supplierAt: 0,
      week: landsWeek,
      units,
      goods,
      freight,
      rush: 0n,
      deposit,
    });
  }
  for (const cell of world.cells) {
    if (cell.line.itemAt === itemAt && cell.line.account.sale.by === 'scan') {
      addToPool(world, itemAt, cell.shelf, 0n);
    }
  }
  for (const { line, stock } of world.depots) {
    if (line.itemAt === itemAt && line.account.sale.by === 'scan') addToPool(world, itemAt, stock, 0n);
  }
}

/** A loan taken up in a week, with the months its principal is due in. */
export function runningLoan(
  world: World,
  terms: { yearlyRate: string; interestOnlyMonths: number; principalMonths: number },
  amount: bigint,
  week: number,
): Loan {
  const first = monthOf(world.facts.plan.startDate, week) + terms.interestOnlyMonths;
  const months = BigInt(terms.principalMonths);
  const parts = Array.from({ length: terms.principalMonths }, (_, index) => {
    const i = BigInt(index + 1);
    return {
      month: first + index + 1,
      amount: nearest(amount * i, months) - nearest(amount * (i - 1n), months),
    };
  });
  return { balance: amount, rate: millionths(terms.yearlyRate), parts };
}
