// What an ask for a part says the company is worth, by this plan: multiples of sales and profit now and at the end, and the
// sale price at which the investor makes what it wants. Arithmetic, no valuation: nobody says that a company is worth it.
// Worked figure: 100,000 for 20 % is 500,000 post-money; on 250,000 of yearly sales that is 2 x.
import type { Plan } from '../plan/index.ts';
import type { Basis } from './basis.ts';
import type { OfferPart } from './list.ts';
import { xnpv } from './money-over-time.ts';
import { type OfferRun, sharesAt } from './run.ts';
import { rising } from './search.ts';
import type { Implied } from './types.ts';

/** One for each part that buys shares at a price, or turns into shares under a cap. */
export function impliedOf(plan: Plan, run: OfferRun): Implied[] {
  const { basis, offer } = run;
  const wanted = Number(plan.ownership.wantedYearlyRate);
  const minor = 10 ** basis.minorDigits;
  return offer.parts.flatMap((part): Implied[] => {
    const asked = askOf(part, minor);
    if (asked === null) return [];
    const { amount, postMoney } = asked;
    const times = (year: number | null) => (year === null || year <= 0 ? null : postMoney / year);
    const needed = priceFor(run, part.id, wanted);
    const today = plan.promise.runRate?.revenueAmountPerWeek ?? null;
    return [
      {
        partId: part.id,
        ...asked,
        partRate: amount / postMoney,
        preMoney: postMoney - amount,
        timesRunRate: times(today === null ? null : Number(today) * 52 * minor),
        timesPlanRevenue: times(basis.yearRevenue),
        timesPlanProfit: times(basis.yearProfit),
        wantedYearlyRate: wanted,
        salePriceNeeded: needed,
        timesRevenueNeeded: needed === null ? null : timesOf(needed, basis),
      },
    ];
  });
}

/** What a part's money says the company is worth after it; null where it says nothing. */
function askOf(part: OfferPart, minor: number): Pick<Implied, 'by' | 'amount' | 'postMoney'> | null {
  if (part.kind !== 'equity' && part.kind !== 'convertibleNote' && part.kind !== 'cappedAgreement')
    return null;
  const amount = part.tranches.reduce((sum, each) => sum + Math.round(Number(each.amount) * minor), 0);
  if (amount === 0) return null;
  if (part.kind === 'equity') {
    const rate = Number(part.partRate);
    return rate === 0 ? null : { by: 'price', amount, postMoney: amount / rate };
  }
  if (part.capAmount === null) return null;
  const cap = Number(part.capAmount) * minor;
  const isBefore = part.kind === 'convertibleNote' && part.capBase === 'preMoney';
  // What is asked for under a cap below the money is all of the company, and no more.
  return { by: 'cap', amount, postMoney: isBefore ? cap + amount : Math.max(cap, amount) };
}

function timesOf(price: number, { yearRevenue }: Basis): number | null {
  return yearRevenue > 0 ? price / yearRevenue : null;
}

/** The least sale price at which what a part gets is worth its money at the wanted rate; null when none is within reach. */
function priceFor(run: OfferRun, partId: string, rate: number): number | null {
  const { startDay, weeks } = run.basis;
  const at = run.company.owners.findIndex(({ id, kind }) => id === partId && kind === 'part');
  const paidIn = run.flows.filter((flow) => flow.partId === partId);
  if (at < 0 || paidIn.length === 0) return null;
  const worth = (price: number) =>
    xnpv(rate, [
      ...paidIn.map(({ week, amount }) => ({ day: startDay + 7 * week, amount: -amount })),
      { day: startDay + 7 * weeks, amount: sharesAt(run, price)[at] ?? 0 },
    ]);
  const most = 1000 * Math.max(run.moneyIn, 1) * (1 + rate) ** (weeks / 52);
  return rising({ least: 0, most, of: worth });
}
