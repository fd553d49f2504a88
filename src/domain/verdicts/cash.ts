// Verdict three: can we fill the doors? How deep the hole is, which week, what the money went on.
// Worked figure: lowest −12,300 in week 9: fails, short by 12,300; lowest 4,000 against a buffer of 9,000: tight.
import type { Plan } from '../plan/index.ts';
import type { Verdict, VerdictState } from '../results.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { type Say, tooLittleServed } from './say.ts';

export interface CashVerdictArgs {
  plan: Plan;
  reading: RolloutReading;
  minorDigits: number;
  say: Say;
}

const WENT_ON: Record<RolloutReading['ends'], string> = {
  stock: 'Stock',
  opening: 'Slotting, displays and opening money',
  shipping: 'Freight and picking',
  overhead: 'Running costs and equipment',
  funding: 'Interest and repayments',
};

export function cashVerdict(args: CashVerdictArgs): Verdict {
  const { plan, reading, minorDigits, say } = args;
  const base = { name: 'cash' as const, accountId: null, itemId: null };
  if (plan.business.openingCashAmount === null) {
    const need = reading.depthFromZero;
    const when = reading.cashNeedWeek === null ? '' : ` by ${say.week(reading.cashNeedWeek)}`;
    const reason =
      need === 0
        ? 'Not known yet. This plan needs no cash beside its own; say what is in the bank for a verdict.'
        : `Not known yet. It needs ${say.money(need)}${when}; say what is in the bank for a verdict.${emptyShelves(reading, say)}`;
    return {
      ...base,
      state: 'unknown',
      figure: need === 0 ? '' : `needs ${say.money(need)}${when}`,
      value: null,
      reason,
    };
  }
  const state = stateOf(reading);
  return {
    ...base,
    state,
    figure: `${say.money(reading.lowestCash)} · week ${reading.lowestWeek}`,
    value: (reading.lowestCash / 10 ** minorDigits).toFixed(minorDigits),
    reason: `${reasonOf(state, reading, say)}${emptyShelves(reading, say)}`,
  };
}

function stateOf(reading: RolloutReading): VerdictState {
  if (reading.lowestCash < 0) return 'fails';
  if (reading.floorNotSeen || reading.lowestCash < reading.bufferAmount) return 'tight';
  return 'holds';
}

function reasonOf(state: VerdictState, reading: RolloutReading, say: Say): string {
  const when = say.week(reading.lowestWeek);
  const went = wentOn(reading, say);
  const floor = reading.floorNotSeen ? ' The floor is not seen: the low falls in the last four weeks.' : '';
  if (state === 'fails')
    return `Fails. Short by ${say.money(-reading.lowestCash)} in ${when}. ${went}${floor}`;
  const left = `Lowest ${say.money(reading.lowestCash)} in ${when}`;
  const buffer = `your buffer is ${say.money(reading.bufferAmount)}`;
  if (state === 'tight') return `Tight. ${left}; ${buffer}. ${went}${floor}`;
  return `Holds. ${left}; ${buffer}.`;
}

/** Money goes out before it comes in, within a week too. */
function wentOn(reading: RolloutReading, say: Say): string {
  const { firstPaymentWeek: paid, lowestWeek, firstOpeningWeek } = reading;
  const spent = `${WENT_ON[reading.ends]} took the largest part of what was paid by then`;
  if (paid === null) {
    return firstOpeningWeek === null ? `${spent}.` : `${spent}, and no chain pays before the plan ends.`;
  }
  if (paid > lowestWeek) return `${spent}, and the first payment comes only in ${say.week(paid)}.`;
  return paid === lowestWeek ? `${spent}, and the first payment comes only after that.` : `${spent}.`;
}

function emptyShelves({ fillRate }: RolloutReading, say: Say): string {
  const served = tooLittleServed(fillRate, say);
  return served === null ? '' : ` Shelves run empty: there are goods for ${served}.`;
}
