// The terms a row's money follows: price by week, when it is collected, what is deducted, what selling and shipping cost.
// Worked figure: 2 % spoils, 3 % co-op and half of the invoices paid early for 2 %: 0.05 deducted, of the rest half comes
// early at 0.98.
import type { Compiled, CompiledAccount, CompiledListing } from '../../rollout/compiled.ts';
import type { Coarse } from './coarse.ts';

export function writeTerms(
  { terms, fixed, weeks, rows }: Coarse,
  compiled: Compiled,
  { listing: l, place }: { listing: number; place: number },
): void {
  const listing = compiled.listings[l] as CompiledListing;
  const account = compiled.accounts[listing.account] as CompiledAccount;
  const minor = (tenThousandths: number) => tenThousandths / compiled.perMinor;
  terms.collect[place] = account.collectWeeks;
  terms.collectEarly[place] = account.discount?.collectWeeks ?? account.collectWeeks;
  terms.earlyShare[place] = (account.discount?.takenShare ?? 0) / 1e6;
  terms.earlyKept[place] = 1 - (account.discount?.rate ?? 0) / 1e6;
  terms.deducted[place] = deductedShare(account, listing);
  terms.sellingShare[place] = sellingShare(listing);
  terms.vatRate[place] = (compiled.business.vat?.sales ?? 0) / 1e6;
  terms.shipCost[place] = minor(listing.freightOut + listing.pickAndPack);
  terms.returned[place] = (listing.returns?.rateMillionths ?? 0) / 1e6;
  terms.item[place] = listing.item;
  terms.stayed[place] = 1 - (terms.returned[place] ?? 0);
  terms.resold[place] = compiled.items[listing.item]?.shelfLife ? 0 : account.resaleableShare / 1e6;
  terms.onScan[place] = account.sale === 'scan' ? 1 : 0;
  terms.claimLag[place] = meanLag(listing);
  for (let w = 0; w < weeks; w++) {
    const at = w * rows + place;
    fixed.price[at] = minor(listing.invoicePrice[w] ?? 0);
    fixed.claimPerSold[at] = minor(
      listing.claims.reduce(
        (sum, claim) => sum + (w >= claim.fromWeek && w < claim.untilWeek ? claim.priceTenThousandths : 0),
        0,
      ),
    );
    const since = w - account.firstOrderWeek;
    fixed.orders[at] = since >= 0 && since % account.orderEveryWeeks === 0 ? 1 : 0;
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
