/**
 * The machinery of migrations, exercised with made-up ones, so that what is released never has to bend for a test.
 * A made-up format of version 3 renames a field in one step and adds one in the next.
 */
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import { fine, trouble } from '../../src/domain/problems.ts';
import { RELEASED, readPlan } from '../../src/plan-format/gate.ts';
import { type Format, isRefused, type Migration, numberingFault } from '../../src/plan-format/index.ts';

const renamed: Migration = {
  from: 1,
  what: 'stores are called doors',
  migrate: ({ stores, ...rest }) => ({ ...rest, version: 2, doors: (stores as number[]).map(String) }),
};

const added: Migration = {
  from: 2,
  what: 'a note',
  migrate: (plan) => ({ ...plan, version: 3, note: '' }),
};

/** Its check takes whatever has a note, so that only the migrations are on trial. */
const format: Format = {
  migrations: [renamed, added],
  check: (raw) =>
    'note' in (raw as object)
      ? fine(raw as Plan)
      : trouble({ code: 'field-missing', path: 'note', got: 'nothing', expected: 'a note' }),
};

describe('reading with two migrations', () => {
  test('a plan of version 1 takes both steps, in order', () => {
    const read = readPlan({ version: 1, stores: [60, 350] }, format);
    expect(read).toEqual({
      ok: true,
      value: { plan: { version: 3, doors: ['60', '350'], note: '' }, migratedFrom: 1 },
    });
  });

  test('a plan of version 2 takes the second only', () => {
    const read = readPlan({ version: 2, doors: ['60'] }, format);
    expect(read).toEqual({
      ok: true,
      value: { plan: { version: 3, doors: ['60'], note: '' }, migratedFrom: 2 },
    });
  });

  test('a plan of the newest version takes none', () => {
    const plan = { version: 3, doors: [], note: 'mine' };
    expect(readPlan(plan, format)).toEqual({ ok: true, value: { plan, migratedFrom: null } });
  });

  test('the plan as kept is not touched, not even by a migration that changes what it gets', () => {
    const rude: Migration = {
      from: 1,
      what: 'changes in place',
      migrate: (plan) => Object.assign(plan as object, { version: 2, note: '' }) as Record<string, unknown>,
    };
    const kept = Object.freeze({ version: 1 });
    expect(readPlan(kept, { ...format, migrations: [rude] }).ok).toBe(true);
    expect(kept).toEqual({ version: 1 });
  });

  test('a migrated plan is checked like any other', () => {
    const forgetful: Migration = {
      from: 1,
      what: 'forgets the note',
      migrate: (plan) => ({ ...plan, version: 2 }),
    };
    const read = readPlan({ version: 1 }, { ...format, migrations: [forgetful] });
    expect(read).toMatchObject({ ok: false, problems: [{ path: 'note' }] });
  });
});

describe('what can not be migrated', () => {
  test('a newer version is a refusal that names it and the newest one known', () => {
    const read = readPlan({ version: 4, name: 'Spring tea', doors: [] }, format);
    expect(isRefused(read) && read.refusal.code).toBe('newer-format');
    expect(isRefused(read) && read.refusal.sentence).toBe(
      'The plan "Spring tea" is of format version 4; this app reads versions up to 3. ' +
        'Nothing was changed: update the app, or keep the plan as a file.',
    );
  });

  test('an old plan with parts missing is its own problem, not a crash', () => {
    const read = readPlan({ version: 1 }, format);
    expect(read).toMatchObject({
      ok: false,
      problems: [{ code: 'not-a-plan', expected: 'a whole plan of version 1' }],
    });
  });

  test('a migration that forgets to raise the version is a bug', () => {
    const still: Migration = { from: 1, what: 'stands still', migrate: (plan) => ({ ...plan }) };
    expect(() => readPlan({ version: 1 }, { ...format, migrations: [still] })).toThrow(
      'migration 1 (stands still) gave version 1',
    );
  });

  test.each([0, -1, 1.5, '1', null, true, [1], Number.NaN])('the version %j is none', (version) => {
    const read = readPlan({ version }, format);
    expect(read).toMatchObject({
      ok: false,
      problems: [{ code: 'field-invalid', path: 'version', expected: 'a format version from 1 to 3' }],
    });
  });
});

describe('numbering', () => {
  test('without gaps from 1', () => {
    expect(numberingFault([])).toBeNull();
    expect(numberingFault([renamed, added])).toBeNull();
    expect(numberingFault([added])).toBe('migration 2 stands where 1 belongs');
    expect(numberingFault([renamed, renamed])).toBe('migration 1 stands where 2 belongs');
    expect(numberingFault(RELEASED.migrations)).toBeNull();
  });
});
