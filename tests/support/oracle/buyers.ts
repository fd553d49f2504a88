/**
 * Who orders from us: stores whose chain has no depot, cell by cell, and depots; and what of an order leaves free.
 * Worked figure: a fill of 120 of which 24 are free: 24 as long as none has left.
 */
import type { Cell, Order } from './cell.ts';
import type { Depot } from './depot.ts';
import type { Line } from './facts.ts';

export type Buyer = { line: Line; q: number } & ({ cell: Cell; depot: null } | { cell: null; depot: Depot });

/** Units of an order that would leave free, and not be billed back. */
export function freeUnits({ line, depot }: Buyer, order: Order): number {
  if (line.account.freeFill.settled === 'billedBack') return 0;
  return depot ? depot.free : order.freeLeft;
}
