/** Writes src/plan-format/plan.schema.json anew: `npx tsx tests/formats/write-schema.ts`, after a change of the schemas. */
import { writeFileSync } from 'node:fs';
import { schemaText } from '../../src/plan-format/schema-text.ts';

writeFileSync(new URL('../../src/plan-format/plan.schema.json', import.meta.url), schemaText());
