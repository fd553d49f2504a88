// Seasonality: an item's 52 factors, one an ISO week of the year. A week that the table names is set, every other week stays;
// an item without a season begins with 1 throughout.
// Worked example: "Tea,50,1.8" sets Tea's factor of ISO week 50 from 1 to 1.8.
import { dec } from '../money/decimal.ts';
import { expectedAt } from '../plan/schema-at.ts';
import type { Cell } from './csv.ts';
import { isNamed, nameReader } from './names.ts';
import { fileNumber, readNumber, readWhole, refuse, shownNumber } from './numbers.ts';
import type { Entry, TableKind, Task } from './types.ts';

const WEEKS = 52;

export const SEASON: TableKind = {
  columns: [
    { key: 'item', heading: 'product', also: ['item', 'sku', 'article', 'item name'], needed: true },
    {
      key: 'week',
      heading: 'ISO week',
      also: ['week', 'wk', 'week no', 'week of the year', 'calendar week'],
      needed: true,
    },
    {
      key: 'factor',
      heading: 'factor',
      also: ['season', 'seasonality', 'index', 'seasonal factor', 'seasonal index'],
      needed: true,
    },
  ],
  across: [
    { down: 'item', across: 'week', value: 'factor' },
    { down: 'week', across: 'item', value: 'factor' },
  ],
  about: ({ items }) => items,
  read: readSeason,
  write: ({ items }, look) => {
    const names = nameReader(items, 'product');
    return items.flatMap((item) =>
      Array.from({ length: WEEKS }, (_, index) => {
        const factor = item.seasonFactors?.[index];
        return [names.write(item), String(index + 1), factor === undefined ? '' : fileNumber(look, factor)];
      }),
    );
  },
};

function readSeason(task: Task, entries: readonly Entry[]): Set<string> {
  const { plan, problems } = task;
  const names = nameReader(plan.items, 'product');
  const said = new Map<string, Map<number, string>>();
  for (const { line, cells } of entries) {
    const item = names.find(cells['item'], task.headings['item'] ?? 'product', line);
    if (!isNamed(item)) {
      problems.push(item);
      continue;
    }
    const cell = cells['factor'];
    if (!cell || cell.text.trim() === '') continue;
    const weekCell = cells['week'] ?? { text: '', line, column: 0 };
    const bare = { ...weekCell, text: weekCell.text.replace(/^\s*week\s/i, '') };
    const week = readWhole(task, bare, { key: 'week', least: 1, most: WEEKS, what: 'an ISO week' });
    const factor = readFactor(task, cell, item.id);
    if (week === null || factor === null) continue;
    const own = said.get(item.id) ?? new Map<number, string>();
    said.set(item.id, own);
    if (own.has(week))
      refuse(task, weekCell.line === line ? weekCell : cell, 'week', 'a week once a product');
    else own.set(week, factor);
  }
  for (const item of plan.items) changeSeason(task, item, said.get(item.id));
  return new Set(said.keys());
}

function readFactor(task: Task, cell: Cell, itemId: string): string | null {
  const expected = 'a factor, like 1.2; 1 is usual';
  const factor = readNumber(task, cell, { key: 'factor', kind: 'rateOfSale', expected });
  const refused = factor === null ? null : expectedAt(task.plan, `items/${itemId}/seasonFactors/0`, factor);
  if (refused === null) return factor;
  refuse(task, cell, 'factor', refused);
  return null;
}

function changeSeason(
  task: Task,
  item: Task['plan']['items'][number],
  said: ReadonlyMap<number, string> | undefined,
): void {
  if (!said) return;
  const now = item.seasonFactors ?? Array.from({ length: WEEKS }, () => '1');
  const then = [...now];
  for (const [week, factor] of said) {
    const before = now[week - 1] ?? '1';
    if (item.seasonFactors !== null && dec(before).eq(factor)) {
      task.same += 1;
      continue;
    }
    then[week - 1] = factor;
    task.changes.push({
      where: item.name,
      what: `ISO week ${week}`,
      before: item.seasonFactors === null ? 'no season' : shownNumber(task.look, before),
      after: shownNumber(task.look, factor),
    });
  }
  if (item.seasonFactors === null || then.some((factor, index) => factor !== now[index])) {
    task.fields.push({ path: `items/${item.id}/seasonFactors`, value: then });
  }
}
