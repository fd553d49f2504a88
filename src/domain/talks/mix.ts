// The least painful mix of moves that keeps the target. Each term t may move by a share u of its range R in our favour;
// what is minimised is the sum over t of weight x u^2, with the target kept and 0 <= u <= 1. Taken as straight lines, with
// e the gain over the whole range, the answer is u = min(1, λ e / weight) at the one λ that closes the gap, found exactly
// by filling up the terms in the order in which they reach their range. λ is then set on the full model, each move rounded
// to its grid in our favour, and single grid steps are given back while the target still holds, the weightiest first.
// At most four terms move, those that bring most for their pain (e^2 / weight): a counter-offer is said in one breath. When
// four can't close the gap, all may. Worked figure: two terms alike, each worth 600 over its range, close 300 at u = 1/4 each.
import type { Model, Track } from './search.ts';
import type { Terms } from './types.ts';

const TERMS_MOST = 4;
const TURNS = 40;

export interface MixArgs {
  model: Model;
  /** The draft, already within limits. */
  draft: Terms;
  tracks: readonly Track[];
  needed: number;
  order: readonly string[];
}

export interface Mixed {
  terms: Terms;
  rank: number;
}

interface Mover {
  track: Track;
  weight: number;
  gain: number;
}

/** The mix, or the farthest all terms can go when even that does not keep the target; null when nothing can move. */
export function mixFor(args: MixArgs): Mixed | null {
  const start = args.model.score(args.draft);
  const movers = args.tracks.flatMap((track) => moverOf(args, track, start.money));
  if (movers.length === 0) return null;
  const few = [...movers]
    .sort((x, y) => y.gain ** 2 / y.weight - x.gain ** 2 / x.weight)
    .slice(0, TERMS_MOST);
  const some = closed(args, few, start.rank);
  return some.rank >= args.needed || few.length === movers.length ? some : closed(args, movers, start.rank);
}

/** What a term brings over its whole range, and its weight in pain; none where the model says it brings nothing. */
function moverOf({ model, draft, order }: MixArgs, track: Track, start: number): Mover[] {
  const end = model.score({ ...draft, [track.term.name]: track.at(track.count - 1) }).money;
  const gain = end - start;
  if (!Number.isFinite(gain) || gain <= 0) return [];
  return [{ track, gain, weight: weightOf(track.term.name, order) }];
}

/** From 4 for what we would rather give down to 1/4 for what we would rather not; 1 for the rest. */
function weightOf(name: string, order: readonly string[]): number {
  const place = order.indexOf(name);
  if (place < 0) return 1;
  return 4 ** (order.length === 1 ? 1 : 1 - (2 * place) / (order.length - 1));
}

function closed(args: MixArgs, movers: readonly Mover[], start: number): Mixed {
  const { model, draft, needed } = args;
  const at = (multiplier: number): Mixed => {
    const terms = { ...draft, ...movedBy(movers, multiplier) };
    return { terms, rank: model.score(terms).rank };
  };
  const full = Math.max(...movers.map(({ weight, gain }) => weight / gain));
  let holds = at(full);
  if (holds.rank < needed) return holds;
  let [low, high] = [0, full];
  const straight = filledUp(movers, needed - start);
  for (let turn = 0; turn < TURNS && high - low > 1e-4 * high; turn++) {
    const middle = turn === 0 && straight > low && straight < high ? straight : between(low, high);
    const tried = at(middle);
    if (tried.rank >= needed) [holds, high] = [tried, middle];
    else low = middle;
  }
  return givenBack(args, movers, holds);
}

/** λ under straight lines: the sum of gain x min(1, λ gain / weight) is the gap. */
function filledUp(movers: readonly Mover[], gap: number): number {
  const byEnd = [...movers].sort((x, y) => x.weight / x.gain - y.weight / y.gain);
  let full = 0;
  let slope = byEnd.reduce((sum, { gain, weight }) => sum + gain ** 2 / weight, 0);
  for (const { gain, weight } of byEnd) {
    const end = weight / gain;
    if (full + slope * end >= gap) return (gap - full) / slope;
    full += gain;
    slope -= gain ** 2 / weight;
  }
  return byEnd.at(-1) ? Number.POSITIVE_INFINITY : 0;
}

/** Moves at a multiplier, each rounded to its grid in our favour; what rounds to no move isn't named. */
function movedBy(movers: readonly Mover[], multiplier: number): Terms {
  const moved = movers.flatMap(({ track, weight, gain }): [string, number][] => {
    const share = Math.min(1, (multiplier * gain) / weight);
    const steps = Math.ceil(share * track.count - 1e-9);
    return steps <= 0 ? [] : [[track.term.name, track.at(steps - 1)]];
  });
  return Object.fromEntries(moved);
}

/** Ends of very different size are halved by their size first. */
function between(low: number, high: number): number {
  if (low === 0) return high / 8;
  return high > 2 * low ? Math.sqrt(low * high) : (low + high) / 2;
}

/** Grid steps given back while the target holds, where it hurts most first, until none can be. */
function givenBack(args: MixArgs, movers: readonly Mover[], mixed: Mixed): Mixed {
  const byWeight = [...movers].sort((x, y) => y.weight - x.weight);
  let held = mixed;
  // a step back may help another (fewer doors pay back sooner), so all are looked at again
  for (let turn = 0; turn < TURNS; turn++) {
    const before = held;
    for (const { track } of byWeight) held = givenBackOn(args, track, held);
    if (held === before) break;
  }
  return held;
}

/** As many steps of one term as there are: one step, two, four ..., then halves. */
function givenBackOn({ model, draft, needed }: MixArgs, track: Track, mixed: Mixed): Mixed {
  let held = mixed;
  let holds = placeIn(track, held.terms);
  let fails: number | null = null;
  for (let back = 1; holds >= 0 && (fails === null || fails < holds - 1); back *= 2) {
    const place: number = fails === null ? Math.max(-1, holds - back) : Math.floor((fails + holds) / 2);
    const terms = placed(track, place, held.terms, draft);
    const { rank } = model.score(terms);
    if (rank >= needed) [held, holds] = [{ terms, rank }, place];
    else fails = place;
  }
  return held;
}

/** The terms with one of them at a place of its track; -1: where the draft has it. */
function placed(track: Track, place: number, terms: Terms, draft: Terms): Terms {
  const { name } = track.term;
  if (place >= 0) return { ...terms, [name]: track.at(place) };
  const { [name]: _moved, ...others } = terms;
  const before = draft[name];
  return before === undefined ? others : { ...others, [name]: before };
}

/** Where a term stands on its track; -1: it hasn't moved. */
function placeIn(track: Track, terms: Terms): number {
  const value = terms[track.term.name];
  if (value === undefined) return -1;
  let [low, high] = [0, track.count - 1];
  while (low <= high) {
    const middle = Math.floor((low + high) / 2);
    const apart = track.way * (track.at(middle) - value);
    if (Math.abs(apart) < 1e-9) return middle;
    if (apart < 0) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}
