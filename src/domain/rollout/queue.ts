// The open orders of one item, first to ship first: placed in shipping order at the end of each week (pass.ts), worked
// through from the front (ship.ts). Three arrays in step, since a large plan places some 30,000 orders.
// Worked figure: 257 orders no longer fit the first 256 places: the queue grows to 512.

/** Open orders of one item in shipping order; the three lists run in step. */
export interface OrderQueue {
  count: number;
  /** The first so many were left by the last shipping: they are the backlog. */
  late: number;
  cell: Int32Array;
  units: Float64Array;
  /** 1 for an opening fill. */
  fill: Uint8Array;
}

const FIRST_QUEUE = 256;

export function newQueue(): OrderQueue {
  return {
    count: 0,
    late: 0,
    cell: new Int32Array(FIRST_QUEUE),
    units: new Float64Array(FIRST_QUEUE),
    fill: new Uint8Array(FIRST_QUEUE),
  };
}

/** Room for twice as many orders. */
export function growQueue(queue: OrderQueue): void {
  const { cell, units, fill } = queue;
  queue.cell = new Int32Array(cell.length * 2);
  queue.cell.set(cell);
  queue.units = new Float64Array(units.length * 2);
  queue.units.set(units);
  queue.fill = new Uint8Array(fill.length * 2);
  queue.fill.set(fill);
}
