// Money over time, as the trade's spreadsheets compute it: net present value, rates of return, a loan's payment. Amounts in
// any unit; in is above 0, out below. Rates are a period's (irr, npv) or a year's (xirr, xnpv: 365 days). A rate of return is
// given only where there is exactly one above -100 %; none, or several, is said. Sources: the definitions of any finance
// text; tests/outside checks them against published values and two libraries.
// Worked figure: -100 now and 110 a year later return 10 %.

export type Return =
  | { found: 'one'; rate: number }
  | { found: 'several'; rates: number[] }
  | { found: 'none'; why: 'noMoneyIn' | 'nothingBack' | 'noRate' };

/** Value at the first flow's time; flow i is i periods later. Throws on a rate of -100 % or less. */
export function npv(rate: number, flows: readonly number[]): number {
  checkRate(rate);
  return valueAt(
    Math.log1p(rate),
    flows.map((amount, time) => ({ time, amount })),
  );
}

/** Value on the first flow's day; days as whole numbers. Throws on a rate of -100 % or less. */
export function xnpv(rate: number, flows: readonly { day: number; amount: number }[]): number {
  checkRate(rate);
  return valueAt(Math.log1p(rate), inYears(flows));
}

function checkRate(rate: number): void {
  if (!(rate > -1)) throw new RangeError('a rate above -100 % is expected');
}

/** The rate a period at which flows one period apart are worth nothing now. */
export function irr(flows: readonly number[]): Return {
  return returnOf(flows.map((amount, time) => ({ time, amount })));
}

/** The yearly rate (365 days) at which dated flows are worth nothing on the first day. */
export function xirr(flows: readonly { day: number; amount: number }[]): Return {
  return returnOf(inYears(flows));
}

/** Money put in costs `financeRate`, money got back earns `reinvestRate`: the one rate that takes the first to the last. */
export function mirr(flows: readonly number[], financeRate: number, reinvestRate: number): number | null {
  const last = flows.length - 1;
  const ins = npv(
    financeRate,
    flows.map((flow) => Math.min(0, flow)),
  );
  const backs =
    npv(
      reinvestRate,
      flows.map((flow) => Math.max(0, flow)),
    ) *
    (1 + reinvestRate) ** last;
  return ins >= 0 || backs <= 0 || last < 1 ? null : (backs / -ins) ** (1 / last) - 1;
}

/**
 * The equal payment of each period that brings `present` to -`future` in so many periods, paid at their end (or start).
 * `rate` is a period's, 0 or more: told by what a unit at the end is worth now, which is never without end.
 */
export function pmt(rate: number, periods: number, present: number, future = 0, atStart = false): number {
  if (rate === 0) return -(present + future) / periods;
  const force = periods * Math.log1p(rate);
  const payment = (rate * (present + future * Math.exp(-force))) / Math.expm1(-force);
  return atStart ? payment / (1 + rate) : payment;
}

interface Timed {
  time: number;
  amount: number;
}

function inYears(flows: readonly { day: number; amount: number }[]): Timed[] {
  const first = flows.reduce((least, { day }) => Math.min(least, day), Number.POSITIVE_INFINITY);
  return flows.map(({ day, amount }) => ({ time: (day - first) / 365, amount }));
}

/** The value of timed flows at a force of interest: continuous, so a rate close to -100 % stays computable. */
function valueAt(force: number, flows: readonly Timed[]): number {
  return flows.reduce((sum, { time, amount }) => sum + amount * Math.exp(-force * time), 0);
}

/** Between these yearly (or a period's) rates returns are looked for: -99.99 % to a million per cent. */
const LEAST = Math.log(1e-4);
const MOST = Math.log(1e4);
const STEPS = 400;

/**
 * Every rate at which the value crosses zero. Where the flows change sign once there is one at most (Descartes' rule), and it
 * is bisected; else the whole range is walked in small steps, and each crossing refined; where the value comes close to zero
 * and turns, the turn itself is looked at, so that two rates close together are both found.
 */
function returnOf(timed: readonly Timed[]): Return {
  const flows = merged(timed);
  if (!flows.some(({ amount }) => amount < 0)) return { found: 'none', why: 'noMoneyIn' };
  if (!flows.some(({ amount }) => amount > 0)) return { found: 'none', why: 'nothingBack' };
  const steps = signChanges(flows) === 1 ? 1 : STEPS;
  const places = Array.from({ length: steps + 1 }, (_, step) => LEAST + ((MOST - LEAST) * step) / steps);
  const walked = withTurns(places, flows);
  const values = walked.map((force) => valueAt(force, flows));
  const roots = walked.flatMap((force, at) => {
    const [before, here] = [values[at - 1], values[at] ?? 0];
    if (here === 0) return [force];
    const crosses = before !== undefined && before !== 0 && before < 0 !== here < 0;
    return crosses ? [refined(walked[at - 1] ?? force, force, flows)] : [];
  });
  const rates = roots.map((force) => Math.expm1(force));
  const [only] = rates;
  if (only === undefined) return { found: 'none', why: 'noRate' };
  return rates.length === 1 ? { found: 'one', rate: only } : { found: 'several', rates };
}

/** The places, and between them those where the value, on one side of zero, comes closest to it. */
function withTurns(places: readonly number[], flows: readonly Timed[]): number[] {
  const values = places.map((force) => valueAt(force, flows));
  const turns = places.flatMap((_, at) => {
    const [before, here, after] = [values[at - 1], values[at] ?? 0, values[at + 1]];
    if (before === undefined || after === undefined) return [];
    const side = Math.sign(here);
    if (side * before < side * here || side * after < side * here) return [];
    return [closest(places[at - 1] ?? 0, places[at + 1] ?? 0, (force) => side * valueAt(force, flows))];
  });
  return [...places, ...turns].sort((a, b) => a - b);
}

/** Where a figure with one low between two ends is lowest, by thirds. */
function closest(from: number, to: number, of: (force: number) => number): number {
  let [low, high] = [from, to];
  for (let turn = 0; turn < 80; turn++) {
    const third = (high - low) / 3;
    if (of(low + third) < of(high - third)) high -= third;
    else low += third;
  }
  return (low + high) / 2;
}

/** Flows of one time added up, in order of time, none of them zero. */
function merged(flows: readonly Timed[]): Timed[] {
  const byTime = new Map<number, number>();
  for (const { time, amount } of flows) byTime.set(time, (byTime.get(time) ?? 0) + amount);
  return [...byTime]
    .map(([time, amount]) => ({ time, amount }))
    .filter(({ amount }) => amount !== 0)
    .sort((a, b) => a.time - b.time);
}

/** How often flows in order of time change sign. */
function signChanges(flows: readonly Timed[]): number {
  return flows.filter(({ amount }, at) => at > 0 && amount < 0 !== (flows[at - 1]?.amount ?? 0) < 0).length;
}

function refined(from: number, to: number, flows: readonly Timed[]): number {
  let [low, high] = [from, to];
  const isBelow = valueAt(low, flows) < 0;
  for (let turn = 0; turn < 100 && high - low > 1e-15; turn++) {
    const middle = (low + high) / 2;
    if (valueAt(middle, flows) < 0 === isBelow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
