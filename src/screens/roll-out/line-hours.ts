// What production lines that products share are asked for: hours used by what landed, under the hours their shifts have.
// Other suppliers of a product use none; where it has some, the hours are the most that what landed can have used.
// Worked figure: 6,000 units at 500 an hour use 12 of a line's 80 hours in that week.
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';

type Line = Plan['business']['lines'][number];

export interface LineHours {
  line: Line;
  /** Hours by week. */
  used: number[];
  lid: number[];
}

/** The lines that some product is on. */
export function lineHours(plan: Plan, { compiled, pass }: Pick<Results, 'compiled' | 'pass'>): LineHours[] {
  return plan.business.lines.flatMap((line) => {
    const on = plan.items.flatMap(({ supply }, index) => {
      const terms = compiled.items[index]?.buying.line;
      return supply.line?.lineId === line.id && terms ? [{ index, unitsPerHour: terms.unitsPerHour }] : [];
    });
    if (on.length === 0) return [];
    const lid = Array.from({ length: pass.weeks }, (_, week) => line.hoursPerShift * shiftsIn(line, week));
    const used = lid.map((most, week) => {
      const hours = on.map(({ index, unitsPerHour }) => (pass.units[index]?.made[week] ?? 0) / unitsPerHour);
      return Math.min(
        most,
        hours.reduce((sum, each) => sum + each, 0),
      );
    });
    return [{ line, used, lid }];
  });
}

/** A step holds from its week on until the next one. */
function shiftsIn({ shifts, steps }: Line, week: number): number {
  return steps.filter(({ fromWeek }) => fromWeek <= week).at(-1)?.shifts ?? shifts;
}

/** Share of its hours that the fullest line uses in a week; null where no line has hours then. */
export function fullestLine(lines: readonly LineHours[], week: number): number | null {
  const shares = lines.flatMap(({ used, lid }) => {
    const most = lid[week] ?? 0;
    return most === 0 ? [] : [(used[week] ?? 0) / most];
  });
  return shares.length === 0 ? null : Math.max(...shares);
}
