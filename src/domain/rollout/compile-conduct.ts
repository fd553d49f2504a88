// What an account adds to its terms, as the weekly pass wants it: a credit limit, charges for short deliveries, delivery by
// drop and pallet, deductions that aren't owed. Worked figure: a limit of "20000" in a currency of 2 digits is 2,000,000.
import { dec, minorOf, rateOf, toTenThousandths } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import type { CompiledAccount, CompiledConduct } from './compiled.ts';

/** Null where the plan sets nothing of it, so that plain accounts are asked once and no more. */
export function compileConduct(
  account: Account,
  { minorDigits, pickUp }: { minorDigits: number; pickUp: boolean },
): Pick<CompiledAccount, 'conduct' | 'disputed'> {
  const { disputed } = account;
  return {
    disputed: disputed && {
      wrongRate: rateOf(disputed.wrongRate),
      recoveredShare: rateOf(disputed.recoveredShare),
      recoveryWeeks: disputed.recoveryWeeks,
    },
    conduct: conductOf(account, minorDigits, pickUp),
  };
}

function conductOf(account: Account, minorDigits: number, pickUp: boolean): CompiledConduct | null {
  const { service, sale } = account;
  const delivery = pickUp ? null : account.delivery;
  // Goods on scan are invoiced when they are sold: no shipment of them waits for room.
  const limit = sale.by === 'scan' ? null : account.creditLimitAmount;
  if (limit === null && service === null && delivery === null) return null;
  return {
    creditLimit: limit === null ? null : minorOf(limit, minorDigits),
    service: service && {
      leastFillRate: rateOf(service.leastFillRate),
      chargeRate: rateOf(service.chargeRate),
      lagWeeks: service.lagWeeks,
    },
    delivery: delivery && {
      perDrop: toTenThousandths(dec(delivery.amountPerDrop)),
      perPallet: toTenThousandths(dec(delivery.amountPerPallet)),
      toDepot: account.depot !== null,
    },
  };
}
