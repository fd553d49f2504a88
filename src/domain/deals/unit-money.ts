// What one unit scanned brings and costs: the ladder's contribution in a week without deals, less what the way of sale
// costs, and in deal weeks less scan-backs, bill-backs and promotions. Off-invoice promotions take the same amount off
// each unit scanned in their weeks; that a chain buys ahead at the lower price is the weekly pass's to show.
// Worked figure: a guaranteed sale with a fifth coming back ships 1.25 units for each one kept: a quarter unit lost.
import type { LadderResult } from '../ladder/types.ts';
import { Decimal, dec, ONE, round4, ZERO } from '../money/decimal.ts';
import { onGrid } from '../money/grid.ts';
import type { Account } from '../plan/index.ts';
import { isOn } from '../rollout/cells.ts';
import { promotionCost } from '../rollout/compile-listing.ts';

/** So much a unit scanned in weeks [fromWeek, untilWeek) of the plan. */
export interface DealTake {
  amount: number;
  fromWeek: number;
  untilWeek: number;
}

/**
 * Cost of the way of sale per unit scanned: bad debts and deductions that aren't owed and don't come back, on the
 * invoice; of goods that come back or shrink, what they landed at (less the part fit for sale again) and their way out.
 */
export function riskPerUnit(account: Account, ladder: LadderResult): Decimal {
  const { sale, terms, disputed } = account;
  if (sale.by === 'shipment' && terms.badDebtRate === '0' && disputed === null) return ZERO;
  const bad = ladder.invoice.times(terms.badDebtRate);
  return round4(bad.plus(ladder.invoice.times(lostRate(account))).plus(unsoldPerUnit(account, ladder)));
}

/** Of an invoice, what is deducted without a right to it and not won back. */
export function lostRate({ disputed }: Account): Decimal {
  return disputed ? dec(disputed.wrongRate).times(ONE.minus(disputed.recoveredShare)) : ZERO;
}

function unsoldPerUnit(account: Account, ladder: LadderResult): Decimal {
  const { sale } = account;
  if (sale.by === 'shipment') return ZERO;
  const rate = dec(sale.by === 'guaranteed' ? sale.expectedReturnRate : sale.shrinkRate);
  const { soldAgain } = ladder.forPass;
  const lost = sale.by === 'guaranteed' && soldAgain ? ONE.minus(sale.resaleableShare) : ONE;
  // A return rate of 1 sells nothing; the rate is held just below so that the cost stays a number.
  const sold = Decimal.max(ONE.minus(rate), '0.000001');
  const each = ladder.landed.unit.times(lost).plus(wayOutPerUnit(ladder));
  return each.times(rate).div(sold);
}

/** Freight out and picking of one unit, zero freight when the buyer picks up. */
export function wayOutPerUnit(ladder: LadderResult): Decimal {
  return ladder.forPass.charges.reduce((sum, { charge }) => {
    if (charge.settles !== 'shipment') return sum;
    if (charge.flow === 'freightOut' && ladder.forPass.pickUp) return sum;
    return sum.plus(onGrid(charge.priceTenThousandths));
  }, ZERO);
}

/** Everything a unit gives up in some weeks only. */
export function dealTakes(account: Account, ladder: LadderResult): DealTake[] {
  const claims = ladder.forPass.charges.flatMap(({ charge }) => {
    if (charge.settles !== 'claim' || charge.priceTenThousandths === 0) return [];
    const { fromWeek, untilWeek } = charge;
    return [{ amount: charge.priceTenThousandths / 10_000, fromWeek, untilWeek }];
  });
  const promotions = account.promotions.map((promo) => ({
    // One entry each, for screens that show them in order: nothing off an item that isn't on it.
    amount: isOn(promo, ladder.itemId)
      ? promotionCost(promo, ladder.forPass.shelfBeforeTaxTenThousandths) / 10_000
      : 0,
    fromWeek: promo.fromWeek,
    untilWeek: promo.fromWeek + promo.weeks,
  }));
  return [...claims, ...promotions];
}
