/**
 * A frozen plan of every format version opens, and is the same plan when it is written and read again. A change of the
 * stored shape adds one migration, one folder of examples here, and one line in the migration list: this file fails when
 * any of the three is missing.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planSchema } from '../../src/domain/plan/index.ts';
import { FORMAT_VERSION, MIGRATIONS, numberingFault, planText } from '../../src/plan-format/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';

const here = new URL('./', import.meta.url);
const versions = readdirSync(here, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  .sort();

test('every format version has its frozen examples', () => {
  expect(versions).toEqual(Array.from({ length: FORMAT_VERSION }, (_, index) => `v${index + 1}`));
});

test('every migration has a file of its own, numbered without gaps', () => {
  expect(numberingFault(MIGRATIONS)).toBeNull();
  const files = readdirSync(new URL('../../src/plan-format/migrations/', here)).filter((name) =>
    /^\d/.test(name),
  );
  const numbers = files.sort().map((name) => Number(name.slice(0, 4)));
  expect(numbers).toEqual(MIGRATIONS.map(({ from }) => from));
});

test("the schema is the newest version's", () => {
  const { version } = planSchema.shape;
  expect(version.safeParse(FORMAT_VERSION).success).toBe(true);
  expect(version.safeParse(FORMAT_VERSION + 1).success).toBe(false);
});

describe.each(versions)('%s', (version) => {
  const folder = new URL(`./${version}/`, here);
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));

  test('has examples', () => {
    expect(names.length).toBeGreaterThan(0);
  });

  test.each(names)('%s opens, and is the same after export and import', (name) => {
    const read = parsePlanText(readFileSync(new URL(name, folder), 'utf8'));
    if (!read.ok) throw new Error(JSON.stringify(read));
    expect(read.value.version).toBe(FORMAT_VERSION);
    const again = parsePlanText(planText(read.value));
    expect(again).toEqual(read);
    expect(again.ok && planText(again.value)).toBe(planText(read.value));
  });

  test.each(names)('%s says its own version', (name) => {
    const { plan } = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as { plan: { version: number } };
    expect(`v${plan.version}`).toBe(version);
  });
});

test('amounts written as JSON numbers are the plan written as texts', () => {
  const numbers = read('v1/by-hand.json');
  const texts = read('v1/small.json');
  expect({ ...numbers, id: texts.id, name: texts.name }).toEqual({
    ...texts,
    items: texts.items.map((item) => ({
      ...item,
      costLines: [{ ...item.costLines[0], rule: { by: 'unit', amount: '1.4' } }],
    })),
  });
});

function read(name: string) {
  const plan = parsePlanText(readFileSync(new URL(name, here), 'utf8'));
  if (!plan.ok) throw new Error(JSON.stringify(plan));
  return plan.value;
}
