// Units in one week, of one product or of all: a stock is what it was the week before and what moved it, a product's part
// stands for itself, and what shoppers want is what they found and what was missing.
// Worked figure: 1,200 with us + 2,400 landed − 900 shipped = 2,700 with us a week later.
import type { Item } from '../plan/index.ts';
import type { UnitName } from '../rollout/types.ts';
import type { ExplanationLine, FigureKey } from './types.ts';
import { UNIT_MEANINGS } from './unit-words.ts';
import { type At, closingLines, doorsOf, shopperLines, supplyLines } from './units-inputs.ts';
import { type Draft, line, type Scene, typed } from './write.ts';

type PlanKey = Extract<FigureKey, { of: 'planUnits' }>;
type ItemKey = Extract<FigureKey, { of: 'itemUnits' }>;

/** Of all products together. Null when the week lies beyond the plan's horizon. */
export function planUnitsFigure(scene: Scene, { unit, week }: PlanKey): Draft | null {
  const { pass } = scene.results;
  if (week >= pass.weeks) return null;
  const lines = scene.plan.items.map(({ id, name }, index) =>
    counted(scene, pass.units[index]?.[unit][week] ?? 0, {
      label: name,
      explains: { of: 'itemUnits', itemId: id, unit, week },
    }),
  );
  return draftOf(scene, unit, '', week, lines);
}

/** Of one product. Null when the plan has no such item or week. */
export function itemUnitsFigure(scene: Scene, { itemId, unit, week }: ItemKey): Draft | null {
  const { plan, results } = scene;
  const index = plan.items.findIndex(({ id }) => id === itemId);
  const item = plan.items[index];
  const units = results.pass.units[index];
  if (!item || !units || week >= results.pass.weeks) return null;
  const at = { scene, item, index, week };
  const lines = linesOf(at, unit);
  const summed = lines.some(({ adds }) => adds !== null);
  const value = units[unit][week] ?? 0;
  return draftOf(scene, unit, `, ${item.name}`, week, lines, summed ? null : value);
}

function draftOf(
  scene: Scene,
  unit: UnitName,
  whose: string,
  week: number,
  lines: ExplanationLine[],
  value: number | null = null,
): Draft {
  const { name, meaning } = UNIT_MEANINGS[unit];
  const total = value ?? lines.reduce((sum, { adds }) => sum + Number(adds ?? 0), 0);
  return {
    title: `${name}${whose}, ${scene.say.week(week)}`,
    value: scene.say.count(total),
    exact: String(total),
    meaning,
    formula: countFormula(scene, lines, total),
    lines,
    caution: null,
  };
}

/** "1,200 + 2,400 − 900 = 2,700". */
export function countFormula({ say }: Scene, lines: readonly ExplanationLine[], total: number): string {
  const parts = lines.flatMap(({ adds }) => (adds === null ? [] : [Number(adds)]));
  if (parts.length < 2) return say.count(total);
  if (parts.length > 6) return `sum of ${say.count(parts.length)} lines = ${say.count(total)}`;
  const text = parts.map((each, index) =>
    index === 0 ? say.count(each) : `${each < 0 ? '−' : '+'} ${say.count(Math.abs(each))}`,
  );
  return `${text.join(' ')} = ${say.count(total)}`;
}

/** A whole count as a part of a sum. */
export function counted(
  { say }: Scene,
  units: number,
  from: Pick<ExplanationLine, 'label'> & Partial<ExplanationLine>,
): ExplanationLine {
  return line({ ...from, value: say.count(units), adds: String(units) });
}

interface Stock {
  plus: readonly UnitName[];
  minus: readonly UnitName[];
  /** What else moved it, and where that is typed. */
  rest: string;
  restPath: (item: Item) => string;
  openingPath: (item: Item) => string;
}

const chains = (): string => 'accounts';

const STOCKS: Partial<Record<UnitName, Stock>> = {
  ours: {
    plus: ['made'],
    minus: ['shipped'],
    rest: 'Came back, taken out, or written off',
    restPath: ({ id }) => `items/${id}/removals`,
    openingPath: ({ id }) => `items/${id}/opening/units`,
  },
  inTransit: {
    plus: ['shipped'],
    minus: ['received'],
    rest: 'Into and out of depots, or arrived at closed doors',
    restPath: chains,
    openingPath: chains,
  },
  atDepot: {
    plus: [],
    minus: [],
    rest: 'Came in from us, less what went on to stores',
    restPath: chains,
    openingPath: chains,
  },
  inStores: {
    plus: ['received'],
    minus: ['sold'],
    rest: 'Sent back, or taken off closed doors',
    restPath: chains,
    openingPath: chains,
  },
  onOrder: {
    plus: ['ordered'],
    minus: ['made'],
    rest: 'Not placed, or landed otherwise',
    restPath: ({ id }) => `items/${id}/supply`,
    openingPath: ({ id }) => `items/${id}/opening/onOrder`,
  },
};

