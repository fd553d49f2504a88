/**
 * Steps 3 and 5: what lands at our door, samples and write-offs, and the rush and purchase orders of the week.
 * Worked figure: need 1,350 with a minimum of 1,000 and batches of 500: 1,500; a capacity of 600 lands 600, 600, 300.
 */
import type { Item } from '../../../src/domain/plan/index.ts';
import { quarterOf } from './dates.ts';
import { addLot, takeOldest, writeOffOldLots } from './lots.ts';
import { leastOf, millionths, priced, scaled, share, total, totalOf } from './numbers.ts';
import {
  canTake,
  lastLanding,
  pricesOf,
  RUSH,
  raised,
  roomIn,
  suppliersOf,
  type Terms,
  type UnitPrices,
} from './suppliers.ts';
import { addTo, addToPool, count, type Instalment, pay, post, relieve, type World } from './world.ts';

export function receiveGoods(world: World): void {
  const { items } = world.facts.plan;
  writeOffOldLots(world);
  items.forEach(({ supply }, itemAt) => {
    for (let supplierAt = RUSH; supplierAt <= supply.sources.length; supplierAt++) {
      const landing = world.instalments.filter(
        (each) => each.week === world.week && each.itemAt === itemAt && each.supplierAt === supplierAt,
      );
      if (landing.length > 0) land(world, itemAt, supplierAt, landing);
    }
  });
  items.forEach(({ removals }, itemAt) => {
    for (const { week, units } of removals) {
      if (week !== world.week) continue;
      const ours = world.ours[itemAt] ?? 0;
      const taken = Math.min(units, ours);
      world.ours[itemAt] = ours - taken;
      takeOldest(world, itemAt, taken, null);
      relieve(world, itemAt, taken);
      count(world, itemAt, 'gone', taken);
    }
  });
}

/** What lands of an item from one supplier: its invoice is one, and so is the VAT on it. */
function land(world: World, itemAt: number, supplierAt: number, landing: readonly Instalment[]): void {
  const units = total(landing.map((each) => each.units));
  const goods = totalOf(landing.map((each) => each.goods));
  const freight = totalOf(landing.map((each) => each.freight));
  const rush = totalOf(landing.map((each) => each.rush));
  const deposit = leastOf(goods, totalOf(landing.map((each) => each.deposit)));
  const { plan } = world.facts;
  world.ours[itemAt] = (world.ours[itemAt] ?? 0) + units;
  addLot(world, itemAt, units);
  count(world, itemAt, 'made', units);
  addToPool(world, itemAt, units, goods + freight + rush);
  post(world, 'stock', 'deposits', deposit);
  post(world, 'stock', 'payables', goods - deposit);
  pay(world, 'stock', freight, 'inboundFreightAndDuty');
  pay(world, 'stock', rush, 'rushFreight');
  let owed = goods - deposit;
  if (plan.business.vat !== null) {
    const rate = millionths(plan.business.vat.purchasesRate);
    const quarter = quarterOf(plan.startDate, world.week);
    const onGoods = share(goods, rate);
    post(world, 'accrued', 'payables', onGoods);
    addTo(world.vatOwed, quarter, -onGoods);
    for (const each of [freight, rush]) {
      pay(world, 'accrued', share(each, rate), 'inboundFreightAndDuty');
      addTo(world.vatOwed, quarter, -share(each, rate));
    }
    owed += onGoods;
  }
  const { supplierDays } = termsOf(world, itemAt, supplierAt);
  world.supplierInvoices.push({ week: world.week + Math.floor(supplierDays / 7), amount: owed });
}

/** Rush orders are paid as the first supplier is. */
function termsOf(world: World, itemAt: number, supplierAt: number): Terms {
  const item = world.facts.plan.items[itemAt];
  const terms = item && suppliersOf(item)[Math.max(0, supplierAt)];
  if (!terms) throw new Error(`no supplier ${supplierAt} of item ${itemAt}`);
  return terms;
}

