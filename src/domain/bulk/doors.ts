// Doors by account and week: how many open in a week. A week that the table names is set (0: none open), every other week of
// that account stays; the weeks become waves again.
// Worked example: "Corner,9,12" where 10 doors opened in week 9: week 9 goes from 10 to 12.
import { firstDelivery } from '../plan/rules/dates.ts';
import { isNamed, nameReader } from './names.ts';
import { readWeek, readWhole, refuse, shownNumber } from './numbers.ts';
import type { Entry, TableKind, Task } from './types.ts';
import { doorsByWeek, wavesOf } from './waves.ts';

const DOORS_MOST = 100_000;

export const DOORS: TableKind = {
  columns: [
    {
      key: 'account',
      heading: 'chain',
      also: ['account', 'customer', 'retailer', 'banner', 'account name'],
      needed: true,
    },
    {
      key: 'week',
      heading: 'week',
      also: ['wk', 'opening week', 'open week', 'week no', 'first day', 'date'],
      needed: true,
    },
    {
      key: 'doors',
      heading: 'doors',
      also: ['stores', 'door count', 'store count', 'number of doors'],
      needed: true,
    },
  ],
  across: [
    { down: 'account', across: 'week', value: 'doors' },
    { down: 'week', across: 'account', value: 'doors' },
  ],
  about: ({ accounts }) => accounts,
  read: readDoors,
  write: ({ accounts }) => {
    const names = nameReader(accounts, 'chain');
    return accounts.flatMap((account) => {
      const weeks = [...doorsByWeek(account.waves)].sort(([one], [other]) => one - other);
      const rows = weeks.map(([week, doors]) => [names.write(account), String(week), String(doors)]);
      return rows.length === 0 ? [[names.write(account), '', '']] : rows;
    });
  },
};

/** What a table says of one account. */
interface Said {
  /** Doors by week as the plan has them. */
  now: ReadonlyMap<number, number>;
  weeks: Map<number, { doors: number; line: number }>;
}

function readDoors(task: Task, entries: readonly Entry[]): Set<string> {
  const { plan, problems } = task;
  const names = nameReader(plan.accounts, 'chain');
  const said = new Map<string, Said>();
  for (const { line, cells } of entries) {
    const account = names.find(cells['account'], task.headings['account'] ?? 'chain', line);
    if (!isNamed(account)) {
      problems.push(account);
      continue;
    }
    const own = said.get(account.id) ?? { now: doorsByWeek(account.waves), weeks: new Map() };
    said.set(account.id, own);
    const { week: weekCell, doors: doorsCell } = cells;
    // Nothing said: the template's row of an account without openings, or an empty cell of a table by weeks.
    if (!doorsCell || doorsCell.text.trim() === '') continue;
    const week = readWeek(task, weekCell ?? { text: '', line, column: 0 }, {
      least: firstDelivery(account).least,
      known: own.now,
    });
    const doors = readWhole(task, doorsCell, {
      key: 'doors',
      least: 0,
      most: DOORS_MOST,
      what: 'a whole number of doors',
    });
    if (week === null || doors === null) continue;
    const before = own.weeks.get(week);
    if (before) {
      const cell = weekCell?.line === line ? weekCell : doorsCell;
      refuse(task, cell, 'week', `a week once a chain; line ${before.line} has this one already`);
    } else own.weeks.set(week, { doors, line });
  }
  for (const account of plan.accounts) changeDoors(task, account, said.get(account.id));
  return new Set([...said].flatMap(([id, { weeks }]) => (weeks.size > 0 ? [id] : [])));
}

function changeDoors(task: Task, account: Task['plan']['accounts'][number], said: Said | undefined): void {
  if (!said) return;
  const { now, weeks } = said;
  const then = new Map(now);
  let changed = 0;
  for (const [week, { doors }] of weeks) {
    const before = now.get(week) ?? 0;
    if (before === doors) {
      task.same += 1;
      continue;
    }
    changed += 1;
    then.set(week, doors);
    task.changes.push({
      where: account.name,
      what: task.week(week),
      before: shownNumber(task.look, before),
      after: shownNumber(task.look, doors),
    });
  }
  if (changed === 0) return;
  const waves = wavesOf(then, account.waves);
  const ids = new Set(account.waves.map(({ id }) => id));
  const added = waves.filter(({ id }) => !ids.has(id)).length;
  task.fields.push({ path: `accounts/${account.id}/waves`, value: waves });
  task.notes.push(
    `${account.name}: ${sum(now, task)} in ${openings(account.waves.length)} become ${sum(then, task)} in ${openings(waves.length)}, ${added} of them new.`,
  );
}

function sum(doors: ReadonlyMap<number, number>, { look }: Task): string {
  const count = [...doors.values()].reduce((total, each) => total + each, 0);
  return `${shownNumber(look, count)} ${count === 1 ? 'door' : 'doors'}`;
}

function openings(count: number): string {
  return `${count} ${count === 1 ? 'opening' : 'openings'}`;
}
