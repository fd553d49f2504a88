/**
 * What reckon prints of readiness, and the calendar file it prints: run as it is run from a shell, on the frozen plan that
 * has gates. Worked figure: labels 9 days of work left on 4 May, with the last order for them on 6 April: late.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { readArguments } from '../../src/reckon/arguments.ts';
import { isDay } from '../../src/reckon/readiness.ts';
import { root } from '../support/source-files.ts';
import { RECKON_TIMEOUT, ran } from '../support/spawned-reckon.ts';

const file = join(root, 'tests/formats/v3/as-it-goes.json');
const { plan } = JSON.parse(readFileSync(file, 'utf8')) as { plan: { startDate: string } };

interface Printed {
  today: string;
  state: string;
  sentence: string;
  next: { id: string } | null;
  gates: {
    id: string;
    latestStart: string | null;
    slack: number | null;
    late: boolean;
    criticalShare: string;
  }[];
  critical: string[];
  waves: {
    waveId: string;
    shelfDate: string;
    earliest: string;
    slipWeeks: number;
    slipCost: Record<string, string> | null;
  }[];
  resets: { resetId: string; chance: string }[];
}

async function readinessOf(words: string[]): Promise<Printed> {
  const { out, code } = await ran([file, ...words]);
  expect(code).toBe(0);
  return (JSON.parse(out) as { readiness: Printed }).readiness;
}

describe('reckon FILE', () => {
  test(
    'counts from the plan’s first day: nothing late; from a later day: late, moved, and what that costs',
    async () => {
      const [first, later] = await Promise.all([readinessOf([]), readinessOf(['--today', '2026-05-04'])]);
      expect(first).toMatchObject({ today: plan.startDate, state: 'inTime', next: { id: 'artwork' } });
      expect(first.waves.map(({ slipWeeks, slipCost }) => [slipWeeks, slipCost])).toEqual([
        [0, null],
        [0, null],
      ]);
      expect(first.resets).toMatchObject([{ resetId: 'spring', chance: '1.0000' }]);
      expect(later).toMatchObject({ today: '2026-05-04', state: 'late', critical: ['artwork'] });
      expect(later.gates.find(({ id }) => id === 'artwork')).toMatchObject({
        late: true,
        criticalShare: '1.0000',
      });
      // Artwork: 4 days from Monday 4 May to Thursday 7 May; ordered by Monday 6 April (5 weeks late) and 27 April (2 weeks).
      expect(later.waves.map(({ slipWeeks }) => slipWeeks)).toEqual([5, 2]);
      for (const { slipCost } of later.waves) {
        expect(Object.keys(slipCost ?? {})).toEqual([
          'cashNeed',
          'lowestCash',
          'contribution',
          'contributionPerWeek',
        ]);
        expect(slipCost?.['contribution']).toMatch(/^-\d+\.\d\d$/);
      }
      expect(later.sentence).toMatch(
        /^Next: Artwork of the label \(Ben\)\. \d late; .+ comes 5 weeks later, at .+ a week\.$/,
      );
    },
    RECKON_TIMEOUT,
  );

  test(
    '--calendar prints the calendar file, the same for the same day',
    async () => {
      const words = ['--calendar', file, '--today', '2026-03-04'];
      const [one, other] = await Promise.all([ran(words), ran(words)]);
      expect(one).toMatchObject({ code: 0, err: '' });
      expect(other.out).toBe(one.out);
      const calendar = new ICAL.Component(ICAL.parse(one.out) as unknown as string);
      const uids = calendar
        .getAllSubcomponents('vevent')
        .map((event) => String(event.getFirstPropertyValue('uid')));
      expect(uids).toContain('as-it-goes.gate.item-setup@firstfill.invalid');
      expect(uids.length).toBe(4 + 2 + 1);
    },
    RECKON_TIMEOUT,
  );
});

test.each([
  [['--today'], '--today expects a date after it'],
  [
    ['--today', '2026-02-30'],
    '--today is given "2026-02-30"; expected a date that exists, from 2020 to 2199, like 2026-03-02',
  ],
  [
    ['--today', 'tomorrow'],
    '--today is given "tomorrow"; expected a date that exists, from 2020 to 2199, like 2026-03-02',
  ],
  [['--today', '2026-03-02', '--today', '2026-03-03'], '--today is given twice'],
  [['--calendar', '--calendar'], '--calendar is given twice'],
])('%j is refused', (words, why) => {
  const read = readArguments([file, ...words]);
  expect(read.ok ? '' : read.sentence).toMatch(
    new RegExp(`^reckon: ${why.replace(/[.()]/g, '\\$&')}\\. Usage: `),
  );
});

test.each([
  ['2020-01-01', true],
  ['2024-02-29', true],
  ['2199-12-31', true],
  ['2019-12-31', false],
  ['2023-02-29', false],
  ['2026-13-01', false],
  ['2026-00-10', false],
  ['26-03-02', false],
  ['', false],
])('%s is a day: %s', (text, expected) => {
  expect(isDay(text)).toBe(expected);
});
