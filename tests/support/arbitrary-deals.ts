/**
 * Random displays and promotions of an account (see arbitrary-account.ts).
 * Worked figure: a promotion of 3 weeks from week 12, 0.215 off the shelf price, half of it funded, a lift of 1.4.
 */
import fc from 'fast-check';
import type { Account } from '../../src/domain/plan/index.ts';
import { decimal, listOf, maybe, whole } from './arbitrary-parts.ts';

export function arbitraryDisplay(): fc.Arbitrary<NonNullable<Account['display']>> {
  return fc.record({
    buildAmountPerDoor: decimal(0, 9000, 2),
    freightAmountPerDoor: decimal(0, 3000, 3),
    buildWeeks: whole(0, 8),
    feeAmountPerStoreWeek: decimal(0, 900, 2),
    weeks: whole(1, 12),
    liftRate: decimal(0, 20, 1),
    liftEndRate: maybe(decimal(0, 20, 1)),
  });
}

export function arbitraryPromotions(
  horizonWeeks: number,
  listed: readonly string[],
): fc.Arbitrary<Account['promotions']> {
  return listOf(
    fc.record({
      label: fc.constant('Promotion'),
      fromWeek: whole(0, horizonWeeks - 1),
      weeks: whole(1, 6),
      depthRate: decimal(0, 500, 3),
      fundedShare: decimal(0, 100, 2),
      fundedBy: fc.constantFrom('scanBack' as const, 'offInvoice' as const),
      buyInWeeks: whole(0, 3),
      lagWeeks: whole(0, 8),
      liftRate: decimal(0, 30, 1),
      itemIds: maybe(fc.subarray([...listed], { minLength: 1 })),
      sisterShare: decimal(0, 100, 2),
      dipShare: decimal(0, 100, 2),
      dipWeeks: whole(0, 5),
    }),
    2,
    'promotion',
  );
}
