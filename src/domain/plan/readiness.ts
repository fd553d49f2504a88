// What has to be ready before goods can stand on a shelf: gates with lead times, what each needs first and holds back; the
// days that are worked, and the dates on which chains set their shelves anew. Today's date is no part of a plan.
// Worked figure: lead time 3, 5, 13 working days has the mean (3 + 4 x 5 + 13) / 6 = 6.
import * as z from 'zod/mini';
import * as f from './fields.ts';

/** Places whose public holidays are known (ISO 3166; a second part is a part of the country). */
export const HOLIDAY_PLACES = [
  'US',
  'CA',
  'GB-ENG',
  'GB-SCT',
  'GB-NIR',
  'IE',
  'AT',
  'BE',
  'BG',
  'HR',
  'CY',
  'CZ',
  'DK',
  'EE',
  'FI',
  'FR',
  'DE',
  'GR',
  'HU',
  'IT',
  'LV',
  'LT',
  'LU',
  'MT',
  'NL',
  'PL',
  'PT',
  'RO',
  'SK',
  'SI',
  'ES',
  'SE',
  'CH',
  'NO',
  'AU',
  'NZ',
  'MX',
  'JP',
] as const;

const days = (unit: string, least = 0) => f.whole({ least, most: 1000, unit });

/** A text of at most so many characters, perhaps empty. */
const short = (most: number, what: string) => {
  const expected = `${what} of at most ${most} characters`;
  return z.string({ error: expected }).check(z.maxLength(most, { error: expected }));
};

/** Which days are worked: weekdays 1 (Monday) to 7, less holidays, less days we close ourselves. */
export const workCalendar = z.strictObject({
  workDays: z
    .array(f.whole({ least: 1, most: 7, unit: 'weekdays, Monday is 1,' }))
    .check(
      z.minLength(1, { error: 'at least one weekday' }),
      z.maxLength(7, { error: 'at most 7 weekdays' }),
    ),
  /** null: no public holidays are counted. */
  holidays: z.nullable(
    z.enum(HOLIDAY_PLACES, { error: 'a place whose holidays are known, like "US", "DE" or "GB-ENG"' }),
  ),
  closed: z
    .array(z.strictObject({ id: f.id(), label: f.name(), fromDate: f.isoDate(), untilDate: f.isoDate() }))
    .check(z.maxLength(100, { error: 'at most 100 times we close' })),
});

/** A day on which shelves are set anew: what isn't ready then waits for the next one. */
export const reset = z.strictObject({
  id: f.id(),
  label: f.name(),
  date: f.isoDate(),
  /** null: every account's. */
  accountId: z.nullable(f.id()),
});

export const leadDays = z.strictObject({
  optimistic: days('working days'),
  likely: days('working days'),
  pessimistic: days('working days'),
});

export const gateState = z.discriminatedUnion(
  'is',
  [
    z.strictObject({ is: z.literal('notStarted') }),
    /** Working days still to go, today's included. */
    z.strictObject({ is: z.literal('underWay'), daysLeft: days('working days left') }),
    z.strictObject({ is: z.literal('done'), date: f.isoDate() }),
  ],
  { error: 'a state "notStarted", "underWay" or "done"' },
);

/** `market`: all accounts of the plan, which has one market. */
export const gateHolds = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('market') }),
    z.strictObject({
      by: z.literal('accounts'),
      accountIds: z.array(f.id()).check(z.minLength(1, { error: 'at least one account' })),
    }),
    z.strictObject({
      by: z.literal('waves'),
      accountId: f.id(),
      waveIds: z.array(f.id()).check(z.minLength(1, { error: 'at least one opening' })),
    }),
  ],
  { error: 'held back by "market", "accounts" or "waves"' },
);

export const gate = z.strictObject({
  id: f.id(),
  name: f.name(),
  leadDays,
  /** Gates that must be done before it can start. */
  after: z.array(f.id()).check(z.maxLength(50, { error: 'at most 50 gates before it' })),
  owner: short(120, 'a name'),
  /** What shows that it is done, or where that lies. */
  evidence: f.note(),
  state: gateState,
  holds: gateHolds,
  /** By when: before we order or make the goods, before they leave us, or before they stand on the shelf. */
  before: z.enum(['ordering', 'shipping', 'shelf'], { error: '"ordering", "shipping" or "shelf"' }),
  /** The starter it was taken from ("grocery/item-setup/corner"); null: written by hand. */
  starter: z.nullable(short(200, 'the name of a starter')),
});

export const readiness = z.strictObject({
  calendar: workCalendar,
  resets: z.array(reset).check(z.maxLength(200, { error: 'at most 200 reset dates' })),
  gates: z.array(gate).check(z.maxLength(400, { error: 'at most 400 gates' })),
});

const digits = (lengths: string, words: string) => {
  const expected = `${words}, digits only, or null while not known`;
  return z.nullable(
    z.string({ error: expected }).check(z.regex(new RegExp(`^\\d{${lengths}}$`), { error: expected })),
  );
};

const gtin = (what: string) => {
  const expected = `${what} of 8, 12, 13 or 14 digits, or null while not known`;
  return z.nullable(
    z.string({ error: expected }).check(z.regex(/^(?:\d{8}|\d{12,14})$/, { error: expected })),
  );
};

/** Numbers of GS1 for the unit, the inner pack and the case; check digits are a rule (rules/readiness.ts). */
export const itemNumbers = z.strictObject({
  unit: gtin('an item number (GTIN)'),
  inner: gtin('the number of the inner pack (GTIN)'),
  case: gtin('the number of the case (GTIN)'),
  /** The number range GS1 gave us; pallets are numbered from it. */
  companyPrefix: digits('4,12', 'a company prefix of 4 to 12 digits'),
});
