// The gamma distribution: logarithm of the gamma function, its distribution function and the quantile, as far as rates of
// sale need them. Worked figure: of a gamma of shape 5 and rate 1 a fortieth lies below 1.6235 (half of the exact Poisson
// limit of a count of 5).

const LANCZOS = [
  676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/**
 * Natural logarithm of the gamma function for x > 0, to about 14 digits.
 * Source: Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86, with g = 7 and 9 coefficients (Godfrey's, from memory).
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new Error(`logGamma(${x}): x must be above 0`);
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  let sum = 0.99999999999980993;
  for (let i = 0; i < LANCZOS.length; i++) sum += (LANCZOS[i] ?? 0) / (x + i);
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

const STEPS = 10_000;
const ENOUGH = 1e-15;

/**
 * Share of a gamma of that shape and rate 1 that lies at or below x (the regularized incomplete gamma function P).
 * Series below shape + 1, continued fraction above: Abramowitz & Stegun, Handbook of Mathematical Functions (1964),
 * 6.5.29 and 6.5.31, the latter by the modified Lentz method.
 */
export function gammaShareBelow(shape: number, x: number): number {
  if (!(shape > 0)) throw new Error(`gammaShareBelow(${shape}): the shape must be above 0`);
  if (!(x > 0)) return 0;
  if (x === Number.POSITIVE_INFINITY) return 1;
  const front = Math.exp(shape * Math.log(x) - x - logGamma(shape));
  return x < shape + 1 ? (front * series(shape, x)) / shape : 1 - front * fraction(shape, x);
}

function series(shape: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; n < STEPS && term > sum * ENOUGH; n++) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum;
}

function fraction(shape: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - shape;
  let c = 1 / tiny;
  let d = 1 / b;
  let value = d;
  for (let i = 1; i < STEPS; i++) {
    const a = -i * (i - shape);
    b += 2;
    d = a * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + a / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < ENOUGH) break;
  }
  return value;
}

/**
 * The x below which that share (0 up to, not including, 1) of a gamma of that shape and rate lies, to about 12 digits.
 * Solved by halving a bracket: slow and sure.
 */
export function gammaQuantile(share: number, shape: number, rate: number): number {
  if (!(rate > 0)) throw new Error(`gammaQuantile: the rate must be above 0, got ${rate}`);
  return quantileOf((x) => gammaShareBelow(shape, x * rate), share, shape / rate);
}

/** The x >= 0 at which a rising distribution function reaches a share; `near` is where to start looking. */
export function quantileOf(shareBelow: (x: number) => number, share: number, near: number): number {
  if (!(share >= 0 && share < 1))
    throw new Error(`a quantile of ${share}: expected a share from 0 to below 1`);
  if (share === 0) return 0;
  let high = near > 0 ? near : 1;
  while (shareBelow(high) < share) high *= 2;
  let low = high;
  while (low > 0 && shareBelow(low) >= share) low /= 2;
  for (let turn = 0; turn < 200 && high - low > high * 1e-13; turn++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (shareBelow(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Exact limits of a Poisson mean after a count was seen: Garwood, Biometrika 28 (1936) 437. `level` 0.95 leaves a
 * fortieth on either side. Worked figure: a count of 0 leaves 0 to 3.6889.
 */
export function exactPoissonLimits(count: number, level: number): { low: number; high: number } {
  const tail = (1 - level) / 2;
  return {
    low: count === 0 ? 0 : gammaQuantile(tail, count, 1),
    high: gammaQuantile(1 - tail, count + 1, 1),
  };
}
