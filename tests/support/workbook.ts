/**
 * The first example's money as a workbook of a general-purpose spreadsheet library: typed inputs as names, a row a week, a
 * row a month, all in formulas written from PASS.md and the plan file, none of them from the model. Taken from the model
 * are units only: ordered, shipped (and of it fills), sold. Money is in cents and unit prices in ten-thousandths, so that
 * halves are exact. Worked figure: 540 units of which 270 are free invoice 270 x 5.1279 = 1,384.53.
 */
import type { Plan } from '../../src/domain/plan/index.ts';

/** What was typed, as names; the plan is checked for what the formulas leave out before it gets here. */
export function inputsOf(plan: Plan): Record<string, string | number> {
  const [item] = plan.items;
  const [account] = plan.accounts;
  const [listing] = account?.listings ?? [];
  const [wave] = account?.waves ?? [];
  const [promotion] = account?.promotions ?? [];
  if (!item || !account || !listing || !wave || !promotion)
    throw new Error('not the plan this was written for');
  const cost = (id: string) => amountIn(item.costLines.find((line) => line.id === id)?.rule);
  const allowance = (kind: string) => account.allowances.find((each) => each.kind === kind);
  const [year, month, day] = plan.startDate.split('-').map(Number);
  return {
    startDate: `=DATE(${year},${month},${day})`,
    // prices, in ten-thousandths
    shelf: amountIn(listing.shelf),
    margin: rateIn(account.hands[0]?.rule),
    offInvoice: rateIn(allowance('offInvoice')),
    listPrice: '=ROUND(shelf*(1-margin)*10000,0)',
    invoicePrice: '=ROUND(listPrice*(1-offInvoice),0)',
    goodsPrice: `=ROUND(${cost('goods')}/(1-${item.lossRate})*10000,0)`,
    landedPrice: `=ROUND((${cost('goods')}+${cost('freight')}/${item.shipmentUnits})/(1-${item.lossRate})*10000,0)`,
    freightInPrice: '=landedPrice-goodsPrice',
    freightOutPrice: `=ROUND(${amountIn(allowance('freightOut'))}/${item.caseUnits}*10000,0)`,
    scanBackPrice: `=ROUND(${promotion.depthRate}*shelf*${promotion.fundedShare}*10000,0)`,
    // rates, in millionths
    spoilsRate: Math.round(rateIn(allowance('spoils')) * 1e6),
    brokerRate: Math.round(rateIn(allowance('broker')) * 1e6),
    depositRate: Math.round(Number(item.supply.depositRate) * 1e6),
    // weeks
    collectWeeks: `=ROUNDUP((${account.terms.paymentDays}+${account.terms.latenessDays})/7,0)`,
    supplierWeeks: `=INT(${item.supply.supplierDays}/7)`,
    leadWeeks: item.supply.leadWeeks,
    claimWeeks: promotion.lagWeeks,
    promoFrom: promotion.fromWeek,
    promoUntil: promotion.fromWeek + promotion.weeks,
    openWeek: wave.openWeek,
    // doors and units
    doors: wave.doors,
    doorsPerWeek: wave.doorsPerWeek,
    fillPerDoor: `=${item.caseUnits}*ROUNDUP((${listing.facings}*${listing.depthUnits}+${listing.backStockUnits})/${item.caseUnits},0)`,
    freePerDoor: listing.freeCasesPerDoor * item.caseUnits,
    // sums, in cents
    slottingPerDoor: Math.round(Number(account.slotting?.amount) * 100),
    overheadPerWeek: Math.round(Number(plan.business.overheads[0]?.amountPerWeek) * 100),
    openingCash: Math.round(Number(plan.business.openingCashAmount) * 100),
    paidIn: Math.round(Number(plan.business.openingBooks.paidInAmount) * 100),
  };
}

const amountIn = (typed: object | undefined): number => numberIn(typed, 'amount');
const rateIn = (typed: object | undefined): number => numberIn(typed, 'rate');

function numberIn(typed: object | undefined, name: string): number {
  const value = Number((typed as Record<string, unknown> | undefined)?.[name]);
  if (Number.isNaN(value)) throw new Error(`no ${name} in ${JSON.stringify(typed)}`);
  return value;
}

/**
 * A week's columns. `{x}` is this week's x, `{x-}` the week before's (0 before the first), `{x@n}` that of n weeks ago.
 * `#` columns come from the model.
 */
