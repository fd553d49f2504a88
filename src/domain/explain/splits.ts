// Postings that gather several causes, taken apart again: a broker's payment by chain, overhead by
// its lines, tax by its two sides. The parts come to the posting to the last unit; where one were left over it would
// stand as a line of its own. Worked figure: overhead of 2,300.00 is rent 1,500.00 and wages 800.00.
import { minorOf } from '../money/decimal.ts';
import type { Posting } from '../rollout/books.ts';
import type { Compiled } from '../rollout/compiled.ts';
import type { EventName } from '../rollout/events.ts';
import { fixedSums } from '../rollout/fixed.ts';
import { deliveryShares } from './deliveries.ts';
import { deductionsOf } from './invoices-due.ts';
import { postingsIn } from './runs.ts';
import { type Entry, whose } from './sources.ts';
import type { Scene } from './write.ts';

export interface WeekAt {
  scene: Scene;
  compiled: Compiled;
  week: number;
  /** Every posting of the run. */
  journal: readonly Posting[];
}

/** A part of a posting: typed at a path under a label of its own, or of an account and item. */
export type Share = { amount: number; path: string; label: string } | Entry;

/** The parts of a posting, or null for one that is itself the line. */
export function sharesOf(at: WeekAt, entry: Entry): Share[] | null {
  return SPLITS[entry.event]?.(at, entry) ?? null;
}

type Split = (at: WeekAt, entry: Entry) => Share[];

const SPLITS: Partial<Record<EventName, Split>> = {
  overhead,
  capitalPaid: capital,
  equityIn: (at) => funding(at, 'equity', 'amount'),
  loanIn: (at) => funding(at, 'loan', 'amount'),
  loanFee: (at) => funding(at, 'loan', 'feeAmount'),
  openingCollected: (at) => books(at, 'receivables'),
  openingPayablePaid: (at) => books(at, 'payables'),
  openingAccruedPaid: (at) => books(at, 'accrued'),
  openingFeePaid: openingFees,
  deductionAccrued: deductions,
  dropsPaid: (at, entry) => deliveryShares(at, entry, 'amountPerDrop'),
  palletsPaid: (at, entry) => deliveryShares(at, entry, 'amountPerPallet'),
  brokerPaid: broker,
  royaltyPaid: (at) => ofQuarter(at, 'royaltyPaid', { royaltyAccrued: 1 }),
  vatPaid: (at) => ofQuarter(at, 'vatPaid', VAT_SIDES),
  vatRefunded: (at) => ofQuarter(at, 'vatRefunded', { vatOnSale: -1, vatOnPayable: 1, vatOnFreight: 1 }),
};

const VAT_SIDES = { vatOnSale: 1, vatOnPayable: -1, vatOnFreight: -1 } as const;

/** The allowances in percent that this week's invoices of an account and item carry. */
function deductions(at: WeekAt, { account, item }: Entry): Share[] {
  const { scene, journal, week } = at;
  const net = postingsIn(journal, week)
    .filter((each) => each.event === 'invoiced')
    .filter((each) => each.account === account && each.item === item)
    .reduce((sum, each) => sum + each.amount, 0);
  return deductionsOf(at, { account, item, net }).map(({ id, label, amount }) => ({
    amount,
    path: `accounts/${scene.plan.accounts[account]?.id}/allowances/${id}`,
    label: `${label}, ${whose(scene, { account, item })}`,
  }));
}

interface Typed {
  path: string;
  label: string;
  amount: string;
}

function minor({ scene }: WeekAt, entries: readonly Typed[]): Share[] {
  return entries.map(({ path, label, amount }) => ({
    path,
    label,
    amount: minorOf(amount, scene.results.minorDigits),
  }));
}

function overhead(at: WeekAt): Share[] {
  const { plan } = at.scene;
  const running = plan.business.overheads.filter(
    ({ fromWeek, untilWeek }) => fromWeek <= at.week && at.week < (untilWeek ?? plan.horizonWeeks),
  );
  return minor(
    at,
    running.map(({ id, label, amountPerWeek }) => ({
      path: `business/overheads/${id}/amountPerWeek`,
      label,
      amount: amountPerWeek,
    })),
  );
}

