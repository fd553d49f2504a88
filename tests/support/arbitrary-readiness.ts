/**
 * Random gates of a plan, each after some of those before it, in every state, holding back all there is to hold back;
 * work calendars, reset dates, numbers of items. Worked figure: "labels" 2, 5, 9 working days after "numbers", 3 to go.
 */
import fc from 'fast-check';
import type { Gate, Plan, Readiness } from '../../src/domain/plan/index.ts';
import { HOLIDAY_PLACES } from '../../src/domain/plan/readiness.ts';
import { checkDigitOf } from '../../src/domain/readiness/gs1.ts';
import { listOf, maybe, whole } from './arbitrary-parts.ts';

const DAY = 86_400_000;
const dateAround = (startDate: string, from: number, to: number) =>
  whole(from, to).map((days) => new Date(Date.parse(startDate) + days * DAY).toISOString().slice(0, 10));

/** The plan as it was drawn, with something to get ready. */
export function withArbitraryReadiness(plan: Plan): fc.Arbitrary<Plan> {
  return fc
    .record({
      readiness: arbitraryReadiness(plan),
      numbers: fc.tuple(...plan.items.map(() => maybe(whole(100_000_000_000, 999_999_999_999)))),
    })
    .map(({ readiness, numbers }) => ({
      ...plan,
      readiness,
      items: plan.items.map((item, at) => {
        const digits = numbers[at] ? String(numbers[at]) : null;
        const unit = digits && `${digits}${checkDigitOf(digits)}`;
        return {
          ...item,
          numbers: unit === null ? null : { unit, inner: null, case: null, companyPrefix: null },
        };
      }),
    }));
}

function arbitraryReadiness(plan: Plan): fc.Arbitrary<Readiness> {
  const { startDate, accounts } = plan;
  const reset = fc.record({
    label: fc.constant('A reset'),
    date: dateAround(startDate, -30, 400),
    accountId: fc.constantFrom(null, ...accounts.map(({ id }) => id)),
  });
  return fc.record({
    calendar: fc.record({
      workDays: fc.constantFrom([1, 2, 3, 4, 5], [1, 2, 3, 4, 5, 6], [7, 1, 2, 3, 4], [3]),
      holidays: fc.constantFrom(null, ...HOLIDAY_PLACES),
      closed: listOf(
        fc.tuple(dateAround(startDate, -60, 300), whole(0, 20)).map(([fromDate, days]) => ({
          label: 'We close',
          fromDate,
          untilDate: new Date(Date.parse(fromDate) + days * DAY).toISOString().slice(0, 10),
        })),
        2,
        'closed',
      ),
    }),
    resets: listOf(reset, 3, 'reset'),
    gates: fc.array(arbitraryGate(plan), { maxLength: 8 }).map((gates) =>
      gates.map(
        ({ picks, ...gate }, at): Gate => ({
          ...gate,
          id: `gate${at + 1}`,
          after: gates.slice(0, at).flatMap((_, before) => (picks[before] ? [`gate${before + 1}`] : [])),
        }),
      ),
    ),
  });
}

function arbitraryGate({ startDate, accounts }: Plan) {
  const withWaves = accounts.filter(({ waves }) => waves.length > 0);
  const holds: Gate['holds'][] = [
    { by: 'market' },
    ...accounts.map(({ id }) => ({ by: 'accounts' as const, accountIds: [id] })),
    ...withWaves.map(({ id, waves }) => ({
      by: 'waves' as const,
      accountId: id,
      waveIds: [waves[0]?.id ?? ''],
    })),
  ];
  return fc.record({
    name: fc.constantFrom('Item numbers', 'Labels; with a comma, and "quotes"', 'Künstlerische Vorlage'),
    leadDays: fc.tuple(whole(0, 20), whole(0, 20), whole(0, 40)).map(([optimistic, more, most]) => ({
      optimistic,
      likely: optimistic + more,
      pessimistic: optimistic + more + most,
    })),
    picks: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    owner: fc.constantFrom('', 'Ana', 'Ben'),
    evidence: fc.constantFrom('', 'In the folder\nsecond shelf'),
    state: fc.oneof(
      fc.constant({ is: 'notStarted' as const }),
      whole(0, 30).map((daysLeft) => ({ is: 'underWay' as const, daysLeft })),
      dateAround(startDate, -60, 0).map((date) => ({ is: 'done' as const, date })),
    ),
    holds: fc.constantFrom(...holds),
    before: fc.constantFrom('ordering' as const, 'shipping' as const, 'shelf' as const),
    starter: fc.constant(null),
  });
}
