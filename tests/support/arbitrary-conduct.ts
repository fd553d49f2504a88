/**
 * Random ways of an account beside its terms: drops and pallets, charges for short deliveries, deductions that aren't owed,
 * a credit limit. Each in half of all accounts.
 * Worked figure: 3 % taken wrongly of every invoice, 60 % of it back 10 weeks after; at most 4,200.00 owed.
 */
import fc from 'fast-check';
import type { Account } from '../../src/domain/plan/index.ts';
import { decimal, maybe, whole } from './arbitrary-parts.ts';

export function arbitraryConduct(): fc.Arbitrary<
  Pick<Account, 'delivery' | 'service' | 'disputed' | 'creditLimitAmount'>
> {
  return fc.record({
    delivery: maybe(
      fc.record({ amountPerDrop: decimal(0, 90_000, 4), amountPerPallet: decimal(0, 9000, 2) }),
    ),
    service: maybe(
      fc.record({
        leastFillRate: fc.constantFrom('0.5', '0.95', '0.985', '1'),
        chargeRate: decimal(0, 300, 3),
        lagWeeks: whole(0, 8),
      }),
    ),
    disputed: maybe(
      fc.record({
        wrongRate: decimal(0, 100, 3),
        recoveredShare: decimal(0, 100, 2),
        recoveryWeeks: whole(0, 20),
      }),
    ),
    creditLimitAmount: maybe(decimal(0, 900_000, 2)),
  });
}