/** What is bought, and capacity steps their lead time ahead, never before week 0. */
function capital(at: WeekAt): Share[] {
  const { plan } = at.scene;
  const bought = plan.business.capital
    .filter(({ week }) => week === at.week)
    .map(({ id, label, amount }) => ({ path: `business/capital/${id}/amount`, label, amount }));
  const steps = plan.items.flatMap((item) =>
    item.supply.capacitySteps
      .filter(({ fromWeek, leadWeeks }) => Math.max(0, fromWeek - leadWeeks) === at.week)
      .map(({ id, capitalAmount }) => ({
        path: `items/${item.id}/supply/capacitySteps/${id}/capitalAmount`,
        label: `Capacity step, ${item.name}`,
        amount: capitalAmount,
      })),
  );
  const shifts = plan.business.lines.flatMap((line) =>
    line.steps
      .filter(({ fromWeek, leadWeeks }) => Math.max(0, fromWeek - leadWeeks) === at.week)
      .map(({ id, capitalAmount }) => ({
        path: `business/lines/${line.id}/steps/${id}/capitalAmount`,
        label: `Shifts, ${line.name}`,
        amount: capitalAmount,
      })),
  );
  return minor(at, [...bought, ...steps, ...shifts]);
}

function funding(at: WeekAt, kind: 'equity' | 'loan', field: 'amount' | 'feeAmount'): Share[] {
  const offers = at.scene.plan.business.funding.filter(
    (offer) => offer.kind === kind && offer.week === at.week,
  );
  return minor(
    at,
    offers.map((offer) => ({
      path: `business/funding/${offer.id}/${field}`,
      label: field === 'feeAmount' ? `Fee, ${offer.label}` : offer.label,
      amount: (offer as unknown as Record<typeof field, string>)[field],
    })),
  );
}

function books(at: WeekAt, list: 'receivables' | 'payables' | 'accrued'): Share[] {
  const due = at.scene.plan.business.openingBooks[list].filter(({ week }) => week === at.week);
  return minor(
    at,
    due.map(({ id, label, amount }) => ({
      path: `business/openingBooks/${list}/${id}/amount`,
      label,
      amount,
    })),
  );
}

function openingFees({ scene, compiled, week }: WeekAt, { account: a }: Entry): Share[] {
  const account = scene.plan.accounts[a];
  const cohorts = compiled.accounts[a]?.cohorts.flatMap((c) => compiled.cohorts[c] ?? []) ?? [];
  if (!account) return [];
  return account.openingFees.map((fee) => {
    const alone = { ...account, openingFees: [fee], slotting: null, display: null };
    const sums = fixedSums({
      account: alone,
      cohorts,
      weeks: compiled.weeks,
      minorDigits: compiled.minorDigits,
    });
    const due = sums.openingFees.filter((sum) => sum.week === week);
    return {
      path: `accounts/${account.id}/openingFees/${fee.id}/amount`,
      label: `${fee.label}, ${account.name}`,
      amount: due.reduce((total, { amount }) => total + amount, 0),
    };
  });
}

/** Earned since the commission was last paid, up to last week. */
function broker({ week, journal }: WeekAt): Share[] {
  const paid = journal.filter((each) => each.event === 'brokerPaid' && each.week < week);
  const from = paid.at(-1)?.week ?? 0;
  const earned = journal.filter(
    (each) => each.event === 'brokerAccrued' && each.week >= from && each.week < week,
  );
  return byPlace(earned, false);
}

/** What was earned or charged in the quarter that is settled now: the latest that ended a month or more ago. */
function ofQuarter(at: WeekAt, event: EventName, signs: Partial<Record<EventName, 1 | -1>>): Share[] {
  const quarter = settledQuarter(at);
  const shares = at.journal.flatMap((each) => {
    const sign = signs[each.event];
    if (sign === undefined || at.compiled.quarters[each.week] !== quarter) return [];
    return [{ ...each, amount: sign * each.amount }];
  });
  return byPlace(shares, event !== 'royaltyPaid');
}

/** A quarter is settled in the week that holds its end plus 30 days, so in the quarter after it. */
function settledQuarter({ compiled, week }: WeekAt): number {
  return (compiled.quarters[week] ?? 0) - 1;
}

/** Sums by account, item and event, in the order they first came; tax by side only. */
function byPlace(postings: readonly Posting[], bySide: boolean): Share[] {
  const sums = new Map<string, Entry>();
  for (const { event, account, item, amount } of postings) {
    const id = bySide ? event : `${event} ${account} ${item}`;
    const before = sums.get(id);
    const place = bySide ? { account: -1, item: -1 } : { account, item };
    sums.set(id, { ...place, event, amount: (before?.amount ?? 0) + amount });
  }
  return [...sums.values()];
}
