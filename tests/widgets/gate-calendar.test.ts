/**
 * Where gates stand in their calendar, and what its head says. Weeks: ISO 8601 (1 January 2021 lies in week 53 of 2020) and
 * the retail calendar of the National Retail Federation (2023 begins on 29 January 2023, by its published calendar).
 */
import { describe, expect, test } from 'vitest';
import { dayNumber, weekdayOf } from '../../src/domain/calendar.ts';
import type { Gate } from '../../src/domain/plan/index.ts';
import { readinessFor } from '../../src/domain/readiness/index.ts';
import { waitsFor } from '../../src/domain/readiness/waits-for.ts';
import {
  gateCalendar,
  headMarks,
  WEEKS_MOST,
  weekDayOf,
} from '../../src/screens/readiness/calendar-layout.ts';
import { linesOf } from '../../src/screens/readiness/dates-from.tsx';
import { byDay } from '../../src/screens/readiness/gate-rows.tsx';
import { chanceWords, markOf, roomWords } from '../../src/screens/readiness/words.ts';
import type { ScreenSay } from '../../src/screens/shared/screen-say.ts';
import { aPlan } from '../support/builders.ts';
import { aGate as anyGate } from '../support/gates.ts';

const say = { count: String, date: (day: string) => day } as unknown as ScreenSay;

/** Due on the shelf itself, unless said otherwise. */
const aGate = (id: string, days: number, changes: Partial<Gate> = {}): Gate =>
  anyGate(id, days, { before: 'shelf', ...changes });

/** Artwork 10 worked days, then labels 5, due on the shelf on Monday 16 March 2026; today is Monday 2 March. */
function twoGates(changes: Partial<Gate> = {}) {
  const base = aPlan({ startDate: '2026-03-02' });
  const [account] = base.accounts;
  if (account === undefined) throw new Error('the builder has no account');
  const plan = {
    ...base,
    accounts: [{ ...account, waves: [{ id: 'first', openWeek: 2, doors: 10, doorsPerWeek: 10 }] }],
    readiness: {
      calendar: { workDays: [1, 2, 3, 4, 5], holidays: null, closed: [] },
      resets: [],
      gates: [aGate('artwork', 10), aGate('labels', 5, { after: ['artwork'], ...changes })],
    },
  };
  return { plan, readiness: readinessFor(plan, '2026-03-02') };
}

describe('the drawing', () => {
  test('bars run over the days of the work, threads to the day it has to be done by', () => {
    const { plan, readiness } = twoGates();
    const drawn = gateCalendar({ readiness, gates: plan.readiness.gates, weekDay: weekDayOf('iso') });
    // Monday 2 to Friday 13 March; then Monday 16 to Friday 20, which should have ended on Friday 13.
    expect(drawn?.firstDay).toBe(dayNumber('2026-03-02'));
    expect(drawn?.bars.map(({ id, from, to, until, late }) => [id, from, to, until, late])).toEqual([
      ['artwork', 0, 11, 4, true],
      ['labels', 14, 18, 11, true],
    ]);
    expect(drawn?.joints).toEqual([
      { id: 'artwork labels', fromRow: 0, toRow: 1, fromDay: 12, toDay: 14, critical: true },
    ]);
    expect(drawn?.shelves).toEqual([{ id: expect.any(String), day: 14, earliest: 21 }]);
  });

  test('what is done is not drawn, nor a joint to it', () => {
    const { plan, readiness } = twoGates({ state: { is: 'done', date: '2026-03-01' } });
    const drawn = gateCalendar({ readiness, gates: plan.readiness.gates, weekDay: weekDayOf('iso') });
    expect(drawn?.bars.map(({ id }) => id)).toEqual(['artwork']);
    expect(drawn?.joints).toEqual([]);
    expect(gateCalendar({ readiness: { ...readiness, gates: [] }, gates: [], weekDay: 0 })).toBeNull();
  });

  test('it ends after two years, whatever a gate takes', () => {
    const { plan } = twoGates();
    const [artwork] = plan.readiness.gates;
    const long = {
      ...plan,
      readiness: {
        ...plan.readiness,
        gates: [{ ...(artwork as Gate), leadDays: { optimistic: 1000, likely: 1000, pessimistic: 1000 } }],
      },
    };
    const drawn = gateCalendar({
      readiness: readinessFor(long, '2026-03-02'),
      gates: long.readiness.gates,
      weekDay: weekDayOf('retail'),
    });
    expect(drawn?.days).toBe(7 * WEEKS_MOST);
    expect(weekdayOf(drawn?.firstDay ?? 0)).toBe(7);
  });
});

