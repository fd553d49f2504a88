// The terms a row's money follows: price by week, when it is collected, what is deducted, what selling and shipping cost.
// Worked figure: 2 % spoils, 3 % co-op and half of the invoices paid early for 2 %: 0.05 deducted, of the rest half comes
// early at 0.98.
import type { Compiled, CompiledAccount, CompiledListing } from '../../rollout/compiled.ts';
import type { Coarse } from './coarse.ts';
import {
  CLAIM_LAG,
  CLAIM_PER_SOLD,
  DEDUCTED,
  EARLY_KEPT,
  EARLY_SHARE,
  FIXED,
  ON_SCAN,
  ORDERS,
  PRICE,
  RESOLD,
  RETURNED,
  SELLING,
  SHIP_COST,
  STAYED,
  TERMS,
  VAT,
} from './places.ts';

export function writeTerms(
  { terms, fixed, collect, collectEarly, weeks, rows }: Coarse,
  compiled: Compiled,
  { listing: l, place }: { listing: number; place: number },
): void {
  const listing = compiled.listings[l] as CompiledListing;
  const account = compiled.accounts[listing.account] as CompiledAccount;
  const minor = (tenThousandths: number) => tenThousandths / compiled.perMinor;
  const own = place * TERMS;
  collect[place] = account.collectWeeks;
  collectEarly[place] = account.discount?.collectWeeks ?? account.collectWeeks;
  terms[own + EARLY_SHARE] = (account.discount?.takenShare ?? 0) / 1e6;
  terms[own + EARLY_KEPT] = 1 - (account.discount?.rate ?? 0) / 1e6;
  terms[own + DEDUCTED] = deductedShare(account, listing);
  terms[own + SELLING] = sellingShare(listing);
  terms[own + VAT] = (compiled.business.vat?.sales ?? 0) / 1e6;
  terms[own + SHIP_COST] = minor(listing.freightOut + listing.pickAndPack);
  terms[own + RETURNED] = (listing.returns?.rateMillionths ?? 0) / 1e6;
  terms[own + STAYED] = 1 - (terms[own + RETURNED] ?? 0);
  terms[own + RESOLD] = compiled.items[listing.item]?.shelfLife ? 0 : account.resaleableShare / 1e6;
  terms[own + ON_SCAN] = account.sale === 'scan' ? 1 : 0;
  terms[own + CLAIM_LAG] = meanLag(listing);
  for (let w = 0; w < weeks; w++) {
    const at = (w * rows + place) * FIXED;
    fixed[at + PRICE] = minor(listing.invoicePrice[w] ?? 0);
    fixed[at + CLAIM_PER_SOLD] = minor(
      listing.claims.reduce(
        (sum, claim) => sum + (w >= claim.fromWeek && w < claim.untilWeek ? claim.priceTenThousandths : 0),
        0,
      ),
    );
    const since = w - account.firstOrderWeek;
    fixed[at + ORDERS] = since >= 0 && since % account.orderEveryWeeks === 0 ? 1 : 0;
  }
}

function deductedShare(account: CompiledAccount, listing: CompiledListing): number {
  const wrong = account.disputed
    ? (account.disputed.wrongRate / 1e6) * (1 - account.disputed.recoveredShare / 1e6)
    : 0;
  return listing.deductions.reduce((sum, rate) => sum + rate / 1e6, account.badDebtRate / 1e6) + wrong;
}

/** Broker and royalty as a share of invoices; so much a unit counts at the first week's price. */
function sellingShare({ monthly, quarterly, invoicePrice }: CompiledListing): number {
  const price = invoicePrice[0] ?? 0;
  return [...monthly, ...quarterly].reduce(
    (sum, charge) => sum + charge.rateMillionths / 1e6 + (price > 0 ? charge.priceTenThousandths / price : 0),
    0,
  );
}

function meanLag({ claims }: CompiledListing): number {
  if (claims.length === 0) return 0;
  return Math.round(claims.reduce((sum, { lagWeeks }) => sum + lagWeeks, 0) / claims.length);
}
