// The promise ruler: what the evidence supports as a solid length on a folding rule, the claim as a flag on it, today and
// the plan as pointers; the same figures in a sentence under it.
// Worked example: 8 of 10 futures have 340 to 1,120 doors by then; the flag at 1,900 stands far past the solid length.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { chanceWords } from '../../domain/promise/chance-words.ts';
import { amountWords, claimedWords } from '../../domain/verdicts/promise.ts';
import { FoldingRule, type RulePointer, WhereFrom } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { rodEnds } from './scale.ts';
import type { Claim } from './words.ts';

/** Where a claim stands in what the evidence supports; all amounts in what it counts (revenue in whole money). */
export interface RulerFigures {
  of: Claim['of'];
  low80: number;
  high80: number;
  low95: number;
  high95: number;
  middle: number;
  expected: number;
  /** Of the claim, 0 to 1. */
  chance: number;
  claimed: number;
  planned: number | null;
  today: number | null;
}

export function PromiseRuler({ figures }: { figures: RulerFigures }): VNode {
  const say = useSay();
  const { low80, high80, low95, high95, middle, claimed, expected, chance, planned, today } = figures;
  const plan = usePlan();
  const why = useWhy();
  const most = Math.max(high95, claimed, planned ?? 0, today ?? 0);
  const pointers: RulePointer[] = [];
  if (planned !== null) pointers.push({ at: planned, text: `planned ${bare(planned, say)}`, filled: true });
  if (today !== null) pointers.push({ at: today, text: `today ${bare(today, say)}`, filled: false });
  return (
    <div class="ff-promise-ruler">
      <FoldingRule
        alt={rulerText(plan, figures, say)}
        ends={endsOf(figures, most, say)}
        solid={{ low: low80, high: high80 }}
        thin={{ low: low95, high: high95 }}
        middle={middle}
        flag={{ at: claimed, text: `claimed ${claimedText(figures, say)}` }}
        pointers={pointers}
      />
      <dl class="ff-promise-lengths">
        <div>
          <dt>
            <span class="ff-length-solid" aria-hidden="true" /> 8 of 10 futures
          </dt>
          <dd class="ff-number">
            {bare(low80, say)} to {bare(high80, say)}
          </dd>
        </div>
        <div>
          <dt>
            <span class="ff-length-thin" aria-hidden="true" /> 19 of 20
          </dt>
          <dd class="ff-number">
            {bare(low95, say)} to {bare(high95, say)}
          </dd>
        </div>
        <div>
          <dt>Half of them at least</dt>
          <dd class="ff-number">{bare(middle, say)}</dd>
        </div>
        <div>
          <dt>On average</dt>
          <dd class="ff-number">{averageText(figures.of, expected, say)}</dd>
        </div>
        <div>
          <dt>Chance of the claim</dt>
          <dd>
            <WhereFrom open={why({ of: 'verdict', verdict: 'promise' })}>
              {chanceWords(chance, say.percent, linesOf(plan))}
            </WhereFrom>
          </dd>
        </div>
      </dl>
    </div>
  );
}

/** Chances that the verdict hangs on. */
function linesOf({ thresholds }: Plan): number[] {
  return [Number(thresholds.promiseFailsBelowRate), Number(thresholds.promiseTightBelowRate)];
}

/** Without its unit: the heading says what is counted. */
function bare(amount: number, say: ScreenSay): string {
  return say.count(Math.round(amount));
}

/** Doors and units as they were typed, as the heading has them. */
function claimedText({ of, claimed }: RulerFigures, say: ScreenSay): string {
  return of === 'revenue' || Number.isInteger(claimed) ? bare(claimed, say) : say.number(claimed);
}

/** As the verdict has it. */
function averageText(of: RulerFigures['of'], amount: number, say: ScreenSay): string {
  const tenths = Math.round(amount * 10) / 10;
  return of === 'revenue' || tenths >= 10 ? bare(amount, say) : say.number(tenths);
}

/** Of long numbers every second one, the last and the first always, or they would run into each other on a phone. */
function endsOf({ of }: RulerFigures, most: number, say: ScreenSay): { at: number; text: string }[] {
  const texts = rodEnds(most, of === 'doors').map((at) => ({ at, text: bare(at, say) }));
  const isLong = texts.reduce((sum, { text }) => sum + text.length, 0) > LONG;
  const last = texts.length - 1;
  return texts.map(({ at, text }, index) => ({
    at,
    text: isLong && index > 0 && (last - index) % 2 === 1 ? '' : text,
  }));
}

const LONG = 26;

/** The picture, spoken. */
export function rulerText(plan: Plan, figures: RulerFigures, say: ScreenSay): string {
  const { of, low80, high80, middle, claimed, planned, today } = figures;
  const text = (amount: number) => amountWords(plan, of, amount, say);
  const against =
    claimed > high80
      ? 'above that'
      : claimed < low80
        ? 'below that'
        : claimed > middle
          ? 'in its upper half'
          : 'in its lower half';
  const claimWhat = claimedWords(plan, { of, amount: String(claimed), byDate: '', who: '' }, say);
  return [
    `The evidence supports ${text(low80)} to ${text(high80)} in 8 of 10 futures, half of them at least ${text(middle)}.`,
    `The claim of ${claimWhat} stands ${against}.`,
    planned === null ? '' : `Planned: ${text(planned)}.`,
    today === null ? '' : `Today: ${text(today)}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
