// Counter-offers: the ask stands, and something else moves so that the target is kept: one term alone, the smallest move
// on its grid found on the full model, and the least painful mix (mix.ts). Of several asks one may be what moves. A draft
// past a limit is pulled back to it first; that move is part of every counter-offer.
// Worked figure: asked for margin 0.42 instead of 0.40, slotting 97 instead of 250.
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { scoreOf } from './figures.ts';
import { nextOnGrid, traitsOf } from './kinds.ts';
import { mixFor } from './mix.ts';
import { type Model, modelOf, rankOf, smallestMove, type Track, trackOf, within } from './search.ts';
import { foundAt, termsOf, withTerms } from './terms.ts';
import type { Counter, Counters, Objective, Term, Terms } from './types.ts';

export interface CountersArgs {
  /** Before the asks. */
  plan: Plan;
  accountId: string;
  objective: Objective;
  target: number;
  asked: Terms;
  /** As far as we would go in their favour. */
  limits: Terms;
  /** What we would rather give, first to last. */
  order: readonly string[];
}

interface Talk extends CountersArgs {
  model: Model;
  needed: number;
  termWeeks: number;
  /** The asks, pulled back to the limits, and what of it was pulled back. */
  draft: Terms;
  pulled: Terms;
}

/** Mixes are added until there are so many counter-offers, as far as the model has any. */
const COUNTERS_LEAST = 3;

/** A counter-offer with what it is sorted by. */
interface Weighed {
  counter: Counter;
  rank: number;
  /** The part of its range that the term moves; of a mix nobody asks. */
  moved: number;
}

/**
 * Those counter-offers that keep the target. None when the asks keep it already, within the limits. Problems: asks the
 * plan can't take.
 */
export function countersFor(args: CountersArgs): Outcome<Counters> {
  const { plan, accountId, objective, target } = args;
  const found = foundAt(plan, accountId);
  if (!found.ok) return found;
  const asked = withTerms(plan, accountId, args.asked);
  if (!asked.ok) return asked;
  const score = scoreOf(asked.value, accountId, objective);
  if (!score.ok) return score;
  const terms = termsOf(asked.value, accountId);
  const pulled = pulledBack(terms, args);
  const talk: Talk = {
    ...args,
    model: modelOf(plan, accountId, objective),
    needed: rankOf(target, objective),
    termWeeks: found.value.account.deal.termWeeks,
    draft: { ...args.asked, ...pulled },
    pulled,
  };
  const withoutEffect = terms.filter((term) => !hasEffect(talk, term)).map(({ name }) => name);
  const start = talk.model.score(talk.draft).rank;
  if (start >= talk.needed) {
    const counters = Object.keys(pulled).length > 0 ? [weighed(talk, 'alone', talk.draft, 0).counter] : [];
    return fine({ counters, closest: null, withoutEffect });
  }
  const isOnlyAsk = (name: string) => name in args.asked && Object.keys(args.asked).length === 1;
  const moving = terms.filter(({ name }) => !isOnlyAsk(name) && !withoutEffect.includes(name));
  const tracks = moving.flatMap((term) => tracksOf(talk, term));
  const alone = tracks.map((track) => aloneOn(talk, track)).sort((x, y) => x.moved - y.moved);
  const holding = alone.filter(({ counter }) => counter.holds);
  const mixes = mixesOf(talk, tracks, COUNTERS_LEAST - holding.length);
  const counters = [...holding, ...mixes].map(({ counter }) => counter).filter(({ holds }) => holds);
  return fine({
    counters,
    closest: counters.length > 0 ? null : closestOf([...alone, ...mixes]),
    withoutEffect,
  });
}

/** The least painful mix; where counter-offers are few also the one without what moves most in it, and so on. */
function mixesOf(talk: Talk, tracks: readonly Track[], wanted: number): Weighed[] {
  const found: Weighed[] = [];
  let left = tracks;
  do {
    const mixed = mixFor({ ...talk, tracks: left });
    const weigh = mixed && weighed(talk, 'mix', mixed.terms, 1);
    if (!weigh || (found.length > 0 && !weigh.counter.holds)) break;
    found.push(weigh);
    const most = farthestMoved(left, weigh.counter.terms);
    left = left.filter(({ term }) => term.name !== most);
  } while (found.length < wanted);
  return found;
}

