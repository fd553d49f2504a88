// Amounts that have to leave something over: deductions below the whole invoice, allowances that leave an invoice price
// above zero, stock that has a value only where it has units, deposits within the goods they are for; and a currency
// that exists.
// Worked figure: spoils of 60 % and an advertising accrual of 45 % would take 105 % of every invoice.
import { kindOf } from '../../allowances/index.ts';
import { landedOf } from '../../ladder/landed.ts';
import { minorDigitsOf } from '../../money/currency.ts';
import { type Decimal, dec, ONE, ZERO } from '../../money/decimal.ts';
import { percentText, priceText } from '../../money/plain.ts';
import { roundToMinor } from '../../money/rounding.ts';
import type { Problem } from '../../problems.ts';
import type { Account, Listing, Plan } from '../index.ts';
import { shown } from '../shown.ts';

export function amountProblems(plan: Plan): Problem[] {
  return [
    ...currency(plan),
    ...plan.accounts.flatMap((account) => [
      ...deductions(account),
      ...account.listings.flatMap((listing) => invoicePrice(plan, account, listing)),
    ]),
    ...openingStock(plan),
    ...depositsPaid(plan),
    ...promiseWords(plan),
  ];
}

function currency({ currency: code }: Plan): Problem[] {
  if (minorDigitsOf(code) !== null) return [];
  return [
    {
      code: 'currency-unknown',
      path: 'currency',
      got: shown(code),
      expected: 'a currency code of ISO 4217, like "USD"',
    },
  ];
}

/** All that is taken off an invoice as a share of it, the early-payment discount and what isn't owed included. */
function deductions({ id, allowances, terms, disputed }: Account): Problem[] {
  const rates = allowances.flatMap((each) =>
    kindOf(each).stage === 'deduction' && 'rate' in each ? [dec(each.rate)] : [],
  );
  const discount = terms.earlyDiscount === null ? ZERO : dec(terms.earlyDiscount.rate);
  const owed = rates.reduce<Decimal>((sum, rate) => sum.plus(rate), discount);
  const total = owed.plus(disputed?.wrongRate ?? 0);
  if (total.lt(ONE)) return [];
  const got = `deductions of ${percentText(total.toFixed())} of the invoice together`;
  const path = `accounts/${id}/${owed.lt(ONE) ? 'disputed/wrongRate' : 'allowances'}`;
  return [{ code: 'takes-too-much', path, got, expected: 'less than 100 % together' }];
}

/** Only where the list price is typed; where it is solved, the ladder tells. */
function invoicePrice(plan: Plan, account: Account, listing: Listing): Problem[] {
  const item = plan.items.find(({ id }) => id === listing.itemId);
  if (listing.list.by !== 'price' || !item) return [];
  const list = dec(listing.list.amount);
  let running = list;
  for (const allowance of account.allowances) {
    const kind = kindOf(allowance);
    if (kind.stage !== 'offInvoice') continue;
    const bases = {
      list,
      running,
      invoice: running,
      landed: ZERO,
      returnsRate: ZERO,
      caseUnits: item.caseUnits,
    };
    running = running.minus(kind.take(allowance, bases).amount);
    if (running.gt(ZERO)) continue;
    const got = `an invoice price of ${priceText(running)} for ${shown(listing.itemId)} after this allowance`;
    const expected = `an invoice price above 0, from the list price of ${priceText(list)}`;
    return [
      { code: 'takes-too-much', path: `accounts/${account.id}/allowances/${allowance.id}`, got, expected },
    ];
  }
  return [];
}

/** Units sold by scan are still ours while they stand in a store: they count among those the amount is for. */
function openingStock({ items, accounts }: Plan): Problem[] {
  return items.flatMap(({ id, opening }): Problem[] => {
    if (opening.units > 0 || Number(opening.stockAmount) === 0) return [];
    if (accounts.some((account) => holdsOnScan(account, id))) return [];
    const path = `items/${id}/opening/stockAmount`;
    return [
      {
        code: 'field-invalid',
        path,
        got: shown(opening.stockAmount),
        expected: '0, since no units are held',
      },
    ];
  });
}

function holdsOnScan({ sale, listings, runningDoors }: Account, itemId: string): boolean {
  if (sale.by !== 'scan' || !listings.some((listing) => listing.itemId === itemId)) return false;
  return runningDoors.some(({ unitsPerDoor }) => unitsPerDoor > 0);
}

/** A deposit is a part of the supplier's invoice for the goods; more than all of it would never be used up. */
function depositsPaid({ items, currency: code }: Plan): Problem[] {
  const minorDigits = minorDigitsOf(code);
  if (minorDigits === null) return [];
  return items.flatMap((item): Problem[] => {
    if (item.opening.onOrder.length === 0) return [];
    const landed = landedOf(item);
    if (!landed.ok) return [];
    const { goods } = landed.value;
    return item.opening.onOrder.flatMap(({ id, units, depositPaidAmount }): Problem[] => {
      const most = roundToMinor(goods.times(units), minorDigits);
      if (roundToMinor(dec(depositPaidAmount), minorDigits).lte(most)) return [];
      const path = `items/${item.id}/opening/onOrder/${id}/depositPaidAmount`;
      const expected = `at most ${most.toFixed(minorDigits)}, what the goods of ${units} units cost`;
      return [{ code: 'takes-too-much', path, got: shown(depositPaidAmount), expected }];
    });
  });
}

function promiseWords({ thresholds }: Plan): Problem[] {
  const { promiseFailsBelowRate: fails, promiseTightBelowRate: tight } = thresholds;
  if (Number(fails) <= Number(tight)) return [];
  const path = 'thresholds/promiseFailsBelowRate';
  return [
    { code: 'field-invalid', path, got: shown(fails), expected: `at most promiseTightBelowRate, ${tight}` },
  ];
}
