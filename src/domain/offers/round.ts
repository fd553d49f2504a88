// The price of a round at which everything agrees: its money, the pool made with it, and what converts at it. With K the
// pre-money less the pool's worth, all shares before the round's money are worth K; what converts at a discount is worth
// money / (1 - discount), under a post-money cap money x K / cap, whichever is more; under a pre-money cap its shares are
// money x shares / cap. Worked figure: 400,000 before 100,000, 1 share: 400,000 a share, 0.25 shares for the round, 20 %.

export interface Converting {
  /** Money and interest that turn into shares. */
  amount: number;
  cap: number | null;
  capBase: 'preMoney' | 'postMoney';
  discountRate: number;
}

export interface RoundArgs {
  /** Before anything converts. */
  shares: number;
  preMoney: number;
  amount: number;
  /** New options, of the company after the round. */
  poolRate: number;
  converting: readonly Converting[];
}

export interface Priced {
  price: number;
  pool: number;
  /** New shares of each that converts. */
  converts: number[];
}

/** Null where what converts, and the pool, would be worth all of the pre-money or more. */
export function roundPrice(args: RoundArgs): Priced | null {
  const { shares, preMoney, amount, poolRate, converting } = args;
  const pool = poolRate * (preMoney + amount);
  const before = preMoney - pool;
  const worthAt = (price: number) => converting.map((each) => worth(each, { before, shares, price }));
  const all = (price: number) => shares * price + worthAt(price).reduce((sum, each) => sum + each, 0);
  if (!(before > 0) || all(0) >= before) return null;
  let [low, high] = [0, before / shares];
  for (let turn = 0; turn < 200 && high - low > low * 1e-15; turn++) {
    const middle = (low + high) / 2;
    if (all(middle) > before) high = middle;
    else low = middle;
  }
  const price = (low + high) / 2;
  return { price, pool: pool / price, converts: worthAt(price).map((each) => each / price) };
}

/** What one that converts is worth in new shares at a price. */
function worth(each: Converting, at: { before: number; shares: number; price: number }): number {
  const byDiscount = each.amount / (1 - each.discountRate);
  if (each.cap === null) return byDiscount;
  const base = each.capBase === 'postMoney' ? at.before : at.shares * at.price;
  return Math.max(byDiscount, (each.amount * base) / each.cap);
}
