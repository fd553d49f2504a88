/**
 * The calendar file, parsed back by an independent library (ical.js): what was planned is what a calendar reads. Folding and
 * escaping against RFC 5545, on names with commas, semicolons, line breaks and letters of several octets.
 */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/domain/calendar.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { contentLine, escaped } from '../../src/domain/readiness/ical-text.ts';
import { calendarOf, readinessFor } from '../../src/domain/readiness/index.ts';
import { arbitraryPlan, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { aGate, gated } from '../support/gates.ts';

const NAME = 'Labels, proof; "final"\nÄnderung – 日本語 '.repeat(4);

function textOf(plan: Plan, { stamp = '2026-03-03T09:30:15Z', owner = null as string | null } = {}): string {
  return calendarOf({ plan, readiness: readinessFor(plan, '2026-03-03'), stamp, owner });
}

function eventsOf(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown as string);
  return calendar.getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
}

const plan = gated(
  [
    aGate('numbers', 2, { state: { is: 'done', date: '2026-02-20' }, owner: 'Ana' }),
    aGate('labels', 5, {
      name: NAME,
      after: ['numbers'],
      owner: 'Ana',
      evidence: 'Shelf 2; box A, left\nat the back',
    }),
    aGate('tests', 30, { name: 'Tests', owner: 'Ben' }),
  ],
  { resets: [{ id: 'spring', label: 'Spring reset', date: '2026-03-30', accountId: 'corner' }] },
);

describe('parsed back', () => {
  const text = textOf(plan);
  const events = eventsOf(text);
  const named = (part: string) => events.find(({ uid }) => uid.includes(part));

  test('every gate, opening and reset is an event, by a UID of its own', () => {
    expect(events.map(({ uid }) => uid)).toEqual([
      'plan.gate.numbers@firstfill.invalid',
      'plan.gate.labels@firstfill.invalid',
      'plan.gate.tests@firstfill.invalid',
      'plan.wave.corner.first@firstfill.invalid',
      'plan.reset.spring@firstfill.invalid',
    ]);
  });

  test('names and evidence come back letter by letter', () => {
    expect(named('labels')?.summary).toBe(NAME);
    expect(named('labels')?.description).toContain('Shown by: Shelf 2; box A, left\nat the back');
    expect(named('labels')?.description).toContain('After: numbers.');
  });

  test('days are the latest window; the end is the day after the last', () => {
    const labels = readinessFor(plan, '2026-03-03').gates[1];
    expect(named('labels')?.startDate.toString()).toBe(labels?.latestStart);
    expect(named('labels')?.endDate.toString()).toBe(addDays(labels?.latestFinish ?? '', 1));
    expect(named('labels')?.startDate.isDate).toBe(true);
  });

  test('what is late stands where its work is, and says so', () => {
    expect(named('tests')?.startDate.toString()).toBe('2026-03-03');
    expect(named('tests')?.summary).toBe('Late: Tests');
    expect(named('tests')?.description).toMatch(/^Late by \d+ working days\. Latest start was 2026-/);
  });

  test('what is done is cancelled, so that calendars take it out', () => {
    expect(named('numbers')?.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(named('labels')?.component.getFirstPropertyValue('status')).toBe('CONFIRMED');
  });

  test('reminders a week and a day before', () => {
    const alarms = named('labels')?.component.getAllSubcomponents('valarm') ?? [];
    expect(alarms.map((alarm) => String(alarm.getFirstPropertyValue('trigger')))).toEqual(['-P7D', '-P1D']);
    expect(alarms[0]?.getFirstPropertyValue('action')).toBe('DISPLAY');
  });

  test('RFC 5545, 3.1: lines end with CRLF and have at most 75 octets', () => {
    const lines = text.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(text.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map((line) => new TextEncoder().encode(line).length))).toBeLessThanOrEqual(75);
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
  });

  test('a file made later replaces it: the same UIDs, a higher sequence', () => {
    const later = eventsOf(textOf(plan, { stamp: '2026-03-03T09:31:15Z' }));
    expect(later.map(({ uid }) => uid)).toEqual(events.map(({ uid }) => uid));
    later.forEach((event, at) => {
      expect(event.sequence).toBe((events[at]?.sequence ?? 0) + 1);
    });
    expect(events[0]?.sequence).toBeLessThan(2 ** 31);
  });

  test('of one owner: the gates of that owner', () => {
    const own = eventsOf(textOf(plan, { owner: 'Ben' }));
    expect(own.map(({ uid }) => uid)).toEqual(['plan.gate.tests@firstfill.invalid']);
  });
});

test('any text comes back (RFC 5545, 3.3.11)', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (any) => {
      const expected = [...any.replace(/\r\n|\r/g, '\n')].filter((sign) => !isControl(sign)).join('');
      const line = contentLine('SUMMARY', escaped(any));
      const text = `BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n${line}END:VEVENT\r\nEND:VCALENDAR\r\n`;
      expect(eventsOf(text)[0]?.summary ?? '').toBe(expected);
    }),
    { seed: PLAN_SEED },
  );
});

test('files of random plans are read, event by event', () => {
  fc.assert(
    fc.property(arbitraryPlan(), (random) => {
      const stamp = `${random.startDate}T00:00:00Z`;
      const readiness = readinessFor(random, random.startDate);
      const events = eventsOf(calendarOf({ plan: random, readiness, stamp, owner: null }));
      const waves = random.accounts.flatMap((account) => account.waves).length;
      const { gates, resets } = random.readiness;
      expect(events.length).toBe(gates.length + waves + resets.length);
      expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
      for (const event of events) expect(event.endDate.compare(event.startDate)).toBe(1);
    }),
    { seed: PLAN_SEED, numRuns: 40 },
  );
});

/** Signs that RFC 5545 leaves no place for (3.1, CONTROL); line break and tab aside. */
function isControl(sign: string): boolean {
  const code = sign.charCodeAt(0);
  return (code < 0x20 && code !== 0x0a && code !== 0x09) || code === 0x7f;
}
