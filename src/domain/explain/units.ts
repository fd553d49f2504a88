// Units over the whole plan: what shoppers wanted, what they found, what was lost for an empty shelf.
// Worked figure: 18,000 wanted, 17,100 sold, 900 lost: fill rate 95 %.
import { nearest } from '../deals/curve.ts';
import { kept } from '../money/kept.ts';
import { countLine, doorLines, paceLines, rateOfSaleLine } from './inputs.ts';
import { placesOf } from './place.ts';
import { sumSeries } from './runs.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactPercent, exactPrice, line, type Scene, typed } from './write.ts';

type UnitsFigure = 'fillRate' | 'demandUnits' | 'soldUnits' | 'lostUnits';

const MEANINGS: Record<UnitsFigure, { name: string; meaning: string }> = {
  fillRate: { name: 'Fill rate', meaning: 'The part of what shoppers want that they find on the shelf.' },
  demandUnits: {
    name: 'Units wanted',
    meaning: 'Units shoppers would buy over the plan, were shelves never empty.',
  },
  soldUnits: { name: 'Units sold', meaning: 'Units scanned at the till over the plan; a fill is no sale.' },
  lostUnits: { name: 'Units lost', meaning: 'Units shoppers wanted and did not find: these sales are gone.' },
};

export function unitsFigure(scene: Scene, figure: UnitsFigure): Draft {
  const { reading } = scene.results;
  const { say } = scene;
  const { name, meaning } = MEANINGS[figure];
  const { soldUnits, lostUnits, demandUnits, fillRate } = reading;
  const base = { title: name, meaning, caution: null };
  switch (figure) {
    case 'fillRate':
      return {
        ...base,
        value: fillRate === null ? 'not known: nothing is wanted in these weeks' : say.percent(fillRate),
        exact: fillRate === null ? null : nearest(fillRate, 6).toFixed(),
        formula: `${say.count(soldUnits)} sold ÷ ${say.count(demandUnits)} wanted${fillRate === null ? '' : ` = ${exactPercent(scene, nearest(fillRate, 4))}`}`,
        lines: [unitsLine(scene, 'soldUnits', null), unitsLine(scene, 'demandUnits', null)],
      };
    case 'demandUnits':
      return {
        ...base,
        value: say.count(demandUnits),
        exact: String(demandUnits),
        formula: `${say.count(soldUnits)} sold + ${say.count(lostUnits)} lost = ${say.count(demandUnits)}`,
        lines: [unitsLine(scene, 'soldUnits', soldUnits), unitsLine(scene, 'lostUnits', lostUnits)],
      };
    default:
      return {
        ...base,
        value: say.count(reading[figure]),
        exact: String(reading[figure]),
        formula: `sum over ${say.count(scene.plan.horizonWeeks)} weeks = ${say.count(reading[figure])}`,
        lines: [...accountLines(scene, figure), ...inputLines(scene, figure)],
        caution: cautionOf(scene, figure),
      };
  }
}

function cautionOf(scene: Scene, figure: 'soldUnits' | 'lostUnits'): string | null {
  const { firstLostWeek } = scene.results.reading;
  if (figure === 'soldUnits' || firstLostWeek === null) return null;
  return `Shelves run empty first in ${scene.say.week(firstLostWeek)}.`;
}

function unitsLine(
  scene: Scene,
  figure: 'demandUnits' | 'soldUnits' | 'lostUnits',
  adds: number | null,
): ExplanationLine {
  return line({
    label: MEANINGS[figure].name,
    value: scene.say.count(scene.results.reading[figure]),
    explains: { of: 'cash', figure },
    adds: adds === null ? null : String(adds),
  });
}

function accountLines(scene: Scene, figure: 'soldUnits' | 'lostUnits'): ExplanationLine[] {
  const { pass } = scene.results;
  const name = figure === 'soldUnits' ? 'sold' : 'lost';
  return scene.plan.accounts.map((account, a) => {
    const units = sumSeries(pass.accounts[a]?.[name] ?? new Float64Array(0), 0, pass.weeks - 1);
    return typed(scene, `accounts/${account.id}/listings`, {
      label: account.name,
      value: scene.say.count(units),
      adds: String(units),
    });
  });
}

function inputLines(scene: Scene, figure: 'soldUnits' | 'lostUnits'): ExplanationLine[] {
  const doors = scene.plan.accounts.flatMap((account) => [
    ...doorLines(scene, account),
    ...placesOf(scene, account).map((place) => rateOfSaleLine(scene, place)),
    ...paceLines(scene, account),
  ]);
  if (figure === 'soldUnits') return doors;
  const shelves = scene.plan.accounts.flatMap((account) =>
    placesOf(scene, account).map(({ path, listing, words }) =>
      countLine(scene, `${path}/coverWeeks`, `Weeks a store orders ahead, ${words}`, listing.coverWeeks),
    ),
  );
  const supplies = scene.plan.items.flatMap(({ id, name, supply }) => [
    countLine(scene, `items/${id}/supply/leadWeeks`, `Weeks to make, ${name}`, supply.leadWeeks),
    typed(scene, `items/${id}/supply/capacityUnitsPerWeek`, {
      label: `Capacity a week, ${name}`,
      value: supply.capacityUnitsPerWeek === null ? 'no lid' : scene.say.count(supply.capacityUnitsPerWeek),
    }),
  ]);
  const limits = scene.plan.accounts.flatMap(({ id, name, creditLimitAmount }) =>
    creditLimitAmount === null
      ? []
      : [
          typed(scene, `accounts/${id}/creditLimitAmount`, {
            label: `Credit limit, ${name}`,
            value: exactPrice(scene, kept(creditLimitAmount)),
            reason: 'What would pass it waits, and shelves may run empty meanwhile',
          }),
        ],
  );
  return [...shelves, ...supplies, ...limits, ...doors];
}
