// What one term is worth in another at the present deal, from the full model: one step of a term against us, and how much of
// the other makes up for it. Never scaled where the model bends: the other term is solved for, and the values of it between
// which the proportion holds to a tenth are told. A term that has no room in our favour is taken the other way about: how
// much of it one step in our favour pays for. Days, weeks, cases and doors are read between whole ones on a straight line.
// Worked figure: 18,720 units at a tag of 4.99: one margin point is 934.13 a year; at 60 doors that is 15.57 of slotting a door.
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { scoreOf } from './figures.ts';
import { nextPriceOf, traitsOf } from './kinds.ts';
import { type Model, modelOf } from './search.ts';
import { foundAt, termsOf } from './terms.ts';
import type { Objective, Term, Terms, Worth, WorthCell } from './types.ts';

/** How far off, as a part of one step's effect, an amount may be; prices on the 0.0001 grid are coarser than that. */
const NEAR = 1e-6;
/** How far a proportion may bend and still be said to hold. */
const HOLDS_TO = 0.1;
const TURNS = 12;

interface Line {
  term: Term;
  step: number;
  /** Way of the value that is against us: 1, more of it costs us. */
  against: 1 | -1;
  /** Change of the objective by one step against us, above zero. */
  effect: number;
  /** True where the least of it already changes much (paid early for next to nothing): no amount of it is a proportion. */
  jumps: boolean;
}

interface Question {
  model: Model;
  base: number;
  limits: ReadonlyMap<string, Range>;
}

interface Range {
  from: number | null;
  to: number | null;
}

/** Worth of the named terms in each other; those without an effect are left out. Problems as for the deal's ladders. */
export function worthOf(args: {
  /** With the draft in. */
  plan: Plan;
  accountId: string;
  objective: Objective;
  names: readonly string[];
}): Outcome<Worth> {
  const { plan, accountId, objective } = args;
  const found = foundAt(plan, accountId);
  if (!found.ok) return found;
  const score = scoreOf(plan, accountId, objective);
  if (!score.ok) return score;
  const model = modelOf(plan, accountId, objective);
  // a payback that is not reached is worth nothing in anything
  const base = score.value.value === null ? Number.NEGATIVE_INFINITY : score.value.rank;
  const terms = termsOf(plan, accountId);
  const lines = args.names.flatMap((name) => {
    const term = terms.find((each) => each.name === name);
    return term ? lineOf(model, term, base) : [];
  });
  const limits = new Map(lines.map((line) => [line.term.name, rangeOf(model, line, base)]));
  const question = { model, base, limits };
  const cells = lines.flatMap((line) =>
    lines.filter((other) => other !== line).map((other) => cellOf(question, line, other)),
  );
  return fine({
    terms: lines.map(({ term }) => term.name),
    steps: Object.fromEntries(lines.map(({ term, step }) => [term.name, step])),
    effects: Object.fromEntries(lines.map(({ term, effect }) => [term.name, Number(effect.toFixed(4))])),
    cells,
  });
}

/** A step of a term and what it costs; none where it changes nothing, or can't be taken. */
function lineOf(model: Model, term: Term, base: number): Line[] {
  const step = traitsOf(term.name)?.worthStep ?? term.grid;
  const change = (by: number) => at(model, term, term.value + by) - base;
  const usual = term.better === 'lower' ? 1 : -1;
  const there = change(usual * step);
  // at an end of the term, the step back says what a step would cost
  const moved = Number.isFinite(there) ? there : -change(-usual * step);
  if (!Number.isFinite(moved) || moved === 0) return [];
  const against = moved < 0 ? usual : usual === 1 ? -1 : 1;
  const effect = Math.abs(moved);
  const least = term.unit === 'share' ? [change(LEAST), change(-LEAST)].filter(Number.isFinite) : [];
  return [{ term, step, against, effect, jumps: least.some((each) => Math.abs(each) > effect / 10) }];
}

/** The least change of a share that a plan can hold. */
const LEAST = 1e-6;

/** The objective with one term at a value, others as `also` says; minus infinity past the term's ends. */
function at(model: Model, term: Term, value: number, also: Terms = {}): number {
  const kept = Number(value.toFixed(6));
  if (kept < term.least || kept > term.most) return Number.NEGATIVE_INFINITY;
  const rank = (each: number) => {
    const score = model.score({ ...also, [term.name]: each });
    return score.value === null ? Number.NEGATIVE_INFINITY : score.rank;
  };
  const [below, above] = neighbours(model, term, kept);
  if (below === null || above === null || above > term.most) return Number.NEGATIVE_INFINITY;
  if (below === above) return rank(below);
  return rank(below) + ((kept - below) / (above - below)) * (rank(above) - rank(below));
}

/** The values a term can have next to one: itself, or the whole numbers, or price points, on its sides. */
function neighbours({ points }: Model, term: Term, value: number): [number | null, number | null] {
  if (term.unit === 'price' && points) {
    if (value === term.value) return [value, value];
    const [below, above] = [nextPriceOf(value + 1e-4, points, -1), nextPriceOf(value - 1e-4, points, 1)];
    return [below, above];
  }
  return WHOLE.has(term.unit) ? [Math.floor(value), Math.ceil(value)] : [value, value];
}

const WHOLE = new Set<Term['unit']>(['days', 'weeks', 'cases', 'doors']);

