// Three verdicts in 56 px, above everything that is typed: mark, word and figure, or how many numbers are still to go.
// Worked example: "Ladder holds / 0.63 of 4.99", "Deal / 3 numbers to go", "Cash / 4 numbers to go".
import type { VNode } from 'preact';
import { missingFor } from '../../domain/quick/index.ts';
import type { VerdictName, VerdictState } from '../../domain/results.ts';
import { classNames, VerdictMark } from '../../widgets/index.ts';
import { VERDICT_TITLES, VERDICT_WORDS } from '../shared/verdict-words.ts';
import type { SevenModel } from './model.ts';

const STRIP: readonly VerdictName[] = ['ladder', 'deal', 'cash'];

export function VerdictStrip({ model }: { model: SevenModel }): VNode {
  return (
    <div class="ff-seven-strip" role="status">
      {STRIP.map((name) => (
        <Cell key={name} {...cellOf(name, model)} older={model.older} />
      ))}
    </div>
  );
}

interface CellProps {
  title: string;
  state: VerdictState;
  figure: string;
}

function Cell({ title, state, figure, older }: CellProps & { older: boolean }): VNode {
  return (
    <div class="ff-seven-strip-cell">
      <span class="ff-seven-strip-head ff-label">
        <VerdictMark verdict={state} label="" size="small" />
        {title}
        {state !== 'unknown' && (
          <span class={`ff-seven-strip-word ff-hue-${state}`}>{VERDICT_WORDS[state].toLowerCase()}</span>
        )}
      </span>
      <span class={classNames('ff-seven-strip-figure ff-number', older && state !== 'unknown' && 'ff-older')}>
        {figure}
        {older && state !== 'unknown' ? ' …' : ''}
      </span>
      <span class="ff-spoken">. </span>
    </div>
  );
}

function cellOf(name: VerdictName, model: SevenModel): CellProps {
  const title = VERDICT_TITLES[name];
  const { results, seven, parts } = model;
  const part = name === 'cash' ? 'cashNeed' : name;
  if (results === null || !parts.some((each) => each === part)) {
    const missing = name === 'cash' ? missingFor('deal', seven).length : missingFor(name, seven).length;
    const toGo = missing === 1 ? '1 number to go' : `${missing} numbers to go`;
    return { title, state: 'unknown', figure: missing === 0 ? 'can’t be computed' : toGo };
  }
  const { state, figure } = results.verdicts[name];
  return { title, state, figure };
}
