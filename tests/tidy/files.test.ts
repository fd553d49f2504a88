/**
 * What every file of ours looks like: at most 250 lines, opening with a comment that says what it is, and
 * with a name in small letters and hyphens (a component file, .tsx, may be named as its component). The length of functions is Biome's part (biome.json, 60 lines).
 */
import { expect, test } from 'vitest';
import { filesUnder, readText } from '../support/source-files.ts';

const linesMost = 250;

const written = [...filesUnder('src'), ...filesUnder('service-worker')].filter((path) =>
  /\.(?:tsx?|css)$/.test(path),
);

test(`no file of src or service-worker is longer than ${linesMost} lines`, () => {
  expect(written.length).toBeGreaterThan(0);
  const long = written
    .map((path) => ({ path, lines: readText(path).trimEnd().split('\n').length }))
    .filter(({ lines }) => lines > linesMost);
  expect(long).toEqual([]);
});

test('every file of src and service-worker opens with a comment', () => {
  expect(written.filter((path) => !/^(?:\/\*|\/\/)/.test(readText(path)))).toEqual([]);
});

test('every test and support file opens with a comment', () => {
  const tests = filesUnder('tests').filter((path) => /\.tsx?$/.test(path));
  expect(tests.filter((path) => !/^(?:\/\*|\/\/)/.test(readText(path)))).toEqual([]);
});

test('file names are small letters, digits and hyphens; a component file may carry its name, a document capitals', () => {
  const odd = [...filesUnder('src'), ...filesUnder('tests'), ...filesUnder('service-worker')].filter(
    (path) => !/^(?:[a-z0-9-]+\/)+(?:[a-z0-9.-]+|[A-Za-z0-9]+\.tsx|[A-Z]+\.md)$/.test(path),
  );
  expect(odd).toEqual([]);
});
