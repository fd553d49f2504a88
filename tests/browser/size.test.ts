/**
 * What a phone must fetch before the first screen: the entry script and all it imports statically, gzipped; and what an
 * own plan waits for in addition: the script that judges plans. It is on its way from the start, beside the first screen.
 * Charts and the worker come later, by dynamic import, and do not count.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import { freshBuild } from '../support/served-app.ts';
import { importsAtStart } from '../support/source-files.ts';

const startMost = 90_000;
/** Most of it is the library the schemas are written with. */
const gateMost = 40_000;

let folder = '';
let start: Map<string, number>;

beforeAll(async () => {
  folder = await freshBuild();
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const entries = [...page.matchAll(/<script[^>]*\ssrc="\/([^"]+)"/g)].map((match) => match[1] ?? '');
  expect(entries).toHaveLength(1);
  start = weighed(entries, new Map());
});

test(`the script the first screen waits for is at most ${startMost / 1000} kB gzipped`, () => {
  console.log(`Script at start: ${sum(start)} bytes gzipped in ${start.size} file(s).`);
  expect(sum(start)).toBeGreaterThan(0);
  expect(sum(start)).toBeLessThanOrEqual(startMost);
});

test(`what an own plan waits for beside it is at most ${gateMost / 1000} kB gzipped`, () => {
  const gate = readdirSync(join(folder, 'assets')).filter((name) => /^gate-.*\.js$/.test(name));
  expect(gate).toHaveLength(1);
  const beside = weighed([`assets/${gate[0]}`], start);
  console.log(`Beside it, for own plans: ${sum(beside)} bytes gzipped in ${beside.size} file(s).`);
  expect(sum(beside)).toBeGreaterThan(0);
  expect(sum(beside)).toBeLessThanOrEqual(gateMost);
});

/** Scripts and their static imports by path, with their bytes; those in `had` are there already. */
function weighed(paths: readonly string[], had: ReadonlyMap<string, number>): Map<string, number> {
  const scripts = new Map<string, number>();
  const weigh = (path: string): void => {
    if (scripts.has(path) || had.has(path)) return;
    const text = readFileSync(join(folder, path), 'utf8');
    scripts.set(path, gzipSync(text, { level: 9 }).length);
    for (const written of importsAtStart(path, text)) weigh(posix.join(posix.dirname(path), written));
  };
  for (const path of paths) weigh(path);
  return scripts;
}

function sum(scripts: ReadonlyMap<string, number>): number {
  return [...scripts.values()].reduce((bytes, each) => bytes + each, 0);
}
