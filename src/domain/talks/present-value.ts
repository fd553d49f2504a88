// What a deal is worth on the day of its first opening, at a yearly rate: every week of the term, what we pay in it and
// what is paid to us for it when it is paid. Weeks count from the first opening; goods and selling costs fall in the week
// of the sale (deductions not owed too, less what is won back later), fixed money in its own. A sum due in d days counts as sum x (1 + r) ^ (-d / 365), the rule published for
// spreadsheets as XNPV (OASIS OpenFormula 1.2, financial functions).
// Worked figure: 1,000 received 365 days on at 10 % are worth 909.09.
import { deliveryPerUnit } from '../deals/delivery.ts';
import { fixedMoney } from '../deals/fixed-money.ts';
import { storeWeeks, unitsByWeek } from '../deals/store-weeks.ts';
import { type DealTake, dealTakes, riskPerUnit } from '../deals/unit-money.ts';
import type { LadderResult } from '../ladder/types.ts';
import { numberOf } from '../money/decimal.ts';
import type { Account, Plan } from '../plan/index.ts';

const YEAR_DAYS = 365;

export interface WorthArgs {
  plan: Plan;
  account: Account;
  /** The account's, in listing order. */
  ladders: readonly LadderResult[];
  yearlyRate: number;
}

/** Present value over the term, in the plan's currency, not rounded. */
export function presentValueOf(args: WorthArgs): number {
  const { plan, account, ladders, yearlyRate } = args;
  const stores = storeWeeks(account);
  const weeks = account.deal.termWeeks;
  const byDay = Math.log1p(yearlyRate) / YEAR_DAYS;
  const worthIn = (days: number) => Math.exp(-byDay * days);
  const paid = whenPaid(account);
  const early = worthIn(paid.earlyDays);
  const late = worthIn(paid.lateDays);
  const delivery = deliveryPerUnit({ plan, account, stores });
  const fixed = fixedMoney({ plan, account, ladders, stores });
  const byWeek = new Float64Array(weeks);
  for (let week = 0; week < weeks; week++) byWeek[week] = -(fixed.byWeek[week] ?? 0);
  account.listings.forEach((listing, place) => {
    const ladder = ladders[place];
    if (!ladder) throw new Error(`no ladder for listing ${place} of account ${account.id}`);
    const units = unitsByWeek({ plan, account, listing, stores });
    const received = receivedPerUnit(ladder, paid.share);
    const beside = riskPerUnit(account, ladder).plus(delivery);
    const cost = numberOf(ladder.net.minus(ladder.contribution)) + numberOf(beside);
    const each = received.early * early + received.late * late - cost;
    const blend = paid.share * early + (1 - paid.share) * late;
    const takes = dealTakes(account, ladder);
    for (let week = 0; week < weeks; week++) {
      const taken = takenIn(takes, stores.firstWeek + week);
      byWeek[week] = (byWeek[week] ?? 0) + (units[week] ?? 0) * (each - taken * blend);
    }
  });
  return byWeek.reduce((sum, amount, week) => sum + amount * worthIn(7 * week), 0);
}

/** Which share of the money comes early, and after how many days each comes. */
function whenPaid({ terms }: Account): { share: number; earlyDays: number; lateDays: number } {
  const lateDays = terms.paymentDays + terms.latenessDays;
  if (!terms.earlyDiscount) return { share: 0, earlyDays: lateDays, lateDays };
  return { share: Number(terms.earlyDiscount.takenShare), earlyDays: terms.earlyDiscount.days, lateDays };
}

/** The net price of a unit, split by when it comes: the discount is given on the early part alone. */
function receivedPerUnit(ladder: LadderResult, share: number): { early: number; late: number } {
  const discount = numberOf(
    ladder.steps.find(({ id }) => id === 'earlyDiscount')?.amount ?? ladder.net.minus(ladder.net),
  );
  const before = numberOf(ladder.net) + discount;
  return { early: share * before - discount, late: (1 - share) * before };
}

function takenIn(takes: readonly DealTake[], week: number): number {
  let sum = 0;
  for (const { amount, fromWeek, untilWeek } of takes)
    if (week >= fromWeek && week < untilWeek) sum += amount;
  return sum;
}
