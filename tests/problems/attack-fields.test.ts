/**
 * Every field of every demo plan, one after the other, is left out and replaced by twenty things: nothing, words, numbers
 * that are too small, too large, too fine, of the wrong kind. Whatever comes, the answer is results whose books balance, or
 * problems in words. All of them are checked; of those that are plans again, a fixed draw is computed.
 */
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import { FORMAT_VERSION } from '../../src/plan-format/index.ts';
import {
  answerOf,
  answerTo,
  changed,
  demoFile,
  demoNames,
  draws,
  faultsOf,
  type Key,
  placesOf,
} from '../support/attack.ts';

const SEED = 20_260_302;
/** Of each demo. */
const COMPUTED = 60;
const AS_TEXT = 150;

const SUBSTITUTES: readonly (readonly [what: string, value: unknown])[] = [
  ['nothing', undefined],
  ['null', null],
  ['an empty text', ''],
  ['a word', 'abc'],
  ['"NaN"', 'NaN'],
  ['"1e9"', '1e9'],
  ['-1', -1],
  ['"-1"', '-1'],
  ['0', 0],
  ['"0"', '0'],
  ['"-0"', '-0'],
  ['1.5', 1.5],
  ['"0.999999"', '0.999999'],
  ['100', 100],
  ['"1000000"', '1000000'],
  ['1e308', 1e308],
  ['twenty digits', '99999999999999999999'],
  ['ten decimals', '1.0000000001'],
  ['true', true],
  ['an empty list', []],
  ['an empty object', {}],
  ['ten thousand letters', 'x'.repeat(10_000)],
];

describe.each(demoNames)('%s', (name) => {
  const { plan } = demoFile(name);
  const places = onePerKind(placesOf(plan));
  const computable: [what: string, plan: Plan][] = [];

  test('every field, every substitute: a plan, or problems in words', () => {
    expect(places.length).toBeGreaterThan(100);
    const faults: string[] = [];
    for (const keys of places) {
      for (const [what, value] of SUBSTITUTES) {
        const where = `${keys.join('/')} as ${what}`;
        const checked = checkPlan(changed(plan, keys, value));
        if (checked.ok && value !== 'NaN') computable.push([where, checked.value]);
        if (!checked.ok) faults.push(...faultsOf(checked).map((fault) => `${where}: ${fault}`));
      }
    }
    expect(faults.slice(0, 10)).toEqual([]);
    expect(computable.length).toBeGreaterThan(COMPUTED);
  }, 180_000); // twelve chains have a thousand fields

  test(`${COMPUTED} of the plans among them (seed ${SEED}) are computed, or are problems in words`, () => {
    const faults = drawn(computable, COMPUTED).flatMap(([where, spoiled]) =>
      faultsOf(answerOf(spoiled)).map((fault) => `${where}: ${fault}`),
    );
    expect(faults.slice(0, 10)).toEqual([]);
  }, 60_000);

  test(`${AS_TEXT} of all (seed ${SEED}) come as the text of a file`, () => {
    const all = places.flatMap((keys) =>
      // A name may well be "NaN": it is looked at by the check of every field, not among the figures.
      SUBSTITUTES.filter(([, value]) => value !== 'NaN' && !isLaterVersion(keys, value)).map(
        (substitute) => [keys, ...substitute] as const,
      ),
    );
    const faults = drawn(all, AS_TEXT).flatMap(([keys, what, value]) => {
      const file = changed(demoFile(name), ['plan', ...keys], value);
      return faultsOf(answerTo(JSON.stringify(file))).map(
        (fault) => `${keys.join('/')} as ${what}: ${fault}`,
      );
    });
    expect(faults.slice(0, 10)).toEqual([]);
  }, 60_000);
});

test('the envelope too', () => {
  const file = demoFile(demoNames[0] ?? '');
  const faults = [['format'], ['plan'], ['plan', 'version']].flatMap((keys) =>
    SUBSTITUTES.flatMap(([what, value]) => {
      if (isLaterVersion(keys, value)) return [];
      const answer = answerTo(JSON.stringify(changed(file, keys, value)));
      return faultsOf(answer).map((fault) => `${keys.join('/')} as ${what}: ${fault}`);
    }),
  );
  expect(faults).toEqual([]);
});

/** A version this app can't read yet is a refusal, not a problem. */
function isLaterVersion(keys: readonly Key[], value: unknown): boolean {
  return keys.at(-1) === 'version' && Number.isInteger(value) && Number(value) > FORMAT_VERSION;
}

/** Of fields that differ by their place in a list alone, the first two: a plan of eight shops has the same field eight times. */
function onePerKind(all: readonly Key[][]): Key[][] {
  const seen = new Map<string, number>();
  return all.filter((keys) => {
    const kind = keys.map((key) => (typeof key === 'number' ? '*' : key)).join('/');
    const count = seen.get(kind) ?? 0;
    seen.set(kind, count + 1);
    return count < 2;
  });
}

function drawn<T>(all: readonly T[], count: number): T[] {
  const next = draws(SEED);
  return Array.from({ length: count }, () => all[Math.floor(next() * all.length)] as T);
}
