// What a computed range says, in words and rows: the chance that cash runs out, what is needed, what moves it most, how
// far chance alone may have moved that, and how near the quick pass came to the exact one.
// Worked example: "Cash runs out in 35 % of draws" and "needed at most, in 8 of 10 draws: 61,000".
import { dec } from '../../domain/money/decimal.ts';
import { hundredths } from '../../domain/money/format.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { chanceWords } from '../../domain/promise/chance-words.ts';
import type { Driver, Range } from '../../domain/promise/range/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

const CAUSE_WORDS: Record<Driver['cause'], string> = {
  shared: 'What all accounts share',
  rateOfSale: 'Rate of sale',
  doors: 'Doors that open',
  slip: 'Openings that come late',
  ramp: 'Time until full sales',
  lateness: 'Payments that come late',
  goods: 'Cost of goods',
  deductions: 'Deductions',
  voids: 'Doors with an empty place',
  opens: '',
};

export function causeText(plan: Plan, { cause, account }: Driver): string {
  if (cause !== 'opens') return CAUSE_WORDS[cause];
  return `${plan.accounts[account ?? -1]?.name ?? 'An account'} opens`;
}

/** "+0.62 (0.61 to 0.63)". */
export function correlationText({ correlation, limits }: Driver, say: ScreenSay): string {
  const two = (value: number) => hundredths(say.look, dec(value));
  const sign = correlation > 0 ? '+' : '';
  return `${sign}${two(correlation)} (${two(limits.low)} to ${two(limits.high)})`;
}

/** What a sheet says where it comes from. */
export type RangeFigure = 'cashOut' | 'p50' | 'p80' | 'p95';

export interface NeedRow {
  id: Exclude<RangeFigure, 'cashOut'>;
  label: string;
  text: string;
  /** How far chance alone may have moved it. */
  error: string;
}

export function needRows({ need, monteCarloError }: Range, say: ScreenSay): NeedRow[] {
  return (['p50', 'p80', 'p95'] as const).map((share) => {
    const { low, high } = monteCarloError.need[share];
    return {
      id: share,
      label: NEED_WORDS[share],
      text: say.money(need[share]),
      error: `${say.money(low)} to ${say.money(high)}`,
    };
  });
}

const NEED_WORDS = {
  p50: 'More cash needed, enough in half of the draws',
  p80: 'Enough in 8 of 10',
  p95: 'Enough in 19 of 20',
} as const;

/** "35 % of 10,000 draws; as many more might say 34.1 % to 36 %." */
export function cashOutText({ chanceCashOut, monteCarloError, draws }: Range, say: ScreenSay): string {
  const { low, high } = monteCarloError.chanceCashOut;
  const here = `${say.percent(chanceCashOut)} of ${say.count(draws)} draws`;
  const [from, to] = [say.percent(low), say.percent(high)];
  return from === to ? `${here}.` : `${here}; as many more might say ${from} to ${to}.`;
}

export function cashOutFigure({ chanceCashOut }: Range, say: ScreenSay): string {
  return chanceWords(chanceCashOut, say.percent);
}
