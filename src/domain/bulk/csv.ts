// Tables as text, as spreadsheets write and paste them: RFC 4180, with what is common beside it: semicolons or tabs between
// the cells, any line end, a byte order mark, a first line "sep=;". Every cell knows its line and column for problems.
// Worked figure: the text a,"b ""c""" is two cells, a and b "c", in line 1, columns 1 and 2.

export interface Cell {
  text: string;
  /** Where it begins; both from 1. */
  line: number;
  column: number;
}

export type Separator = ',' | ';' | '\t';

export interface CsvTable {
  separator: Separator;
  /** Rows with anything in them. */
  rows: readonly (readonly Cell[])[];
  /** Where a quoted cell isn't closed, or goes on after its closing quote. */
  faults: readonly { cell: Cell; expected: string }[];
}

/** Reads a text to its end whatever is wrong with it; faults say what is. */
export function readCsv(text: string): CsvTable {
  const marked = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const said = /^sep=([,;\t])\r?\n/i.exec(marked);
  const body = said ? marked.slice(said[0].length) : marked;
  const separator = said ? (said[1] as Separator) : likelySeparator(body);
  return readRows(body, separator, said ? 2 : 1);
}

/** Lines looked at for what separates their cells. */
const LINES_LOOKED_AT = 20;
const START_LOOKED_AT = 50_000;

/**
 * The sign that stands as often in every line as in the first, outside quotes: a tab before a semicolon before a comma, since
 * commas stand in names and numbers too. Where none does, the most frequent of the first line; a comma where there is none.
 */
function likelySeparator(text: string): Separator {
  const unquoted = text.slice(0, START_LOOKED_AT).replace(/"(?:[^"]|"")*"?/g, '');
  const lines = unquoted
    .split(/\r\n|\r|\n/)
    .filter((line) => line.trim() !== '')
    // The last of a text cut short isn't whole.
    .slice(0, text.length > START_LOOKED_AT ? -1 : undefined)
    .slice(0, LINES_LOOKED_AT);
  const count = (line: string, sign: string) => line.split(sign).length - 1;
  const first = lines[0] ?? '';
  const signs = (['\t', ';', ','] as const).filter((sign) => count(first, sign) > 0);
  const even = signs.find((sign) => lines.every((line) => count(line, sign) === count(first, sign)));
  const most = (best: Separator, sign: Separator) => (count(first, sign) > count(first, best) ? sign : best);
  return even ?? signs.reduce<Separator>(most, ',');
}

function readRows(text: string, separator: Separator, firstLine: number): CsvTable {
  const rows: Cell[][] = [];
  const faults: { cell: Cell; expected: string }[] = [];
  let row: Cell[] = [];
  let line = firstLine;
  let at = 0;
  while (at < text.length) {
    const cell: Cell = { text: '', line, column: row.length + 1 };
    const end =
      text[at] === '"' ? readQuoted({ text, at, cell, separator, faults }) : plainEnd(text, at, separator);
    if (text[at] !== '"') cell.text = text.slice(at, end);
    line += lineEnds(text.slice(at, end));
    row.push(cell);
    at = end;
    if (text[at] === separator) {
      at += 1;
      // A separator at the very end has one more, empty cell behind it.
      if (at === text.length) row.push({ text: '', line, column: row.length + 1 });
      continue;
    }
    if (at < text.length) at += text.startsWith('\r\n', at) ? 2 : 1;
    line += 1;
    rows.push(row);
    row = [];
  }
  if (row.length > 0) rows.push(row);
  return { separator, rows: rows.filter((cells) => cells.some((cell) => cell.text.trim() !== '')), faults };
}

function plainEnd(text: string, from: number, separator: Separator): number {
  let at = from;
  while (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
}

/** Fills the cell; gives where it ends. */
function readQuoted(from: {
  text: string;
  at: number;
  cell: Cell;
  separator: Separator;
  faults: { cell: Cell; expected: string }[];
}): number {
  const { text, cell, separator, faults } = from;
  let at = from.at + 1;
  let start = at;
  for (;;) {
    const quote = text.indexOf('"', at);
    if (quote < 0) {
      cell.text += text.slice(start);
      faults.push({ cell, expected: 'a closing quote (") after it' });
      return text.length;
    }
    cell.text += text.slice(start, quote);
    at = quote + 1;
    start = at;
    if (text[at] !== '"') break;
    at += 1; // two quotes are one; the second begins what follows
  }
  const end = plainEnd(text, at, separator);
  if (text.slice(at, end).trim() !== '') {
    cell.text += text.slice(at, end);
    faults.push({
      cell,
      expected: 'nothing behind the closing quote, and a quote inside written twice ("")',
    });
  }
  return end;
}

function lineEnds(text: string): number {
  return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}

/** Rows as text by RFC 4180: cells quoted where they must be, lines ended by CR LF. */
export function writeCsv(rows: readonly (readonly string[])[], separator: Separator): string {
  return rows.map((cells) => `${cells.map((cell) => quoted(cell, separator)).join(separator)}\r\n`).join('');
}

function quoted(cell: string, separator: Separator): string {
  const must = cell.includes(separator) || /["\r\n]/.test(cell) || cell !== cell.trim();
  return must ? `"${cell.replaceAll('"', '""')}"` : cell;
}
