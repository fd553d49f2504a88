// The schema of one field, found by walking planSchema along a path of a plan. It answers what a field's own kind
// accepts without parsing the whole plan, and which fields an object may have.
// Worked example: at 'accounts/corner/terms' the fields are paymentDays, latenessDays, earlyDiscount, ...
import * as z from 'zod/mini';
import { planSchema } from './index.ts';
import { getAt } from './path.ts';

type Schema = z.core.$ZodType;

/** The schema that the value at `path` must fit, or null where the plan has no such field. */
export function schemaAt(plan: unknown, path: string): Schema | null {
  let schema: Schema | null = planSchema;
  const segments = path === '' ? [] : path.split('/');
  for (const [index, segment] of segments.entries()) {
    schema = childOf(schema, getAt(plan, segments.slice(0, index).join('/')), segment);
    if (schema === null) return null;
  }
  return schema;
}

/** Names of the fields that an object at `path` may have; empty where there is no object of known fields. */
export function fieldNamesAt(plan: unknown, path: string): string[] {
  const schema = schemaAt(plan, path);
  const plain = schema === null ? null : withoutWrapping(schema, getAt(plan, path));
  const def = plain === null ? null : defOf(plain);
  return def?.type === 'object' ? Object.keys(def.shape) : [];
}

/** Whether the field at `path` takes `value` by its own kind, whatever the rest of the plan says. */
export function accepts(plan: unknown, path: string, value: unknown): boolean {
  const schema = schemaAt(plan, path);
  return schema !== null && z.safeParse(schema, value).success;
}

/** What the field at `path` expects where it doesn't take `value`, in words; null where it does. */
export function expectedAt(plan: unknown, path: string, value: unknown): string | null {
  const schema = schemaAt(plan, path);
  if (schema === null) return 'a field of the plan';
  const parsed = z.safeParse(schema, value);
  return parsed.success ? null : (parsed.error.issues[0]?.message ?? 'another value');
}

function defOf(schema: Schema): z.core.$ZodTypes['_zod']['def'] {
  return (schema as z.core.$ZodTypes)._zod.def;
}

function childOf(schema: Schema, value: unknown, segment: string): Schema | null {
  const plain = withoutWrapping(schema, value);
  const def = plain === null ? null : defOf(plain);
  if (def?.type === 'array') return def.element as Schema;
  if (def?.type !== 'object' || !Object.hasOwn(def.shape, segment)) return null;
  return (def.shape[segment] as Schema | undefined) ?? null;
}

/** Nullable taken off, and of a union by kind the one option that `value` states. */
function withoutWrapping(schema: Schema, value: unknown): Schema | null {
  const def = defOf(schema);
  if (def.type === 'nullable') return withoutWrapping(def.innerType as Schema, value);
  if (def.type !== 'union') return schema;
  const key = (def as z.core.$ZodDiscriminatedUnionDef).discriminator;
  if (key === undefined) return schema;
  const stated = getAt(value, key);
  return (
    (def.options as Schema[]).find((option) => option._zod.propValues?.[key]?.has(stated as string)) ?? null
  );
}
