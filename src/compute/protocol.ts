// What travels between the page and the worker: a job with its plan, and its answer. Plain data both ways, so that
// structured clone carries it; this file alone is imported on both sides.
import type { AnswerSolves, Lifts } from '../domain/answers/types.ts';
import type { LenderTrials } from '../domain/lender/types.ts';
import type { Basis } from '../domain/offers/basis.ts';
import type { Turned } from '../domain/offers/turning.ts';
import type { DrawnOffers } from '../domain/offers/types.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { ClaimWork } from '../domain/promise/claim-work.ts';
import type { Chances, SlipCosts } from '../domain/readiness/index.ts';
import type { LeansOn, VerdictName } from '../domain/results.ts';
import type { LeastOpeningCash, MostDoors } from '../domain/rollout/solve.ts';
import type { BesideOffer } from '../domain/talks/beside-types.ts';
import type { CountersArgs } from '../domain/talks/counters.ts';
import type { Counters, TalksArgs, Worth } from '../domain/talks/types.ts';

/** Work that takes many runs of the model, or one run of the weekly pass beside a screen that must not wait for it. */
export type Job =
  | { kind: 'cashNeed'; plan: Plan }
  | { kind: 'counters'; args: CountersArgs }
  | { kind: 'worth'; args: WorthArgs }
  | { kind: 'beside'; plan: Plan; accountId: string; reviewWeeks: number }
  | { kind: 'lenderTrials'; plan: Plan; week: number }
  | { kind: 'claimWork'; plan: Plan }
  | { kind: 'leansOn'; plan: Plan }
  /** As of a day (YYYY-MM-DD); `extraDays`: working days by which gates slip, by id. */
  | { kind: 'slipCosts'; plan: Plan; today: string; extraDays: Readonly<Record<string, number>> }
  | { kind: 'readyChances'; plan: Plan; today: string }
  | { kind: 'lifts'; plan: Plan }
  | { kind: 'answerSolves'; plan: Plan }
  | { kind: 'offerGrowth'; plan: Plan; ids: readonly [string, string] }
  /** Some of the plan's draws from place `from` on, 0 to OFFER_DRAWS - 1; ask again for the rest, so that nothing waits long. */
  | { kind: 'offerDraws'; plan: Plan; from: number }
  /** What offers are computed on in these draws. */
  | { kind: 'offerBases'; plan: Plan; draws: readonly number[] }
  | { kind: 'mostDoors'; plan: Plan; accountId: string }
  | { kind: 'leastOpeningCash'; plan: Plan };

/** What a deal on the table asks of the plan's cash, in minor units; the week is null where nothing is needed. */
export interface CashNeed {
  amount: number;
  week: number | null;
}

export type WorthArgs = TalksArgs & { names: string[] };

export interface Answers {
  cashNeed: CashNeed;
  counters: Counters;
  worth: Worth;
  beside: readonly BesideOffer[];
  lifts: Lifts;
  answerSolves: AnswerSolves;
  /** Rival offers where sales grow otherwise than planned. */
  offerGrowth: Turned;
  offerDraws: DrawnOffers[];
  offerBases: (Basis | null)[];
  lenderTrials: LenderTrials;
  slipCosts: SlipCosts;
  readyChances: Chances;
  claimWork: ClaimWork;
  leansOn: Record<VerdictName, LeansOn | null>;
  mostDoors: MostDoors | null;
  leastOpeningCash: LeastOpeningCash;
}

export interface Request {
  id: number;
  job: Job;
}

/** `trouble` is a sentence: the plan can't be computed, or a bug; the page shows it where the answer would stand. */
export type Response =
  | { id: number; ok: true; answer: Answers[keyof Answers] }
  | { id: number; ok: false; trouble: string };
