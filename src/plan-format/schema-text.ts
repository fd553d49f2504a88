// The plan file described as a JSON Schema (draft 2020-12), generated from the same schemas that read it, so that an
// editor or another program can check a file before the app sees it. What the rules check between fields is not in it.
// The committed plan.schema.json is this text; tests/formats compares them. Not part of the app's bundle.
// Worked example: "paymentDays" is an integer from 0 to 365, described as "a whole number of days from 0 to 365".
import * as z from 'zod/mini';
import { planSchema } from '../domain/plan/index.ts';
import { FORMAT_NAME } from './envelope.ts';

const file = z.strictObject({ format: z.literal(FORMAT_NAME), plan: planSchema });

/** The committed text: two spaces of indent, one line end at its end. */
export function schemaText(): string {
  const { $schema, ...rest } = z.toJSONSchema(file, {
    io: 'input',
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => describe(zodSchema, jsonSchema),
  });
  const title = 'A Firstfill plan file, format version 3';
  const description =
    'Money and shares are decimal text; JSON numbers are taken too. An amount has at most 4 decimals, a share at most 6.';
  return `${JSON.stringify({ $schema, title, description, ...rest }, null, 2)}\n`;
}

type Json = Parameters<
  NonNullable<NonNullable<Parameters<typeof z.toJSONSchema>[1]>['override']>
>[0]['jsonSchema'];

/** A field is described by the very words that refuse a wrong value. */
function describe(schema: z.core.$ZodType, json: Json): void {
  const words = expectedOf(schema);
  if (words === null || json.description !== undefined) return;
  json.description = words;
  if (words.startsWith('a whole number')) json.type = 'integer';
}

function expectedOf(schema: z.core.$ZodType): string | null {
  const { error } = (schema as z.core.$ZodTypes)._zod.def;
  const said = error?.({ code: 'custom', input: undefined, path: [], message: '' } as never);
  return typeof said === 'string' ? said : (said?.message ?? null);
}
