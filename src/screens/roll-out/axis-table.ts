// The calendar as a table, in the order in which things begin: openings, promotions, displays, closings, and purchase
// orders with the weeks they land in.
// Worked figure: an order of 6,000 placed in week 3 that lands in week 9 is "week 3 ... week 9".
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import type { AxisBar, AxisGroup, TableColumn, TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { ordersOf } from './axis-products.ts';

export const CALENDAR_COLUMNS: readonly TableColumn[] = [
  { key: 'what', label: 'What', kind: 'text' },
  { key: 'who', label: 'Where', kind: 'text' },
  { key: 'from', label: 'From', kind: 'text' },
  { key: 'to', label: 'To', kind: 'text' },
];

export const KINDS: Record<AxisBar['drawing'], string> = {
  truck: 'Opening',
  tag: 'Promotion',
  shelf: 'Display',
  closed: 'Closing',
};

interface Calendar {
  plan: Plan;
  results: Results;
  groups: readonly AxisGroup[];
  say: ScreenSay;
}

export function calendarRows({ plan, results, groups, say }: Calendar): TableRow[] {
  const { weeks } = results.pass;
  const weekText = (week: number) => (week >= weeks ? 'after the plan' : say.week(week));
  const bars = groups.flatMap(({ name, bars: each }) =>
    each.map(({ id, from, to, text, drawing }) => ({
      id,
      from,
      cells: [`${KINDS[drawing]}: ${text}`, name, weekText(from), weekText(to)],
    })),
  );
  const orders = plan.items.flatMap(({ id, name }, index) =>
    ordersOf({ plan, results, index, say }).map(({ from, last, size }) => ({
      id: `${id}/${from}`,
      from,
      cells: [`Purchase order: ${say.count(size)} units`, name, weekText(from), weekText(last)],
    })),
  );
  return [...bars, ...orders].sort((one, other) => one.from - other.from);
}
