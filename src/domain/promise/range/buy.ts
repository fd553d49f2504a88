// The purchase orders of a draw: step 5 of PASS.md for the first supplier, its batches, capacity and line.
// Worked figure: a need of 1,340 in batches of 120 orders 1,440; 400 a week land in four weeks, the last 240.
import type { Bench, Draw } from './bench.ts';
import type { Coarse } from './coarse.ts';
import type { BoughtItem } from './coarse-items.ts';

/** Goods land, and what the plan's forecast will need is ordered; returns what is paid now. */
export function buy(coarse: Coarse, draw: Draw, bench: Bench, i: number, w: number): number {
  const item = coarse.buys[i] as BoughtItem;
  const landing = bench.landing[i] as Float64Array;
  const landed = landing[w] ?? 0;
  const ours = (bench.ours[i] ?? 0) + landed;
  const onOrder = (bench.onOrder[i] ?? 0) - landed;
  bench.ours[i] = ours;
  bench.onOrder[i] = onOrder;
  const need = (item.ahead[w] ?? 0) + (bench.backlog[i] ?? 0) - ours - onOrder;
  if (need <= 0) return 0;
  const paid = order(coarse, draw, bench, i, w, need);
  if (item.lead === 0) {
    const more = (landing[w] ?? 0) - landed;
    bench.ours[i] = ours + more;
    bench.onOrder[i] = (bench.onOrder[i] ?? 0) - more;
  }
  return paid;
}

/** Lays the batches into the weeks that have room. */
function order(coarse: Coarse, draw: Draw, bench: Bench, i: number, w: number, need: number): number {
  const item = coarse.buys[i] as BoughtItem;
  const landing = bench.landing[i] as Float64Array;
  const goods = (item.goods[w] ?? 0) * draw.goods;
  let left = Math.ceil(Math.max(need, item.minimum) / item.batch) * item.batch;
  let onOrder = bench.onOrder[i] ?? 0;
  let paid = 0;
  for (let t = w + item.lead; left > 0 && t < landing.length; t++) {
    let part = (item.capacity[t] ?? 0) - (landing[t] ?? 0);
    if (item.line !== null) part = takeHours(bench, item.line, t, Math.min(left, part));
    if (part > left) part = left;
    if (part <= 0) continue;
    landing[t] = (landing[t] ?? 0) + part;
    left -= part;
    onOrder += part;
    const worth = part * goods;
    const freight = part * item.freight;
    const vat = coarse.vatOnPurchases;
    paid += worth * item.depositRate;
    owe(bench, t, freight * (1 + vat));
    owe(bench, t + item.supplierWeeks, worth * (1 - item.depositRate + vat));
    if (vat > 0 && t < coarse.weeks) owe(bench, coarse.vatDue[t] ?? 0, -vat * (worth + freight));
  }
  bench.onOrder[i] = onOrder;
  return paid;
}

/** Units of those wanted that the line has hours for in a week; the hours are taken. */
function takeHours(
  bench: Bench,
  { hours, unitsPerHour }: { hours: number; unitsPerHour: number },
  week: number,
  wanted: number,
): number {
  const seconds = bench.hours[hours] as Float64Array;
  const place = Math.min(week, seconds.length - 1);
  const left = seconds[place] ?? 0;
  const units = Math.min(wanted, Math.floor((left * unitsPerHour) / 3600));
  // After the horizon the last week stands for all: nothing is taken from it.
  if (units > 0 && week < seconds.length) seconds[place] = left - Math.ceil((units * 3600) / unitsPerHour);
  return units;
}

function owe({ owed }: Bench, week: number, amount: number): void {
  const place = Math.min(week, owed.length - 1);
  owed[place] = (owed[place] ?? 0) + amount;
}
