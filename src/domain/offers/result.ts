// What one offer comes to, out of its run: cash and what it covers, what the funder is paid and makes of it, cost per unit,
// the founder's part and money, who owns what. Returns are yearly, on the first days of weeks; the sale is on the first day
// after the horizon. Worked figure: 100,000 in, 10,000 of interest paid on 40,000 units: 0.25 a unit.
import { isoDateOf } from '../calendar.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { sumOf } from './basis.ts';
import type { FlowKind } from './contract.ts';
import { xirr } from './money-over-time.ts';
import { datedIn, exitPrice, type OfferRun, saleAt, sharesAt } from './run.ts';
import type { Carries, Holding, OfferFlow, OfferResult } from './types.ts';

export type Reading = Pick<Results['reading'], 'cashNeed' | 'cashNeedWeek'>;

/** Costs of time: those of the horizon count. Money back and principal are no cost, a lease's payments are apart. */
const IN_TIME: ReadonlySet<FlowKind> = new Set(['fee', 'interest']);
/** Costs of units sold within the horizon, also where the terms have them paid after it. */
const ON_SALES: ReadonlySet<FlowKind> = new Set(['royalty', 'share', 'minimum']);

export function resultOf(plan: Plan, run: OfferRun, reading: Reading): OfferResult {
  const { offer, basis, company, flows, moneyIn } = run;
  const price = exitPrice(plan.ownership, basis);
  const amounts = wholeParts(sharesAt(run, price));
  const total = company.owners.reduce((sum, { shares }) => sum + shares, 0);
  const holdings = company.owners.map(({ id, kind, name, shares }, at): Holding => {
    return { id, kind, name, rate: shares / total, amount: amounts[at] ?? 0 };
  });
  const payout = holdings.reduce((sum, { kind, amount }) => sum + (kind === 'part' ? amount : 0), 0);
  const paid = datedIn(run);
  const totalPaid = paid + run.settles + payout;
  const founder = holdings[0];
  return {
    id: offer.id,
    name: offer.name,
    from: offer.from,
    kind: offer.parts.map(({ kind }) => kind).join(' + '),
    flows,
    never: run.never,
    moneyIn,
    cash: run.cash,
    low: run.low,
    lowestCash: run.lowestCash,
    lowestWeek: run.lowestWeek,
    cover: { name: 'plan', need: reading.cashNeed, left: run.lowestCash, covers: run.lowestCash >= 0 },
    carries: carriesOf(run, reading),
    paidByYear: byYear(run),
    paid,
    settles: run.settles,
    payout,
    totalPaid,
    irr: xirr(funderFlows(run, payout)),
    multiple: moneyIn === 0 ? null : totalPaid / moneyIn,
    perUnit: perUnitOf(run),
    founder: { rate: founder?.rate ?? 0, amount: founder?.amount ?? 0, sale: saleAt(run, price) },
    holdings,
    dilution: company.rows,
    failedRounds: company.failedRounds,
  };
}

/** Whole minor units that add up to the whole of the sum. */
function wholeParts(amounts: readonly number[]): number[] {
  let exact = 0;
  let whole = 0;
  return amounts.map((amount) => {
    exact += amount;
    const next = Math.round(exact);
    const part = next - whole;
    whole = next;
    return part;
  });
}

/** A payment as the funder sees it: what it puts in is below 0, what comes back above. */
export interface FunderFlow {
  day: number;
  amount: number;
  /** 'sale': what it gets when the company is sold, on the first day after the horizon; it is of no one part. */
  what: FlowKind | 'sale';
  partId: string | null;
}

/** The funder's side, by day. */
export function funderFlows(run: OfferRun, payout: number): FunderFlow[] {
  const { startDay, weeks } = run.basis;
  const dated = run.flows.map(({ week, amount, what, partId }): FunderFlow => {
    return { day: startDay + 7 * week, amount: -amount, what, partId };
  });
  const sale = {
    day: startDay + 7 * weeks,
    amount: run.settles + payout,
    what: 'sale',
    partId: null,
  } as const;
  return [...dated, sale];
}

function byYear({ flows, basis }: OfferRun): { year: number; amount: number }[] {
  const years = new Map<number, number>();
  for (const { week, amount } of flows) {
    if (amount >= 0) continue;
    const year = Number(isoDateOf(basis.startDay + 7 * week).slice(0, 4));
    years.set(year, (years.get(year) ?? 0) - amount);
  }
  return [...years].map(([year, amount]) => ({ year, amount }));
}

function carriesOf(run: OfferRun, { cashNeed, cashNeedWeek }: Reading): Carries {
  const short = run.low.findIndex((low) => low < 0);
  return {
    moneyIn: run.moneyIn,
    cashNeed,
    cashNeedWeek,
    runsOutWeek: short < 0 ? null : short,
    weeks: short < 0 ? run.basis.weeks : short,
  };
}

/** A lease costs what it takes beyond the equipment. */
function perUnitOf({ flows, basis, offer }: OfferRun): number | null {
  const units = sumOf(basis.unitsSold);
  if (units === 0) return null;
  const cost = flows.reduce(
    (sum, flow) => sum - (isDueFor(flow, basis.weeks) && isCost(flow.what) ? flow.amount : 0),
    0,
  );
  const leases = offer.parts.filter(({ kind }) => kind === 'equipmentLease');
  const beyond = leases.reduce((sum, { id }) => sum + leaseCost(flows, id, basis.weeks), 0);
  return (cost + beyond) / units;
}

function isCost(what: FlowKind): boolean {
  return IN_TIME.has(what) || ON_SALES.has(what);
}

/** A payment for the plan's weeks: within them, or for what was sold in them. */
export function isDueFor({ week, what }: OfferFlow, weeks: number): boolean {
  return week < weeks || ON_SALES.has(what);
}

/** Of all a lease takes beyond its equipment, the share of its payments that falls within the horizon. */
function leaseCost(flows: readonly OfferFlow[], partId: string, weeks: number): number {
  const own = flows.filter((flow) => flow.partId === partId);
  const paid = own.filter(({ what }) => what === 'payment');
  const all = paid.reduce((sum, { amount }) => sum - amount, 0);
  const inside = paid.reduce((sum, { week, amount }) => sum - (week < weeks ? amount : 0), 0);
  const money = own.reduce((sum, { amount }) => sum + Math.max(0, amount), 0);
  return all === 0 ? 0 : (Math.max(0, all - money) * inside) / all;
}
