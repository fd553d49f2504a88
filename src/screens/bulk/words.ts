// What the page of tables says: what each kind of table is, how its columns were taken, what would change, in sentences.
// Worked example: 14 changes, 230 values the plan has, one chain not named: "14 values change; 230 are as in the plan."
import { headingsOf, problemLine } from '../../domain/bulk/index.ts';
import type { BulkReading, BulkTable, CellProblem } from '../../domain/bulk/types.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { placeWords } from '../shared/path-words.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export const TABLE_WORDS: Readonly<Record<BulkTable, { label: string; about: string; file: string }>> = {
  doors: {
    label: 'Doors by week',
    about:
      'How many doors of a chain open in a week. Weeks that are named are set, 0 takes an opening out; every other week stays.',
    file: 'doors',
  },
  prices: {
    label: 'Price list',
    about: 'A row for each product of a chain. Empty cells leave their value as it is.',
    file: 'prices',
  },
  season: {
    label: 'Seasonality',
    about: 'A factor for each ISO week of the year, 1 is usual. Weeks that aren’t named stay.',
    file: 'seasonality',
  },
  scans: {
    label: 'Scans',
    about:
      'What stores sold, week by week. Weeks that are named are set, with nothing in units where a week was not seen; every other week stays.',
    file: 'scans',
  },
};

/** The headings a table needs and may have, and other ways to lay it out. */
export function headingWords(table: BulkTable): string {
  const { needed, other } = headingsOf(table);
  const more = other.length === 0 ? '' : `, and any of ${other.join(', ')}`;
  const across = {
    doors: ' A column a week, or a column a chain, is read too.',
    prices: '',
    season: ' A column a week, or a column a product, is read too.',
    scans:
      ' A column a week, or a column a store, is read too. Weeks are days like 2025-10-06, or as your spreadsheet writes them, or ISO weeks like 2025-W41.',
  }[table];
  return `First line: ${needed.join(', ')}${more}.${across}`;
}

/** "chain", "“stores” as doors", "“colour” not used": for every column that has a heading. */
export function columnWords({ columns }: BulkReading): string[] {
  return columns
    .filter(({ heading }) => heading !== '')
    .map(({ heading, use }) => {
      if (use === null) return `“${heading}” not used`;
      return heading.toLowerCase() === use.toLowerCase() ? heading : `“${heading}” as ${use}`;
    });
}

export function problemText(plan: Plan, problem: CellProblem): string {
  if (problem.line !== null || problem.heading === null) return problemLine(problem);
  return problemLine({ ...problem, heading: placeWords(plan, problem.heading) });
}

/** What would change, what is there already, and who is left alone. */
export function changeWords(
  { changes, same, leftAlone }: BulkReading,
  table: BulkTable,
  say: ScreenSay,
): string[] {
  const change = changes.length === 1 ? '1 value changes' : `${say.count(changes.length)} values change`;
  const known = same === 1 ? '1 is as in the plan' : `${say.count(same)} are as in the plan`;
  const noun = { doors: 'chains', prices: 'chains', season: 'products', scans: 'stores' }[table];
  const others = leftAlone.length > 6 ? `${say.count(leftAlone.length)} ${noun}` : leftAlone.join(', ');
  return [
    changes.length === 0 && same > 0
      ? `Nothing changes: ${known}.`
      : `${change}${same === 0 ? '' : `; ${known}`}.`,
    ...(leftAlone.length === 0 ? [] : [`Left alone, not in the table: ${others}.`]),
  ];
}

export function twoWayWords({ twoWays }: BulkReading): string | null {
  if (twoWays.length === 0) return null;
  const some = twoWays.slice(0, 3).map((text) => `“${text}”`);
  const more = twoWays.length > 3 ? ` and ${twoWays.length - 3} more` : '';
  return `Could be read two ways: ${some.join(', ')}${more}. See below which was taken, or choose the decimal mark above.`;
}
