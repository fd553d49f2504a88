// Where a verdict changes its word: judgement, the user's to set. Worked figure: a floor of 20 % and 3 points above it
// make a ladder of 26.8 % hold, one of 21 % tight, one of 19 % fail.
import { dec } from '../money/decimal.ts';
import type { Thresholds } from '../plan/index.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactNumber, exactPercent, type Scene, typed } from './write.ts';

const WORDS: Record<keyof Thresholds, { name: string; meaning: string; unit: 'share' | 'number' }> = {
  ladderFloorRate: {
    name: 'Floor of the ladder',
    meaning: 'The least part of the net price we want to keep: below it the ladder fails.',
    unit: 'share',
  },
  ladderTightPoints: {
    name: 'Tight above the floor',
    meaning: 'How far above its floor the ladder counts as tight.',
    unit: 'share',
  },
  dealTightRatio: {
    name: 'Deal holds from',
    meaning: 'How many times its break-even rate of sale a deal must plan to hold; below 1 it fails.',
    unit: 'number',
  },
  cashBufferWeeks: {
    name: 'Cash buffer, weeks of outgoings',
    meaning:
      'How many weeks of mean outgoings cash should keep; below that it is tight, below zero it fails.',
    unit: 'number',
  },
  promiseFailsBelowRate: {
    name: 'Promise fails below',
    meaning: 'The chance of a claim below which it fails.',
    unit: 'share',
  },
  promiseTightBelowRate: {
    name: 'Promise is tight below',
    meaning: 'The chance of a claim below which it is tight.',
    unit: 'share',
  },
};

export function thresholdFigure(scene: Scene, threshold: keyof Thresholds): Draft {
  const { name, meaning } = WORDS[threshold];
  const value = textOf(scene, threshold);
  return {
    title: name,
    value,
    exact: String(scene.plan.thresholds[threshold]),
    meaning,
    formula: `${name}: ${value}`,
    lines: [{ ...thresholdLine(scene, threshold), explains: null }],
    caution: 'A judgement, not a law: set it to what you can live with.',
  };
}

/** A threshold as an ingredient of a verdict. */
export function thresholdLine(scene: Scene, threshold: keyof Thresholds): ExplanationLine {
  return typed(scene, `thresholds/${threshold}`, {
    label: WORDS[threshold].name,
    value: textOf(scene, threshold),
    reason: 'A judgement, yours to set',
    explains: { of: 'threshold', threshold },
  });
}

function textOf(scene: Scene, threshold: keyof Thresholds): string {
  const value = dec(scene.plan.thresholds[threshold]);
  return WORDS[threshold].unit === 'share' ? exactPercent(scene, value) : exactNumber(scene, value);
}
