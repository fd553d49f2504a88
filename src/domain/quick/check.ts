// The seven numbers against what each may be, before a plan is made of them: a sentence for each that isn't, none
// silently replaced. Worked figure: a retailer's margin of "1" (100 %) is refused: no price leaves the chain everything.
import * as z from 'zod/mini';
import * as f from '../plan/fields.ts';
import { shown } from '../plan/shown.ts';
import type { Problem } from '../problems.ts';
import { missingFor, SEVEN_KEYS, type SevenKey, type SevenNumbers } from './seven.ts';

/** What each number is in the plan it goes into. */
const FIELD_KINDS: Record<SevenKey, z.ZodMiniType> = {
  shelfPrice: f.positiveUnitAmount(),
  landedPerUnit: f.unitAmount(),
  retailerMarginRate: f.shareBelowOne(),
  moneyDownPerStore: f.sumAmount(),
  stores: f.whole({ least: 1, most: 100_000, unit: 'doors' }),
  unitsPerStoreWeek: f.rateOfSale(),
  cash: f.signedAmount(),
};

const MISSING: Record<SevenKey, string> = {
  shelfPrice: 'the shelf price, as on the tag',
  landedPerUnit: 'what one unit costs, landed at our door',
  retailerMarginRate: 'the margin the retailer wants',
  moneyDownPerStore: 'the money down per store, zero allowed',
  stores: 'the number of stores',
  unitsPerStoreWeek: 'units sold per store per week',
  cash: 'the cash we have today',
};

/** One problem for each number that is missing for a ladder or isn't what it should be; path is the number's key. */
export function checkSeven(seven: SevenNumbers): Problem[] {
  const missing = missingFor('ladder', seven).map(
    (key): Problem => ({ code: 'field-missing', path: key, got: 'nothing', expected: MISSING[key] }),
  );
  const wrong = SEVEN_KEYS.filter((key) => seven[key] !== null).flatMap((key): Problem[] => {
    const parsed = z.safeParse(FIELD_KINDS[key], seven[key]);
    if (parsed.success) return [];
    const expected = parsed.error.issues[0]?.message ?? MISSING[key];
    return [{ code: 'field-invalid', path: key, got: shown(seven[key]), expected }];
  });
  return [...missing, ...wrong];
}
