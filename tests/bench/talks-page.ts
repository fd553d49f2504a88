/**
 * What the talks' speed test runs inside a real browser: figures, counter-offers and worth of one account of the big plan,
 * by each target, and the whole model with the draft in. Medians, milliseconds.
 */
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import type { Outcome } from '../../src/domain/problems.ts';
import {
  countersFor,
  figuresFor,
  type Objective,
  type Terms,
  targetsUnder,
  termsOf,
  withTerms,
  worthOf,
} from '../../src/domain/talks/index.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { bigPlan } from '../support/big-plan.ts';

export interface TalksTimings {
  figures: number;
  evaluated: number;
  countersFirstYear: number;
  countersPresentValue: number;
  countersPayback: number;
  worthOfFive: number;
  worthOfAll: number;
  /** Of the last run by target: none of them may be empty. */
  counters: number;
}

const ID = 'chain-0';

function median(times: number[]): number {
  const sorted = [...times].sort((x, y) => x - y);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function timed(runs: number, work: (run: number) => void): number {
  for (let warm = 0; warm < Math.ceil(runs / 2); warm++) work(warm);
  const times = Array.from({ length: runs }, (_, run) => {
    const start = performance.now();
    work(run);
    return performance.now() - start;
  });
  return median(times);
}

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok)
    throw new Error(outcome.problems.map(({ path, expected }) => `${path}: ${expected}`).join('; '));
  return outcome.value;
}

/** Other asks each run, so that nothing is merely remembered. */
function askedIn(run: number): Terms {
  return { margin: 0.41 + (run % 7) / 1000, slotting: 100 + run, promoWeeks: 4 };
}

export function run(): TalksTimings {
  const plan = bigPlan();
  const drafts = Array.from({ length: 7 }, (_, turn) => must(withTerms(plan, ID, askedIn(turn))));
  const firstYear: Objective = { by: 'firstYear' };
  let counters = Number.POSITIVE_INFINITY;
  const countersBy = (objective: Objective) => {
    // nothing is put down before the asks: a payback of two weeks is what is wanted
    const target =
      objective.by === 'payback' ? 2 : must(targetsUnder({ plan, accountId: ID, objective })).target;
    return timed(21, (turn) => {
      const asked = askedIn(turn);
      const found = must(
        countersFor({ plan, accountId: ID, objective, target, asked, limits: {}, order: [] }),
      );
      counters = Math.min(counters, found.counters.length + (found.closest ? 1 : 0));
    });
  };
  const worth = (names: string[]) =>
    timed(9, (turn) => {
      must(worthOf({ plan: drafts[turn % 7] as Plan, accountId: ID, objective: firstYear, names }));
    });
  return {
    figures: timed(201, (turn) => {
      const draft = must(withTerms(plan, ID, askedIn(turn)));
      must(figuresFor({ plan: draft, accountId: ID, objective: firstYear, reviewWeeks: 26 }));
    }),
    evaluated: timed(41, (turn) => {
      must(
        evaluate(drafts[turn % 7] as Plan, ({ minorDigits, startDay }) =>
          plainSay({ minorDigits, startDay, dateOf: isoDateOf }),
        ),
      );
    }),
    countersFirstYear: countersBy(firstYear),
    countersPresentValue: countersBy({ by: 'presentValue', yearlyRate: '0.1' }),
    countersPayback: countersBy({ by: 'payback' }),
    worthOfFive: worth(['margin', 'slotting', 'shelf:plum', 'promoWeeks', 'spoils']),
    worthOfAll: worth(termsOf(plan, ID).map(({ name }) => name)),
    counters,
  };
}

Object.assign(globalThis, { firstfillTalksBench: run });
