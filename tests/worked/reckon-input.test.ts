/**
 * reckon given what it can't use: wrong words on the command line, files that are none, texts that are no plan, pipes that
 * are slow, closed or full. Each ends with its code and one clear sentence, and never with a stack trace.
 */

import { spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readArguments } from '../../src/reckon/arguments.ts';
import { readInput } from '../../src/reckon/input.ts';
import { root } from '../support/source-files.ts';
import {
  codeOf,
  linesOf,
  type Ran,
  RECKON_TIMEOUT,
  ran,
  started,
  textOf,
} from '../support/spawned-reckon.ts';

const demo = join(root, 'demo-catalog/pays-but-runs-dry.json');
const demoText = readFileSync(demo, 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'reckon-'));
const USAGE =
  'Usage: reckon FILE [--weeks] [--journal] [--calendar] [--today DATE] [--deal ID [--ask TERM=VALUE]... [--target TARGET]] [--range DRAWS [--seed N]], or reckon --help.';

let plain: Ran;

beforeAll(async () => {
  plain = await ran([demo]);
}, RECKON_TIMEOUT);

afterAll(() => {
  rmSync(folder, { recursive: true });
});

function fileOf(name: string, content: string | Buffer): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const timed = { timeout: RECKON_TIMEOUT };

describe('bad usage: code 2, nothing on standard output, one sentence', () => {
  const talk = [demo, '--deal', 'tarrowby', '--ask'];
  const options =
    'there are --weeks, --journal, --calendar, --today, --deal, --ask, --target, --range, --seed, --help';
  const words: readonly (readonly [what: string, args: readonly string[], says: string])[] = [
    ['an empty word', [''], 'a plan file is expected, or - for standard input'],
    ['a short option', ['-w', demo], `"-w" is not an option; ${options}`],
    ['an option with a value', ['--weeks=yes', demo], `"--weeks=yes" is not an option; ${options}`],
    ['two hyphens', ['--', demo], `"--" is not an option; ${options}`],
    ['an option twice', ['--weeks', demo, '--weeks'], '--weeks is given twice'],
    ['two files', ['a.json', 'b.json'], 'one plan file is expected, 2 came: "a.json", "b.json"'],
    ['a file and standard input', ['a.json', '-'], 'one plan file is expected, 2 came: "a.json", "-"'],
    [
      'an ask of no account',
      [demo, '--ask', 'margin=0.4'],
      '--ask is given without --deal, the account it is about',
    ],
    ['an account that is left out', [demo, '--deal'], '--deal expects the id of an account after it'],
    ['an account twice', [demo, '--deal', 'a', '--deal', 'b'], '--deal is given twice'],
    ['a term twice', [...talk, 'margin=0.4', '--ask', 'margin=0.5'], '--ask names margin twice'],
    ['no value', [...talk, 'margin'], '--ask "margin" is not TERM=VALUE, like margin=0.42'],
    ['a bad value', [...talk, 'margin=.4'], '--ask margin is given ".4"; expected a share, like 0.42 or 42%'],
    [
      'a share of money',
      [...talk, 'slotting=5%'],
      '--ask slotting is given "5%"; expected an amount, like 250',
    ],
    [
      'an unknown target',
      [demo, '--deal', 'tarrowby', '--target', 'most'],
      '--target is given "most"; expected firstYear, payback or presentValue=RATE, like presentValue=0.1',
    ],
  ];
  test.each(words)('%s', (_, args, says) => {
    expect(readArguments(args)).toEqual({ ok: false, sentence: `reckon: ${says}. ${USAGE}` });
  });

  const unread = (path: string, why: string) =>
    `reckon: ${JSON.stringify(path)} can't be read: ${why}; expected the path of a plan file, or - for standard input.`;
  const missing = join(folder, 'no-such-file.json');
  const runs: readonly (readonly [what: string, args: readonly string[], says: string])[] = [
    ['nothing at all', [], `reckon: a plan file is expected, or - for standard input. ${USAGE}`],
    ['an unknown option', [demo, '--week'], `reckon: "--week" is not an option; ${options}. ${USAGE}`],
    ['a missing file', [missing], unread(missing, 'there is no such file')],
    ['a folder', [folder], unread(folder, 'it is a folder')],
  ];
  test.each(runs)('%s', timed, async (_, args, says) => {
    expect(await ran(args)).toEqual({ code: 2, out: '', err: `${says}\n` });
  });

  test('a file as a folder', async () => {
    const path = join(demo, 'x.json');
    const sentence = unread(path, 'there is no such file');
    expect(await readInput(path)).toEqual({ ok: false, isUsage: true, sentence });
  });

  test.skipIf(process.getuid?.() === 0)('a file nobody may read', async () => {
    const path = fileOf('secret.json', demoText);
    chmodSync(path, 0);
    const sentence = unread(path, 'permission is denied');
    expect(await readInput(path)).toEqual({ ok: false, isUsage: true, sentence });
  });
});