export const WEEK: Record<string, string> = {
  week: '#',
  ordered: '#',
  shipped: '#',
  fill: '#',
  sold: '#',
  month: '=YEAR(startDate+7*{week})*100+MONTH(startDate+7*{week})',
  opened: '=IF({week}<openWeek,0,MAX(0,MIN(doorsPerWeek,doors-doorsPerWeek*({week}-openWeek))))',
  free: '=ROUND({fill}*freePerDoor/fillPerDoor,0)',
  invoice: '=ROUND(({shipped}-{free})*invoicePrice/100,0)',
  spoils: '=ROUND({invoice}*spoilsRate/1000000,0)',
  broker: '=ROUND({invoice}*brokerRate/1000000,0)',
  claim: '=IF(AND({week}>=promoFrom,{week}<promoUntil),ROUND({sold}*scanBackPrice/100,0),0)',
  deposit: '=ROUND(ROUND({ordered}*goodsPrice/100,0)*depositRate/1000000,0)',
  landed: '={ordered@leadWeeks}',
  goods: '=ROUND({landed}*goodsPrice/100,0)',
  freightIn: '=ROUND({landed}*freightInPrice/100,0)',
  depositUsed: '={deposit@leadWeeks}',
  payable: '={goods}-{depositUsed}',
  supplierPaid: '={payable@supplierWeeks}',
  held: '={held-}+{landed}-{shipped}',
  before: '={stock-}+{goods}+{freightIn}',
  relief: '=IF({shipped}=0,0,IF({held}=0,{before},ROUND({before}*{shipped}/({held}+{shipped}),0)))',
  freeRelief: '=IF({shipped}=0,0,ROUND({relief}*{free}/{shipped},0))',
  stock: '={before}-{relief}',
  freightOut: '=ROUND({shipped}*freightOutPrice/100,0)',
  slotting: '={opened}*slottingPerDoor',
  due: '={invoice@collectWeeks}',
  dueSpoils: '={spoils@collectWeeks}',
  taken: '=MIN({due}-{dueSpoils},{open-}+{claim@claimWeeks})',
  open: '={open-}+{claim@claimWeeks}-{taken}',
  remitted: '={due}-{dueSpoils}-{taken}',
  brokerPaid: '=IF(AND({week}>0,{month}<>{month-}),{brokerOwed-},0)',
  brokerOwed: '={brokerOwed-}+{broker}-{brokerPaid}',
  receivables: '={receivables-}+{invoice}-{due}',
  deposits: '={deposits-}+{deposit}-{depositUsed}',
  payables: '={payables-}+{payable}-{supplierPaid}',
  accrued: '={accrued-}+{spoils}+{claim}+{broker}-{dueSpoils}-{taken}-{brokerPaid}',
  paidOut: '={deposit}+{supplierPaid}+{freightIn}+{freightOut}+{slotting}+{brokerPaid}+overheadPerWeek',
  cash: '=IF({week}=0,openingCash,{cash-})+{remitted}-{paidOut}',
  earned: '={invoice}-{spoils}-{claim}-{slotting}-{relief}-{freightOut}-{broker}-overheadPerWeek',
  retained: '=IF({week}=0,openingCash-paidIn,{retained-})+{earned}',
};

/** A month's lines: `S(x)` adds x up over its weeks, `N` counts them, `E(x)` is x at the last, `B(x)` before the first. */
export const MONTH: Record<string, Record<string, string>> = {
  profitAndLoss: {
    grossSales: 'S(invoice)',
    tradeSpend: '-S(spoils)-S(claim)-S(slotting)-S(freeRelief)',
    netSales: 'S(invoice)-S(spoils)-S(claim)-S(slotting)-S(freeRelief)',
    costOfSales: 'S(freeRelief)-S(relief)',
    grossMargin: 'S(invoice)-S(spoils)-S(claim)-S(slotting)-S(relief)',
    sellingCosts: '-S(freightOut)-S(broker)',
    overhead: '-overheadPerWeek*N(week)',
    result: 'S(earned)',
  },
  balanceSheet: {
    cash: 'E(cash)',
    receivables: 'E(receivables)',
    stock: 'E(stock)',
    deposits: 'E(deposits)',
    assets: 'E(cash)+E(receivables)+E(stock)+E(deposits)',
    payables: 'E(payables)',
    accruedCosts: 'E(accrued)',
    liabilities: 'E(payables)+E(accrued)',
    paidIn: 'paidIn',
    retained: 'E(retained)',
    equity: 'paidIn+E(retained)',
    liabilitiesAndEquity: 'E(payables)+E(accrued)+paidIn+E(retained)',
  },
  cashFlowDirect: {
    fromCustomers: 'S(remitted)',
    toSuppliers: '-S(deposit)-S(supplierPaid)-S(freightIn)',
    toChains: '-S(slotting)',
    sellingPaid: '-S(freightOut)-S(brokerPaid)',
    overheadPaid: '-overheadPerWeek*N(week)',
    operating: 'S(remitted)-S(paidOut)',
    netCash: 'S(remitted)-S(paidOut)',
    openingCash: 'B(cash)',
    closingCash: 'E(cash)',
  },
  cashFlowIndirect: {
    result: 'S(earned)',
    changeReceivables: 'B(receivables)-E(receivables)',
    changeStock: 'B(stock)-E(stock)',
    changeDeposits: 'B(deposits)-E(deposits)',
    changePayables: 'E(payables)-B(payables)',
    changeAccrued: 'E(accrued)-B(accrued)',
    operating:
      'S(earned)+B(receivables)-E(receivables)+B(stock)-E(stock)+B(deposits)-E(deposits)+E(payables)-B(payables)+E(accrued)-B(accrued)',
    netCash: 'E(cash)-B(cash)',
    openingCash: 'B(cash)',
    closingCash: 'E(cash)',
  },
};
