// What is read off the weekly pass: how deep the hole is and when, what ends it, what is lost, how long money is bound.
// Worked figure: opening cash 36,000, lowest −12,300 in week 9: need 12,300, depth from zero 48,300.
import type { Compiled } from './compiled.ts';
import { FLOW_NAMES, type FlowName, type PassResult, type RolloutReading } from './types.ts';

export interface ReadingArgs {
  compiled: Compiled;
  /** With the funding the plan counts on. */
  pass: PassResult;
  /** The same plan without new funding (the same pass when it counts on none). */
  unfunded: PassResult;
  bufferWeeks: number;
}

const LAST_WEEKS = 4;
const DAYS_WEEKS = 13;

export function readPass(args: ReadingArgs): RolloutReading {
  const { compiled, pass, unfunded } = args;
  const { weeks } = pass;
  const lowestWeek = indexOfLowest(pass.low);
  const needWeek = indexOfLowest(unfunded.low);
  const needLow = unfunded.low[needWeek] ?? 0;
  const openWeeks = compiled.cohorts.map((cohort) => cohort.openWeek).filter((week) => week >= 0);
  const totals = unitTotals(pass);
  return {
    lowestCash: pass.low[lowestWeek] ?? 0,
    lowestWeek,
    cashNeed: Math.max(0, -needLow),
    cashNeedWeek: needLow < 0 ? needWeek : null,
    depthFromZero: Math.max(0, -(needLow - unfunded.openingCash)),
    backAboveOpeningWeek: backAboveOpening(unfunded),
    floorNotSeen: lowestWeek >= weeks - LAST_WEEKS,
    ...totals,
    fillRate: totals.demandUnits === 0 ? null : totals.soldUnits / totals.demandUnits,
    firstPaymentWeek: firstAbove(pass.flows.remittances),
    firstOpeningWeek: openWeeks.length === 0 ? null : Math.min(...openWeeks),
    bufferAmount: Math.round((args.bufferWeeks * outgoings(pass)) / weeks),
    ...workingDays(pass),
    endCash: pass.balances.cash[weeks - 1] ?? 0,
    mostStockWeeks: mostStockWeeks(pass),
    ends: largestOutgoing(pass, lowestWeek),
  };
}

/** First week with the lowest value. */
function indexOfLowest(series: Float64Array): number {
  let lowest = 0;
  for (let w = 1; w < series.length; w++) if ((series[w] ?? 0) < (series[lowest] ?? 0)) lowest = w;
  return lowest;
}

function firstAbove(series: Float64Array): number | null {
  const week = series.findIndex((value) => value > 0);
  return week < 0 ? null : week;
}

/** First week after which week-end cash never again falls below its opening. */
function backAboveOpening(pass: PassResult): number | null {
  let week = pass.weeks;
  while (week > 0 && (pass.balances.cash[week - 1] ?? 0) >= pass.openingCash) week--;
  return week === pass.weeks ? null : week;
}

function outgoings(pass: PassResult): number {
  let total = 0;
  for (const name of FLOW_NAMES) for (const flow of pass.flows[name]) if (flow < 0) total -= flow;
  return total;
}

function unitTotals(pass: PassResult) {
  let demandUnits = 0;
  let soldUnits = 0;
  let lostUnits = 0;
  let firstLostWeek: number | null = null;
  for (const units of pass.units) {
    for (let w = 0; w < pass.weeks; w++) {
      demandUnits += units.demand[w] ?? 0;
      soldUnits += units.sold[w] ?? 0;
      lostUnits += units.lost[w] ?? 0;
      if ((units.lost[w] ?? 0) > 0 && (firstLostWeek === null || w < firstLostWeek)) firstLostWeek = w;
    }
  }
  return { demandUnits, soldUnits, lostUnits, firstLostWeek };
}

/** Days of stock, of receivables, of payables over the last 91 days, and the cash cycle they make. */
function workingDays(pass: PassResult) {
  const from = Math.max(0, pass.weeks - DAYS_WEEKS);
  const days = 7 * (pass.weeks - from);
  const meanOf = (series: Float64Array) => sum(series, from) / (pass.weeks - from);
  const sales = sum(pass.profit.invoiced, from);
  const cost = -sum(pass.profit.costOfSales, from);
  const daysReceivable = sales > 0 ? (meanOf(pass.balances.receivables) * days) / sales : null;
  const daysInventory = cost > 0 ? (meanOf(pass.balances.stock) * days) / cost : null;
  const daysPayable = cost > 0 ? (meanOf(pass.balances.payables) * days) / cost : null;
  const whole = daysReceivable !== null && daysInventory !== null && daysPayable !== null;
  const cashCycleDays = whole ? daysInventory + daysReceivable - daysPayable : null;
  return { daysReceivable, daysInventory, daysPayable, cashCycleDays };
}

function sum(series: Float64Array, from: number): number {
  let total = 0;
  for (let w = from; w < series.length; w++) total += series[w] ?? 0;
  return total;
}

/** The most weeks our own stock would last at the mean shipments of the 13 weeks after; null before any shipment. */
function mostStockWeeks(pass: PassResult): number | null {
  let most: number | null = null;
  for (const units of pass.units) {
    for (let w = 0; w + DAYS_WEEKS < pass.weeks; w++) {
      let shipped = 0;
      for (let j = 1; j <= DAYS_WEEKS; j++) shipped += units.shipped[w + j] ?? 0;
      if (shipped === 0) continue;
      const weeks = ((units.ours[w] ?? 0) * DAYS_WEEKS) / shipped;
      if (most === null || weeks > most) most = weeks;
    }
  }
  return most;
}

/** What the money went on up to the lowest week: names of flows that belong together, the largest first. */
const GROUPS = {
  stock: ['supplierDeposits', 'supplierPayments', 'inboundFreightAndDuty', 'rushFreight'],
  opening: ['slotting', 'openingFees', 'displayBuild', 'displayFees', 'claimsPaid'],
  shipping: ['freightOut', 'pickAndPack', 'returnsFreight'],
  overhead: ['overhead', 'capital', 'basePayments', 'openingPayments'],
  funding: ['interest', 'loanFees', 'principal', 'advanceRepaid'],
} as const satisfies Record<string, readonly FlowName[]>;
export type OutgoingGroup = keyof typeof GROUPS;

function largestOutgoing(pass: PassResult, untilWeek: number): OutgoingGroup {
  let largest: OutgoingGroup = 'stock';
  let most = -1;
  for (const group of Object.keys(GROUPS) as OutgoingGroup[]) {
    let paid = 0;
    for (const name of GROUPS[group]) {
      for (let w = 0; w <= untilWeek; w++) paid -= Math.min(0, pass.flows[name][w] ?? 0);
    }
    if (paid > most) {
      most = paid;
      largest = group;
    }
  }
  return largest;
}
