/**
 * The store side and the invoices of a plan as one sheet of formulas, a block of columns a listing and a row a week:
 * doors, ramp, demand, stock, order, delivery, sales, lost, invoice, deductions, collection. It leaves out supply, books
 * and most events, so a formula engine has less to do here than the model: what it is compared with is on its side.
 */
import type { Plan } from '../../src/domain/plan/index.ts';

const COLUMNS = 11;
const FIRST_ROW = 2;

export interface FormulaSheet {
  rows: (string | number)[][];
  formulas: number;
  /** The rate of sale of the first listing, the one input that is changed. */
  rateCell: { row: number; col: number };
}

export function formulaSheet(plan: Plan): FormulaSheet {
  const weeks = plan.horizonWeeks;
  const blocks = plan.accounts.flatMap((account) =>
    account.listings.map((listing) => ({ account, listing })),
  );
  const rows: (string | number)[][] = [
    blocks.flatMap(({ listing }) => [Number(listing.unitsPerStoreWeek), ...blank()]),
  ];
  rows.push(blocks.flatMap(() => Array.from({ length: COLUMNS }, () => 0)));
  for (let week = 0; week < weeks; week++) {
    const row = week + FIRST_ROW + 1;
    rows.push(
      blocks.flatMap(({ account }, block) => {
        const wave = account.waves[0];
        return weekFormulas({
          row,
          block,
          open: wave?.openWeek ?? 0,
          perWeek: wave?.doorsPerWeek ?? 0,
          week,
        });
      }),
    );
  }
  return { rows, formulas: weeks * blocks.length * COLUMNS, rateCell: { row: 0, col: 0 } };
}

function blank(): string[] {
  return Array.from({ length: COLUMNS - 1 }, () => '');
}

function letters(column: number): string {
  let name = '';
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    name = String.fromCharCode(65 + ((left - 1) % 26)) + name;
  }
  return name;
}

interface WeekArgs {
  row: number;
  block: number;
  open: number;
  perWeek: number;
  week: number;
}

function weekFormulas({ row, block, open, perWeek, week }: WeekArgs): string[] {
  const at = (column: number, line: number) => `${letters(block * COLUMNS + column)}${line}`;
  const before = (column: number, weeks: number) => at(column, Math.max(FIRST_ROW, row - weeks));
  const rate = `${letters(block * COLUMNS)}$1`;
  const opened = week >= open ? `MIN(200,${before(0, 1)}+${perWeek})` : '0';
  return [
    `=${opened}`,
    `=MIN(1,0.5+0.5*${Math.max(0, week - open)}/8)`,
    `=FLOOR(${at(0, row)}*${rate}*${at(1, row)},1)`,
    `=MAX(0,${before(3, 1)}+${at(5, row)}-${at(6, row)})`,
    `=12*MAX(0,FLOOR((${at(0, row)}*${rate}*4-${at(3, row)}-${before(4, 1)})/12,1))`,
    `=${before(4, 2)}`,
    `=MIN(${at(2, row)},${before(3, 1)}+${at(5, row)})`,
    `=${at(2, row)}-${at(6, row)}`,
    `=ROUND(${before(4, 1)}*2.6,2)`,
    `=ROUND(${at(8, row)}*0.01,2)+ROUND(${at(8, row)}*0.03,2)`,
    `=${before(8, 6)}-${before(9, 6)}`,
  ];
}
