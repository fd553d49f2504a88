// The part of a meeting that doesn't fit into a frame: the cash a draft asks for (a run of the weekly pass) and the
// counter-offers. Two workers, so that cash never waits behind counters; each answers one question at a time, the newest
// next, and an answer says which draft it is for.
// Worked example: ten steps in a second ask some five times for counters; the last answer is the tenth step's.
import { type ReadonlySignal, signal } from '@preact/signals';
import { browserWorker, type Computer, createComputer } from '../compute/computer.ts';
import type { CashNeed } from '../compute/protocol.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { CountersArgs } from '../domain/talks/counters.ts';
import type { Counters } from '../domain/talks/types.ts';
import { makeSaver } from '../storage/index.ts';

export type { CashNeed } from '../compute/protocol.ts';

/** An answer and the draft it belongs to; `trouble` is a sentence where there is none. */
export interface Told<T> {
  key: string;
  value: T | null;
  trouble: string;
}

export interface Question {
  /** Names plan and draft: the same key, the same answer. */
  key: string;
  /** With the draft in. */
  plan: Plan;
  /** Null where no counter-offer is called for. */
  counters: CountersArgs | null;
}

export interface TalksWork {
  cash: ReadonlySignal<Told<CashNeed> | null>;
  counters: ReadonlySignal<Told<Counters> | null>;
  ask: (question: Question) => void;
  /** Anything else of the talks that takes long, behind the counters. */
  computer: Computer;
  stop: () => void;
}

export function makeTalksWork(newComputer: () => Computer = () => createComputer(browserWorker)): TalksWork {
  const [forCash, forCounters] = [newComputer(), newComputer()];
  const cash = signal<Told<CashNeed> | null>(null);
  const counters = signal<Told<Counters> | null>(null);
  const cashNext = makeSaver<Question>(async ({ key, plan }) => {
    const answer = await forCash.run({ kind: 'cashNeed', plan }).answer;
    if (answer !== null) cash.value = told(key, answer);
  });
  const countersNext = makeSaver<Question & { counters: CountersArgs }>(async ({ key, counters: args }) => {
    const answer = await forCounters.run({ kind: 'counters', args }).answer;
    if (answer !== null) counters.value = told(key, answer);
  });
  return {
    cash,
    counters,
    computer: forCounters,
    ask: (question) => {
      cashNext.offer(question);
      if (question.counters !== null) countersNext.offer({ ...question, counters: question.counters });
    },
    stop: () => {
      forCash.stop();
      forCounters.stop();
    },
  };
}

function told<T>(key: string, answer: { ok: true; value: T } | { ok: false; trouble: string }): Told<T> {
  return answer.ok
    ? { key, value: answer.value, trouble: '' }
    : { key, value: null, trouble: answer.trouble };
}
