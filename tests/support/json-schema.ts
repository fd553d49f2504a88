/**
 * A zod schema as a JSON Schema (draft 2020-12) text, for the generated src/plan-format/plan.schema.json.
 * A test compares the file by `await expect(jsonSchemaText(schema)).toMatchFileSnapshot(path)`, and
 * `npx vitest run -u --project node` on that test writes it anew.
 */
import * as z from 'zod/mini';

/** What may be typed into a file is described (the input side); throws where zod has no JSON Schema for a part. */
export function jsonSchemaText(schema: z.ZodMiniType, about: { title: string; description: string }): string {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' });
  return `${JSON.stringify({ $schema, ...about, ...rest }, null, 2)}\n`;
}
