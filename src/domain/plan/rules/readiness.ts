// Gates that can be planned: they name what is in the plan, none waits for itself, lead times are in their order, and
// numbers of items end in the digit that checks them.
// Worked example: labels after artwork, and artwork after labels: "readiness/gates/labels/after/0: got "artwork", which
// waits for it".
import type { Problem } from '../../problems.ts';
import { checkDigitOf } from '../../readiness/gs1.ts';
import { waitsFor } from '../../readiness/waits-for.ts';
import type { Gate, Plan } from '../index.ts';
import { shown } from '../shown.ts';

export function readinessProblems(plan: Plan): Problem[] {
  const { gates, calendar, resets } = plan.readiness;
  const accounts = plan.accounts.map(({ id }) => id);
  return [
    ...gates.flatMap(leadTimes),
    ...tooLong(gates),
    ...gates.flatMap((gate) => predecessors(gate, gates)),
    ...gates.flatMap((gate) => heldBack(gate, plan)),
    ...resets.flatMap(({ id, accountId }) =>
      accountId === null || accounts.includes(accountId)
        ? []
        : [unknown(`readiness/resets/${id}/accountId`, accountId, 'an account of the plan, or null')],
    ),
    ...workedDays(calendar),
    ...plan.items.flatMap(numbers),
  ];
}

function leadTimes({ id, leadDays }: Gate): Problem[] {
  const { optimistic, likely, pessimistic } = leadDays;
  const path = `readiness/gates/${id}/leadDays`;
  if (likely < optimistic) {
    const expected = `${optimistic} days when all goes well to be no more than the most likely ${likely}`;
    return [{ code: 'field-invalid', path: `${path}/likely`, got: `${likely} days`, expected }];
  }
  if (pessimistic >= likely) return [];
  const expected = `${pessimistic} days when it goes badly to be no fewer than the most likely ${likely}`;
  return [{ code: 'field-invalid', path: `${path}/pessimistic`, got: `${pessimistic} days`, expected }];
}

/** All gates one after the other, as long as they may take: beyond it there are no dates. */
const LONGEST_DAYS = 50_000;

function tooLong(gates: readonly Gate[]): Problem[] {
  const days = gates.reduce((sum, { leadDays }) => sum + leadDays.pessimistic, 0);
  if (days <= LONGEST_DAYS) return [];
  const expected = `at most ${LONGEST_DAYS} working days, all pessimistic lead times together`;
  return [{ code: 'number-too-large', path: 'readiness/gates', got: `${days} working days`, expected }];
}

function predecessors({ id, after }: Gate, gates: readonly Gate[]): Problem[] {
  const ids = gates.map((gate) => gate.id);
  return after.flatMap((before, index): Problem[] => {
    const path = `readiness/gates/${id}/after/${index}`;
    if (!ids.includes(before)) return [unknown(path, before, 'a gate of the plan')];
    if (after.indexOf(before) !== index) {
      return [{ code: 'id-repeated', path, got: shown(before), expected: 'each gate named once' }];
    }
    if (!waitsFor(gates, before, id)) return [];
    const got = before === id ? 'the gate itself' : `${shown(before)}, which waits for it`;
    return [{ code: 'dates-out-of-order', path, got, expected: 'a gate that can be done before it' }];
  });
}

function heldBack({ id, holds }: Gate, plan: Plan): Problem[] {
  const path = `readiness/gates/${id}/holds`;
  const accounts = plan.accounts.map((account) => account.id);
  if (holds.by === 'market') return [];
  if (holds.by === 'accounts') {
    return holds.accountIds.flatMap((accountId, index) =>
      accounts.includes(accountId)
        ? []
        : [unknown(`${path}/accountIds/${index}`, accountId, 'an account of the plan')],
    );
  }
  const account = plan.accounts.find((each) => each.id === holds.accountId);
  if (!account) return [unknown(`${path}/accountId`, holds.accountId, 'an account of the plan')];
  const waves = account.waves.map((wave) => wave.id);
  return holds.waveIds.flatMap((waveId, index) =>
    waves.includes(waveId) ? [] : [unknown(`${path}/waveIds/${index}`, waveId, 'an opening of that account')],
  );
}

function workedDays({ workDays, closed }: Plan['readiness']['calendar']): Problem[] {
  const path = 'readiness/calendar';
  return [
    ...workDays.flatMap((day, index): Problem[] =>
      workDays.indexOf(day) === index
        ? []
        : [
            {
              code: 'id-repeated',
              path: `${path}/workDays/${index}`,
              got: `weekday ${day}`,
              expected: 'each weekday once',
            },
          ],
    ),
    ...closed.flatMap(({ id, fromDate, untilDate }): Problem[] =>
      fromDate <= untilDate
        ? []
        : [
            {
              code: 'dates-out-of-order',
              path: `${path}/closed/${id}/untilDate`,
              got: untilDate,
              expected: `a date from ${fromDate} on, where it begins`,
            },
          ],
    ),
  ];
}

function numbers({ id, numbers: own }: Plan['items'][number]): Problem[] {
  if (own === null) return [];
  return (['unit', 'inner', 'case'] as const).flatMap((key): Problem[] => {
    const number = own[key];
    if (number === null) return [];
    const right = checkDigitOf(number.slice(0, -1));
    if (number.endsWith(String(right))) return [];
    const expected = `${right} as the last digit, which checks the ones before it`;
    return [{ code: 'field-invalid', path: `items/${id}/numbers/${key}`, got: shown(number), expected }];
  });
}

function unknown(path: string, name: string, expected: string): Problem {
  return { code: 'reference-unknown', path, got: shown(name), expected };
}
