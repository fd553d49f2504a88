// Scans of stores: what a store sold of a product in a week. A week that the table names is set, nothing in its cell meaning
// that it was not seen; every other week stays. Weeks are named by a day in the past, so never by a bare number.
// Worked example: "Hill Street,2025-10-06,12" is one new store with one week, 12 units.
import { dayNumber, isoDateOf } from '../calendar.ts';
import type { Plan, Scan } from '../plan/index.ts';
import { storeKey } from '../promise/scans.ts';
import type { Cell } from './csv.ts';
import { isNamed, nameReader, withoutGuard } from './names.ts';
import { readWhole, refuse } from './numbers.ts';
import { readOn, readYes, SCAN_COLUMNS } from './scan-cells.ts';
import { type DayOrder, dayOrderOf, readDay } from './scan-days.ts';
import { flagsOf, isSame, NOT_SEEN, type SaidWeek, shownWeek, weeksOf, writeScans } from './scan-weeks.ts';
import type { CellProblem, Entry, TableKind, Task } from './types.ts';

const UNITS_MOST = 100_000;
const WEEKS_MOST = 156;
const STORES_MOST = 500;
const NAME_MOST = 120;

export const SCANS: TableKind = {
  columns: SCAN_COLUMNS,
  across: [
    { down: 'store', across: 'week', value: 'units' },
    { down: 'week', across: 'store', value: 'units' },
  ],
  about: ({ promise }) => promise.scans.map(({ id, store }) => ({ id, name: store })),
  read: readScans,
  write: writeScans,
};

/** What is said and known of one store's weeks, by the number of their first day. */
interface SaidStore {
  was: Scan | null;
  itemId: string;
  accountId: string | null;
  store: string;
  weeks: Map<number, SaidWeek>;
  /** As the table says; null: it doesn't. */
  opened: { is: boolean; day: number; cell: Cell } | null;
}

function readScans(task: Task, entries: readonly Entry[]): Set<string> {
  const { plan } = task;
  const found = new Map<string, SaidStore>();
  const order = dayOrderOf(entries.map(({ cells }) => cells['week']?.text ?? ''));
  for (const entry of entries) readEntry(task, found, entry, order);
  if (order.first === 'day' || order.first === 'month')
    task.notes.push(`Dates are read with the ${order.first} first, as “${order.by}” has it.`);
  const scans = [...plan.promise.scans];
  for (const said of found.values()) {
    const scan = changedScan(task, said, scans);
    if (scan === null) continue;
    const at = scans.findIndex(({ id }) => id === scan.id);
    if (at < 0) scans.push(scan);
    else scans[at] = scan;
  }
  if (scans.length > STORES_MOST) {
    const expected = `at most ${STORES_MOST} stores, those of the plan counted in`;
    task.problems.push({ line: null, column: null, heading: null, got: `${scans.length} stores`, expected });
  }
  if (task.changes.length > 0) task.fields.push({ path: 'promise/scans', value: scans });
  return new Set([...found.values()].flatMap(({ was }) => (was === null ? [] : [was.id])));
}

function readEntry(task: Task, found: Map<string, SaidStore>, { line, cells }: Entry, order: DayOrder): void {
  const of = namedIn(task, cells, line);
  const day = readDay(task, cells['week'] ?? { text: '', line, column: 0 }, order);
  const cell = cells['units'] ?? { text: '', line, column: 0 };
  const isEmpty = cell.text.trim() === '';
  const what = 'a whole number of units, nothing where the week was not seen,';
  const units = isEmpty ? null : readWhole(task, cell, { key: 'units', least: 0, most: UNITS_MOST, what });
  const on = readOn(task, cells['on']);
  const opening = readYes(task, cells['opening']);
  if (of === null || day === null || (units === null && !isEmpty) || on === null || opening === null) return;
  const said = storeOf(task.plan, found, of);
  const from = said.was === null ? [...said.weeks.keys()][0] : dayNumber(said.was.firstDate);
  const weekCell = cells['week'] ?? cell;
  if (from !== undefined && (day - from) % 7 !== 0) {
    refuse(
      task,
      weekCell,
      'week',
      `whole weeks from ${isoDateOf(from)}, the first day of another week of this store`,
    );
    return;
  }
  if (units !== null && task.today !== null && day > dayNumber(task.today)) {
    refuse(task, weekCell, 'week', `a week that has begun by today, ${task.today}`);
    return;
  }
  if (said.weeks.has(day)) {
    refuse(task, weekCell.line === line ? weekCell : cell, 'week', 'a week once for a store');
    return;
  }
  const flags = on === 'same' ? flagsOf(said.was, day) : on;
  said.weeks.set(day, { units, ...flags });
  if (opening !== 'same' && cells['opening']) said.opened = { is: opening, day, cell: cells['opening'] };
}

type Of = Pick<SaidStore, 'itemId' | 'accountId' | 'store'>;

