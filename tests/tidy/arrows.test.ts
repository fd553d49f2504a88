/**
 * Every import of src and service-worker is compared with the table "Rooms and arrows", which is read out of
 * DEVELOPERS.md itself. An arrow that is not in the table is forbidden, and so is a ring of imports.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Room, readRooms } from '../support/developers-guide.ts';
import { filesUnder, type Import, importsOf, isCode, readText, root } from '../support/source-files.ts';

const rooms = readRooms(readText('DEVELOPERS.md'));
const files = [...filesUnder('src'), ...filesUnder('service-worker')].filter(
  (path) => isCode(path) || path.endsWith('.css'),
);
const imports = new Map(files.map((path) => [path, importsOf(path, readText(path))]));

describe('rooms and arrows', () => {
  test('every import follows an arrow of the table', () => {
    const faults = [...imports].flatMap(([path, each]) => each.flatMap((one) => arrowFault(path, one) ?? []));
    expect(faults).toEqual([]);
  });

  test('every import between files names a file that is there, with its ending', () => {
    const missing = [...imports].flatMap(([path, each]) =>
      each
        .filter(({ file, written }) => file !== null && !written.includes('*'))
        .filter(({ file }) => !/\.\w+$/.test(file ?? '') || !existsSync(join(root, file ?? '')))
        .map(({ written }) => `${path} imports '${written}'`),
    );
    expect(missing).toEqual([]);
  });

  test('no ring of imports, types aside', () => {
    expect(rings()).toEqual([]);
  });

  test('the check itself sees a forbidden arrow, a type import and a package', () => {
    const from = 'src/domain/evaluate.ts';
    const text = [
      "import type { Screen } from '../screens/cash/screen.tsx';",
      "export { open } from '../storage/open.ts';",
      "const late = () => import('../app/undo.ts');",
      "const worker = new URL('../compute/worker.ts', import.meta.url);",
      "import { openDB } from 'idb';",
      "import * as z from 'zod/mini';",
      "import { round } from './money/round.ts';",
    ].join('\n');
    const seen = importsOf(from, text).filter((one) => arrowFault(from, one) !== null);
    expect(seen.map(({ written }) => written).sort()).toEqual([
      '../app/undo.ts',
      '../compute/worker.ts',
      '../screens/cash/screen.tsx',
      '../storage/open.ts',
      'idb',
    ]);
  });
});

function arrowFault(path: string, { written, file }: Import): string | null {
  const room = roomOf(path);
  if (!room) return `${path} is in no room of the table in DEVELOPERS.md`;
  const target = file ?? written;
  const allowed = file === null ? room.mayImport : [room.path, ...room.mayImport];
  if (allowed.some((each) => covers(each, target))) return null;
  return `${path} imports '${written}', and ${room.path} may import only ${room.mayImport.join(', ')}`;
}

function roomOf(path: string): Room | undefined {
  return rooms
    .filter((room) => covers(room.path, path))
    .sort((a, b) => b.path.length - a.path.length)
    .at(0);
}

/** 'preact' covers 'preact/hooks'; 'node:*' covers every part of Node. */
function covers(allowed: string, target: string): boolean {
  if (allowed.endsWith('*')) return target.startsWith(allowed.slice(0, -1));
  return target === allowed || target.startsWith(`${allowed}/`);
}

function rings(): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const visit = (path: string, trail: string[]): void => {
    if (trail.includes(path)) found.push([...trail.slice(trail.indexOf(path)), path].join(' -> '));
    if (done.has(path) || trail.includes(path)) return;
    for (const { file, typeOnly } of imports.get(path) ?? []) {
      if (file !== null && !typeOnly) visit(file, [...trail, path]);
    }
    done.add(path);
  };
  for (const path of files) visit(path, []);
  return found;
}
