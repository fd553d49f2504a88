// The range behind the cash curve: computed when it is asked for, kept up with edits until it is stopped, and what it says
// in a few sentences. What moves it, and how far things may come out otherwise, stands in Promise.
// Worked example: "Cash falls below zero in 45 % of 10,000 draws" under a fan from −33,000 to 39,000 at its lowest.
import type { VNode } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { RANGE_DRAWS, type RangeView, rangeFor } from '../../app/range.ts';
import { chanceWords } from '../../domain/promise/chance-words.ts';
import { Button, type ChartSeries, Progress } from '../../widgets/index.ts';
import { exactWords, fanSeries } from '../shared/drawn-range.ts';
import { Keys } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

/** The fan, drawn from its upper line down to its lower one; empty where no range of the shown results is known. */
export function useCashFan(perMinor: number): readonly ChartSeries[] {
  const { range, older } = rangeFor(useSession()).view.value;
  return useMemo(
    () => (range === null || older ? [] : fanSeries(range.cash, perMinor)),
    [range, older, perMinor],
  );
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
    amount === 0 ? 'no more than there is' : `at most ${say.money(amount)} more`;
  const sentences = [
    `Cash falls below zero in ${chanceWords(chanceCashOut, say.percent)} of ${say.count(range.draws)} draws.`,
    `Half of them need ${needed(need.p50)}; 8 in 10 need ${needed(need.p80)}; 19 in 20 need ${needed(need.p95)}.`,
  ];
  if (exactCheck === null) return sentences;
  return [...sentences, `A quicker pass than the plan’s own. ${exactWords(range, exactCheck, say)}`];
}
