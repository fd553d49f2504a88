/**
 * Puts the workbook's columns into the spreadsheet library and reads its months: templates become cell formulas, inputs
 * become names. Worked figure: `{due}-{taken}` in week 3 is "V5-X5"; `S(invoice)` is a SUMIF over the weeks of the month.
 */
import { HyperFormula, type RawCellContent } from 'hyperformula';
import type { Plan } from '../../src/domain/plan/index.ts';
import { inputsOf, MONTH, WEEK } from './workbook.ts';

export interface UnitsByWeek {
  ordered: readonly number[];
  shipped: readonly number[];
  fill: readonly number[];
  sold: readonly number[];
}

export interface WorkbookMonth {
  /** Year x 100 + month. */
  month: number;
  statements: Record<string, Record<string, number>>;
}

export interface Workbook {
  /** Cents, by statement and line as reckon prints them, in the order of the months. */
  months: WorkbookMonth[];
  /** The same with one input read otherwise. */
  monthsWith: (name: string, value: number) => Workbook['months'];
}

const FIRST_ROW = 2;

/** Column letters of a week's cell: A, B, ... Z, AA. */
function letters(name: string): string {
  const at = Object.keys(WEEK).indexOf(name);
  if (at < 0) throw new Error(`no column ${name}`);
  const low = String.fromCharCode(65 + (at % 26));
  return at < 26 ? low : `${String.fromCharCode(64 + Math.floor(at / 26))}${low}`;
}

function weekFormula(template: string, week: number, weeks: number): string {
  const row = week + FIRST_ROW;
  return template.replaceAll(/\{(\w+)(-|@\w+)?\}/g, (_, name: string, shift: string | undefined) => {
    const column = letters(name);
    if (shift === undefined) return `${column}${row}`;
    if (shift === '-') return week === 0 ? '0' : `${column}${row - 1}`;
    const lag = shift.slice(1);
    return `IF(A${row}<${lag},0,INDEX(${column}$${FIRST_ROW}:${column}$${weeks + 1},A${row}-${lag}+1))`;
  });
}

function monthFormula(template: string, row: number, weeks: number): string {
  const range = (name: string) => `weeks!$${letters(name)}$${FIRST_ROW}:$${letters(name)}$${weeks + 1}`;
  const first = `MATCH($A${row},${range('month')},0)`;
  const all: Record<string, (name: string) => string> = {
    S: (name) => `SUMIF(${range('month')},$A${row},${range(name)})`,
    N: () => `COUNTIF(${range('month')},$A${row})`,
    E: (name) => `INDEX(${range(name)},MATCH($A${row},${range('month')},1))`,
    B: (name) => `IF(${first}=1,${name === 'cash' ? 'openingCash' : '0'},INDEX(${range(name)},${first}-1))`,
  };
  return `=${template.replaceAll(/([SNEB])\((\w+)\)/g, (_, kind: string, name: string) => all[kind]?.(name) ?? '')}`;
}

/** The months in order, each as year x 100 + month, of weeks that begin on the plan's start date. */
function monthsOf(plan: Plan): number[] {
  const start = Date.parse(`${plan.startDate}T00:00:00Z`);
  const of = (week: number) => new Date(start + week * 7 * 86_400_000);
  const months = Array.from({ length: plan.horizonWeeks }, (_, week) => of(week)).map(
    (day) => day.getUTCFullYear() * 100 + day.getUTCMonth() + 1,
  );
  return [...new Set(months)];
}

export function workbookOf(plan: Plan, units: UnitsByWeek): Workbook {
  const weeks = plan.horizonWeeks;
  const months = monthsOf(plan);
  const given: Record<string, readonly number[]> = {
    ...units,
    week: Array.from({ length: weeks }, (_, week) => week),
  };
  const weekRows = Array.from({ length: weeks }, (_, week) =>
    Object.entries(WEEK).map(
      ([name, formula]): RawCellContent =>
        formula === '#' ? (given[name]?.[week] ?? 0) : weekFormula(formula, week, weeks),
    ),
  );
  const lines = Object.entries(MONTH).flatMap(([statement, each]) =>
    Object.entries(each).map(([line, formula]) => ({ statement, line, formula })),
  );
  const monthRows = months.map((month, at): RawCellContent[] => [
    month,
    ...lines.map(({ formula }) => monthFormula(formula, at + FIRST_ROW, weeks)),
  ]);
  const names = Object.entries(inputsOf(plan)).map(([name, expression]) => ({ name, expression }));
  const engine = HyperFormula.buildFromSheets(
    { weeks: [Object.keys(WEEK), ...weekRows], months: [['month'], ...monthRows] },
    { licenseKey: 'gpl-v3' },
    names,
  );
  const read = (): Workbook['months'] =>
    months.map((month, at) => {
      const statements: Record<string, Record<string, number>> = {};
      lines.forEach(({ statement, line }, col) => {
        const value = engine.getCellValue({
          sheet: engine.getSheetId('months') ?? 0,
          row: at + 1,
          col: col + 1,
        });
        if (typeof value !== 'number') throw new Error(`${statement} ${line}: ${JSON.stringify(value)}`);
        statements[statement] = { ...statements[statement], [line]: value };
      });
      return { month, statements };
    });
  const inputs = new Map(names.map(({ name, expression }) => [name, expression]));
  return {
    months: read(),
    monthsWith: (name, value) => {
      engine.changeNamedExpression(name, value);
      const months = read();
      engine.changeNamedExpression(name, inputs.get(name) ?? 0);
      return months;
    },
  };
}
