// What the searches at the table share: a draft of terms put into the plan and scored on the full model, remembered by
// its values; the values a term may move through, in our favour, on its grid; and the limits of how far we would go.
// Worked figure: slotting 250 with a grid of 1 moves through 249, 248 ... 0; with a limit of 200 a draft at 250 starts at 200.
import type { PricePoints } from '../ladder/price-points.ts';
import type { Plan } from '../plan/index.ts';
import { type Score, scoreOf } from './figures.ts';
import { nextOnGrid, traitsOf } from './kinds.ts';
import { withTerms } from './terms.ts';
import type { Objective, Term, Terms } from './types.ts';

export interface Model {
  /** The score of the plan with these terms set; terms that no ladder fits rank behind everything. */
  score: (terms: Terms) => Score;
  /** What the account's tags may show; null: anything. */
  points: PricePoints | null;
}

const NEVER = Number.NEGATIVE_INFINITY;
const IMPOSSIBLE: Score = { value: null, rank: NEVER, money: NEVER };

/** The full model as a function of terms. */
export function modelOf(plan: Plan, accountId: string, objective: Objective): Model {
  const seen = new Map<string, Score>();
  return {
    points: plan.accounts.find(({ id }) => id === accountId)?.pricePoints ?? null,
    score: (terms) => {
      const key = JSON.stringify(terms);
      const known = seen.get(key);
      if (known) return known;
      const changed = withTerms(plan, accountId, terms);
      const score = changed.ok ? scoreOf(changed.value, accountId, objective) : changed;
      const found = score.ok ? score.value : IMPOSSIBLE;
      seen.set(key, found);
      return found;
    },
  };
}

/** What a rank must come to for the target to be kept. */
export function rankOf(target: number, objective: Objective): number {
  return objective.by === 'payback' ? -target : target;
}

/** One term and the values it may move through from where the draft has it: `at(0)` is the first move, `count` of them. */
export interface Track {
  term: Term;
  from: number;
  way: 1 | -1;
  count: number;
  at: (place: number) => number;
}

export interface TrackArgs {
  term: Term;
  /** Where the draft has it. */
  from: number;
  way: 1 | -1;
  /** As far as we would go in their favour; undefined: no limit. */
  limit: number | undefined;
  points: PricePoints | null;
}

/** The moves of a term one way; null where there is none. */
export function trackOf({ term, from, way, limit, points }: TrackArgs): Track | null {
  const traits = traitsOf(term.name);
  if (!traits) return null;
  const farthest = traits.farthest(from, way);
  const end = within(Math.min(term.most, Math.max(term.least, farthest)), term, limit);
  if (points && term.unit === 'price') return pointTrack({ term, from, way, points }, end);
  const first = nextOnGrid(term, from, way, null);
  if (first === null || way * (end - first) < -1e-9) return null;
  const count = Math.floor((way * (end - first)) / term.grid + 1e-6) + 1;
  return { term, from, way, count, at: (place) => Number((first + way * place * term.grid).toFixed(6)) };
}

function pointTrack({ term, from, way, points }: Omit<TrackArgs, 'limit'>, end: number): Track | null {
  const values: number[] = [];
  for (let next = nextOnGrid(term, from, way, points); next !== null && way * (end - next) >= 0; ) {
    values.push(next);
    next = nextOnGrid(term, next, way, points);
  }
  return values.length === 0
    ? null
    : { term, from, way, count: values.length, at: (place) => values[place] ?? from };
}

/** A value no further in their favour than the limit. */
export function within(value: number, { better }: Term, limit: number | undefined): number {
  if (limit === undefined) return value;
  return better === 'lower' ? Math.min(value, limit) : Math.max(value, limit);
}

/**
 * The smallest move along a track at which `holds` is true, with the one before it seen to be false; null when none is
 * found. Looks at moves 1, 2, 4, 8 ... and the last, then halves: exact where the model rises or falls throughout.
 */
export function smallestMove(track: Track, holds: (value: number) => boolean): number | null {
  let fails = -1;
  for (let place = 0; ; place = Math.min(place * 2 + 1, track.count - 1)) {
    if (holds(track.at(place))) return track.at(halved(track, fails, place, holds));
    if (place === track.count - 1) return null;
    fails = place;
  }
}

function halved(track: Track, from: number, to: number, holds: (value: number) => boolean): number {
  let [fails, found] = [from, to];
  while (found - fails > 1) {
    const middle = Math.floor((fails + found) / 2);
    if (holds(track.at(middle))) found = middle;
    else fails = middle;
  }
  return found;
}