function linesOf(at: At, unit: UnitName): ExplanationLine[] {
  const stock = STOCKS[unit];
  if (stock) return stockLines(at, unit, stock);
  switch (unit) {
    case 'demand':
      return [part(at, 'sold', 1), part(at, 'lost', 1)];
    case 'sold':
    case 'lost':
      return [before(at, 'inStores'), named(at, 'received'), ...shopperLines(at)];
    case 'received':
      return [before(at, 'inTransit'), named(at, 'shipped')];
    case 'shipped':
    case 'fillShipped':
      return [before(at, 'ours'), named(at, 'made'), before(at, 'backlog'), ...doorsOf(at)];
    case 'backlog':
      return [before(at, 'backlog'), named(at, 'shipped'), ...doorsOf(at)];
    case 'made':
      return [before(at, 'onOrder'), ...supplyLines(at)];
    case 'ordered':
    case 'rushed':
      return [before(at, 'ours'), before(at, 'onOrder'), ...supplyLines(at), ...shopperLines(at)];
    default:
      return [before(at, 'inStores'), ...closingLines(at)];
  }
}

function stockLines(at: At, unit: UnitName, { plus, minus, ...stock }: Stock): ExplanationLine[] {
  const { scene, item, index, week } = at;
  const total = scene.results.pass.units[index]?.[unit][week] ?? 0;
  const moved = [...plus.map((each) => part(at, each, 1)), ...minus.map((each) => part(at, each, -1))];
  const opening =
    week === 0
      ? counted(scene, openingOf(at, unit), {
          ...typed(scene, stock.openingPath(item), { label: 'On the first day', value: '' }),
        })
      : counted(scene, countOf(at, unit, week - 1), {
          label: `${UNIT_MEANINGS[unit].name}, ${scene.say.week(week - 1)}`,
          explains: { of: 'itemUnits', itemId: item.id, unit, week: week - 1 },
        });
  const sum = [opening, ...moved].reduce((all, { adds }) => all + Number(adds ?? 0), 0);
  const rest =
    total === sum
      ? []
      : [
          counted(scene, total - sum, {
            ...typed(scene, stock.restPath(item), { label: stock.rest, value: '' }),
          }),
        ];
  return [opening, ...moved, ...rest].filter(({ adds }, place) => place === 0 || adds !== '0');
}

/** What the plan starts with: in our own stock, on shelves of doors that already sell, in depots, in open orders. */
function openingOf({ scene: { results }, index, item }: At, unit: UnitName): number {
  const own = results.compiled.items[index]?.openingUnits ?? 0;
  const shelves = results.compiled.cells.reduce(
    (sum, cell) => (cell.item === index ? sum + cell.openingStock : sum),
    0,
  );
  switch (unit) {
    case 'ours':
      return own;
    case 'inStores':
      return shelves;
    case 'atDepot':
      return (results.pass.openingUnits[index] ?? 0) - own - shelves;
    case 'onOrder':
      return item.opening.onOrder.reduce((sum, { units }) => sum + units, 0);
    default:
      return 0;
  }
}

function countOf({ scene, index }: At, unit: UnitName, week: number): number {
  return scene.results.pass.units[index]?.[unit][week] ?? 0;
}

function part(at: At, unit: UnitName, sign: 1 | -1): ExplanationLine {
  const { scene, item, week } = at;
  const units = countOf(at, unit, week);
  return counted(scene, units === 0 ? 0 : sign * units, {
    label: UNIT_MEANINGS[unit].name,
    explains: { of: 'itemUnits', itemId: item.id, unit, week },
  });
}

/** A series of the same week as an ingredient. */
function named(at: At, unit: UnitName): ExplanationLine {
  return { ...part(at, unit, 1), adds: null };
}

/** What stood at the end of the week before, or on the first day, as an ingredient. */
function before(at: At, unit: UnitName): ExplanationLine {
  const { scene, item, week } = at;
  if (week > 0) {
    const label = `${UNIT_MEANINGS[unit].name}, ${scene.say.week(week - 1)}`;
    return { ...named({ ...at, week: week - 1 }, unit), label };
  }
  const path = STOCKS[unit]?.openingPath(item) ?? 'accounts';
  const label = `${UNIT_MEANINGS[unit].name} on the first day`;
  return typed(scene, path, { label, value: scene.say.count(openingOf(at, unit)) });
}
