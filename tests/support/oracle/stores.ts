/**
 * Step 4, and step 6 where transit takes no week: what was shipped reaches the stores.
 * Worked figure: 120 units shipped in week 3 behind one transit week stand on the shelf in week 4.
 */
import { arrive, type Cell } from './cell.ts';
import { receiveInDepot } from './depot.ts';
import { count, relieve, type World } from './world.ts';

export function receiveInStores(world: World, cells: readonly Cell[]): void {
  for (const cell of cells) {
    const { itemAt, account } = cell.line;
    const { received, gone } = arrive(cell, world.week);
    count(world, itemAt, 'received', received);
    count(world, itemAt, 'gone', gone);
    if (account.sale.by === 'scan') relieve(world, itemAt, gone);
  }
}

/** The same for depots; what comes after their end is gone. */
export function receiveInDepots(world: World): void {
  for (const depot of world.depots) {
    const { itemAt, account } = depot.line;
    const gone = receiveInDepot(depot, world.week);
    count(world, itemAt, 'gone', gone);
    if (account.sale.by === 'scan') relieve(world, itemAt, gone);
  }
}
