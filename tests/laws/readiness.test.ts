/**
 * Laws of readiness on random plans: dates and slack say the same, no gate begins before what it waits for, more to do never
 * brings an opening earlier, every date asked for is a worked day.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, dayNumber } from '../../src/domain/calendar.ts';
import type { Gate, Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { chancesFor, closedDaysOf, readinessFor, suggestedGates } from '../../src/domain/readiness/index.ts';
import { withoutAccount, withoutGate, withoutWave } from '../../src/domain/readiness/leave-out.ts';
import { workDaysFrom } from '../../src/domain/readiness/work-days.ts';
import { arbitraryPlan } from '../support/arbitrary-plan.ts';
import '../support/seed.ts';

const runs = { numRuns: 120 };
const withToday = () =>
  arbitraryPlan().chain((plan) =>
    fc.record({
      plan: fc.constant(plan),
      today: fc.integer({ min: -60, max: 60 }).map((days) => addDays(plan.startDate, days)),
    }),
  );
const worked = (plan: Plan, today: string) =>
  workDaysFrom(dayNumber(today), plan.readiness.calendar, closedDaysOf(plan.readiness.calendar));

test('an opening moves by the fewest weeks that let all its gates be done before their dates', () => {
  fc.assert(
    fc.property(withToday(), ({ plan, today }) => {
      const { gates, waves } = readinessFor(plan, today);
      for (const { accountId, waveId, slipWeeks, shelfDate, shipDate, orderDate, earliest } of waves) {
        expect(dayNumber(earliest) - dayNumber(shelfDate)).toBe(7 * slipWeeks);
        const due = { ordering: orderDate, shipping: shipDate, shelf: shelfDate };
        const holding = plan.readiness.gates.flatMap((gate, at) => {
          const { holds } = gate;
          const isHeld =
            holds.by === 'market' ||
            (holds.by === 'accounts' && holds.accountIds.includes(accountId)) ||
            (holds.by === 'waves' && holds.accountId === accountId && holds.waveIds.includes(waveId));
          const { finish } = gates[at] as (typeof gates)[number];
          return isHeld && finish !== null && isWork(plan, gate) ? [{ finish, due: due[gate.before] }] : [];
        });
        const fits = (weeks: number) => holding.every((each) => each.finish < addDays(each.due, 7 * weeks));
        expect(fits(slipWeeks)).toBe(true);
        if (slipWeeks > 0) expect(fits(slipWeeks - 1)).toBe(false);
      }
    }),
    runs,
  );
});

/** Something still to do, in the gate or before it; else it asks for no day. */
function isWork(plan: Plan, { state, leadDays, after }: Gate): boolean {
  if (state.is === 'done') return false;
  if (state.is === 'underWay' ? state.daysLeft > 0 : leadDays.pessimistic > 0) return true;
  return plan.readiness.gates.some((gate) => after.includes(gate.id) && isWork(plan, gate));
}

test('a gate begins after those it waits for, on a worked day; late is slack below 0', () => {
  fc.assert(
    fc.property(withToday(), ({ plan, today }) => {
      const { gates } = readinessFor(plan, today);
      const { isWorked } = worked(plan, today);
      const byId = new Map(gates.map((gate) => [gate.id, gate]));
      plan.readiness.gates.forEach(({ after }, at) => {
        const gate = gates[at] as (typeof gates)[number];
        expect(gate.late).toBe((gate.slack ?? 0) < 0);
        for (const date of [gate.start, gate.finish, gate.latestStart, gate.latestFinish]) {
          if (date !== null) expect(isWorked(dayNumber(date)), date).toBe(true);
        }
        if (gate.start === null) return;
        expect(gate.start >= today).toBe(true);
        for (const before of after.map((id) => byId.get(id))) {
          if (before?.finish && before.daysLeft > 0 && gate.daysLeft > 0)
            expect(gate.start > before.finish).toBe(true);
        }
      });
    }),
    runs,
  );
});

test('a gate that slips never brings an opening earlier, nor gives a gate more slack', () => {
  fc.assert(
    fc.property(withToday(), fc.nat(7), fc.integer({ min: 1, max: 40 }), ({ plan, today }, pick, days) => {
      const gate = plan.readiness.gates[pick % Math.max(1, plan.readiness.gates.length)];
      if (!gate) return;
      const [before, after] = [readinessFor(plan, today), readinessFor(plan, today, { [gate.id]: days })];
      before.waves.forEach(({ slipWeeks }, at) => {
        expect(after.waves[at]?.slipWeeks).toBeGreaterThanOrEqual(slipWeeks);
      });
      before.gates.forEach(({ slack }, at) => {
        if (slack !== null) expect(after.gates[at]?.slack ?? slack).toBeLessThanOrEqual(slack);
      });
    }),
    runs,
  );
});

test('places and days of a work calendar are each other’s inverse, both ways from today', () => {
  fc.assert(
    fc.property(withToday(), fc.integer({ min: -300, max: 300 }), ({ plan, today }, place) => {
      const days = worked(plan, today);
      const day = days.dayAt(place);
      expect(days.isWorked(day)).toBe(true);
      expect(days.placeOf(day)).toBe(place);
      expect(days.placeOf(day + 1)).toBe(place + 1);
    }),
    runs,
  );
});

test('chances are between 0 and 1, and the date kept nine times of ten is not before the one kept half the time', () => {
  fc.assert(
    fc.property(withToday(), ({ plan, today }) => {
      const { waves, gates, resets } = chancesFor(plan, today, { runs: 30 });
      const shares = [...waves, ...resets].map(({ chance }) => chance);
      for (const share of [...shares, ...gates.map(({ criticalShare }) => criticalShare)]) {
        expect(share >= 0 && share <= 1).toBe(true);
      }
      for (const { half, nineOfTen } of waves) expect(half <= nineOfTen).toBe(true);
    }),
    runs,
  );
});

test('what is proposed fits the plan, and what leaves the plan leaves it sound', () => {
  fc.assert(
    fc.property(arbitraryPlan(), (plan) => {
      const channels = Object.fromEntries(plan.accounts.map(({ id }) => [id, 'club' as const]));
      const proposed = suggestedGates(plan, { channels, productKinds: ['food', 'electrical'] });
      const gates = [...plan.readiness.gates, ...proposed.map(({ gate }) => gate)];
      const taken = { ...plan, readiness: { ...plan.readiness, gates } };
      const sound = (each: Plan) => checkRules(each).filter(({ path }) => path.startsWith('readiness'));
      expect(sound(taken)).toEqual([]);
      for (const { id } of gates) expect(sound(withoutGate(taken, id))).toEqual([]);
      for (const { id: accountId, waves } of plan.accounts) {
        const without = withoutAccount(taken, accountId);
        const accounts = without.accounts.filter(({ id }) => id !== accountId);
        expect(sound({ ...without, accounts })).toEqual([]);
        for (const { id: waveId } of waves) {
          const left = withoutWave(taken, { accountId, waveId });
          const accountsLeft = left.accounts.map((each) =>
            each.id === accountId ? { ...each, waves: each.waves.filter(({ id }) => id !== waveId) } : each,
          );
          expect(sound({ ...left, accounts: accountsLeft })).toEqual([]);
        }
      }
    }),
    { ...runs, numRuns: 40 },
  );
});
