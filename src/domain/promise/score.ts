// The standard normal distribution, quickly: the odds of a promise need it some thousand times for one verdict.
// Worked figure: a share of 0.975 lies 1.95996 above the middle.

/**
 * Share of a standard normal below z, to about 14 digits. Source: J. F. Hart, Computer Approximations (1968), algorithm
 * 5666, as G. West gives it in "Better approximations to cumulative normal functions" (2005); coefficients from memory,
 * checked against the incomplete gamma function (tests/outside).
 */
export function shareBelowScore(z: number): number {
  const size = Math.abs(z);
  if (size > 37) return z > 0 ? 1 : 0;
  const height = Math.exp((-size * size) / 2);
  const above =
    size < 7.07106781186547
      ? (height * polynomial(OVER, size)) / polynomial(UNDER, size)
      : tail(height, size);
  return z > 0 ? 1 - above : above;
}

const OVER = [
  3.52624965998911e-2, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871,
  221.213596169931, 220.206867912376,
];
const UNDER = [
  8.83883476483184e-2, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674,
  637.333633378831, 793.826512519948, 440.413735824752,
];

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i++) sum = sum * x + (coefficients[i] ?? 0);
  return sum;
}

function tail(height: number, size: number): number {
  let fraction = size + 0.65;
  for (const term of [4, 3, 2, 1]) fraction = size + term / fraction;
  return height / fraction / 2.506628274631;
}

/** The score below which that share lies: minus infinity at 0, infinity at 1. Newton's method inside a bracket. */
export function scoreBelow(share: number): number {
  if (share <= 1e-15) return Number.NEGATIVE_INFINITY;
  if (share >= 1 - 1e-15) return Number.POSITIVE_INFINITY;
  let [low, high] = [-9, 9];
  let z = 0;
  for (let turn = 0; turn < 60 && high - low > 1e-12; turn++) {
    const miss = shareBelowScore(z) - share;
    if (miss < 0) low = z;
    else high = z;
    const step = miss * 2.5066282746310002 * Math.exp((z * z) / 2);
    const next = z - step;
    if (Math.abs(step) < 1e-12) return next;
    z = next > low && next < high ? next : (low + high) / 2;
  }
  return z;
}
