// Money that comes and goes with bills: so much of each is advanced, and paid back with a fee a fixed number of weeks later,
// never more than a limit outstanding. Worked figure: 80 % of 10,000 for 9 weeks at 2 % per 30 days: 8,000 in; 8,000 and
// 336 out (8,000 x 0.02 x 63 / 30).
import { weekOf } from './arrivals.ts';
import type { Basis } from './basis.ts';
import type { DatedFlow, FieldNote, Movable, PartOutcome, When } from './contract.ts';

/** What every advance asks, and a counter may move. */
export const FEE_FIELD: FieldNote = { key: 'feeRatePer30Days', label: 'Fee for each 30 days', unit: 'share' };
export const LIMIT_FIELD: FieldNote = {
  key: 'limitAmount',
  label: 'Most outstanding',
  unit: 'sum',
  orNone: true,
};
export const FEE_MOVABLE: Movable = {
  key: FEE_FIELD.key,
  label: FEE_FIELD.label,
  unit: 'share',
  least: 0,
  most: 0.5,
  decimals: 4,
};

export interface Draw {
  /** Bills by week, minor units. */
  amounts: Float64Array;
  /** Part of each that is advanced. */
  rate: number;
  /** Weeks until it is paid back; none is advanced for less than one. */
  weeks: number;
  /** Part of the advance that need not be paid back. */
  forgiven: number;
}

export interface AdvanceArgs {
  basis: Basis;
  starts: When;
  limit: string | null;
  feeRatePer30Days: number;
  early: boolean;
  draws: readonly Draw[];
}

export function advanceOutcome(args: AdvanceArgs): PartOutcome {
  const { basis, draws, feeRatePer30Days } = args;
  const start = weekOf(args.starts, basis);
  if (start === null) {
    const never = [{ trancheId: '', amount: 0, condition: args.starts }];
    return { flows: [], never, owed: 0, settles: 0, stake: null };
  }
  const limit =
    args.limit === null ? Number.POSITIVE_INFINITY : Math.round(Number(args.limit) * 10 ** basis.minorDigits);
  const flows: DatedFlow[] = [];
  const due = new Map<number, number>();
  let outstanding = 0;
  for (let w = start; w < basis.weeks; w++) {
    outstanding -= due.get(w) ?? 0;
    for (const { amounts, rate, weeks, forgiven } of draws) {
      const amount = Math.min(Math.round((amounts[w] ?? 0) * rate), limit - outstanding);
      if (amount <= 0 || weeks === 0) continue;
      outstanding += amount;
      due.set(w + weeks, (due.get(w + weeks) ?? 0) + amount);
      const back = amount - Math.round(amount * forgiven);
      flows.push({ week: w, amount, what: 'advance', early: args.early });
      flows.push({ week: w + weeks, amount: -back, what: 'advanceRepaid', early: false });
      const fee = Math.round((amount * feeRatePer30Days * 7 * weeks) / 30);
      if (fee > 0) flows.push({ week: w + weeks, amount: -fee, what: 'fee', early: false });
    }
  }
  const owed = flows.reduce((sum, { week, amount }) => sum - (week >= basis.weeks ? amount : 0), 0);
  return { flows, never: [], owed, settles: 0, stake: null };
}