function farthestMoved(tracks: readonly Track[], terms: Terms): string | null {
  const share = ({ term, from, count, at }: Track) =>
    Math.abs((terms[term.name] ?? from) - from) / Math.abs(at(count - 1) - from);
  const [first, ...others] = tracks;
  if (!first) return null;
  return others.reduce((most, each) => (share(each) > share(most) ? each : most), first).term.name;
}

/** Asked or standing terms past a limit, at the limit. */
function pulledBack(terms: readonly Term[], { limits }: CountersArgs): Terms {
  const pulled = terms.flatMap((term): [string, number][] => {
    const held = within(term.value, term, limits[term.name]);
    return Math.abs(held - term.value) < 1e-9 ? [] : [[term.name, held]];
  });
  return Object.fromEntries(pulled);
}

function valueIn(talk: Talk, term: Term): number {
  return talk.draft[term.name] ?? term.value;
}

/** Whether a step of the term either way changes the objective. */
function hasEffect({ model, draft }: Talk, term: Term): boolean {
  const start = model.score(draft).rank;
  const from = draft[term.name] ?? term.value;
  return ([1, -1] as const).some((way) => {
    const step = Math.max(term.grid, traitsOf(term.name)?.worthStep ?? 0);
    const plain = Math.min(term.most, Math.max(term.least, from + way * step));
    const to = (term.unit === 'price' && nextOnGrid(term, from, way, model.points)) || plain;
    const { rank } = model.score({ ...draft, [term.name]: Number(to.toFixed(6)) });
    return Number.isFinite(rank) && rank !== start;
  });
}

/** The ways a term may move in our favour, as far as the limits; the model decides where more or less may be better. */
function tracksOf(talk: Talk, term: Term): Track[] {
  const { points } = talk.model;
  const from = valueIn(talk, term);
  const usual = term.better === 'lower' ? (-1 as const) : (1 as const);
  const ways = traitsOf(term.name)?.bothWays ? ([usual, usual === 1 ? -1 : 1] as const) : [usual];
  const start = talk.model.score(talk.draft).rank;
  for (const way of ways) {
    const track = trackOf({ term, from, way, limit: talk.limits[term.name], points });
    if (!track) continue;
    const ends = [track.at(0), track.at(track.count - 1)];
    if (ends.some((value) => talk.model.score({ ...talk.draft, [term.name]: value }).rank > start))
      return [track];
  }
  return [];
}

/** The smallest move of one term that keeps the target, or as far as it goes when none does. */
function aloneOn(talk: Talk, track: Track): Weighed {
  const { name } = track.term;
  const holds = (value: number) => talk.model.score({ ...talk.draft, [name]: value }).rank >= talk.needed;
  const value = smallestMove(track, holds) ?? track.at(track.count - 1);
  const range = Math.abs(track.at(track.count - 1) - track.from);
  return weighed(talk, 'alone', { ...talk.draft, [name]: value }, Math.abs(value - track.from) / range);
}

/** A counter-offer from the whole of its terms: what differs from the asks is named. */
function weighed(talk: Talk, kind: Counter['kind'], whole: Terms, moved: number): Weighed {
  const { value, rank } = talk.model.score(whole);
  const terms = Object.fromEntries(Object.entries(whole).filter(([name, each]) => talk.asked[name] !== each));
  const way = talk.objective.by === 'payback' ? -1 : 1;
  // not reached: short by the rest of the term at least
  const miss = value === null ? Math.min(0, talk.target - talk.termWeeks) : way * (value - talk.target);
  const holds = rank >= talk.needed;
  const counter = {
    kind,
    terms,
    target: talk.target,
    reached: value,
    miss: Number(miss.toFixed(4)) + 0,
    holds,
  };
  return { counter, rank, moved };
}

function closestOf(all: readonly Weighed[]): Counter | null {
  const [first, ...others] = all.filter(({ rank }) => Number.isFinite(rank));
  if (!first) return null;
  return others.reduce((best, each) => (each.rank > best.rank ? each : best), first).counter;
}
