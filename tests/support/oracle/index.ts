/**
 * A second computation of the weekly pass, written from src/domain/rollout/PASS.md before its author had read the kernel:
 * slow, plain, in BigInt, sharing no arithmetic with it. tests/simulation holds the two against each other.
 * Readings taken where the description leaves room (settled afterwards, with the kernel's author's choice in view):
 * - An amount per door, item or store-week is multiplied first and rounded once: per cohort that opens; per account and
 *   week for display fees. Doors that run already pay nothing again; "first opening" is that of the waves.
 * - Credits, returns and what is held under guarantee are documents of one cell (of one order, for what is held).
 * - Broker and royalty on free goods are a document beside that on the invoice; what credits leave below zero is carried.
 * - Bill-backs are on units invoiced (units scanned, for goods on scan), guarantees on units that are not free.
 * - Purchase VAT is on what lands of an item together; a deposit counts up to the goods it was paid for.
 * - Own deductions reach as far as the invoice less bad debt; an order lost with its doors leaves the backlog at once.
 * Worked figure: one account, 10 doors opening in week 4 behind one transit week: the fill is ordered at the end of week 2.
 */
import type { BalanceName, FlowName, UnitName } from '../../../src/domain/rollout/types.ts';
import { balancesOf, flowsOf, lowsOf } from './books.ts';
import { order } from './cell.ts';
import { settleDated } from './dated.ts';
import { orderForDepot } from './depot.ts';
import { closeDoors } from './doors.ts';
import { factsOf, type OracleInput } from './facts.ts';
import { takeFunding } from './funding.ts';
import { total } from './numbers.ts';
import { openBooks } from './opening.ts';
import { sellToShoppers } from './sales.ts';
import { claimSlotting, noteAccounts, settleAccounts } from './settle.ts';
import { shipOrders } from './shipments.ts';
import { receiveInDepots, receiveInStores } from './stores.ts';
import { onOrder, orderGoods, receiveGoods } from './supply.ts';
import { newWorld, type World } from './world.ts';

export interface OracleResult {
  flows: Record<FlowName, bigint[]>;
  balances: Record<BalanceName, bigint[]>;
  low: bigint[];
  units: Record<UnitName, number[]>[];
  accounts: World['accountWeeks'];
  openingCash: bigint;
  openingUnits: number[];
}

export function oracle(input: OracleInput): OracleResult {
  const world = newWorld(factsOf(input));
  openBooks(world);
  const openingUnits = world.ours.map(
    (ours, itemAt) => ours + inStores(world, itemAt) + atDepot(world, itemAt),
  );
  for (let week = 0; week < input.plan.horizonWeeks; week++) {
    world.week = week;
    runWeek(world);
  }
  const { entries, units, accountWeeks } = world;
  const weeks = input.plan.horizonWeeks;
  const balances = balancesOf(entries, weeks);
  const flows = flowsOf(entries, weeks);
  const openingCash = entries
    .filter((each) => each.week < 0 && each.debit === 'cash')
    .reduce((sum, { amount }) => sum + amount, 0n);
  const low = lowsOf(entries, balances.cash, openingCash);
  return { flows, balances, low, units, accounts: accountWeeks, openingCash, openingUnits };
}

function runWeek(world: World): void {
  takeFunding(world);
  closeDoors(world);
  receiveGoods(world);
  receiveInDepots(world);
  receiveInStores(world, world.cells);
  orderGoods(world);
  shipOrders(world);
  sellToShoppers(world);
  for (const cell of world.cells) order(world.facts, cell, world.week);
  for (const depot of world.depots) orderForDepot(world.facts, depot, world.week);
  claimSlotting(world);
  settleAccounts(world);
  settleDated(world);
  close(world);
}

function close(world: World): void {
  noteAccounts(world);
  world.units.forEach((rows, itemAt) => {
    const { week } = world;
    rows.ours[week] = world.ours[itemAt] ?? 0;
    rows.inStores[week] = inStores(world, itemAt);
    rows.atDepot[week] = atDepot(world, itemAt);
    rows.inTransit[week] = inTransit(world, itemAt);
    rows.onOrder[week] = onOrder(world, itemAt);
  });
}

function inStores({ cells }: World, itemAt: number): number {
  return total(cells.filter(({ line }) => line.itemAt === itemAt).map(({ shelf }) => shelf));
}

function atDepot({ depots }: World, itemAt: number): number {
  return total(depots.filter(({ line }) => line.itemAt === itemAt).map(({ stock }) => stock));
}

/** To stores, and to depots. */
function inTransit({ cells, depots }: World, itemAt: number): number {
  return total(
    [...cells, ...depots]
      .filter(({ line }) => line.itemAt === itemAt)
      .flatMap(({ coming }) => coming.map(({ units }) => units)),
  );
}
