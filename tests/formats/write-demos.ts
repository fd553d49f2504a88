/** Writes every plan of demo-catalog/ anew in the order of the schema: `npx tsx tests/formats/write-demos.ts`, then `npx biome check --write demo-catalog`. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { planText } from '../../src/plan-format/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';

const folder = new URL('../../demo-catalog/', import.meta.url);

for (const name of readdirSync(folder).filter((each) => each.endsWith('.json'))) {
  const file = new URL(name, folder);
  const read = parsePlanText(readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read)}`);
  writeFileSync(file, planText(read.value));
}
