// Exact whole-number money for the weekly pass: minor units held in doubles, unit prices in 1/10,000, rates in
// millionths. Every rounding is half away from zero, once a document, here and nowhere else.
// Worked figure: 125 units at 2.4850 (24850) are round(125 x 24850 / 100) = 31,063 cents (31,062.5 goes away from zero).

/** Below this, products and quotients of doubles are exact enough to floor without error. */
const SAFE_PRODUCT = 2 ** 51;

/** round(a x b / c), halves away from zero. a, b whole, c whole and positive. Exact for any size. */
export function mulDiv(a: number, b: number, c: number): number {
  const product = a * b;
  if (product >= 0 && product < SAFE_PRODUCT) return Math.floor((2 * product + c) / (2 * c));
  return mulDivLarge(a, b, c);
}

function mulDivLarge(a: number | bigint, b: number, c: number): number {
  const product = BigInt(a) * BigInt(b);
  const negative = product < 0n;
  const size = negative ? -product : product;
  const rounded = (2n * size + BigInt(c)) / (2n * BigInt(c));
  return Number(negative ? -rounded : rounded);
}

/** A share of an amount: amount x rate, rate in millionths. */
export function timesRate(amount: number, rateMillionths: number): number {
  if (rateMillionths === 0 || amount === 0) return 0;
  return mulDiv(amount, rateMillionths, 1_000_000);
}

/** What `quantity` units cost at a unit price in 1/10,000; `perMinor` is 10,000 / (minor units in one). */
export function timesPrice(quantity: number, priceTenThousandths: number, perMinor: number): number {
  if (quantity === 0 || priceTenThousandths === 0) return 0;
  return mulDiv(quantity, priceTenThousandths, perMinor);
}

/** A share of what `quantity` units cost, rounded once: quantity x price x rate, the rate in millionths. */
export function timesPriceAndRate(
  quantity: number,
  price: { tenThousandths: number; perMinor: number },
  rateMillionths: number,
): number {
  const worth = quantity * price.tenThousandths;
  const parts = price.perMinor * 1_000_000;
  return worth < SAFE_PRODUCT
    ? mulDiv(worth, rateMillionths, parts)
    : mulDivLarge(BigInt(quantity) * BigInt(price.tenThousandths), rateMillionths, parts);
}

/** How many 1/10,000 make one minor unit: 100 for 2 digits, 1 for 4, 10,000 for none. */
export function perMinorUnit(minorDigits: number): number {
  return 10 ** (4 - minorDigits);
}
