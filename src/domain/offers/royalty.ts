// What royalties and revenue shares have in common: a rate on a weekly base until k times the money is back, then a lower
// one, never above a cap, until a week, with a least sum a quarter; paid weekly, monthly or quarterly. Rounded once a payment,
// so that what is paid adds up to what is owed. Weeks of more trade money than sales come off what their payment is reckoned
// on; what is left below zero then is carried into the next, as the plan's own royalty is (PASS.md).
// Worked figure: 1.00 a unit until 90,000 is paid, then 0.25; 100,000 units owe 92,500.
import type { Arrived } from './arrivals.ts';
import { type Basis, monthOf, quarterOf, sumOf, weekAfterQuarter, weekOfMonth } from './basis.ts';
import type { DatedFlow, FieldNote, FlowKind, Means, Movable, PartOutcome } from './contract.ts';

export interface RoyaltyRules {
  /** Times the money at which the later rate begins; null: never. */
  untilMultiple: string | null;
  /** Times the money that is paid at most; null: no cap. */
  capMultiple: string | null;
  /** First week without it; null: no end. */
  untilWeek: number | null;
  minimumAmountPerQuarter: string;
  paid: 'weekly' | 'monthly' | 'quarterly';
}

/** How both royalty kinds store their rules. */
export function royaltyRules({ z, f }: Means) {
  return {
    untilMultiple: z.nullable(f.factor()),
    capMultiple: z.nullable(f.factor()),
    untilWeek: z.nullable(f.weekIndex()),
    minimumAmountPerQuarter: f.sumAmount(),
    paid: z.enum(['weekly', 'monthly', 'quarterly'], { error: '"weekly", "monthly" or "quarterly"' }),
  };
}

/** When what is owed is paid: of royalties and revenue shares alike. */
export const PAID_FIELD: FieldNote = {
  key: 'paid',
  label: 'Paid',
  unit: 'choice',
  choices: [
    { value: 'weekly', label: 'Every week' },
    { value: 'monthly', label: 'Every month' },
    { value: 'quarterly', label: 'Every quarter' },
  ],
};

/** Between the two rates, in the order that they are said in. */
export const UNTIL_FIELD: FieldNote = {
  key: 'untilMultiple',
  label: 'Until so many times the money',
  unit: 'times',
  orNone: true,
};

export const ROYALTY_FIELDS: readonly FieldNote[] = [
  { key: 'capMultiple', label: 'Cap: so many times the money', unit: 'times', orNone: true },
  { key: 'untilWeek', label: 'Ends before week', unit: 'weeks', orNone: true },
  { key: 'minimumAmountPerQuarter', label: 'Least for each quarter', unit: 'sum' },
  PAID_FIELD,
];

/** What a counter may move of either royalty kind, beside its rates. */
export const ROYALTY_MOVABLE: readonly Movable[] = [
  { key: 'capMultiple', label: 'Cap', unit: 'times', least: 0, most: 100, decimals: 2 },
  {
    key: 'untilMultiple',
    label: 'Until so many times the money',
    unit: 'times',
    least: 0,
    most: 100,
    decimals: 2,
  },
];

export interface RoyaltyArgs {
  basis: Basis;
  came: Arrived;
  /** Units, or minor units of sales, by week. */
  base: Float64Array;
  /** Minor units per unit, or a share. */
  rate: number;
  laterRate: number;
  what: FlowKind;
  rules: RoyaltyRules;
}

/** What a base adds to what is owed, given what is owed already; the rate changes at `until`, nothing passes `cap`. 0 or more. */
function owedOn(args: {
  base: number;
  owed: number;
  until: number;
  cap: number;
  rate: number;
  laterRate: number;
}): number {
  const { owed, until, cap, rate, laterRate } = args;
  const room = Math.max(0, until - owed);
  const first =
    rate === 0 || room === Number.POSITIVE_INFINITY ? args.base : Math.min(args.base, room / rate);
  const atFirst = room > 0 ? first : 0;
  const adds = atFirst * rate + (args.base - atFirst) * laterRate;
  return Math.max(0, Math.min(adds, cap - owed));
}

