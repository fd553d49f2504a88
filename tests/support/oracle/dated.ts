/**
 * Step 9, second half: everything that has a date of its own, in the order of the description.
 * Worked figure: a VAT quarter that ends on 31 March is settled in the week that holds 30 April.
 */
import { isPaidIn, monthOf } from './dates.ts';
import { authorisedIn, type Facts, opens, sum } from './facts.ts';
import { millionths, nearest, scaled, share, totalOf } from './numbers.ts';
import { feesOpening, times } from './opening-fees.ts';
import { addTo, type Dated, pay, post, receive, type World } from './world.ts';

export function settleDated(world: World): void {
  baseSales(world);
  for (const amount of falling(world.supplierInvoices, world))
    pay(world, 'payables', amount, 'supplierPayments');
  openingItems(world);
  monthly(world);
  quarterly(world);
  overhead(world);
  atOpenings(world);
  capital(world);
  principal(world);
  depreciation(world);
}

function falling(list: readonly Dated[], { week }: World): bigint[] {
  return list.filter((each) => each.week === week).map(({ amount }) => amount);
}

function baseSales(world: World): void {
  const { facts, week } = world;
  const base = facts.plan.business.baseSales;
  if (base === null) return;
  const revenue = sum(facts, base.revenueAmountPerWeek);
  const cost = share(revenue, millionths(base.costRate));
  post(world, 'receivables', 'retained', revenue);
  post(world, 'retained', 'payables', cost);
  world.baseIn.push({ week: week + Math.ceil(base.collectDays / 7), amount: revenue });
  world.baseOut.push({ week: week + Math.floor(base.payDays / 7), amount: cost });
  for (const amount of falling(world.baseIn, world)) receive(world, 'receivables', amount, 'baseCollections');
  for (const amount of falling(world.baseOut, world)) pay(world, 'payables', amount, 'basePayments');
}

function openingItems(world: World): void {
  const { facts, week } = world;
  const { receivables, payables, accrued } = facts.plan.business.openingBooks;
  const now = (list: typeof receivables) =>
    list.filter((each) => each.week === week).map(({ amount }) => sum(facts, amount));
  for (const amount of now(receivables)) receive(world, 'receivables', amount, 'openingCollections');
  for (const amount of now(payables)) pay(world, 'payables', amount, 'openingPayments');
  for (const amount of now(accrued)) pay(world, 'accrued', amount, 'openingPayments');
}

function startsMonth({ facts, week }: World): boolean {
  const { startDate } = facts.plan;
  return monthOf(startDate, week) !== monthOf(startDate, week - 1);
}

function monthly(world: World): void {
  if (startsMonth(world)) {
    for (const [owed, flow] of [
      [world.brokerOwed, 'broker'],
      [world.interestOwed, 'interest'],
    ] as const) {
      if (owed.before < 0n) continue; // more credits than sales: carried
      pay(world, 'accrued', owed.before, flow);
      owed.before = 0n;
    }
  }
  for (const owed of [world.brokerOwed, world.interestOwed]) {
    owed.before += owed.now;
    owed.now = 0n;
  }
}

function quarterly(world: World): void {
  const { startDate } = world.facts.plan;
  for (const [quarter, amount] of world.royaltyOwed) {
    if (!isPaidIn(quarter, startDate, world.week)) continue;
    if (amount >= 0n) pay(world, 'accrued', amount, 'royalty');
    else addTo(world.royaltyOwed, quarter + 1, amount); // more credits than sales: carried
  }
  for (const [quarter, amount] of world.vatOwed) {
    if (isPaidIn(quarter, startDate, world.week)) pay(world, 'accrued', amount, 'vatSettled');
  }
}

function overhead(world: World): void {
  const { facts, week } = world;
  for (const { amountPerWeek, fromWeek, untilWeek } of facts.plan.business.overheads) {
    if (week < fromWeek || (untilWeek !== null && week >= untilWeek)) continue;
    pay(world, 'retained', sum(facts, amountPerWeek), 'overhead');
  }
}

function atOpenings(world: World): void {
  const { facts } = world;
  facts.plan.accounts.forEach(({ slotting, openingFees }, accountAt) => {
    if (slotting?.settled === 'atOpening') {
      pay(world, 'retained', feesOpening(world, accountAt, slotting), 'slotting');
    }
    for (const fee of openingFees) pay(world, 'retained', feesOpening(world, accountAt, fee), 'openingFees');
    displays(world, accountAt);
  });
}

function displays(world: World, accountAt: number): void {
  const { facts, week } = world;
  const terms = facts.plan.accounts[accountAt]?.display ?? null;
  if (terms === null) return;
  const perDoor = [terms.buildAmountPerDoor, terms.freightAmountPerDoor].map((text) => scaled(text, 4));
  let doorsWithDisplay = 0;
  for (const cohort of facts.cohorts.filter((each) => each.accountAt === accountAt)) {
    const { openWeek, authorisedAtOpening } = cohort;
    const amount = nearest(
      totalOf(perDoor) * BigInt(authorisedAtOpening),
      10n ** BigInt(4 - facts.minorDigits),
    );
    if (opens(cohort)) {
      if (week === Math.max(0, openWeek - terms.buildWeeks)) pay(world, 'deposits', amount, 'displayBuild');
      if (week === openWeek) post(world, 'retained', 'deposits', amount);
    }
    const age = week - openWeek;
    if (age >= 0 && age < terms.weeks) doorsWithDisplay += authorisedIn(cohort, week);
  }
  const fee = times(terms.feeAmountPerStoreWeek, doorsWithDisplay, facts.minorDigits);
  pay(world, 'retained', fee, 'displayFees');
}

/** Everything bought to last, by the week it is paid in; what is there at the start has week 0. */
function equipment({
  plan,
  minorDigits,
}: Facts): { week: number; amount: bigint; life: number; isBought: boolean }[] {
  const { openingBooks, capital: bought } = plan.business;
  const typed = { plan, minorDigits } as Facts;
  return [
    ...openingBooks.equipment.map((each) => ({ ...each, week: 0, isBought: false })),
    ...bought.map((each) => ({ ...each, isBought: true })),
    ...[
      ...plan.items.map(({ supply }) => supply.capacitySteps),
      ...plan.business.lines.map(({ steps }) => steps),
    ].flatMap((steps) =>
      steps.map(({ fromWeek, leadWeeks, capitalAmount, lifeWeeks }) => ({
        week: Math.max(0, fromWeek - leadWeeks),
        amount: capitalAmount,
        lifeWeeks,
        isBought: true,
      })),
    ),
  ].map(({ week, amount, lifeWeeks, isBought }) => ({
    week,
    amount: sum(typed, amount),
    life: lifeWeeks,
    isBought,
  }));
}

function capital(world: World): void {
  for (const { week, amount, isBought } of equipment(world.facts)) {
    if (isBought && week === world.week) pay(world, 'equipment', amount, 'capital');
  }
}

function principal(world: World): void {
  if (!startsMonth(world)) return;
  const month = monthOf(world.facts.plan.startDate, world.week);
  for (const loan of world.loans) {
    for (const part of loan.parts) {
      if (part.month !== month) continue;
      loan.balance -= part.amount;
      pay(world, 'loans', part.amount, 'principal');
    }
  }
}

function depreciation(world: World): void {
  for (const { week, amount, life } of equipment(world.facts)) {
    const j = BigInt(world.week - week);
    if (j < 0n || j >= BigInt(life)) continue;
    const part = nearest(amount * (j + 1n), BigInt(life)) - nearest(amount * j, BigInt(life));
    post(world, 'retained', 'equipment', part);
  }
}
