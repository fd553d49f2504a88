// The kinds of field a plan is made of. Each refuses bad input with a sentence that says what was expected.
// Amounts and rates are kept as decimal text ("3.40", "0.42"), so nothing typed is ever changed by binary fractions;
// a JSON number is accepted and turned into its shortest text. Worked figure: rate() takes "0.42", and 0.42, as "0.42".
import * as z from 'zod/mini';

const DECIMAL_TEXT = /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?$/;

interface DecimalLimits {
  least: number;
  most: number;
  decimals: number;
  expected: string;
}

function canonical(value: string | number): string {
  const text = typeof value === 'number' ? String(value) : value.trim();
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}

function fits(value: string | number, limits: DecimalLimits): boolean {
  const text = canonical(value);
  if (!DECIMAL_TEXT.test(text)) return false;
  const decimals = text.split('.')[1]?.length ?? 0;
  const size = Number(text);
  return decimals <= limits.decimals && size >= limits.least && size <= limits.most;
}

function decimalText(limits: DecimalLimits) {
  return z.pipe(
    z
      .union([z.string(), z.number()], { error: limits.expected })
      .check(z.refine((value) => fits(value, limits), { error: limits.expected, abort: true })),
    z.transform(canonical),
  );
}

/** A price or cost of one unit, case, pallet or shipment: 0 to 1,000,000 in the plan's currency, at most 4 decimals. */
export const unitAmount = () =>
  decimalText({
    least: 0,
    most: 1e6,
    decimals: 4,
    expected: 'an amount from 0 to 1,000,000 with at most 4 decimals, like "3.40"',
  });

/** A price that can't be zero: above 0 to 1,000,000, at most 4 decimals. */
export const positiveUnitAmount = () =>
  decimalText({
    least: 0.0001,
    most: 1e6,
    decimals: 4,
    expected: 'an amount above 0, up to 1,000,000, with at most 4 decimals, like "3.40"',
  });

/** A sum of money: 0 to 100,000,000,000, at most 4 decimals. */
export const sumAmount = () =>
  decimalText({
    least: 0,
    most: 1e11,
    decimals: 4,
    expected: 'an amount from 0 to 100,000,000,000 with at most 4 decimals, like "36000"',
  });

/** A sum of money that may be negative (a bank balance). */
export const signedAmount = () =>
  decimalText({
    least: -1e11,
    most: 1e11,
    decimals: 4,
    expected: 'an amount between -100,000,000,000 and 100,000,000,000 with at most 4 decimals, like "-1200"',
  });

/** A share of something: 0 to 1, at most 6 decimals; 42 % is "0.42". */
export const share = () =>
  decimalText({
    least: 0,
    most: 1,
    decimals: 6,
    expected: 'a share from 0 to 1 with at most 6 decimals; 42 % is "0.42"',
  });

/** A share below one (a margin, a loss, an attrition): 0 up to, not including, 1; at most 6 decimals. */
export const shareBelowOne = () =>
  decimalText({
    least: 0,
    most: 0.999999,
    decimals: 6,
    expected: 'a share from 0 to below 1 (below 100 %) with at most 6 decimals; 42 % is "0.42"',
  });

/** A factor or rate that may pass one (a markup, a lift, a seasonal factor): 0 to 100, at most 6 decimals. */
export const factor = () =>
  decimalText({
    least: 0,
    most: 100,
    decimals: 6,
    expected: 'a number from 0 to 100 with at most 6 decimals; 50 % is "0.5"',
  });

/** Rate of sale, units per store per week: above 0 to 1,000, at most 6 decimals. */
export const rateOfSale = () =>
  decimalText({
    least: 0.000001,
    most: 1000,
    decimals: 6,
    expected: 'units per store per week, above 0, up to 1,000, with at most 6 decimals, like "6" or "4.5"',
  });

/** What one unit of a foreign currency costs: above 0 to 100,000, at most 6 decimals. */
export const exchangeRate = () =>
  decimalText({
    least: 0.000001,
    most: 100_000,
    decimals: 6,
    expected: 'what one unit of that currency costs, above 0, with at most 6 decimals, like "1.085"',
  });

/** A change as a share, up or down: -0.9 to 10, at most 6 decimals. */
export const signedShare = () =>
  decimalText({
    least: -0.9,
    most: 10,
    decimals: 6,
    expected: 'a change from -0.9 to 10 with at most 6 decimals; 8 % more is "0.08", 8 % less "-0.08"',
  });

/** A whole number between two limits; `unit` names what is counted. */
export function whole(limits: { least: number; most: number; unit: string }) {
  const expected = `a whole number of ${limits.unit} from ${limits.least} to ${limits.most}`;
  return z.number({ error: expected }).check(
    z.refine((value) => Number.isInteger(value) && value >= limits.least && value <= limits.most, {
      error: expected,
    }),
    z.gte(limits.least, { error: expected }),
    z.lte(limits.most, { error: expected }),
  );
}

/** A week of the plan, counted from 0. */
export const weekIndex = () => whole({ least: 0, most: 519, unit: 'weeks' });

/** A name a person gives: 1 to 120 characters, not only blanks. */
export const name = () => {
  const expected = 'a name of 1 to 120 characters, not only blanks';
  return z
    .string({ error: expected })
    .check(
      z.minLength(1, { error: expected }),
      z.maxLength(120, { error: expected }),
      z.regex(/\S/, { error: expected }),
    );
};

/** Free text, possibly empty, up to 2,000 characters. */
export const note = () => {
  const expected = 'a text of at most 2,000 characters';
  return z.string({ error: expected }).check(z.maxLength(2000, { error: expected }));
};

/** An identifier inside a plan: letters, digits, hyphen; never shown. */
export const id = () => {
  const expected = 'an identifier of 1 to 60 letters, digits or hyphens';
  return z.string({ error: expected }).check(z.regex(/^[A-Za-z0-9-]{1,60}$/, { error: expected }));
};

/** A calendar date written YYYY-MM-DD (ISO 8601), 1990 to 2199, that exists. */
export const isoDate = () => {
  const expected = 'a date that exists, written YYYY-MM-DD, from 1990 to 2199, like "2026-03-02"';
  return z.string({ error: expected }).check(z.refine(isRealDate, { error: expected }));
};

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function isRealDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 1990 || year > 2199 || month < 1 || month > 12) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = month === 2 && leap ? 29 : (MONTH_DAYS[month - 1] ?? 0);
  return day >= 1 && day <= days;
}
