// Verdict three: can we fill the doors? How deep the hole is, which week, what the money went on.
// Worked figure: lowest −12,300 in week 9: fails, short by 12,300; lowest 4,000 against a buffer of 9,000: tight.
import type { Plan } from '../plan/index.ts';
import type { Verdict, VerdictState } from '../results.ts';
import type { RolloutReading } from '../rollout/types.ts';
import type { Say } from './say.ts';

export interface CashVerdictArgs {
  plan: Plan;
  reading: RolloutReading;
  minorDigits: number;
  say: Say;
}

const WENT_ON: Record<RolloutReading['ends'], string> = {
  stock: 'Most of it went on stock',
  opening: 'Most of it went on slotting, displays and opening money',
  shipping: 'Most of it went on freight and picking',
  overhead: 'Most of it went on overhead and what was bought',
  funding: 'Most of it went on interest and repayments',
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
        : `Not known yet. It needs ${say.money(need)}${when}; say what is in the bank for a verdict.`;
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
    reason: reasonOf(state, reading, say),
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
  const buffer = `the buffer is ${say.money(reading.bufferAmount)}`;
  if (state === 'tight') return `Tight. ${left}; ${buffer}. ${went}${floor}`;
  return `Holds. ${left}; ${buffer}.`;
}

function wentOn(reading: RolloutReading, say: Say): string {
  const paid = reading.firstPaymentWeek;
  const before =
    paid !== null && paid >= reading.lowestWeek ? `, before the first payment in ${say.week(paid)}` : '';
  return `${WENT_ON[reading.ends]}${before}.`;
}
