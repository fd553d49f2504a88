// One offer on one future of the plan: its flows, the cash it leaves, and what everybody gets when the company is sold at the
// end of the horizon. Its flows are laid over the cash of the plan's pass without new funding: money dated by week comes before
// the week's payments, all else in it, so the lowest cash is what the pass itself would find for the same flows. The pass is
// not run again, and the plan's books don't change.
// Worked figure: lowest cash -12,300 in week 9 and 20,000 in week 0: 7,700 in week 9.
import type { Ownership, RivalOffer } from '../plan/offer-terms.ts';
import type { Basis } from './basis.ts';
import { companyOf } from './company.ts';
import { offerKindOf } from './list.ts';
import type { Company, PartStake, Round } from './owners.ts';
import type { OfferFlow, OfferResult, Sale } from './types.ts';
import { sharedOut } from './waterfall.ts';

/** Who pays whom when, and who owns what. */
export interface OfferPayments {
  offer: RivalOffer;
  basis: Basis;
  /** In order of weeks. */
  flows: OfferFlow[];
  never: OfferResult['never'];
  moneyIn: number;
  owed: number;
  settles: number;
  company: Company;
}

export interface OfferRun extends OfferPayments {
  cash: number[];
  low: number[];
  lowestCash: number;
  lowestWeek: number;
}

export function runOffer(basis: Basis, offer: RivalOffer, ownership: Ownership): OfferRun {
  const payments = paymentsOf(basis, offer, ownership);
  return { ...payments, ...cashWith(basis, payments.flows, payments.company) };
}

export function paymentsOf(basis: Basis, offer: RivalOffer, ownership: Ownership): OfferPayments {
  const outcomes = offer.parts.map((part) => ({ part, outcome: offerKindOf(part).outcome(part, basis) }));
  const stakes = outcomes.flatMap(({ part, outcome }): PartStake[] =>
    outcome.stake === null ? [] : [{ part, name: offer.name, stake: outcome.stake }],
  );
  const company = companyOf({
    basis,
    founderRate: Number(ownership.founderRate),
    poolRate: Number(ownership.poolRate),
    rounds: roundsOf(ownership, basis),
    stakes,
  });
  const flows = outcomes
    .flatMap(({ part, outcome }) => outcome.flows.map((flow) => ({ ...flow, partId: part.id })))
    .concat(company.flows)
    .sort((a, b) => a.week - b.week);
  const sum = (of: 'owed' | 'settles') => outcomes.reduce((total, { outcome }) => total + outcome[of], 0);
  return {
    offer,
    basis,
    flows,
    never: outcomes.flatMap(({ part, outcome }) =>
      outcome.never.map((each) => ({ ...each, partId: part.id })),
    ),
    moneyIn: flows.reduce((total, { amount }) => total + Math.max(0, amount), 0),
    owed: sum('owed'),
    settles: sum('settles'),
    company,
  };
}

function roundsOf({ rounds }: Ownership, { minorDigits }: Basis): Round[] {
  const minor = (text: string) => Math.round(Number(text) * 10 ** minorDigits);
  return rounds.map(({ id, label, week, amount, preMoneyAmount, poolRate }) => ({
    id,
    label,
    week,
    amount: minor(amount),
    preMoney: minor(preMoneyAmount),
    poolRate: Number(poolRate),
  }));
}

/** The plan's own cash with the flows of the offer and of rounds laid over it. */
function cashWith(basis: Basis, flows: readonly OfferFlow[], { roundMoney }: Company) {
  const { weeks } = basis;
  const early = new Float64Array(weeks);
  const out = new Float64Array(weeks);
  const net = new Float64Array(weeks);
  const add = (series: Float64Array, week: number, amount: number) => {
    if (week < weeks) series[week] = (series[week] ?? 0) + amount;
  };
  for (const { week, amount, early: isEarly } of flows) {
    add(net, week, amount);
    if (amount < 0) add(out, week, amount);
    else if (isEarly) add(early, week, amount);
  }
  for (const { week, amount } of roundMoney) {
    add(net, week, amount);
    add(early, week, amount);
  }
  const cash: number[] = [];
  const low: number[] = [];
  let before = 0;
  let lowestWeek = 0;
  for (let w = 0; w < weeks; w++) {
    low.push((basis.low[w] ?? 0) + before + (early[w] ?? 0) + (out[w] ?? 0));
    before += net[w] ?? 0;
    cash.push((basis.cash[w] ?? 0) + before);
    if ((low[w] ?? 0) < (low[lowestWeek] ?? 0)) lowestWeek = w;
  }
  return { cash, low, lowestCash: low[lowestWeek] ?? 0, lowestWeek };
}

/** Price of the business at the end of the horizon by the plan's own exit; never below 0. Minor units. */
export function exitPrice({ exit }: Ownership, basis: Basis): number {
  if (exit.by === 'price') return Math.round(Number(exit.amount) * 10 ** basis.minorDigits);
  const year = exit.by === 'revenue' ? basis.yearRevenue : basis.yearProfit;
  return Math.max(0, Math.round(year * Number(exit.multiple)));
}

/** What owners share at a price of the business: with its cash, less loans and what the offer is still owed. */
export function saleAt(run: OfferRun, price: number): Sale {
  const { basis, cash, owed } = run;
  const atEnd = cash[basis.weeks - 1] ?? 0;
  return {
    price,
    cash: atEnd,
    debt: basis.debt,
    owed,
    toOwners: Math.max(0, price + atEnd - basis.debt - owed),
  };
}

/** What each owner gets at a price of the business, in the order of `company.owners`. */
export function sharesAt(run: OfferRun, price: number): number[] {
  const { owners, classes } = run.company;
  const amounts = owners.map(() => 0);
  sharedOut(classes, saleAt(run, price).toOwners).forEach((amount, at) => {
    const owner = classes[at]?.owner ?? 0;
    amounts[owner] = (amounts[owner] ?? 0) + amount;
  });
  return amounts;
}

/** The founder's money at a price of the business. */
export function founderAt(run: OfferRun, price: number): number {
  return sharesAt(run, price)[0] ?? 0;
}

/** Dated payments to the funder, all of them. */
export function datedIn({ flows }: Pick<OfferRun, 'flows'>): number {
  return flows.reduce((sum, { amount }) => sum - Math.min(0, amount), 0);
}

/** What the company pays the funder in all: dated payments, and what is settled at the sale. */
export function paidIn(run: OfferRun): number {
  return datedIn(run) + run.settles;
}
