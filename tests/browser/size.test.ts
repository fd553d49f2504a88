/**
 * What a phone must fetch before the first screen: the entry script and all it imports statically, gzipped.
 * Charts and the range worker come later, by dynamic import, and do not count.
 */
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { freshBuild } from '../support/served-app.ts';
import { importsAtStart } from '../support/source-files.ts';

const bytesMost = 90_000;

test(`the script the first screen waits for is at most ${bytesMost / 1000} kB gzipped`, async () => {
  const folder = await freshBuild();
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const entries = [...page.matchAll(/<script[^>]*\ssrc="\/([^"]+)"/g)].map((match) => match[1] ?? '');
  expect(entries).toHaveLength(1);

  const scripts = new Map<string, number>();
  const weigh = (path: string): void => {
    if (scripts.has(path)) return;
    const text = readFileSync(join(folder, path), 'utf8');
    scripts.set(path, gzipSync(text, { level: 9 }).length);
    for (const written of importsAtStart(path, text)) weigh(posix.join(posix.dirname(path), written));
  };
  for (const path of entries) weigh(path);

  const bytes = [...scripts.values()].reduce((sum, each) => sum + each, 0);
  console.log(`Script at start: ${bytes} bytes gzipped in ${scripts.size} file(s).`);
  expect(bytes).toBeGreaterThan(0);
  expect(bytes).toBeLessThanOrEqual(bytesMost);
});
