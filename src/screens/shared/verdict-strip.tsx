// Three verdicts in 56 px, to stand where something is typed: mark, word and figure of each.
// Worked example: "Ladder holds / 0.63 of 4.99", "Deal / 3 numbers to go", "Cash fails / −12,300 · week 9".
import type { VNode } from 'preact';
import type { VerdictName, VerdictState } from '../../domain/results.ts';
import { classNames, VerdictMark } from '../../widgets/index.ts';
import { useShown } from './session-context.ts';
import { VERDICT_TITLES, VERDICT_WORDS } from './verdict-words.ts';

export const STRIP: readonly VerdictName[] = ['ladder', 'deal', 'cash'];

export interface StripCell {
  name: VerdictName;
  state: VerdictState;
  /** The figure, or what is still missing for one. */
  text: string;
}

export function VerdictStrip({ cells, older }: { cells: readonly StripCell[]; older: boolean }): VNode {
  return (
    <div class="ff-verdict-strip" role="status">
      {cells.map((cell) => (
        <Cell key={cell.name} {...cell} older={older && cell.state !== 'unknown'} />
      ))}
    </div>
  );
}

/** The open plan's, under fields that cover its verdicts. */
export function PlanStrip(): VNode | null {
  const shown = useShown();
  if (shown === null) return null;
  const cells = STRIP.map((name) => {
    const { state, figure } = shown.results.verdicts[name];
    return { name, state, text: figure === '' ? VERDICT_WORDS[state].toLowerCase() : figure };
  });
  return <VerdictStrip cells={cells} older={shown.older} />;
}

function Cell({ name, state, text, older }: StripCell & { older: boolean }): VNode {
  return (
    <div class="ff-verdict-strip-cell">
      <span class="ff-verdict-strip-head ff-label">
        <VerdictMark verdict={state} label="" size="small" />
        {VERDICT_TITLES[name]}
        {state !== 'unknown' && (
          <span class={`ff-verdict-strip-word ff-hue-${state}`}>{VERDICT_WORDS[state].toLowerCase()}</span>
        )}
      </span>
      <span class="ff-spoken">, </span>
      <span class={classNames('ff-verdict-strip-figure ff-number', older && 'ff-older')}>
        {text}
        {older && '\u00a0…'}
      </span>
      <span class="ff-spoken">. </span>
    </div>
  );
}