/** One step of a term against us, made up for by the other; or in our favour, paid for by the other. */
function cellOf({ model, base, limits }: Question, line: Line, other: Line): WorthCell {
  const range = limits.get(other.term.name) ?? { from: null, to: null };
  if (other.jumps) return cell(line, other, null, range);
  for (const way of [1, -1] as const) {
    const stepped = line.term.value + way * line.against * line.step;
    const also = { [line.term.name]: Number(stepped.toFixed(6)) };
    const start = at(model, line.term, stepped);
    if (!Number.isFinite(start)) continue;
    const toward = way === 1 ? (-other.against as 1 | -1) : other.against;
    const value = (amount: number) => at(model, other.term, other.term.value + toward * amount, also) - base;
    const amount = amountAt(value, { start: start - base, guess: (line.effect / other.effect) * other.step });
    if (amount !== null) return cell(line, other, amount < finest(other.term) ? null : amount, range);
  }
  return cell(line, other, null, range);
}

/** Ten of the least steps a plan can hold: below that an amount is mostly rounding. */
function finest({ unit }: Term): number {
  return unit === 'share' ? 10 * LEAST : unit === 'sum' || unit === 'price' ? 0.001 : 0;
}

function cell(line: Line, other: Line, amount: number | null, { from, to }: Range): WorthCell {
  const kept = amount === null ? null : Number(amount.toPrecision(10));
  return { term: line.term.name, other: other.term.name, amount: kept, holdsFrom: from, holdsTo: to };
}

/** The amount at which `value` comes to zero from `start`: bracketed outwards, then by false position; null: it never does. */
function amountAt(value: (amount: number) => number, from: { start: number; guess: number }): number | null {
  const size = Math.abs(from.start);
  let low = { amount: 0, value: from.start };
  let high = { amount: from.guess, value: value(from.guess) };
  for (let turn = 0; turn < TURNS && Math.sign(high.value) === Math.sign(low.value); turn++) {
    if (Math.abs(high.value) <= NEAR * size) return high.amount;
    if (!Number.isFinite(high.value)) return null;
    const next = high.amount * 1.5;
    [low, high] = [high, { amount: next, value: value(next) }];
  }
  if (Math.abs(high.value) <= NEAR * size) return high.amount;
  if (Math.sign(high.value) === Math.sign(low.value)) return null;
  return between(value, low, high, NEAR * size);
}

interface Point {
  amount: number;
  value: number;
}

/** False position with halving of the end that stays (the Illinois rule); where the far end is past the term, by halves. */
function between(value: (amount: number) => number, from: Point, to: Point, near: number): number | null {
  let [low, high] = [from, to];
  let side = 0;
  for (let turn = 0; turn < 40 && Math.abs(high.amount - low.amount) > 1e-9 * Math.abs(high.amount); turn++) {
    const isOpen = !Number.isFinite(high.value);
    const share = isOpen ? 0.5 : low.value / (low.value - high.value);
    const amount = low.amount + share * (high.amount - low.amount);
    const found = { amount, value: value(amount) };
    if (Math.abs(found.value) <= near) return amount;
    if (Math.sign(found.value) === Math.sign(low.value)) {
      low = found;
      if (side === 1) high = { ...high, value: high.value / 2 };
      side = 1;
    } else {
      high = found;
      if (side === -1) low = { ...low, value: low.value / 2 };
      side = -1;
    }
  }
  return Number.isFinite(high.value) ? high.amount : null;
}

/** Between which values the objective stays within a tenth of the straight line through one step. */
function rangeOf(model: Model, line: Line, base: number): Range {
  const { term, step, against, effect } = line;
  const end = (way: 1 | -1): number | null => {
    const limit = way > 0 ? farthestUp(term) : term.least;
    const holds = (distance: number) => {
      const straight = (-way * against * effect * distance) / step;
      const moved = at(model, term, term.value + way * distance) - base;
      return Math.abs(moved - straight) <= HOLDS_TO * Math.abs(straight) + NEAR * effect;
    };
    const room = Math.abs(limit - term.value);
    if (room <= step || holds(room))
      return holdsAll(holds, room, step) ? null : bent(holds, term, way, step, room);
    return bent(holds, term, way, step, room);
  };
  return { from: end(-1), to: end(1) };
}

/** Looked at where it could bend on its way to an end that fits. */
function holdsAll(holds: (distance: number) => boolean, room: number, step: number): boolean {
  return [1 / 16, 1 / 4, 1 / 2].every((share) => room * share < step || holds(room * share));
}

function bent(
  holds: (distance: number) => boolean,
  term: Term,
  way: 1 | -1,
  step: number,
  room: number,
): number {
  let [good, bad] = [0, room];
  for (let distance = Math.min(step, room); distance < room; distance *= 2) {
    if (!holds(distance)) {
      bad = distance;
      break;
    }
    good = distance;
  }
  for (let turn = 0; turn < TURNS; turn++) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return Number((term.value + way * good).toFixed(4));
}

/** Sums have no end anybody would name: as far as a talk would go. */
function farthestUp({ value, most, unit }: Term): number {
  if (unit !== 'sum' && unit !== 'price' && unit !== 'doors') return most;
  return Math.min(most, Math.max(value * 4, value + 100));
}
