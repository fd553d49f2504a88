// From one offer to another: what moved, and what each move is worth to us. Moves are put in one after the other, in the
// order of the terms, so that they add up to the whole. Worked example: from margin 40 % to 42 % and slotting 250 to 97:
// −6,120 and +6,300, together +180 a year.
import type { Plan } from '../../domain/plan/index.ts';
import { figuresFor, termsOf, withTerms } from '../../domain/talks/index.ts';
import type { Objective, Term, Terms } from '../../domain/talks/types.ts';

export interface Move {
  term: Term;
  from: number;
  to: number;
  /** Money a year, or of present value; null where it can't be worked out. */
  worth: number | null;
}

export interface Moves {
  moves: readonly Move[];
  /** Of all moves together; null where it can't be worked out. */
  total: number | null;
}

export interface MovesArgs {
  /** Before any offer. */
  plan: Plan;
  accountId: string;
  objective: Objective;
  from: Terms;
  to: Terms;
}

export function movesBetween({ plan, accountId, objective, from, to }: MovesArgs): Moves {
  const terms = termsOf(plan, accountId);
  const moved = terms.filter((term) => valueIn(term, from) !== valueIn(term, to));
  const start = moneyOf({ plan, accountId, objective, terms: from });
  let before = start;
  let at: Terms = from;
  const moves = moved.map((term): Move => {
    at = { ...at, [term.name]: valueIn(term, to) };
    const now = moneyOf({ plan, accountId, objective, terms: at });
    const worth = now === null || before === null ? null : now - before;
    before = now;
    return { term, from: valueIn(term, from), to: valueIn(term, to), worth };
  });
  return { moves, total: before === null || start === null ? null : before - start };
}

/** What an offer says of a term: what it doesn't name is as the plan has it. */
export function valueIn(term: Term, offer: Terms): number {
  return offer[term.name] ?? term.value;
}

/** The money a deal comes to: a year's, or the present value where that is the aim. Weeks are no money. */
export function moneyOf(args: {
  plan: Plan;
  accountId: string;
  objective: Objective;
  terms: Terms;
}): number | null {
  const { plan, accountId, objective, terms } = args;
  const offered = withTerms(plan, accountId, terms);
  if (!offered.ok) return null;
  const figures = figuresFor({ plan: offered.value, accountId, objective, reviewWeeks: 1 });
  if (!figures.ok) return null;
  return objective.by === 'presentValue' ? figures.value.presentValue : figures.value.firstYear;
}
