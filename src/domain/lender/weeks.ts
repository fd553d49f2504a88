// 13 weeks of cash as a lender reads them: receipts, payments and funding by week, straight from the pass (direct).
// Worked figure: opens 36,000, 4,000 in and 9,000 out: closes 31,000, and stood at 27,000 before the money came.
import { FLOW_NAMES, type FlowName, type PassResult } from '../rollout/types.ts';
import { type FlowLine, LENDER_WEEKS, type ThirteenWeeks } from './types.ts';

/** Where each flow stands; VAT is with payments although a quarter may bring some back. */
const KINDS: Record<FlowName, 'receipts' | 'payments' | 'funding'> = {
  equityIn: 'funding',
  loanIn: 'funding',
  advanceIn: 'funding',
  remittances: 'receipts',
  recovered: 'receipts',
  baseCollections: 'receipts',
  openingCollections: 'receipts',
  vatSettled: 'payments',
  supplierDeposits: 'payments',
  supplierPayments: 'payments',
  inboundFreightAndDuty: 'payments',
  rushFreight: 'payments',
  basePayments: 'payments',
  openingPayments: 'payments',
  freightOut: 'payments',
  pickAndPack: 'payments',
  returnsFreight: 'payments',
  slotting: 'payments',
  displayBuild: 'payments',
  displayFees: 'payments',
  openingFees: 'payments',
  claimsPaid: 'payments',
  broker: 'payments',
  royalty: 'payments',
  interest: 'funding',
  loanFees: 'funding',
  overhead: 'payments',
  capital: 'payments',
  principal: 'funding',
  advanceRepaid: 'funding',
};

/** From a week on, as many of 13 weeks as the plan has left. Flows that don't move in them are left out. */
export function thirteenWeeks(pass: PassResult, fromWeek: number): ThirteenWeeks {
  const untilWeek = Math.min(pass.weeks, fromWeek + LENDER_WEEKS);
  const cut = (series: Float64Array) => Array.from(series.slice(fromWeek, untilWeek));
  const closes = cut(pass.balances.cash);
  const before = fromWeek === 0 ? pass.openingCash : (pass.balances.cash[fromWeek - 1] ?? 0);
  const linesOf = (kind: 'receipts' | 'payments' | 'funding'): FlowLine[] =>
    FLOW_NAMES.filter((flow) => KINDS[flow] === kind)
      .map((flow) => {
        const amounts = cut(pass.flows[flow]);
        return { flow, amounts, sum: amounts.reduce((sum, amount) => sum + amount, 0) };
      })
      .filter(({ amounts }) => amounts.some((amount) => amount !== 0));
  return {
    fromWeek,
    untilWeek,
    opens: [before, ...closes.slice(0, -1)],
    receipts: linesOf('receipts'),
    payments: linesOf('payments'),
    funding: linesOf('funding'),
    low: cut(pass.low),
    closes,
  };
}
