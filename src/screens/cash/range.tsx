// The range behind the cash curve: computed when it is asked for, kept up with edits until it is stopped, and what it says
// in a few sentences. What moves it, and how far things may come out otherwise, stands in Promise.
// Worked example: "Cash falls below zero in 45 % of 10,000 draws" under a fan from −33,000 to 39,000 at its lowest.
import type { VNode } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { RANGE_DRAWS, type Range, type RangeView, rangeFor } from '../../app/range.ts';
import { chanceWords } from '../../domain/promise/chance-words.ts';
import { Button, type ChartSeries, Progress } from '../../widgets/index.ts';
import { Keys } from '../ladder/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

/** The fan, drawn from its upper line down to its lower one; empty where no range of the shown results is known. */
export function useCashFan(perMinor: number): readonly ChartSeries[] {
  const { range, older } = rangeFor(useSession()).view.value;
  return useMemo(() => (range === null || older ? [] : fanSeries(range, perMinor)), [range, older, perMinor]);
}

function fanSeries({ cash }: Range, perMinor: number): ChartSeries[] {
  const shown = (values: Float64Array) => Array.from(values, (value) => value / perMinor);
  return [
    {
      id: 'p90',
      label: 'Nine draws in ten below',
      values: shown(cash.p90),
      style: 'thin',
      colour: 'ours',
      fill: 'next',
    },
    {
      id: 'p10',
      label: 'One draw in ten below',
      values: shown(cash.p10),
      style: 'thin',
      colour: 'ours',
      fill: 'none',
    },
    {
      id: 'p50',
      label: 'Half of the draws below',
      values: shown(cash.p50),
      style: 'dashed',
      colour: 'ours',
      fill: 'none',
    },
  ];
}

/** What the picture says of the range, for who can't see it; empty without one. */
export function fanWords(range: Range | null, say: ScreenSay): string {
  if (range === null) return '';
  const { p10, p50, p90 } = range.cash;
  const lowest = p10.reduce((low, value, week) => (value < (p10[low] ?? 0) ? week : low), 0);
  const at = (week: number) =>
    `${say.money(p10[week] ?? 0)} to ${say.money(p90[week] ?? 0)}, half of the draws below ${say.money(p50[week] ?? 0)}`;
  return `The range, eight draws in ten: in ${say.week(lowest)} ${at(lowest)}; at the end ${at(p10.length - 1)}.`;
}

export function CashRange(): VNode {
  const work = rangeFor(useSession());
  const { view, ask, stop } = work;
  const say = useSay();
  useEffect(work.expect, [work]);
  const now = view.value;
  const isRunning = now.at === 'running';
  return (
    <div class="ff-solve-answer">
      {isRunning ? (
        <Progress
          label={now.range === null || now.older ? 'Drawing …' : `${say.count(now.range.draws)} draws so far`}
          share={now.progress}
          stopLabel="Stop"
          onStop={stop}
        />
      ) : (
        (now.at !== 'whole' || now.older) && (
          <Keys>
            <Button onPress={ask}>Show the range</Button>
          </Keys>
        )
      )}
      <div aria-live="polite">
        {now.at === 'trouble' && <p>{now.trouble}</p>}
        {!isRunning && rangeSentences(now, say).map((sentence) => <p key={sentence}>{sentence}</p>)}
      </div>
    </div>
  );
}

/** What a range that fits the shown results says; before any, what it would be. */
export function rangeSentences({ range, exactCheck, older }: RangeView, say: ScreenSay): string[] {
  if (range === null || older) {
    return [
      `${say.count(RANGE_DRAWS)} draws of this plan, each a little otherwise: what sells, what opens and when, who pays late, what goods cost.`,
    ];
  }
  const { need, chanceCashOut } = range;
  const needed = (amount: number) =>
    amount === 0 ? 'no more than there is' : `${say.money(amount)} or less`;
  const sentences = [
    `Cash falls below zero in ${chanceWords(chanceCashOut, say.percent)} of ${say.count(range.draws)} draws.`,
    `Half of them need ${needed(need.p50)}, 8 in 10 ${needed(need.p80)}, 19 in 20 ${needed(need.p95)}.`,
  ];
  if (exactCheck === null) return sentences;
  const width = Math.max(range.lowest.p90 - range.lowest.p10, exactCheck.swing);
  const isRough = exactCheck.lowestCash.median > ROUGH * width;
  const missed = `${say.money(exactCheck.lowestCash.median)} in the middle of ${say.count(exactCheck.draws)} draws run exactly`;
  sentences.push(
    isRough
      ? `Take it as rough: this plan has terms that the quicker pass leaves out, and it missed the lowest cash by ${missed}.`
      : `A quicker pass than the plan’s own: it missed the lowest cash by ${missed}.`,
  );
  return sentences;
}

/** A miss of more than this part of the range is said to be rough. */
const ROUGH = 0.2;
