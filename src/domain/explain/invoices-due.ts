// The invoices of a chain that fall due in a week, each with what its allowances in percent take off: from the journal and
// the ladder's charges, each rounded as it was accrued, its part paid early apart.
// Worked figure: week 9's invoice of 1,248.00 falls due in week 15; spoils of 2 % take 24.96.
import { timesRate } from '../money/integer.ts';
import { postingsIn } from './runs.ts';
import type { WeekAt } from './splits.ts';

export interface InvoiceDue {
  /** The week it was made out in. */
  week: number;
  item: number;
  isEarly: boolean;
  /** Of this part, tax included. */
  gross: number;
  /** By allowance; the early-payment discount goes by 'earlyDiscount'. */
  taken: readonly Taken[];
}

export interface Taken {
  id: string;
  label: string;
  amount: number;
}

/** In minor units, oldest week first; empty when none falls due. */
export function invoicesDue(at: WeekAt, account: number): InvoiceDue[] {
  const terms = at.compiled.accounts[account];
  if (!terms) return [];
  const { discount, collectWeeks } = terms;
  const early = (amount: number) => (discount ? timesRate(amount, discount.takenShare) : 0);
  const late = (amount: number) => amount - early(amount);
  const lateOnes = partsDue(at, { account, week: at.week - collectWeeks, isEarly: false, share: late });
  if (!discount) return lateOnes;
  const week = at.week - discount.collectWeeks;
  return [...lateOnes, ...partsDue(at, { account, week, isEarly: true, share: early })];
}

interface Part {
  account: number;
  week: number;
  isEarly: boolean;
  /** This part of a sum. */
  share: (amount: number) => number;
}

function partsDue(at: WeekAt, { account, week, isEarly, share }: Part): InvoiceDue[] {
  const own = postingsIn(at.journal, week).filter((each) => each.account === account);
  const sum = (item: number, events: readonly string[]) =>
    own
      .filter((each) => each.item === item && events.includes(each.event))
      .reduce((total, { amount }) => total + amount, 0);
  const items = [...new Set(own.filter(({ event }) => event === 'invoiced').map(({ item }) => item))];
  return items.map((item) => {
    const net = sum(item, ['invoiced']);
    const discount = isEarly ? sum(item, ['discountAccrued']) : 0;
    return {
      week,
      item,
      isEarly,
      gross: share(sum(item, ['invoiced', 'vatOnSale'])),
      taken: [
        ...deductionsOf(at, { account, item, net }).map((each) => ({ ...each, amount: share(each.amount) })),
        ...(discount === 0
          ? []
          : [{ id: 'earlyDiscount', label: 'Early-payment discount', amount: discount }]),
      ],
    };
  });
}

/** What each allowance in percent takes off one invoice, in the account's order. */
export function deductionsOf(
  { scene }: WeekAt,
  { account, item, net }: { account: number; item: number; net: number },
): Taken[] {
  const { plan, results } = scene;
  const ladder = results.ladders.find(
    (each) => each.accountId === plan.accounts[account]?.id && each.itemId === plan.items[item]?.id,
  );
  if (!ladder) return [];
  return ladder.forPass.charges.flatMap(({ id, charge }) => {
    if (charge.settles !== 'remittance' || charge.rateMillionths <= 0) return [];
    const label = ladder.steps.find((step) => step.id === id)?.label ?? id;
    return [{ id, label, amount: timesRate(net, charge.rateMillionths) }];
  });
}
