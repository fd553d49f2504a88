// The foot of the ladder: from the list price to the invoice price, and to what the first hand buys at. Off-invoice
// allowances are taken in the account's order; those passed on lower the first hand's buying price, the rest stay with it.
// Worked figure: list 3.00 less 10 % passed on and 0.12 freight allowance: invoice 2.58, the first hand buys at 2.70.
import type { Charge, UnitBases } from '../allowances/contract.ts';
import { type Allowance, kindOf } from '../allowances/index.ts';
import { type Decimal, ZERO } from '../money/decimal.ts';
import { GRID, upToGrid } from '../money/rounding.ts';
import type { Account, Item } from '../plan/index.ts';
import type { Step } from './types.ts';

export interface Foot {
  list: Decimal;
  invoice: Decimal;
  firstBuys: Decimal;
  /** What stays with the first hand: list to invoice, less what is passed on. */
  kept: Decimal;
  steps: readonly Step[];
  charges: readonly { id: string; kind: string; charge: Charge }[];
  pickUp: boolean;
}

export interface FootInputs {
  account: Account;
  item: Item;
  landed: Decimal;
}

/** What stands between a list price and its invoice price, allowance by allowance. */
export function footOf(list: Decimal, { account, item, landed }: FootInputs): Foot {
  let running = list;
  let passed = ZERO;
  let pickUp = false;
  const steps: Step[] = [];
  const charges: { id: string; kind: string; charge: Charge }[] = [];
  for (const terms of offInvoiceTerms(account)) {
    const kind = kindOf(terms);
    const bases: UnitBases = {
      list,
      running,
      invoice: running,
      landed,
      returnsRate: ZERO,
      caseUnits: item.caseUnits,
    };
    const { amount, reason } = kind.take(terms, bases);
    const charge = kind.charge(terms, bases);
    running = running.minus(amount);
    if (charge.settles === 'onInvoice' && charge.passedOn) passed = passed.plus(amount);
    if (charge.settles === 'onInvoice' && charge.pickUp) pickUp = true;
    charges.push({ id: terms.id, kind: terms.kind, charge });
    steps.push({
      id: terms.id,
      label: kind.label,
      stage: 'offInvoice',
      isLevel: false,
      amount,
      owner: kind.owner,
      reason,
    });
  }
  const firstBuys = list.minus(passed);
  return { list, invoice: running, firstBuys, kept: firstBuys.minus(running), steps, charges, pickUp };
}

function offInvoiceTerms(account: Account): readonly Allowance[] {
  return account.allowances.filter((terms) => kindOf(terms).stage === 'offInvoice');
}

/**
 * The least list price on the 0.0001 grid at which the first hand pays `firstBuys` or more; null when passed-on
 * allowances take so much that no list price does. Rounding is ours to win, by less than one step of the grid.
 */
export function footWhereFirstPays(firstBuys: Decimal, inputs: FootInputs): Foot | null {
  let foot = footOf(upToGrid(firstBuys), inputs);
  if (foot.firstBuys.eq(foot.list)) return foot;
  const start = guess(firstBuys, foot, inputs);
  if (start === null) return null;
  foot = footOf(start, inputs);
  for (let steps = 0; foot.firstBuys.lt(firstBuys); steps += 1) {
    if (steps > 1000) return null;
    foot = footOf(foot.list.plus(GRID), inputs);
  }
  for (;;) {
    const lower = footOf(foot.list.minus(GRID), inputs);
    if (lower.firstBuys.lt(firstBuys)) return foot;
    foot = lower;
  }
}

/** Takes are straight lines in the list price but for their rounding: two points give the third. */
function guess(firstBuys: Decimal, low: Foot, inputs: FootInputs): Decimal | null {
  const high = footOf(low.list.times(2).plus(low.list.minus(low.firstBuys)), inputs);
  const slope = high.firstBuys.minus(low.firstBuys).div(high.list.minus(low.list));
  if (slope.lt('0.000001')) return null;
  return upToGrid(low.list.plus(firstBuys.minus(low.firstBuys).div(slope)));
}
