/**
 * A second computation of the weekly pass, written from src/domain/rollout/PASS.md alone: slow, plain, in BigInt, and
 * sharing no arithmetic with the kernel. tests/simulation/oracle.test.ts holds the two against each other.
 * Worked figure: one account, 10 doors opening in week 4 behind one transit week: the fill is ordered at the end of week 2.
 */
import type { BalanceName, FlowName, UnitName } from '../../../src/domain/rollout/types.ts';
import { balancesOf, flowsOf, lowsOf } from './books.ts';
import { order } from './cell.ts';
import { settleDated } from './dated.ts';
import { closeDoors } from './doors.ts';
import { factsOf, type OracleInput } from './facts.ts';
import { takeFunding } from './funding.ts';
import { total } from './numbers.ts';
import { openBooks } from './opening.ts';
import { sellToShoppers } from './sales.ts';
import { claimSlotting, noteAccounts, settleAccounts } from './settle.ts';
import { shipOrders } from './shipments.ts';
import { receiveInStores } from './stores.ts';
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
  const openingUnits = world.ours.map((ours, itemAt) => ours + inStores(world, itemAt));
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
  receiveInStores(world, world.cells);
  orderGoods(world);
  shipOrders(world);
  sellToShoppers(world);
  for (const cell of world.cells) order(world.facts, cell, world.week);
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
    rows.inTransit[week] = inTransit(world, itemAt);
    rows.onOrder[week] = onOrder(world, itemAt);
  });
}

function inStores({ cells }: World, itemAt: number): number {
  return total(cells.filter(({ line }) => line.itemAt === itemAt).map(({ shelf }) => shelf));
}

function inTransit({ cells }: World, itemAt: number): number {
  return total(
    cells
      .filter(({ line }) => line.itemAt === itemAt)
      .flatMap(({ coming }) => coming.map(({ units }) => units)),
  );
}
