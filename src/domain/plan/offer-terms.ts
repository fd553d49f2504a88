// Rival offers as a plan keeps them: each with a name, whom it is from, parts of any listed kind, and what was said so far;
// beside them who owns the company, later rounds, and what it might be sold for. They change no result of the plan: money
// is counted on only where a person takes it over into `business.funding`.
// Worked example: 100,000 for 20 %, half of it once 60 doors are open, is an offer of one part with two tranches.
import * as z from 'zod/mini';
import type { Means } from '../offers/contract.ts';
import { OFFER_KINDS, type StatedPart } from '../offers/list.ts';
import * as f from './fields.ts';

/** When money comes: in a week, once doors are open, or once an order is in hand. */
const when = () =>
  z.discriminatedUnion(
    'by',
    [
      z.strictObject({ by: z.literal('week'), week: f.weekIndex() }),
      z.strictObject({
        by: z.literal('doors'),
        doors: f.whole({ least: 1, most: 1_000_000, unit: 'doors' }),
        /** Null: the doors of all accounts together. */
        accountId: z.nullable(f.id()),
      }),
      z.strictObject({ by: z.literal('order'), accountId: z.nullable(f.id()) }),
    ],
    { error: 'a condition stated by "week", "doors" or "order"' },
  );

const tranches = () =>
  z
    .array(z.strictObject({ id: f.id(), amount: f.sumAmount(), when: when() }))
    .check(z.maxLength(12, { error: 'at most 12 tranches' }));

const means: Means = {
  z: {
    strictObject: z.strictObject,
    literal: z.literal,
    enum: z.enum,
    boolean: z.boolean,
    nullable: z.nullable,
  },
  f,
  tranches,
  when,
};

const stated = OFFER_KINDS.map(({ terms }) => terms(means)) as unknown as [StatedPart, ...StatedPart[]];

const part = z.discriminatedUnion('kind', stated, {
  error: `a part of kind ${OFFER_KINDS.map(({ kind }) => `"${kind}"`).join(', ')}`,
});

const parts = () => z.array(part).check(z.maxLength(6, { error: 'at most 6 parts' }));

export const rivalOffer = z.strictObject({
  id: f.id(),
  name: f.name(),
  /** Who makes it; may be empty. */
  from: f.note(),
  parts: parts(),
  /** What was said, stamped; the offer itself is what stands now. */
  log: z
    .array(
      z.strictObject({
        id: f.id(),
        said: z.enum(['theirs', 'ours', 'agreed'], { error: '"theirs", "ours" or "agreed"' }),
        /** Seconds since 1970-01-01 UTC. */
        atSeconds: f.whole({ least: 0, most: 9_999_999_999, unit: 'seconds since 1970' }),
        parts: parts(),
      }),
    )
    .check(z.maxLength(200, { error: 'at most 200 entries' })),
});

/** Who owns the company, and what an owner's part might be worth at the end of the horizon. */
export const ownership = z.strictObject({
  /** The founder's part before any of the offers; the rest, but for the pool, is others'. */
  founderRate: f.share(),
  poolRate: f.shareBelowOne(),
  /** Rounds expected later, the same under every offer; their money counts from their week. */
  rounds: z
    .array(
      z.strictObject({
        id: f.id(),
        label: f.name(),
        week: f.weekIndex(),
        amount: f.sumAmount(),
        preMoneyAmount: f.sumAmount(),
        poolRate: f.shareBelowOne(),
      }),
    )
    .check(z.maxLength(8, { error: 'at most 8 rounds' })),
  exit: z.discriminatedUnion(
    'by',
    [
      /** Net sales of the last 52 weeks, or the profit before financing of them, times. */
      z.strictObject({ by: z.literal('revenue'), multiple: f.factor() }),
      z.strictObject({ by: z.literal('profit'), multiple: f.factor() }),
      z.strictObject({ by: z.literal('price'), amount: f.sumAmount() }),
    ],
    { error: 'a sale price stated by "revenue", "profit" or "price"' },
  ),
  /** Years at the last year's pace that a royalty without an end counts for at a sale. */
  royaltyYears: f.factor(),
  /** What an investor wants to make a year. */
  wantedYearlyRate: f.factor(),
  /** How far the founder would go; null: not said. */
  leastFounderRate: z.nullable(f.share()),
  mostPaidAmount: z.nullable(f.sumAmount()),
});

export type RivalOffer = z.output<typeof rivalOffer>;
export type Ownership = z.output<typeof ownership>;
