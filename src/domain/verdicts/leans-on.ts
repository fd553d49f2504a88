// Which guess a verdict leans on: the model is run again with each guess at each of its plausible ends. The one that
// turns the verdict to a worse word comes first, then one that turns it to a better; where none turns it, the one that
// moves its figure most. Many runs, so the steps can be spread over frames or done in a worker.
// Worked figure: cash holds at 4,000; paid 30 days late instead of 10 it is −2,100 and fails: it leans on the lateness.
import { evaluate, type SayFor } from '../evaluate.ts';
import type { BasisNote, Plan } from '../plan/index.ts';
import { getAt, setAt } from '../plan/path.ts';
import { checkRules } from '../plan/rules.ts';
import { accepts } from '../plan/schema-at.ts';
import { sentence } from '../problems.ts';
import type { LeansOn, Results, Verdict, VerdictName } from '../results.ts';
import { worse } from './ladder.ts';
import { promiseVerdict } from './promise.ts';
import { promiseGuesses } from './promise-guesses.ts';

export interface LeansOnArgs {
  plan: Plan;
  /** Those of the plan. */
  results: Results;
  sayFor: SayFor;
}

export type Leans = Record<VerdictName, LeansOn | null>;

/** One end of one guess, run: how many there are, how many are done, and why this one could not be, or null. */
export interface LeansStep {
  path: string;
  end: string;
  done: number;
  total: number;
  skipped: string | null;
}

const NAMES: readonly VerdictName[] = ['ladder', 'deal', 'cash', 'promise'];

/** For each verdict the guess it leans on; null where it is not known, or no guess moves it. */
export function leansOn(args: LeansOnArgs): Leans {
  const steps = leansOnSteps(args);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, a step after each run of the model; what it returns at its end is the answer. */
export function* leansOnSteps({ plan, results, sayFor }: LeansOnArgs): Generator<LeansStep, Leans> {
  const trials = trialsOf(plan);
  const best: Record<VerdictName, Move | null> = { ladder: null, deal: null, cash: null, promise: null };
  for (const [index, trial] of trials.entries()) {
    const there = trial.claimOnly ? claimThere(trial, results, sayFor) : verdictsThere(trial, sayFor);
    if (there.ok) {
      for (const name of NAMES) {
        const move = moveOf(trial, results.verdicts[name], there.verdicts[name]);
        if (move !== null && isAhead(move, best[name])) best[name] = move;
      }
    }
    const { note, end } = trial;
    const skipped = there.ok ? null : there.reason;
    yield { path: note.path, end, done: index + 1, total: trials.length, skipped };
  }
  const named = (name: VerdictName) => leansOnOf(name, best[name]);
  return { ladder: named('ladder'), deal: named('deal'), cash: named('cash'), promise: named('promise') };
}

interface Trial {
  note: BasisNote;
  end: string;
  /** The plan with the guess at that end; null when the field takes no such value. */
  plan: Plan | null;
  /** Whether nothing but the claim hangs on it: then the weekly pass is not run again. */
  claimOnly: boolean;
}

function trialsOf(plan: Plan): Trial[] {
  return [...trialsBy(plan, plan.basis, false), ...trialsBy(plan, promiseGuesses(plan), true)];
}

/** Both ends of every guess; an end that the plan stands at already tells nothing. */
function trialsBy(plan: Plan, notes: readonly BasisNote[], claimOnly: boolean): Trial[] {
  return notes.flatMap((note) => {
    if (note.kind !== 'guess') return [];
    const current = getAt(plan, note.path);
    return [note.low, note.high].flatMap((end): Trial[] => {
      if (end === null || isSame(current, end)) return [];
      const value = valueFor(plan, note.path, end);
      return [{ note, end, plan: value === null ? null : setAt(plan, note.path, value), claimOnly }];
    });
  });
}

function isSame(current: unknown, end: string): boolean {
  return (typeof current === 'string' || typeof current === 'number') && Number(current) === Number(end);
}

/** The end in the field's own type: decimal text where it takes text, else a whole number; null where it takes neither. */
function valueFor(plan: Plan, path: string, end: string): string | number | null {
  if (getAt(plan, path) === undefined) return null;
  if (accepts(plan, path, end)) return end;
  return accepts(plan, path, Number(end)) ? Number(end) : null;
}

type There = { ok: true; verdicts: Results['verdicts'] } | { ok: false; reason: string };

function verdictsThere({ plan, note, end }: Trial, sayFor: SayFor): There {
  if (plan === null) return { ok: false, reason: `${note.path} can't be ${end}.` };
  // notes don't enter the results: what is wrong with one is no reason to pass over another
  const [broken] = checkRules({ ...plan, basis: [] });
  if (broken) return { ok: false, reason: sentence(broken) };
  const outcome = evaluate(plan, sayFor);
  if (outcome.ok) return { ok: true, verdicts: outcome.value.verdicts };
  const [problem] = outcome.problems;
  return { ok: false, reason: problem ? sentence(problem) : 'It can not be computed.' };
}

function claimThere({ plan, note, end }: Trial, results: Results, sayFor: SayFor): There {
  if (plan === null) return { ok: false, reason: `${note.path} can't be ${end}.` };
  const { currency, minorDigits, compiled, pass, verdicts } = results;
  const say = sayFor({ currency, minorDigits, startDay: compiled.startDay });
  return { ok: true, verdicts: { ...verdicts, promise: promiseVerdict({ plan, pass, say }) } };
}

interface Move {
  trial: Trial;
  there: Verdict;
  /** 2: to a worse word, 1: to a better one, 0: the word stays. */
  turn: 0 | 1 | 2;
  /** How far the verdict's figure moves; a figure that comes or goes moves further than any other. */
  by: number;
}

/** Null when the verdict isn't known, here or there, or when nothing moves. */
function moveOf(trial: Trial, here: Verdict, there: Verdict): Move | null {
  if (here.state === 'unknown' || there.state === 'unknown') return null;
  const turn = worse(there.state, here.state) ? 2 : worse(here.state, there.state) ? 1 : 0;
  const by = distance(here.value, there.value);
  return turn === 0 && by === 0 ? null : { trial, there, turn, by };
}

function distance(here: string | null, there: string | null): number {
  if (here === null || there === null) return here === there ? 0 : Number.MAX_VALUE;
  return Math.abs(Number(there) - Number(here));
}

/** Worse words first, the worst of them first of all; then the larger move; the earlier guess where they are equal. */
function isAhead(move: Move, best: Move | null): boolean {
  if (best === null) return true;
  if (move.turn !== best.turn) return move.turn > best.turn;
  if (move.turn === 2 && move.there.state !== best.there.state)
    return worse(move.there.state, best.there.state);
  return move.by > best.by;
}

function leansOnOf(verdict: VerdictName, move: Move | null): LeansOn | null {
  if (move === null) return null;
  const { note, end } = move.trial;
  const label = note.source.trim() === '' ? note.path : note.source;
  return { verdict, path: note.path, label, flips: move.turn > 0, end, stateThere: move.there.state };
}
