/**
 * `reckon --help` names every key that is printed, on the demo plans and on the fullest frozen plan; and what reckon
 * prints holds no number that is not whole: fractions are texts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { TERM_NOTES } from '../../src/domain/talks/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { HELP } from '../../src/reckon/help.ts';
import { outputOf } from '../../src/reckon/output.ts';
import { rangeText } from '../../src/reckon/range.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { talksOf } from '../../src/reckon/talks.ts';
import { root } from '../support/source-files.ts';
import { RECKON_TIMEOUT, ran } from '../support/spawned-reckon.ts';

const files = [
  ...readdirSync(join(root, 'demo-catalog'))
    .filter((name) => name.endsWith('.json'))
    .map((name) => `demo-catalog/${name}`),
  'tests/formats/v2/whole.json',
  'tests/formats/v3/as-it-goes.json',
];

function outputFor(file: string): { output: unknown; ids: ReadonlySet<string> } {
  const parsed = parsePlanText(readFileSync(join(root, file), 'utf8'));
  if (!parsed.ok) throw new Error(`${file} is no plan`);
  const plan = parsed.value;
  const results = evaluate(plan, sayFor);
  if (!results.ok) throw new Error(`${file} can't be computed`);
  const { output } = outputOf({ plan, results: results.value, weeks: true, journal: true });
  const [account] = plan.accounts;
  if (!account) return { output, ids: new Set() };
  const asks = [{ term: 'margin', value: 0.45 }];
  const talks = talksOf(plan, { deal: account.id, asks, target: { by: 'presentValue', yearlyRate: '0.1' } });
  if (!talks.ok) throw new Error(talks.sentences.join(' '));
  return {
    output: {
      ...output,
      ...talks.value,
      range: rangeText(plan, results.value, { draws: 100, seed: 1 }),
    },
    ids: new Set([...plan.items, ...plan.accounts].map(({ id }) => id)),
  };
}

type Visit = (key: string, value: unknown, path: string) => void;

function walk(value: unknown, visit: Visit, path = ''): void {
  if (typeof value !== 'object' || value === null) return;
  for (const [key, each] of Object.entries(value)) {
    const here = `${path}/${key}`;
    visit(key, each, here);
    walk(each, visit, here);
  }
}

describe.each(files)('%s', (file) => {
  const { output, ids } = outputFor(file);

  test('prints no key that help does not name', () => {
    const unnamed = new Set<string>();
    walk(output, (key, _, path) => {
      // Places of lists are numbers; under weeks, units, doors and units held back go by the ids of items and accounts.
      if (/^\d+$/.test(key) || (ids.has(key) && /\/weeks\/\d+\/(?:units|doors|heldBack)\/[^/]+$/.test(path)))
        return;
      // a tag is named by its item where there are several: "shelf:ITEM"
      const name = key.startsWith('shelf:') ? 'shelf:ITEM' : key;
      if (!new RegExp(`\\b${name}\\b`).test(HELP)) unnamed.add(path);
    });
    expect([...unnamed]).toEqual([]);
  });

  test('prints fractions as texts, and nothing that is no figure', () => {
    const odd: string[] = [];
    walk(output, (_, value, path) => {
      if (typeof value === 'number' && !Number.isInteger(value)) odd.push(path);
      if (value === undefined || (typeof value === 'string' && /NaN|Infinity|\de[+-]?\d/.test(value)))
        odd.push(path);
    });
    expect(odd).toEqual([]);
  });
});

test(
  '--help prints the same, with code 0, whatever stands beside it',
  async () => {
    const [alone, beside] = await Promise.all([
      ran(['--help']),
      ran(['--weeks', '--help', 'no-such-file.json']),
    ]);
    expect(alone).toEqual({ code: 0, out: HELP, err: '' });
    expect(beside).toEqual(alone);
  },
  RECKON_TIMEOUT,
);

test('help names every term, with its unit', () => {
  expect(TERM_NOTES.length).toBeGreaterThan(10);
  for (const { name } of TERM_NOTES) {
    expect(HELP).toMatch(new RegExp(`^${name} +(share|amount|days|weeks|cases|doors): \\w`, 'm'));
  }
});

test('help names the exit codes and fits a terminal', () => {
  expect(HELP).toMatch(/Exit: 0 computed; 1 .*; 2 /s);
  expect(HELP.split('\n').filter((line) => line.length > 120)).toEqual([]);
});
