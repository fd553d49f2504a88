// One listed item's charges as the weekly pass posts them, taken from its ladder: percent deductions, claims by unit,
// monthly and quarterly shares, freight, returns. Promotions add their own claim or lower the invoice price for a while.
// Worked figure: 20 % off a shelf price of 4.99, all funded by us, is a claim of 0.9980 a unit scanned in its weeks.
import type { Charge } from '../allowances/contract.ts';
import type { LadderResult } from '../ladder/types.ts';
import { dec, round4, toTenThousandths } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import { isOn } from './cells.ts';
import type { CompiledListing } from './compiled.ts';

type ListingCharges = Omit<CompiledListing, 'account' | 'item'>;
type Promotion = Account['promotions'][number];

/** Our part of a promotion's depth for one unit, in 1/10,000: depth x shelf price before tax x funded share. */
export function promotionCost(promo: Promotion, shelfBeforeTaxTenThousandths: number): number {
  const shelf = dec(shelfBeforeTaxTenThousandths).div(10000);
  return toTenThousandths(round4(shelf.times(promo.depthRate).times(promo.fundedShare)));
}

/** `invoicePrice` is where the weeks of it are written. */
export function compileListing(
  account: Account,
  ladder: LadderResult,
  invoicePrice: Float64Array,
): ListingCharges {
  const { forPass, itemId } = ladder;
  const out: ListingCharges = {
    invoicePrice: invoicePrice.fill(forPass.invoiceTenThousandths),
    firstHandSells: forPass.firstHandSellsTenThousandths,
    deductions: [],
    claims: [],
    monthly: [],
    quarterly: [],
    freightOut: 0,
    pickAndPack: 0,
    returns: null,
    depot: null,
  };
  for (const { charge } of forPass.charges) addCharge(out, charge);
  if (forPass.pickUp) out.freightOut = 0;
  const own = account.promotions.filter((promo) => isOn(promo, itemId));
  for (const promo of own) addPromotion(out, promo, forPass.shelfBeforeTaxTenThousandths);
  return out;
}

function addCharge(out: ListingCharges, charge: Charge): void {
  switch (charge.settles) {
    case 'onInvoice':
      return;
    case 'remittance':
      if (charge.rateMillionths > 0) out.deductions.push(charge.rateMillionths);
      return;
    case 'claim':
      if (charge.priceTenThousandths > 0) out.claims.push(charge);
      return;
    case 'monthly':
      out.monthly.push(charge);
      return;
    case 'quarterly':
      out.quarterly.push(charge);
      return;
    case 'shipment':
      if (charge.flow === 'freightOut') out.freightOut += charge.priceTenThousandths;
      else out.pickAndPack += charge.priceTenThousandths;
      return;
    case 'returns':
      if (charge.rateMillionths > 0) out.returns = charge;
      return;
  }
}

function addPromotion(out: ListingCharges, promo: Promotion, shelfBeforeTax: number): void {
  const cost = promotionCost(promo, shelfBeforeTax);
  const until = promo.fromWeek + promo.weeks;
  if (promo.fundedBy === 'scanBack') {
    out.claims.push({
      settles: 'claim',
      per: 'unitSold',
      priceTenThousandths: cost,
      fromWeek: promo.fromWeek,
      untilWeek: until,
      lagWeeks: promo.lagWeeks,
    });
    return;
  }
  const first = Math.max(0, promo.fromWeek - promo.buyInWeeks);
  for (let w = first; w < Math.min(until, out.invoicePrice.length); w++) {
    out.invoicePrice[w] = Math.max(0, (out.invoicePrice[w] ?? 0) - cost);
  }
}
