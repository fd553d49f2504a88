/**
 * The committed JSON Schema is the one that the schemas give today, and describes the frozen examples: every field of
 * the fullest one is found in it, and no other is allowed.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { schemaText } from '../../src/plan-format/schema-text.ts';
import { exampleText } from '../problems/plan-cases.ts';

interface Schema {
  type?: string | string[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean;
  items?: Schema;
  oneOf?: Schema[];
  anyOf?: Schema[];
  const?: unknown;
  enum?: unknown[];
  description?: string;
  minimum?: number;
  maximum?: number;
}

const committed = JSON.parse(
  readFileSync(new URL('../../src/plan-format/plan.schema.json', import.meta.url), 'utf8'),
) as Schema;

test('plan.schema.json is current', () => {
  expect(
    committed,
    'src/plan-format/plan.schema.json is behind the schemas: npx tsx tests/formats/write-schema.ts, then npx biome check --write src/plan-format',
  ).toEqual(JSON.parse(schemaText()));
});

test.each(['small', 'by-hand', 'whole'])('every value of the example %s fits it', (name) => {
  expect(misfits(committed, JSON.parse(exampleText(name)), '')).toEqual([]);
});

test('a wrong value, a missing and an unknown field do not fit it', () => {
  const file = JSON.parse(exampleText('small')) as { plan: Record<string, unknown> };
  const { name: _, ...rest } = file.plan;
  const plan = { ...rest, horizonWeeks: 'long', colour: 'red' };
  expect(misfits(committed, { ...file, plan }, '')).toEqual([
    '/plan/name',
    '/plan/horizonWeeks',
    '/plan/colour',
  ]);
});

test('fields are described by the words that refuse them', () => {
  const plan = committed.properties?.['plan'];
  expect(plan?.properties?.['horizonWeeks']).toEqual({
    type: 'integer',
    minimum: 4,
    maximum: 260,
    description: 'a whole number of weeks from 4 to 260',
  });
});

/** As much of JSON Schema (draft 2020-12) as the file uses: paths of the values that don't fit. */
function misfits(schema: Schema, value: unknown, path: string): string[] {
  const options = schema.oneOf ?? schema.anyOf;
  if (options) {
    const each = options.map((option) => misfits(option, value, path));
    return (
      each.find((faults) => faults.length === 0) ?? each.sort((a, b) => a.length - b.length)[0] ?? [path]
    );
  }
  if ('const' in schema && schema.const !== value) return [path];
  if (schema.enum && !schema.enum.includes(value)) return [path];
  if (schema.type && ![schema.type].flat().some((type) => isOf(type, value))) return [path];
  if (typeof value === 'number' && (value < (schema.minimum ?? value) || value > (schema.maximum ?? value)))
    return [path];
  if (Array.isArray(value))
    return value.flatMap((each, index) => misfits(schema.items ?? {}, each, `${path}/${index}`));
  if (typeof value !== 'object' || value === null) return [];
  return fieldMisfits(schema, value as Record<string, unknown>, path);
}

function fieldMisfits(schema: Schema, value: Record<string, unknown>, path: string): string[] {
  const missing = (schema.required ?? [])
    .filter((key) => !Object.hasOwn(value, key))
    .map((key) => `${path}/${key}`);
  const own = Object.entries(value).flatMap(([key, each]) => {
    const field = schema.properties?.[key];
    if (field) return misfits(field, each, `${path}/${key}`);
    return schema.additionalProperties === false ? [`${path}/${key}`] : [];
  });
  return [...missing, ...own];
}

function isOf(type: string, value: unknown): boolean {
  if (type === 'null') return value === null;
  if (type === 'array') return Array.isArray(value);
  if (type === 'integer') return Number.isInteger(value);
  if (type === 'object') return typeof value === 'object' && value !== null && !Array.isArray(value);
  return typeof value === type;
}
