// A lead time with three ends, as project planning (PERT) has it: mean (a + 4m + b) / 6, deviation (b - a) / 6. Drawn from a
// beta distribution with that mean. Source: Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959).
// Worked figure: 1, 2, 3 has the mean 2 and the variance 1/9; 6, 9, 18 the mean 10 and the variance 4.
import type { Gate } from '../plan/index.ts';

export interface Range {
  optimistic: number;
  likely: number;
  pessimistic: number;
}

export function meanOf({ optimistic, likely, pessimistic }: Range): number {
  return (optimistic + 4 * likely + pessimistic) / 6;
}

export function varianceOf({ optimistic, pessimistic }: Range): number {
  return ((pessimistic - optimistic) / 6) ** 2;
}

/** Working days a gate still takes: as typed when under way, else the mean, rounded up; `extra` days on top. */
export function daysLeftOf({ state, leadDays }: Gate, extra = 0): number {
  if (state.is === 'done') return 0;
  if (state.is === 'underWay') return state.daysLeft + extra;
  return Math.ceil(meanOf(leadDays) - 1e-9) + extra;
}

/** The range of what is left. Under way, what is left is as uncertain, for its length, as the whole was. */
export function rangeLeftOf({ state, leadDays }: Gate): Range {
  if (state.is === 'done') return { optimistic: 0, likely: 0, pessimistic: 0 };
  if (state.is === 'notStarted') return leadDays;
  const { daysLeft } = state;
  if (leadDays.likely === 0) return { optimistic: daysLeft, likely: daysLeft, pessimistic: daysLeft };
  const share = daysLeft / leadDays.likely;
  return {
    optimistic: leadDays.optimistic * share,
    likely: daysLeft,
    pessimistic: leadDays.pessimistic * share,
  };
}

/** Numbers from 0 up to 1, the same for the same seed: 32 bits of state, each draw mixed from it. */
export function drawsFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    mixed ^= mixed >>> 15;
    return (mixed >>> 0) / 4_294_967_296;
  };
}

/** One lead time out of the range: beta with shapes 1 + 4(m - a)/(b - a) and 1 + 4(b - m)/(b - a). */
export function drawn(range: Range, draw: () => number): number {
  const { optimistic, likely, pessimistic } = range;
  const width = pessimistic - optimistic;
  if (width <= 0) return likely;
  const first = gamma(1 + (4 * (likely - optimistic)) / width, draw);
  const second = gamma(1 + (4 * (pessimistic - likely)) / width, draw);
  return optimistic + (width * first) / (first + second);
}

/** Gamma of a shape of 1 or more. Source: Marsaglia & Tsang, ACM Transactions on Mathematical Software 26 (2000). */
function gamma(shape: number, draw: () => number): number {
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal(draw);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - draw()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** Box and Muller's pair, the first of it. */
function normal(draw: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}
