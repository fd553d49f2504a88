// A price list: an account and an item a row, and beside them prices, rate of sale and what stands on the shelf. An empty cell
// leaves its value alone. A price that the ladder works out from the others can't be put in.
// Worked example: "Corner,Tea,2.80" under account, item, list price: Tea's list price at Corner goes from 2.60 to 2.80.
import { dec } from '../money/decimal.ts';
import type { TypedKind } from '../money/parse-typed.ts';
import type { Listing, Plan } from '../plan/index.ts';
import { getAt } from '../plan/path.ts';
import { expectedAt } from '../plan/schema-at.ts';
import type { Cell } from './csv.ts';
import { isNamed, nameReader } from './names.ts';
import { fileNumber, readNumber, refuse, shownNumber, shownPrice } from './numbers.ts';
import type { Entry, TableKind, Task } from './types.ts';

/** A value of a listing by its field. */
interface Value {
  key: string;
  heading: string;
  also: readonly string[];
  kind: TypedKind;
  /** Its path under the listing. */
  field: string;
}

const PRICES: readonly Value[] = [
  {
    key: 'list',
    heading: 'list price',
    also: ['list', 'our price', 'our list price'],
    kind: 'amount',
    field: 'list/amount',
  },
  {
    key: 'shelf',
    heading: 'shelf price',
    also: ['shelf', 'retail', 'retail price', 'price on the tag', 'srp', 'rrp'],
    kind: 'amount',
    field: 'shelf/amount',
  },
];

const VALUES: readonly Value[] = [
  ...PRICES,
  {
    key: 'rate',
    heading: 'rate of sale',
    also: ['usw', 'rate', 'units per store per week', 'sold per store per week', 'units a store a week'],
    kind: 'rateOfSale',
    field: 'unitsPerStoreWeek',
  },
  { key: 'facings', heading: 'facings', also: ['facing'], kind: 'whole', field: 'facings' },
  { key: 'depth', heading: 'units behind a facing', also: ['depth'], kind: 'whole', field: 'depthUnits' },
  { key: 'back', heading: 'units in the back', also: ['back stock'], kind: 'whole', field: 'backStockUnits' },
  {
    key: 'cover',
    heading: 'weeks of supply',
    also: ['cover', 'cover weeks'],
    kind: 'whole',
    field: 'coverWeeks',
  },
  {
    key: 'free',
    heading: 'free cases a store',
    also: ['free cases', 'free fill', 'free cases per door'],
    kind: 'whole',
    field: 'freeCasesPerDoor',
  },
];

export const PRICE_LIST: TableKind = {
  columns: [
    { key: 'account', heading: 'chain', also: ['account', 'customer', 'retailer', 'banner'], needed: true },
    { key: 'item', heading: 'product', also: ['item', 'sku', 'article', 'item name'], needed: true },
    ...VALUES.map(({ key, heading, also }) => ({ key, heading, also, needed: false })),
  ],
  across: [],
  about: ({ accounts }) => accounts,
  read: readPrices,
  write: (plan, look) => {
    const accounts = nameReader(plan.accounts, 'chain');
    const items = nameReader(plan.items, 'product');
    return plan.accounts.flatMap((account) =>
      account.listings.flatMap((listing) => {
        const item = plan.items.find(({ id }) => id === listing.itemId);
        if (!item) return [];
        const values = VALUES.map((value) => keptText(listing, value));
        const cells = values.map((value) => (value === null ? '' : fileNumber(look, value)));
        return [[accounts.write(account), items.write(item), ...cells]];
      }),
    );
  },
};

/** What the plan has there as text; null where a price is not typed. */
function keptText(listing: Listing, { field }: Value): string | null {
  const value = getAt(listing, field);
  return value === undefined ? null : String(value);
}

function readPrices(task: Task, entries: readonly Entry[]): Set<string> {
  const { plan, problems, headings } = task;
  const accounts = nameReader(plan.accounts, 'chain');
  const items = nameReader(plan.items, 'product');
  const lines = new Map<string, number>();
  const found = new Set<string>();
  for (const { line, cells } of entries) {
    const account = accounts.find(cells['account'], headings['account'] ?? 'chain', line);
    const item = items.find(cells['item'], headings['item'] ?? 'product', line);
    for (const one of [account, item]) if (!isNamed(one)) problems.push(one);
    if (!isNamed(account) || !isNamed(item)) continue;
    const cell = cells['item'] ?? { text: item.name, line, column: 0 };
    const listing = account.listings.find(({ itemId }) => itemId === item.id);
    if (!listing) {
      refuse(task, cell, 'item', `a product that ${account.name} lists; list it there first`);
      continue;
    }
    const key = `${account.id} ${item.id}`;
    const before = lines.get(key);
    if (before !== undefined) {
      refuse(task, cell, 'item', `a product once a chain; line ${before} has it already`);
      continue;
    }
    lines.set(key, line);
    found.add(account.id);
    const place = {
      where: `${account.name}, ${item.name}`,
      base: `accounts/${account.id}/listings/${item.id}`,
      listing,
    };
    for (const value of VALUES) {
      const own = cells[value.key];
      if (own && own.text.trim() !== '') readValue(task, own, value, place);
    }
  }
  return found;
}

interface Place {
  where: string;
  base: string;
  listing: Listing;
}

function readValue(task: Task, cell: Cell, value: Value, { where, base, listing }: Place): void {
  const text = readNumber(task, cell, { key: value.key, kind: value.kind, expected: '' });
  if (text === null) return;
  const { plan, look } = task;
  const rule = value.key === 'list' ? listing.list : value.key === 'shelf' ? listing.shelf : null;
  if (rule?.by === 'solved') {
    const expected = `an empty cell: this ${value.heading} is worked out from the other prices, until another gives way on the ladder`;
    refuse(task, cell, value.key, expected);
    return;
  }
  const isPrice = rule !== null;
  const kept = value.kind === 'whole' ? Number(text) : text;
  const expected = expectedFor(plan, { base, value, kept, isPrice });
  if (expected !== null) {
    refuse(task, cell, value.key, expected);
    return;
  }
  const now = keptText(listing, value);
  if (now !== null && dec(now).eq(text)) {
    task.same += 1;
    return;
  }
  const shown = (each: string) => (isPrice ? shownPrice(look, each) : shownNumber(look, each));
  const margin =
    rule?.by === 'margin' ? `a margin of ${shownNumber(look, dec(rule.rate).times(100).toFixed())} %` : '';
  task.changes.push({
    where,
    what: value.heading,
    before: now === null ? margin : shown(now),
    after: shown(text),
  });
  task.fields.push(
    isPrice
      ? { path: `${base}/${value.key}`, value: { by: 'price', amount: text } }
      : { path: `${base}/${value.field}`, value: kept },
  );
}

/** What the field expects where it doesn't take the value; null where it does. */
function expectedFor(
  plan: Plan,
  { base, value, kept, isPrice }: { base: string; value: Value; kept: unknown; isPrice: boolean },
): string | null {
  if (!isPrice) return expectedAt(plan, `${base}/${value.field}`, kept);
  return expectedAt(plan, `${base}/${value.key}`, { by: 'price', amount: kept });
}
