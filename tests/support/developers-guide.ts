/**
 * Reads the two parts of DEVELOPERS.md that the tidy tests execute, so that the document cannot drift from
 * the code: the folder map (the fenced block under "## The map") and the table under "## Rooms and arrows".
 * Worked figure: the map line "  domain/   the core" under "src/" is the folder src/domain.
 */

export interface MapEntry {
  readonly path: string;
  readonly isFolder: boolean;
}

/** One entry a line, two spaces of indent a level, folders end with a slash, a comment after two spaces. */
export function readMap(guide: string): MapEntry[] {
  const block = /```[a-z]*\n([\s\S]*?)```/.exec(sectionOf(guide, 'The map'))?.[1];
  if (!block) throw new Error('DEVELOPERS.md has no fenced block under "## The map".');
  const above: string[] = [];
  return block
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => {
      const [, indent = '', name = ''] = /^( *)(\S+)(?: {2,}.*)?$/.exec(line) ?? [];
      if (name === '' || indent.length % 2 === 1) {
        throw new Error(`A line of the map in DEVELOPERS.md cannot be read: "${line}".`);
      }
      const level = indent.length / 2;
      above.length = level;
      above[level] = name.replace(/\/$/, '');
      return { path: above.join('/'), isFolder: name.endsWith('/') };
    });
}

export interface Room {
  /** A folder or file: 'src/domain', 'src/main.tsx'. The longest one that fits a file is its room. */
  readonly path: string;
  /** Rooms, folders and packages it may import; its own folder is always allowed. */
  readonly mayImport: readonly string[];
}

/** The rows of the table: the first cell is the room, the second lists what it may import, in backticks. */
export function readRooms(guide: string): Room[] {
  const rows = sectionOf(guide, 'Rooms and arrows')
    .split('\n')
    .filter((line) => line.startsWith('| `'))
    .map((line) => line.split('|').slice(1, 3));
  if (rows.length === 0) throw new Error('DEVELOPERS.md has no table under "## Rooms and arrows".');
  return rows.map(([room = '', mayImport = '']) => {
    const [path] = inBackticks(room);
    if (!path) throw new Error(`A room in DEVELOPERS.md is not in backticks: "${room}".`);
    return { path, mayImport: inBackticks(mayImport) };
  });
}

function inBackticks(cell: string): string[] {
  return [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? '');
}

function sectionOf(guide: string, title: string): string {
  const start = guide.indexOf(`## ${title}\n`);
  if (start < 0) throw new Error(`DEVELOPERS.md has no section "## ${title}".`);
  const end = guide.indexOf('\n## ', start + 1);
  return guide.slice(start, end < 0 ? undefined : end);
}
