// The verdict across the table, 92 px, in ink alone: mark, word, gap to the target, a thin bar, and what weighs most. The
// bar's two notches have no label: whoever knows them needs none. While a text is not accepted its sentence stands here,
// where no keypad covers it. Worked example: "Tight −4,210 a year to target".
import type { VNode } from 'preact';
import { VerdictMark } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import { VERDICT_WORDS } from '../shared/verdict-words.ts';
import type { TalksModel } from './model.ts';
import { gapWords, reasonWords } from './verdict-words.ts';

export function TalksVerdict({ model, problem }: { model: TalksModel; problem: string }): VNode {
  const say = useSay();
  const { state } = model.standing;
  const { figure, unit } = gapWords(model, say);
  return (
    <section class="ff-talks-verdict" aria-label="Where it stands">
      <div class="ff-talks-word" role="status">
        <VerdictMark verdict={state} label="" size="large" inkOnly />
        <strong>{VERDICT_WORDS[state]}</strong>
        <span class="ff-spoken">, </span>
        <span class="ff-talks-gap">
          <span class="ff-talks-gap-figure ff-number">{figure}</span>
          <span class="ff-talks-gap-unit ff-least">{unit}</span>
        </span>
      </div>
      <Bar model={model} />
      <p class="ff-talks-reason ff-least" aria-live="polite">
        {problem === '' ? reasonWords(model, say) : <strong>{problem}</strong>}
      </p>
    </section>
  );
}

/** From beyond one notch to beyond the other; the offer stands where the thick part ends. */
function Bar({ model }: { model: TalksModel }): VNode {
  const { value, target, walkAway } = model.standing;
  const way = model.table.objective.by === 'payback' ? -1 : 1;
  const span = Math.max(Math.abs(target - walkAway), Math.abs(target) * 0.05, 1);
  const place = (at: number): number =>
    Math.min(398, Math.max(2, 100 + (200 * way * (at - walkAway)) / span));
  const here = value === null ? 2 : place(value);
  return (
    <svg class="ff-talks-bar" viewBox="0 0 400 10" preserveAspectRatio="none" aria-hidden="true">
      <path class="ff-talks-bar-line" d="M0 5H400" />
      <path class="ff-talks-bar-value" d={`M0 5H${here.toFixed(1)}`} />
      <path
        class="ff-talks-bar-notch"
        d={`M${place(walkAway).toFixed(1)} 1V9M${place(target).toFixed(1)} 0V10`}
      />
    </svg>
  );
}