function namedIn(task: Task, cells: Entry['cells'], line: number): Of | null {
  const { plan, problems, headings } = task;
  const [only] = plan.items;
  const itemCell = cells['item'];
  const needsItem = plan.items.length > 1 || (itemCell?.text.trim() ?? '') !== '';
  const item = needsItem
    ? nameReader(plan.items, 'product').find(itemCell, headings['item'] ?? 'product', line)
    : only;
  const accountCell = cells['account'];
  const names = nameReader(plan.accounts, 'chain');
  const hasChain = (accountCell?.text.trim() ?? '') !== '';
  const account = hasChain ? names.find(accountCell, headings['account'] ?? 'chain', line) : null;
  const store = withoutGuard(cells['store']?.text.trim() ?? '');
  const bad = [item, account].filter((each): each is CellProblem => !!each && !isNamed(each));
  problems.push(...bad);
  const isName = store.length > 0 && store.length <= NAME_MOST;
  if (!isName)
    refuse(
      task,
      cells['store'] ?? { text: '', line, column: 0 },
      'store',
      `the name of a store, of at most ${NAME_MOST} characters`,
    );
  if (bad.length > 0 || !isName || !item || !isNamed(item)) return null;
  return { itemId: item.id, accountId: account && isNamed(account) ? account.id : null, store };
}

function storeOf(plan: Plan, found: Map<string, SaidStore>, of: Of): SaidStore {
  const key = keyOf(of);
  const before = found.get(key);
  if (before) return before;
  const was = plan.promise.scans.find((scan) => keyOf(scan) === key) ?? null;
  const said: SaidStore = { ...of, was, store: was?.store ?? of.store, weeks: new Map(), opened: null };
  found.set(key, said);
  return said;
}

function keyOf({ itemId, accountId, store }: Of): string {
  return JSON.stringify([itemId, accountId, storeKey(store)]);
}

/** The store with the weeks said; null where nothing of it changes. Each week that changes is a change of its own. */
function changedScan(task: Task, said: SaidStore, scans: readonly Scan[]): Scan | null {
  const { was } = said;
  const weeks = new Map(was === null ? [] : weeksOf(was));
  let changes = 0;
  for (const [day, week] of said.weeks) {
    const before = weeks.get(day) ?? null;
    weeks.set(day, week);
    if (before === null ? was !== null && week.units === null : isSame(before, week)) {
      task.same += 1;
      continue;
    }
    changes += 1;
    task.changes.push({
      where: whereOf(task.plan, said),
      what: isoDateOf(day),
      before: before === null ? '–' : shownWeek(before),
      after: shownWeek(week),
    });
  }
  const days = [...weeks.keys()].sort((one, other) => one - other);
  const [first = 0] = days;
  const count = ((days.at(-1) ?? first) - first) / 7 + 1;
  if (said.opened?.is && said.opened.day !== first) {
    refuse(task, said.opened.cell, 'opening', `an opening in the store’s first week, ${isoDateOf(first)}`);
    return null;
  }
  const opened = said.opened?.day === first ? said.opened.is : (was?.opened ?? false);
  if (was !== null && opened !== was.opened) {
    changes += 1;
    const words = (is: boolean) => (is ? 'an opening' : 'no opening');
    task.changes.push({
      where: whereOf(task.plan, said),
      what: 'its first week',
      before: words(was.opened),
      after: words(opened),
    });
  }
  if (changes === 0) return null;
  if (count > WEEKS_MOST) {
    const got = `${count} weeks of ${said.store}, from ${isoDateOf(first)}`;
    task.problems.push({
      line: null,
      column: null,
      heading: null,
      got,
      expected: `at most ${WEEKS_MOST} weeks`,
    });
    return null;
  }
  const list = Array.from({ length: count }, (_, at) => weeks.get(first + 7 * at) ?? NOT_SEEN);
  if (was === null)
    task.notes.push(
      `${said.store}: a new store, ${count} ${count === 1 ? 'week' : 'weeks'} from ${isoDateOf(first)}; ${
        opened ? 'it opened then' : 'its first weeks are not said to be an opening, and count'
      }.`,
    );
  const places = (is: (week: SaidWeek) => boolean) => list.flatMap((week, at) => (is(week) ? [at] : []));
  return {
    id: was?.id ?? freeId(scans),
    itemId: said.itemId,
    accountId: said.accountId,
    store: said.store,
    firstDate: isoDateOf(first),
    opened,
    units: list.map(({ units }) => units),
    displayWeeks: places(({ display }) => display),
    priceWeeks: places(({ price }) => price),
  };
}

function whereOf({ items, accounts }: Plan, { store, itemId, accountId }: SaidStore): string {
  const chain = accounts.find(({ id }) => id === accountId)?.name;
  const item = items.length > 1 ? items.find(({ id }) => id === itemId)?.name : undefined;
  return [store, chain, item].filter((each) => each !== undefined).join(', ');
}

function freeId(scans: readonly Scan[]): string {
  const taken = new Set(scans.map(({ id }) => id));
  for (let count = scans.length + 1; ; count++) {
    if (!taken.has(`store-${count}`)) return `store-${count}`;
  }
}
