// The normal distribution as draws need it: quantiles out of a table of 4,096 equal parts, so that a normal number costs
// one look-up. The table's own quantiles are right to about 12 digits; the distribution they make reaches from -3.66 to
// 3.66, its variance is 0.9997 (tests/outside). Worked figure: a share of 0.975 lies 1.95996 above the middle.
import { gammaShareBelow } from '../gamma.ts';
import type { Random } from './random.ts';

const PARTS_BITS = 12;
export const PARTS = 1 << PARTS_BITS;

/** Share of a standard normal below z: Abramowitz & Stegun 26.2.30 and 6.5.16, by the incomplete gamma function. */
export function normalShareBelow(z: number): number {
  const within = gammaShareBelow(0.5, (z * z) / 2);
  return z < 0 ? (1 - within) / 2 : (1 + within) / 2;
}

/** The z below which that share (strictly between 0 and 1) of a standard normal lies. Newton's method, a bracket kept. */
export function normalQuantile(share: number, near = 0): number {
  if (!(share > 0 && share < 1)) throw new Error(`a normal quantile of ${share}: expected between 0 and 1`);
  let low = -40;
  let high = 40;
  let z = near;
  for (let turn = 0; turn < 100; turn++) {
    const miss = normalShareBelow(z) - share;
    if (miss < 0) low = z;
    else high = z;
    const height = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    const step = miss / height;
    const next = z - step;
    const inside = next > low && next < high;
    if (inside && Math.abs(step) < 1e-13) return next;
    z = inside ? next : (low + high) / 2;
    if (high - low < 1e-14) return z;
  }
  return z;
}

let table: Float64Array | null = null;

/** Middles of 4,096 parts of equal chance, rising. */
export function normalTable(): Float64Array {
  if (table) return table;
  const made = new Float64Array(PARTS);
  let near = 0;
  for (let place = PARTS / 2; place < PARTS; place++) {
    near = normalQuantile((place + 0.5) / PARTS, near);
    made[place] = near;
    made[PARTS - 1 - place] = -near;
  }
  table = made;
  return made;
}

/** A standard normal number. */
export function normalOf(random: Random, quantiles: Float64Array): number {
  return quantiles[random.next() >>> (32 - PARTS_BITS)] ?? 0;
}
