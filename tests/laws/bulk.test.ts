/**
 * Bulk tables: what a plan writes changes nothing when it is read, in either decimal mark; what is set by a table is what is
 * read back from the plan; a text of any kind is read to its end.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCsv, type Separator, writeCsv } from '../../src/domain/bulk/csv.ts';
import { readBulk, writeBulk } from '../../src/domain/bulk/index.ts';
import { BULK_TABLES } from '../../src/domain/bulk/types.ts';
import { doorsByWeek, wavesOf } from '../../src/domain/bulk/waves.ts';
import { plainLook } from '../../src/domain/money/look.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { setAt } from '../../src/domain/plan/path.ts';
import { checkPlan } from '../../src/plan-format/check.ts';
import { arbitraryPlan } from '../support/arbitrary-plan.ts';
import { aPlan } from '../support/builders.ts';

const point = plainLook({ currency: 'USD', minorDigits: 2 });
const comma = { ...point, decimal: ',', group: '.' };

/** Names of every sort, some of them shared, some another's id. */
const names = fc.oneof(
  fc.constantFrom('Corner', 'corner ', 'item1', 'account2', '=1+1', "'quoted", '-', 'a "b"; c, d', 'x\ny'),
  fc.string({ minLength: 1, maxLength: 20 }).filter((name) => /\S/.test(name)),
);

const namedPlan = fc
  .record({ plan: arbitraryPlan(), own: fc.array(names, { minLength: 8, maxLength: 8 }) })
  .map(
    ({ plan, own }): Plan => ({
      ...plan,
      items: plan.items.map((item, at) => ({ ...item, name: own[at] ?? item.name })),
      accounts: plan.accounts.map((account, at) => ({ ...account, name: own[at + 3] ?? account.name })),
    }),
  );

test('a plan’s own tables change nothing', { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(
      namedPlan,
      fc.constantFrom(point, comma),
      fc.constantFrom<Separator>(',', ';', '\t'),
      (plan, look, separator) => {
        for (const table of BULK_TABLES) {
          const text = writeBulk({ table, plan, look }, separator);
          const reading = readBulk({ table, text, plan, look });
          expect(reading.problems).toEqual([]);
          expect(reading.fields).toEqual([]);
          expect(reading.changes).toEqual([]);
        }
      },
    ),
    { numRuns: 100 },
  );
});

test('doors set by a table are the doors of the plan after it, which is sound', { timeout: 60_000 }, () => {
  const rows = fc.uniqueArray(
    fc.record({ week: fc.integer({ min: 0, max: 60 }), doors: fc.integer({ min: 0, max: 80 }) }),
    {
      selector: ({ week }) => week,
      maxLength: 30,
    },
  );
  fc.assert(
    fc.property(arbitraryPlan(), rows, (plan, said) => {
      const [account] = plan.accounts;
      if (!account) return;
      const { depot, ordering, terms } = account;
      // What leaves at the end of a depot's first order week has both ways to go.
      const through = depot === null ? 0 : ordering.firstWeek + 1 + depot.transitWeeks;
      const fits = said.filter(
        ({ week }) => week >= through + terms.transitWeeks && week < plan.horizonWeeks,
      );
      const lines = fits.map(({ week, doors }) => `${account.id},${week},${doors}`);
      const reading = readBulk({
        table: 'doors',
        text: ['account,week,doors', ...lines].join('\n'),
        plan,
        look: point,
      });
      if (reading.problems.length > 0) {
        // Nothing but the plan's own rules may refuse them: the week it is taken off, closings of doors that aren't there.
        expect(reading.problems.every(({ line }) => line === null)).toBe(true);
        return;
      }
      const after = reading.fields.reduce((next, { path, value }) => setAt(next, path, value), plan);
      expect(checkPlan(after).ok).toBe(true);
      const now = doorsByWeek(after.accounts[0]?.waves ?? []);
      const before = doorsByWeek(account.waves);
      for (const { week, doors } of fits) before.set(week, doors);
      for (const week of new Set([...now.keys(), ...before.keys()])) {
        expect(now.get(week) ?? 0).toBe(before.get(week) ?? 0);
      }
    }),
    { numRuns: 100 },
  );
});

test('waves made of weeks open those doors, no wave more than there are runs of weeks', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 4 }), { maxLength: 40 }), (doors) => {
      const weeks = new Map(doors.map((count, week) => [week, count]));
      const waves = wavesOf(weeks, []);
      const back = doorsByWeek(waves);
      expect(doors.map((_, week) => back.get(week) ?? 0)).toEqual(doors);
      const runs = doors.filter((count, week) => count > 0 && count !== doors[week - 1]).length;
      expect(waves.length).toBeLessThanOrEqual(runs);
      expect(new Set(waves.map(({ id }) => id)).size).toBe(waves.length);
    }),
  );
});

test('cells come back from text as they were', () => {
  const table = fc.array(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), {
    minLength: 1,
    maxLength: 8,
  });
  fc.assert(
    fc.property(table, fc.constantFrom<Separator>(',', ';', '\t'), (rows, separator) => {
      // A first line of our own says what separates; a row of nothing is no row.
      const head = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j', 'k'];
      const read = readCsv(writeCsv([head, ...rows], separator));
      const kept = rows.filter((row) => row.some((cell) => cell.trim() !== ''));
      expect(read.rows.slice(1).map((row) => row.map(({ text }) => text))).toEqual(kept);
      expect(read.faults).toEqual([]);
    }),
  );
});

test('any text is read to its end', () => {
  fc.assert(
    fc.property(
      fc.constant(aPlan()),
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.constantFrom(...BULK_TABLES),
      (plan, text, table) => {
        const reading = readBulk({ table, text, plan, look: point });
        expect(reading.fields.length === 0 || reading.problems.length === 0).toBe(true);
      },
    ),
    { numRuns: 200 },
  );
});
