// What one account's talks are about: what we want out of them, how far we would go, what we would rather give, what is
// on the table now, and every offer said so far. It changes no result of the plan: an offer becomes the plan only when a
// person takes it over. Worked figure: asked for 42 points and 250 a store, the draft is margin 0.42, slotting 250.
import * as z from 'zod/mini';
import * as f from './fields.ts';

/** The name of a term, as `reckon --help` lists them; a shelf price names its item: "shelf:honey". */
const termName = () => {
  const expected = 'the name of a term, like "slotting" or "shelf:honey"';
  return z
    .string({ error: expected })
    .check(z.regex(/^[A-Za-z]{1,30}(:[A-Za-z0-9-]{1,60})?$/, { error: expected }));
};

/** A term and its value, in the unit the plan keeps it in: shares, amounts, days, weeks, cases, doors. */
const termValue = z.strictObject({ term: termName(), value: f.signedAmount() });

const said = () => z.enum(['ask', 'ours', 'agreed'], { error: '"ask", "ours" or "agreed"' });

/** One offer said by a side: the whole of the terms that differ from the plan, stamped. */
export const offerSaid = z.strictObject({
  id: f.id(),
  said: said(),
  /** Seconds since 1970-01-01 UTC. */
  atSeconds: f.whole({ least: 0, most: 9_999_999_999, unit: 'seconds since 1970' }),
  terms: z.array(termValue),
});

export const objective = z.discriminatedUnion(
  'by',
  [
    /** First-year contribution less the money put down in that year. */
    z.strictObject({ by: z.literal('firstYear') }),
    z.strictObject({ by: z.literal('presentValue'), yearlyRate: f.factor() }),
    z.strictObject({ by: z.literal('payback') }),
  ],
  { error: 'a target stated by "firstYear", "presentValue" or "payback"' },
);

export const table = z.strictObject({
  objective,
  /** In money, or in weeks for payback; null: what the plan comes to before anything is asked. */
  targetAmount: z.nullable(f.signedAmount()),
  /** The worst we would still say yes to; null: the deal just pays over its term. */
  walkAwayAmount: z.nullable(f.signedAmount()),
  /** As far as we would go, by term. */
  limits: z.array(termValue),
  /** What we would rather give, first to last. */
  order: z.array(termName()),
  /** The week after opening in which the chain looks at the shelf for the first time. */
  reviewWeeks: f.whole({ least: 1, most: 104, unit: 'weeks after opening' }),
  /** Terms in play, in the order they stand on the screen. */
  inPlay: z.array(termName()),
  /** What is on the table now, where it differs from the plan. */
  draft: z.array(termValue),
  log: z.array(offerSaid).check(z.maxLength(500, { error: 'at most 500 offers' })),
});
