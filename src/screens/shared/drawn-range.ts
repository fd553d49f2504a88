// A drawn range wherever it is shown, beside the cash curve and in Promise: the three lines of a fan, the same said in
// words, and how near the quick pass came to the exact one.
// Worked figure: the lowest cash missed by 268 in the middle of 40 draws that lie 4,400 apart is near; by 2,000, rough.
import type { ExactCheck, Fan, Range } from '../../domain/promise/range/index.ts';
import type { ChartSeries } from '../../widgets/index.ts';
import type { ScreenSay } from './screen-say.ts';

/** `perShown`: what one of a shown unit is in the fan's, 100 where the fan counts cents. */
export function fanSeries(fan: Fan, perShown: number): ChartSeries[] {
  const shown = (values: ArrayLike<number>): number[] => Array.from(values, (value) => value / perShown);
  const thin = { style: 'thin', colour: 'ours' } as const;
  return [
    // The tint reaches down to the series that follows.
    { id: 'p90', label: 'Nine draws in ten below', values: shown(fan.p90), ...thin, fill: 'next' },
    { id: 'p10', label: 'One draw in ten below', values: shown(fan.p10), ...thin, fill: 'none' },
    {
      id: 'p50',
      label: 'Half of the draws below',
      values: shown(fan.p50),
      style: 'dashed',
      colour: 'ours',
      fill: 'none',
    },
  ];
}

/** The fan of cash, spoken. */
export function cashFanWords({ cash: { p10, p50, p90 } }: Pick<Range, 'cash'>, say: ScreenSay): string {
  const lowest = p10.reduce((low, value, week) => (value < (p10[low] ?? 0) ? week : low), 0);
  const at = (week: number) =>
    `${say.money(p10[week] ?? 0)} to ${say.money(p90[week] ?? 0)}, half of the draws below ${say.money(p50[week] ?? 0)}`;
  return `The range, eight draws in ten: in ${say.week(lowest)} ${at(lowest)}; at the end ${at(p10.length - 1)}.`;
}

/** What the draws that were run exactly, too, say of the others; and whether those are rough. */
export function exactWords({ lowest }: Pick<Range, 'lowest'>, check: ExactCheck, say: ScreenSay): string {
  const { median, p90 } = check.lowestCash;
  const missed = `${say.count(check.draws)} of them run exactly: the lowest cash was missed by ${say.money(median)} in the middle, by ${say.money(p90)} or less in nine of ten.`;
  const isRough = median > ROUGH * Math.max(lowest.p90 - lowest.p10, check.swing);
  return isRough
    ? `${missed} Take it as rough: this plan has terms that the quicker pass leaves out.`
    : missed;
}

/** A miss of more than this part of the range is said to be rough. Judgement, no source. */
const ROUGH = 0.2;
