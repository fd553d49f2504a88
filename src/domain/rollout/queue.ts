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

/** An order at the end; `fill` is 1 for an opening fill. */
export function addOrder(queue: OrderQueue, index: number, units: number, fill: 0 | 1): void {
  if (queue.count === queue.cell.length) growQueue(queue);
  queue.cell[queue.count] = index;
  queue.units[queue.count] = units;
  queue.fill[queue.count] = fill;
  queue.count++;
}

/** Takes the orders of a place out. Returns how many units of them the last shipping had left. */
export function dropOrdersOf(queue: OrderQueue, index: number): number {
  const { late } = queue;
  let kept = 0;
  let lateUnits = 0;
  for (let place = 0; place < queue.count; place++) {
    if (queue.cell[place] === index) {
      if (place >= late) continue;
      lateUnits += queue.units[place] ?? 0;
      queue.late--;
      continue;
    }
    queue.cell[kept] = queue.cell[place] ?? 0;
    queue.units[kept] = queue.units[place] ?? 0;
    queue.fill[kept] = queue.fill[place] ?? 0;
    kept++;
  }
  queue.count = kept;
  return lateUnits;
}

/** Room for twice as many orders. */
function growQueue(queue: OrderQueue): void {
  const { cell, units, fill } = queue;
  queue.cell = new Int32Array(cell.length * 2);
  queue.cell.set(cell);
  queue.units = new Float64Array(units.length * 2);
  queue.units.set(units);
  queue.fill = new Uint8Array(fill.length * 2);
  queue.fill.set(fill);
}