export function royaltyOutcome(args: RoyaltyArgs): PartOutcome {
  const { basis, came, base, rules } = args;
  const start = came.money[0]?.week ?? basis.weeks;
  const money = came.money.reduce((sum, { amount }) => sum + amount, 0);
  const end = Math.min(basis.weeks, rules.untilWeek ?? basis.weeks);
  const minimum = Number(rules.minimumAmountPerQuarter) * 10 ** basis.minorDigits;
  const bills: { week: number; owed: number; least: number }[] = [];
  let owed = 0;
  let ofQuarter = 0;
  let leasts = 0;
  let limit = limits(args, moneyBy(came, start));
  // Of the payment under way, and what earlier ones left below zero.
  let uncounted = 0;
  const count = () => {
    const adds = owedOn({ base: uncounted, owed, ...limit });
    uncounted = Math.min(0, uncounted);
    owed += adds;
    ofQuarter += adds;
  };
  let next = payWeek(basis, rules.paid, start);
  for (let w = start; w < end; w++) {
    if (came.money.some(({ week }) => week === w)) {
      count();
      limit = limits(args, moneyBy(came, w));
    }
    uncounted += base[w] ?? 0;
    const pays = next;
    next = payWeek(basis, rules.paid, w + 1);
    if (next !== pays || w + 1 === end) count();
    const quarter = quarterOf(basis, w);
    if (quarterOf(basis, w + 1) !== quarter) {
      const whole = quarterOf(basis, start - 1) < quarter;
      const tops = whole ? Math.max(0, Math.min(minimum - ofQuarter, limit.cap - owed)) : 0;
      owed += tops;
      leasts += tops;
      ofQuarter = 0;
    }
    bills.push({ week: pays, owed, least: leasts });
  }
  const flows = [...came.flows, ...billed(bills, args.what)];
  const after = -flows.reduce((sum, flow) => sum + (flow.week >= basis.weeks ? flow.amount : 0), 0);
  const settles = money === 0 ? 0 : Math.round(runsOn(args, { owed, money, uncounted, minimum }));
  return { flows, never: came.never, owed: after + settles, settles, stake: null };
}

function limits({ rate, laterRate, rules }: RoyaltyArgs, money: number) {
  const times = (multiple: string | null) =>
    multiple === null ? Number.POSITIVE_INFINITY : Number(multiple) * money;
  const until = times(rules.untilMultiple);
  // With nothing after the first rate the royalty ends there, and its least sums with it.
  const cap = Math.min(times(rules.capMultiple), laterRate === 0 ? until : Number.POSITIVE_INFINITY);
  return { rate, laterRate, until, cap };
}

function moneyBy({ money }: Arrived, week: number): number {
  return money.reduce((sum, each) => sum + (each.week <= week ? each.amount : 0), 0);
}

/** When what is earned in a week is paid: as the plan's own broker (monthly) and royalty (quarterly) are. */
function payWeek(basis: Basis, paid: RoyaltyRules['paid'], week: number): number {
  if (paid === 'weekly') return week + 1;
  if (paid === 'monthly') return weekOfMonth(basis, monthOf(basis, week) + 1, week);
  return weekAfterQuarter(basis, quarterOf(basis, week));
}

/** One payment a week in which anything falls due; minimum sums apart. */
function billed(
  bills: readonly { week: number; owed: number; least: number }[],
  what: FlowKind,
): DatedFlow[] {
  const flows: DatedFlow[] = [];
  let paid = 0;
  let leastPaid = 0;
  bills.forEach((bill, at) => {
    if (bills[at + 1]?.week === bill.week) return;
    const all = Math.round(bill.owed) - paid;
    // Each is rounded for itself: the least sum must not be a cent more than both together.
    const least = Math.min(all, Math.round(bill.least) - leastPaid);
    const amount = all - least;
    paid += all;
    leastPaid += least;
    if (amount !== 0) flows.push({ week: bill.week, amount: -amount, what, early: false });
    if (least !== 0) flows.push({ week: bill.week, amount: -least, what: 'minimum', early: false });
  });
  return flows;
}

interface AtEnd {
  owed: number;
  money: number;
  uncounted: number;
  minimum: number;
}

/**
 * What goes on after the horizon: to the cap for a share that ends there, else some years at the last year's pace, by
 * quarters where each has a least sum.
 */
function runsOn(args: RoyaltyArgs, { owed, money, uncounted, minimum }: AtEnd): number {
  const { basis, base, rules, what } = args;
  const limit = limits(args, money);
  if (what === 'share') return Math.max(0, limit.cap - owed);
  const left =
    rules.untilWeek === null ? basis.royaltyYears : Math.max(0, rules.untilWeek - basis.weeks) / 52;
  const years = Math.min(left, basis.royaltyYears);
  const counted = Math.min(52, basis.weeks);
  const pace = (sumOf(base, basis.weeks - counted) * 52) / counted;
  if (minimum === 0) return owedOn({ base: pace * years + uncounted, owed, ...limit });
  let all = owed;
  let behind = uncounted;
  for (let quarters = 4 * years; quarters > 0; quarters--) {
    behind += (pace / 4) * Math.min(1, quarters);
    const adds = owedOn({ base: behind, owed: all, ...limit });
    behind = Math.min(0, behind);
    // A part of a quarter has no least sum, as at its start.
    all += quarters < 1 ? adds : Math.max(adds, Math.min(minimum, limit.cap - all));
  }
  return all - owed;
}
