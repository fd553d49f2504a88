/**
 * The oracle's arithmetic: money as BigInt minor units, unit prices as BigInt 1/10,000, rates as BigInt millionths, and
 * every rounding half away from zero. It shares no code with src.
 * Worked figure: priced(125, 24850n, 2) is 31063n: 31,062.5 cents go away from zero.
 */

/** n / d to the nearest whole number, halves away from zero; d above zero. */
export function nearest(n: bigint, d: bigint): bigint {
  const size = n < 0n ? -n : n;
  const whole = size / d;
  const rest = size % d;
  const rounded = rest * 2n >= d ? whole + 1n : whole;
  return n < 0n ? -rounded : rounded;
}

/** A decimal text as a whole number of 10^-digits, rounded. */
export function scaled(text: string, digits: number): bigint {
  const minus = text.startsWith('-');
  const [whole = '0', decimals = ''] = (minus ? text.slice(1) : text).split('.');
  const all = BigInt(whole + decimals);
  const power = digits - decimals.length;
  const size = power >= 0 ? all * 10n ** BigInt(power) : nearest(all, 10n ** BigInt(-power));
  return minus ? -size : size;
}

/** A rate typed as text, in millionths. */
export function millionths(text: string): bigint {
  return scaled(text, 6);
}

/** amount x rate, rounded. */
export function share(amount: bigint, rateMillionths: bigint): bigint {
  return nearest(amount * rateMillionths, 1_000_000n);
}

/** units x unit price, rounded to the minor unit. */
export function priced(units: number, priceTenThousandths: bigint, minorDigits: number): bigint {
  return nearest(BigInt(units) * priceTenThousandths, 10n ** BigInt(4 - minorDigits));
}

export function leastOf(a: bigint, b: bigint): bigint {
  return a < b ? a : b;
}

export function total(numbers: readonly number[]): number {
  let sum = 0;
  for (const each of numbers) sum += each;
  return sum;
}

export function totalOf(amounts: readonly bigint[]): bigint {
  let sum = 0n;
  for (const each of amounts) sum += each;
  return sum;
}