export function orderGoods(world: World): void {
  world.facts.plan.items.forEach((item, itemAt) => {
    rushOrder(world, item, itemAt);
    const need =
      missing(world, itemAt, item.supply.leadWeeks + item.supply.coverWeeks) - onOrder(world, itemAt);
    if (need > 0) purchaseOrder(world, item, itemAt, need);
  });
}

/** Units that would ship up to so many weeks from now, and what waits, less what we hold. */
function missing(world: World, itemAt: number, weeks: number): number {
  const ahead = (world.unlimited[itemAt] ?? []).slice(world.week, world.week + weeks + 1);
  return total(ahead) + (world.unshipped[itemAt] ?? 0) - (world.ours[itemAt] ?? 0);
}

/** What lands after this week: by a week, or ever. */
export function onOrder(world: World, itemAt: number, until = Number.POSITIVE_INFINITY): number {
  return total(
    world.instalments
      .filter((each) => each.itemAt === itemAt && each.week > world.week && each.week <= until)
      .map(({ units }) => units),
  );
}

function rushOrder(world: World, { supply, caseUnits }: Item, itemAt: number): void {
  const { expedite } = supply;
  if (expedite === null) return;
  const week = world.week + expedite.leadWeeks;
  const short = missing(world, itemAt, expedite.leadWeeks) - onOrder(world, itemAt, week);
  const most = expedite.mostUnitsPerWeek ?? Number.POSITIVE_INFINITY;
  const cases = Math.min(Math.ceil(short / caseUnits), Math.floor(most / caseUnits));
  if (cases <= 0) return;
  const units = cases * caseUnits;
  const rush = priced(units, scaled(expedite.extraAmountPerUnit, 4), world.facts.minorDigits);
  const prices = pricesOf(world, itemAt, 0, null);
  count(world, itemAt, 'rushed', units);
  placeInstalment(world, { itemAt, supplierAt: RUSH, week, units, prices, rush });
}

function purchaseOrder(world: World, item: Item, itemAt: number, need: number): void {
  const suppliers = suppliersOf(item);
  const [first, ...further] = suppliers;
  if (!first) return;
  const wanted = raised(need, first);
  const taken = suppliers.map(() => 0);
  taken[0] = further.length === 0 ? wanted : canTake(world, itemAt, 0, wanted);
  let rest = wanted - (taken[0] ?? 0);
  further.forEach((terms, index) => {
    if (rest <= 0) return;
    const takes = canTake(world, itemAt, index + 1, raised(rest, terms));
    taken[index + 1] = takes;
    rest = Math.max(0, rest - takes);
  });
  if (rest > 0) taken[0] = raised((taken[0] ?? 0) + rest, first);
  taken.forEach((units, supplierAt) => {
    if (units > 0) spread(world, itemAt, supplierAt, units);
  });
}

/** An order, as its weeks from the lead time on have room for it. */
function spread(world: World, itemAt: number, supplierAt: number, units: number): void {
  const prices = pricesOf(world, itemAt, supplierAt, units);
  const { leadWeeks } = termsOf(world, itemAt, supplierAt);
  let left = units;
  for (let week = world.week + leadWeeks; left > 0 && week <= lastLanding(world); week++) {
    const quantity = Math.min(left, roomIn(world, itemAt, supplierAt, week));
    if (quantity === 0) continue;
    placeInstalment(world, { itemAt, supplierAt, week, units: quantity, prices, rush: 0n });
    left -= quantity;
  }
}

interface Placed {
  itemAt: number;
  supplierAt: number;
  week: number;
  units: number;
  prices: UnitPrices;
  rush: bigint;
}

function placeInstalment(world: World, { itemAt, supplierAt, week, units, prices, rush }: Placed): void {
  const { minorDigits } = world.facts;
  const goods = priced(units, prices.goods, minorDigits);
  const freight = priced(units, prices.freight, minorDigits);
  const deposit = share(goods, millionths(termsOf(world, itemAt, supplierAt).depositRate));
  const instalment = { itemAt, supplierAt, week, units, goods, freight, rush, deposit };
  world.instalments.push(instalment);
  count(world, itemAt, 'ordered', units);
  pay(world, 'deposits', deposit, 'supplierDeposits');
  if (week === world.week) land(world, itemAt, supplierAt, [instalment]);
}
