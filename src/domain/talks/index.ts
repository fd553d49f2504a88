// Talks with one account, reckoned: terms read and set, figures of an offer, counter-offers that keep the target, what one
// term is worth in another. Closed form: no weekly pass is run here.
// Worked figure: asked for margin 0.42 instead of 0.40, countersFor says slotting 97 instead of 250 keeps the first year.
export { type CountersArgs, countersFor } from './counters.ts';
export { figuresFor, USUAL_YEARLY_RATE, valueIn } from './figures.ts';
export { TERM_NOTES, traitsOf } from './kinds.ts';
export { within } from './search.ts';
export { stepOf } from './steps.ts';
export { blankTable, standingOf, type Targets, targetsOf, targetsUnder } from './targets.ts';
export { termsFrom, termsOf, valuesFrom, withTerms } from './terms.ts';
export type {
  Counter,
  Counters,
  DealFigures,
  Objective,
  Standing,
  TalksArgs,
  Term,
  Terms,
  TermUnit,
  TermValue,
  Worth,
  WorthCell,
} from './types.ts';
export { worthOf } from './worth.ts';
