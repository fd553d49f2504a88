// From the invoice price to what we keep: early-payment discount and deductions to the net price, then landed cost and
// selling costs to the contribution. Each take is rounded to 4 decimals when it is named; net and contribution are
// differences, so the steps always add up. Deal-week money (scan-backs, bill-backs) is no part of the base week.
// Worked figure: invoice 2.60, spoils 2 % (0.052), landed 1.00, broker 5 % (0.13): net 2.548, contribution 1.418.
import type { Charge, Stage, UnitBases } from '../allowances/contract.ts';
import { type Allowance, kindOf } from '../allowances/index.ts';
import { type Decimal, round4, ZERO } from '../money/decimal.ts';
import { onGrid } from '../money/grid.ts';
import { kept } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { Account } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import type { Foot, FootInputs } from './off-invoice.ts';
import type { Step } from './types.ts';

export interface UnitTerms {
  net: Decimal;
  contribution: Decimal;
  /** What deductions and the early-payment discount give back, and what selling costs come to. */
  givenBack: Decimal;
  sellingCosts: Decimal;
  steps: readonly Step[];
  charges: readonly { id: string; kind: string; charge: Charge }[];
}

interface Due {
  terms: Allowance;
  stage: Stage;
  charge: Charge;
}

/** Everything below the list price, as steps that add up, and as charges for the weekly pass in the account's order. */
export function unitTermsOf(foot: Foot, inputs: FootInputs, howList: string): Outcome<UnitTerms> {
  const { account, landed } = inputs;
  const { invoice } = foot;
  if (!invoice.gt(0))
    return trouble(
      takesAll(account, `${priceText(foot.list.minus(invoice))} off a list price of ${priceText(foot.list)}`),
    );

  const { due, bases } = dueOn(foot, inputs);
  const steps: Step[] = [level('list', 'List price', foot.list, howList), ...foot.steps];
  steps.push(level('invoice', 'Invoice price', invoice, minus(foot.list, foot.list.minus(invoice))));
  const discount = discountOf(account, invoice);
  if (discount) steps.push(discount);
  const deducted = takesOf('deduction', due, bases, foot.pickUp);
  steps.push(...deducted);
  const givenBack = deducted.reduce((sum, { amount }) => sum.plus(amount), discount?.amount ?? ZERO);
  const net = invoice.minus(givenBack);
  if (!net.gt(0))
    return trouble(
      takesAll(account, `${priceText(givenBack)} off an invoice price of ${priceText(invoice)}`),
    );

  steps.push(level('net', 'Net price', net, minus(invoice, givenBack)));
  steps.push({
    id: 'landed',
    label: 'Landed cost',
    stage: 'landed',
    isLevel: false,
    amount: landed,
    owner: 'atRisk',
    reason: 'the cost lines of one good unit',
  });
  const costs = takesOf('sellingCost', due, bases, foot.pickUp);
  steps.push(...costs);
  const sellingCosts = costs.reduce((sum, { amount }) => sum.plus(amount), ZERO);
  const contribution = net.minus(landed).minus(sellingCosts);
  steps.push(level('contribution', 'Contribution', contribution, minus(net, landed.plus(sellingCosts))));
  return fine({ net, contribution, givenBack, sellingCosts, steps, charges: inOrder(account, foot, due) });
}

/** The charges of everything that isn't off-invoice, and the bases their takes stand on. */
function dueOn(foot: Foot, { account, item, landed }: FootInputs): { due: Due[]; bases: UnitBases } {
  const bases: UnitBases = {
    list: foot.list,
    running: foot.invoice,
    invoice: foot.invoice,
    landed,
    returnsRate: ZERO,
    caseUnits: item.caseUnits,
  };
  const due: Due[] = [];
  let returnsMillionths = 0;
  for (const each of account.allowances) {
    const terms = item.supply.shelfLife ? notSoldAgain(each) : each;
    const { stage, charge: chargeOf } = kindOf(terms);
    if (stage === 'offInvoice') continue;
    const charge = chargeOf(terms, bases);
    if (charge.settles === 'returns') returnsMillionths += charge.rateMillionths;
    due.push({ terms, stage, charge: foot.pickUp ? withoutFreight(charge) : charge });
  }
  if (returnsMillionths > 0) bases.returnsRate = onGrid(Math.min(returnsMillionths, 1_000_000)).div(100);
  return { due, bases };
}

/** Goods that keep only so long are never sold again once they come back: nobody knows how old they are by then. */
function notSoldAgain(terms: Allowance): Allowance {
  return terms.kind === 'expectedReturns' ? { ...terms, resaleableShare: '0' } : terms;
}

/** With pick-up the buyer's own truck carries the goods: freight out is zero. */
function withoutFreight(charge: Charge): Charge {
  return isFreight(charge) ? { ...charge, priceTenThousandths: 0 } : charge;
}

function isFreight(charge: Charge): charge is Extract<Charge, { settles: 'shipment' }> {
  return charge.settles === 'shipment' && charge.flow === 'freightOut';
}

function takesOf(stage: Stage, due: readonly Due[], bases: UnitBases, pickUp: boolean): Step[] {
  return due
    .filter((each) => each.stage === stage)
    .map(({ terms, charge }) => {
      const kind = kindOf(terms);
      const { amount, reason } =
        pickUp && isFreight(charge)
          ? { amount: ZERO, reason: 'the buyer picks up' }
          : kind.take(terms, bases);
      return { id: terms.id, label: kind.label, stage, isLevel: false, amount, owner: kind.owner, reason };
    });
}

/** 2 % on invoices paid in 10 days, taken on 80 % of them, costs 1.6 % of each on average. */
function discountOf({ terms }: Account, invoice: Decimal): Step | null {
  if (!terms.earlyDiscount) return null;
  const { rate, days, takenShare } = terms.earlyDiscount;
  const taken = takenShare === '1' ? '' : `, taken on ${percentText(takenShare)} of invoices`;
  return {
    id: 'earlyDiscount',
    label: 'Early-payment discount',
    stage: 'deduction',
    isLevel: false,
    amount: round4(invoice.times(kept(rate)).times(kept(takenShare))),
    owner: 'theirs',
    reason: `${percentText(rate)} of invoice ${priceText(invoice)} if paid in ${days} days${taken}`,
  };
}

function level(
  id: 'list' | 'invoice' | 'net' | 'contribution',
  label: string,
  amount: Decimal,
  reason: string,
): Step {
  return { id, label, stage: id, isLevel: true, amount, owner: 'ours', reason };
}

function minus(from: Decimal, taken: Decimal): string {
  return `${priceText(from)} less ${priceText(taken)}`;
}

/** Charges in the account's own order, whatever their stage. */
function inOrder(account: Account, foot: Foot, due: readonly Due[]): UnitTerms['charges'] {
  const byId = new Map(foot.charges.map((each) => [each.id, each]));
  for (const { terms, charge } of due) byId.set(terms.id, { id: terms.id, kind: terms.kind, charge });
  return account.allowances.flatMap(({ id }) => byId.get(id) ?? []);
}

function takesAll({ id }: Account, got: string): Problem {
  return {
    code: 'takes-too-much',
    path: `accounts/${id}/allowances`,
    got,
    expected: 'allowances that leave something of the price',
  };
}
