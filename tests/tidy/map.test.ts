/**
 * The folder map in DEVELOPERS.md against the real tree: what the map names is there, and what is there down
 * to the third level is on the map. Folders with no file in them do not count; git does not keep them.
 */
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type MapEntry, readMap } from '../support/developers-guide.ts';
import { filesUnder, readText, root } from '../support/source-files.ts';

const map = readMap(readText('DEVELOPERS.md'));

test('everything on the map is there', () => {
  expect(map.filter((entry) => !isThere(entry)).map(({ path }) => path)).toEqual([]);
});

test('every file of the top level and every folder down to the third is on the map', () => {
  const mapped = new Set(map.map(({ path }) => path));
  const there = new Set(filesUnder('').flatMap(placesOf));
  expect([...there].filter((path) => !mapped.has(path)).sort()).toEqual([]);
});

test('the reader of the map sees levels, folders and comments', () => {
  const guide =
    '## The map\n\n```\nsrc/           all of it\n  main.tsx     root\n  domain/\n    money/  sums\nREADME.md\n```\n';
  expect(readMap(guide)).toEqual([
    { path: 'src', isFolder: true },
    { path: 'src/main.tsx', isFolder: false },
    { path: 'src/domain', isFolder: true },
    { path: 'src/domain/money', isFolder: true },
    { path: 'README.md', isFolder: false },
  ]);
});

/** 'src/domain/money/round.ts' is in src, src/domain and src/domain/money; a top-level file is itself. */
function placesOf(path: string): string[] {
  const parts = path.split('/');
  if (parts.length === 1) return [path];
  const folders = parts.slice(0, -1);
  return folders.slice(0, 3).map((_, index) => folders.slice(0, index + 1).join('/'));
}

function isThere({ path, isFolder }: MapEntry): boolean {
  const status = statSync(join(root, path), { throwIfNoEntry: false });
  return status !== undefined && status.isDirectory() === isFolder;
}