describe('no plan: code 1, nothing on standard output, one sentence', () => {
  const bare = JSON.stringify((JSON.parse(demoText) as { plan: unknown }).plan);
  const cases: readonly (readonly [what: string, content: string | Buffer, says: RegExp])[] = [
    ['an empty file', '', /^The plan: got an empty file; expected a plan file, written in JSON\.$/],
    [
      'bytes',
      Buffer.from([0, 159, 255]),
      /^reckon: standard input is not text in UTF-8; expected a plan file/,
    ],
    [
      'five million letters',
      'garbage '.repeat(625_000),
      /^The plan: got "garbage" at line 1, column 1; expected a value\.$/,
    ],
    [
      'a plan without its object',
      bare,
      /^The plan: got a plan without the object around it; expected \{"format": "firstfill-plan", "plan": /,
    ],
    [
      'a newer format',
      demoText.replace('"version": 3', '"version": 7'),
      /is of format version 7; this app reads versions up to 3\./,
    ],
    [
      'a margin of 120 %',
      demoText.replace('"0.38"', '"1.2"'),
      /^accounts\/tarrowby\/hands\/tarrowby\/rule\/rate: got "1\.2"; expected a share from 0 to below 1 /,
    ],
  ];
  test.each(cases)('%s', timed, async (_, content, says) => {
    const { code, out, err } = await ran(['-'], content);
    expect([code, out]).toEqual([1, '']);
    expect(linesOf(err)).toHaveLength(1);
    expect(err.trimEnd()).toMatch(says);
  });

  test.each([
    ['a name in Latin-1', Buffer.from(demoText.replace('Quillmoor', 'Märkte'), 'latin1')],
    ['UTF-16', Buffer.from(`\uFEFF${demoText}`, 'utf16le')],
  ])('%s', async (_, content) => {
    const path = fileOf('other-text.json', content);
    const sentence = `reckon: ${JSON.stringify(path)} is not text in UTF-8; expected a plan file, JSON in UTF-8.`;
    expect(await readInput(path)).toEqual({ ok: false, isUsage: false, sentence });
  });

  test.skipIf(!existsSync('/dev/zero'))('an endless file is left', timed, async () => {
    const sentence =
      'reckon: "/dev/zero" is far too long; expected a plan file, at most 20 million characters.';
    expect(await readInput('/dev/zero')).toEqual({ ok: false, isUsage: false, sentence });
  });

  test('every problem has a line of its own, said once', timed, async () => {
    const text = demoText
      .replace('"horizonWeeks": 78', '"horizonWeeks": 0')
      .replace('"currency": "USD"', '"currency": "usd"');
    const { code, err } = await ran(['-'], text);
    expect(code).toBe(1);
    expect(linesOf(err)).toEqual([
      'currency: got "usd"; expected a currency code of ISO 4217, like "USD".',
      'horizonWeeks: got 0; expected a whole number of weeks from 4 to 260.',
    ]);
  });
});

describe('the same plan, written otherwise: the same answer', () => {
  test('with a byte order mark and carriage returns', timed, async () => {
    const text = `\uFEFF${demoText.replaceAll('\n', '\r\n')}`;
    expect(await ran([fileOf('marked.json', text)])).toEqual(plain);
  });

  test('with amounts and rates as JSON numbers', timed, async () => {
    const numbers = JSON.parse(demoText, (key, value: unknown) =>
      typeof value === 'string' && /^\d+(?:\.\d+)?$/.test(value) && key !== 'id' ? Number(value) : value,
    );
    expect(JSON.stringify(numbers)).not.toBe(JSON.stringify(JSON.parse(demoText)));
    expect(await ran(['-'], JSON.stringify(numbers))).toEqual(plain);
  });
});

describe('pipes', () => {
  test('a plan that comes in slowly is waited for', timed, async () => {
    const child = started(['-']);
    const [out, err] = [textOf(child.stdout), textOf(child.stderr)];
    for (const part of [demoText.slice(0, 100), demoText.slice(100, 9000), demoText.slice(9000)]) {
      child.stdin?.write(part);
      await new Promise((resolve) => setTimeout(resolve, 1500));
    }
    child.stdin?.end();
    expect({ code: await codeOf(child), out: await out, err: await err }).toEqual(plain);
  });

  test('a reader that leaves after the first lines ends it quietly', timed, async () => {
    const child = started([demo, '--weeks', '--journal']);
    const err = textOf(child.stderr);
    child.stdout?.once('data', () => child.stdout?.destroy());
    expect(await codeOf(child)).toBe(0);
    expect(await err).toBe(plain.err);
  });

  test('a reader that takes its time gets all of it', timed, async () => {
    const child = started([join(root, 'demo-catalog/third-chain.json'), '--weeks', '--journal']);
    await new Promise((resolve) => setTimeout(resolve, 4000));
    const out = await textOf(child.stdout);
    expect(out.length).toBeGreaterThan(500_000);
    expect(() => JSON.parse(out)).not.toThrow();
    expect(out.endsWith('}\n')).toBe(true);
  });

  test.skipIf(!existsSync('/dev/full'))('a disk without room is said so', timed, async () => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/reckon.ts', demo], {
      cwd: root,
      stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
    });
    const err = textOf(child.stderr);
    expect(await codeOf(child)).toBe(2);
    expect(linesOf(await err).at(-1)).toMatch(
      /^reckon: the answer can't be written to standard output: ENOSPC/,
    );
  });
});