describe('the head', () => {
  test('ISO weeks: 1 January 2021 lies in week 53', () => {
    const { months, weeks } = headMarks({ firstDay: dayNumber('2020-12-21'), days: 21 }, 'iso');
    expect(weeks.map(({ text }) => text)).toEqual(['52', '53', '1']);
    expect(months).toEqual([{ day: 11, text: 'Jan 2021' }]);
  });

  test('periods of the retail calendar: 2023 begins on 29 January 2023', () => {
    const { weeks } = headMarks({ firstDay: dayNumber('2023-01-22'), days: 28 }, 'retail');
    expect(weeks.map(({ text }) => text)).toEqual(['4', 'P1', '2', '3']);
  });
});

describe('words', () => {
  test('late, tight under a working week (common practice, no source), in time, nothing to judge', () => {
    const [gate] = twoGates().readiness.gates;
    if (gate === undefined) throw new Error('no gate');
    const at = (slack: number | null) => ({ ...gate, slack, late: slack !== null && slack < 0 });
    expect([-1, 0, 4, 5, null].map((slack) => markOf(at(slack)))).toEqual([
      'fails',
      'tight',
      'tight',
      'holds',
      null,
    ]);
    expect([-1, 0, 1, 5, null].map((slack) => roomWords(at(slack), say))).toEqual([
      '1 day late',
      'no day to spare',
      '1 day to spare',
      '5 days to spare',
      'holds nothing back',
    ]);
  });

  test('chances to 5 %, never rounded to certainty', () => {
    expect([0, 0.01, 0.48, 0.999, 1].map(chanceWords)).toEqual([
      'never in the runs',
      'below 5\u00a0%',
      '50\u00a0%',
      'above 95\u00a0%',
      'in every run',
    ]);
  });

  test('where the dates come from: what is waited for, how long, what is due', () => {
    const { plan, readiness } = twoGates();
    const [artwork, labels] = plan.readiness.gates;
    expect(linesOf({ plan, gate: labels as Gate, readiness, say }).slice(0, 3)).toEqual([
      'Waits for artwork, which ends on 2026-03-13: it can begin on 2026-03-16.',
      '5 days of work, from the three figures below: it ends on 2026-03-20.',
      `${plan.accounts[0]?.name} stands on the shelf on 2026-03-16: it has to end by 2026-03-13, so to begin by 2026-03-09.`,
    ]);
    expect(linesOf({ plan, gate: artwork as Gate, readiness, say })[2]).toBe(
      'Labels has to begin by 2026-03-09: it has to end by 2026-03-06, so to begin by 2026-02-23.',
    );
  });

  test('rows go by the day they have to begin, those without one last', () => {
    const { readiness } = twoGates();
    const [artwork, labels] = readiness.gates;
    if (artwork === undefined || labels === undefined) throw new Error('no gates');
    const free = { ...artwork, id: 'free', latestStart: null };
    expect(byDay([free, labels, artwork]).map(({ id }) => id)).toEqual(['artwork', 'labels', 'free']);
  });

  test('a gate that waits for another is not offered as one that goes first', () => {
    const gates = [aGate('a', 1), aGate('b', 1, { after: ['a'] }), aGate('c', 1, { after: ['b'] })];
    expect(waitsFor(gates, 'c', 'a')).toBe(true);
    expect(waitsFor(gates, 'a', 'c')).toBe(false);
  });
});
