// The plan: everything a person typed, or let stand as a default, about one product line and the chains that may take
// it. It is the only input of every result. Format version 3; saved plans of older versions are migrated before they
// reach this shape (see plan-format). Shape only is checked here; what fields mean together is checked in rules.ts.
import * as z from 'zod/mini';
import { account, type hand, type listing } from './account.ts';
import { business, thresholds } from './business.ts';
import * as f from './fields.ts';
import { item } from './item.ts';
import { ownership, rivalOffer } from './offer-terms.ts';
import { promise } from './promise.ts';
import { readiness } from './readiness.ts';

/** Where a default came from. `path` names the field: ids stand for places in lists ("accounts/corner/terms/latenessDays"). */
export const basisNote = z.strictObject({
  path: z
    .string({ error: 'a path of field names and ids joined by "/"' })
    .check(z.minLength(1), z.maxLength(300)),
  kind: z.enum(['practice', 'published', 'guess'], { error: '"practice", "published" or "guess"' }),
  /** For published: name, year, country. Otherwise a word of reason. */
  source: f.note(),
  /** A guess's plausible ends, in the field's own unit; null where it has none (then it is not re-run). */
  low: z.nullable(f.signedAmount()),
  high: z.nullable(f.signedAmount()),
});

export const planSchema = z.strictObject({
  version: z.literal(3, { error: 'the format version 3' }),
  id: f.id(),
  name: f.name(),
  /** What this plan is for, or teaches, in a sentence; may be empty. */
  lesson: f.note(),
  currency: z
    .string({ error: 'a currency code of ISO 4217, like "USD"' })
    .check(z.regex(/^[A-Z]{3}$/, { error: 'a currency code of ISO 4217, like "USD"' })),
  market: z.enum(['US', 'CA', 'EU', 'UK', 'other'], { error: '"US", "CA", "EU", "UK" or "other"' }),
  /** Whether goods are agricultural or food products, for the law lines that depend on it. */
  perishableFood: z.boolean({ error: 'true or false' }),
  shelfTax: z.strictObject({
    rate: f.shareBelowOne(),
    shown: z.enum(['inPrice', 'atTill'], { error: '"inPrice" or "atTill"' }),
  }),
  startDate: f.isoDate(),
  horizonWeeks: f.whole({ least: 4, most: 260, unit: 'weeks' }),
  items: z
    .array(item)
    .check(z.minLength(1, { error: 'at least one item' }), z.maxLength(50, { error: 'at most 50 items' })),
  accounts: z.array(account).check(z.maxLength(60, { error: 'at most 60 accounts' })),
  business,
  promise,
  readiness,
  /** Rival offers of money, side by side; none of them counts in the plan. */
  offers: z.array(rivalOffer).check(z.maxLength(12, { error: 'at most 12 offers' })),
  ownership,
  thresholds,
  basis: z.array(basisNote),
});

export type Plan = z.output<typeof planSchema>;
/** What a file may hold: as Plan, with amounts also as JSON numbers. */
export type PlanInput = z.input<typeof planSchema>;
export type Item = Plan['items'][number];
export type Account = Plan['accounts'][number];
export type Hand = z.output<typeof hand>;
export type Listing = z.output<typeof listing>;
export type BasisNote = Plan['basis'][number];
export type Business = Plan['business'];
export type Thresholds = Plan['thresholds'];
export type Evidence = Plan['promise'];
export type Scan = Evidence['scans'][number];
export type Standing = NonNullable<Account['standing']>;
export type Readiness = Plan['readiness'];
export type Gate = Readiness['gates'][number];
export type Reset = Readiness['resets'][number];
export type WorkCalendar = Readiness['calendar'];
export type ItemNumbers = NonNullable<Item['numbers']>;
export type Table = NonNullable<Account['table']>;
export type OfferSaid = Table['log'][number];
export type TermValue = Table['draft'][number];
