/**
 * Steps 3 and 5: what lands at our door, samples and write-offs, and the purchase orders of the week.
 * Worked figure: need 1,350 with a minimum of 1,000 and batches of 500: 1,500; a capacity of 600 lands 600, 600, 300.
 */
import { quarterOf } from './dates.ts';
import { leastOf, millionths, priced, share, total, totalOf } from './numbers.ts';
import { addTo, addToPool, count, type Instalment, pay, post, relieve, type World } from './world.ts';

export function receiveGoods(world: World): void {
  world.facts.plan.items.forEach((_, itemAt) => {
    const landing = world.instalments.filter((each) => each.week === world.week && each.itemAt === itemAt);
    if (landing.length > 0) land(world, itemAt, landing);
  });
  world.facts.plan.items.forEach(({ removals }, itemAt) => {
    for (const { week, units } of removals) {
      if (week !== world.week) continue;
      const ours = world.ours[itemAt] ?? 0;
      const taken = Math.min(units, ours);
      world.ours[itemAt] = ours - taken;
      relieve(world, itemAt, taken);
      count(world, itemAt, 'gone', taken);
    }
  });
}

/** What lands of an item together: the supplier's invoice is one, and so is the VAT on it. */
function land(world: World, itemAt: number, landing: readonly Instalment[]): void {
  const units = total(landing.map((each) => each.units));
  const goods = totalOf(landing.map((each) => each.goods));
  const freight = totalOf(landing.map((each) => each.freight));
  const deposit = leastOf(goods, totalOf(landing.map((each) => each.deposit)));
  const { plan } = world.facts;
  const supplierDays = plan.items[itemAt]?.supply.supplierDays ?? 0;
  world.ours[itemAt] = (world.ours[itemAt] ?? 0) + units;
  count(world, itemAt, 'made', units);
  addToPool(world, itemAt, units, goods + freight);
  post(world, 'stock', 'deposits', deposit);
  post(world, 'stock', 'payables', goods - deposit);
  pay(world, 'stock', freight, 'inboundFreightAndDuty');
  let owed = goods - deposit;
  if (plan.business.vat !== null) {
    const rate = millionths(plan.business.vat.purchasesRate);
    const quarter = quarterOf(plan.startDate, world.week);
    const onGoods = share(goods, rate);
    const onFreight = share(freight, rate);
    post(world, 'accrued', 'payables', onGoods);
    pay(world, 'accrued', onFreight, 'inboundFreightAndDuty');
    addTo(world.vatOwed, quarter, -onGoods - onFreight);
    owed += onGoods;
  }
  world.supplierInvoices.push({ week: world.week + Math.floor(supplierDays / 7), amount: owed });
}

export function orderGoods(world: World): void {
  world.facts.plan.items.forEach((_, itemAt) => {
    const units = unitsToOrder(world, itemAt);
    if (units > 0) placeInstalments(world, itemAt, units);
  });
}

function unitsToOrder(world: World, itemAt: number): number {
  const supply = world.facts.plan.items[itemAt]?.supply;
  if (!supply) return 0;
  const ahead = (world.unlimited[itemAt] ?? []).slice(
    world.week,
    world.week + supply.leadWeeks + supply.coverWeeks + 1,
  );
  const need =
    total(ahead) + (world.unshipped[itemAt] ?? 0) - (world.ours[itemAt] ?? 0) - onOrder(world, itemAt);
  if (need <= 0) return 0;
  const raised = Math.max(need, supply.minimumOrderUnits);
  return Math.ceil(raised / supply.batchUnits) * supply.batchUnits;
}

export function onOrder(world: World, itemAt: number): number {
  return total(
    world.instalments
      .filter((each) => each.itemAt === itemAt && each.week > world.week)
      .map(({ units }) => units),
  );
}

function placeInstalments(world: World, itemAt: number, units: number): void {
  const { plan, landed, minorDigits } = world.facts;
  const supply = plan.items[itemAt]?.supply;
  const prices = landed[itemAt];
  if (!supply || !prices) return;
  let left = units;
  for (let week = world.week + supply.leadWeeks; left > 0 && week <= 2 * plan.horizonWeeks + 119; week++) {
    const quantity = Math.min(left, room(world, itemAt, week));
    if (quantity === 0) continue;
    const goods = priced(quantity, BigInt(prices.goods), minorDigits);
    const freight = priced(quantity, BigInt(prices.freight), minorDigits);
    const deposit = share(goods, millionths(supply.depositRate));
    const instalment = { itemAt, week, units: quantity, goods, freight, deposit };
    world.instalments.push(instalment);
    count(world, itemAt, 'ordered', quantity);
    pay(world, 'deposits', deposit, 'supplierDeposits');
    if (week === world.week) land(world, itemAt, [instalment]);
    left -= quantity;
  }
}

/** What the capacity of a week has left. */
function room(world: World, itemAt: number, week: number): number {
  const { plan } = world.facts;
  const supply = plan.items[itemAt]?.supply;
  if (!supply) return 0;
  const inside = Math.min(week, plan.horizonWeeks - 1);
  let capacity = supply.capacityUnitsPerWeek;
  for (const step of supply.capacitySteps) if (step.fromWeek <= inside) capacity = step.unitsPerWeek;
  if (capacity === null) return Number.MAX_SAFE_INTEGER;
  const landing = world.instalments.filter((each) => each.itemAt === itemAt && each.week === week);
  return Math.max(0, capacity - total(landing.map(({ units }) => units)));
}
