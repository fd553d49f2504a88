// The verdicts above the seven rows, or how many numbers are still to go for each.
// Worked example: after three numbers "Ladder holds", and three to go for deal and cash.
import type { VNode } from 'preact';
import { missingFor } from '../../domain/quick/index.ts';
import type { VerdictName } from '../../domain/results.ts';
import { STRIP, type StripCell, VerdictStrip } from '../shared/verdict-strip.tsx';
import type { SevenModel } from './model.ts';

export function SevenStrip({ model }: { model: SevenModel }): VNode {
  return <VerdictStrip cells={STRIP.map((name) => cellOf(name, model))} older={model.older} />;
}

function cellOf(name: VerdictName, model: SevenModel): StripCell {
  const { results, seven, parts } = model;
  const part = name === 'cash' ? 'cashNeed' : name;
  if (results === null || !parts.some((each) => each === part)) {
    const missing = missingFor(name === 'cash' ? 'deal' : name, seven).length;
    const toGo = missing === 1 ? '1 number to go' : `${missing} numbers to go`;
    return { name, state: 'unknown', text: missing === 0 ? 'can’t be computed' : toGo };
  }
  const { state, figure } = results.verdicts[name];
  return { name, state, text: figure };
}
