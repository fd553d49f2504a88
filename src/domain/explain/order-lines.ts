// What a purchase order says beside what is paid ahead for it: its units, and each instalment with the week it lands in,
// its supplier and its price. Worked figure: 6,000 units ordered in week 9 land in week 16: goods 13,818.00, freight and
// duty 1,515.60, of which 6,909.00 paid ahead.
import type { PlacedInstalment } from '../rollout/books.ts';
import { instalmentsOf } from './runs.ts';
import { landedKey } from './sources.ts';
import type { WeekAt } from './splits.ts';
import type { ExplanationLine } from './types.ts';
import { exactMoney, line, type Scene } from './write.ts';

/** Lines without an amount of their own; none when nothing of the item is ordered in the week. */
export function orderLines({ scene, week }: WeekAt, item: number): ExplanationLine[] {
  const id = scene.plan.items[item]?.id;
  const placed = instalmentsOf(scene).filter((each) => each.week === week && each.item === item);
  if (id === undefined || placed.length === 0) return [];
  const units = placed.reduce((sum, each) => sum + each.units, 0);
  return [
    line({
      label: 'Units ordered',
      value: scene.say.count(units),
      reason: 'What the plan will need and is neither here nor on its way',
      ...leads(scene, placed[0] as PlacedInstalment),
    }),
    ...placed.map((each) => instalmentLine(scene, each)),
  ];
}

function instalmentLine(scene: Scene, placed: PlacedInstalment): ExplanationLine {
  const { say } = scene;
  const money = (minorUnits: number) => exactMoney(scene, minorUnits);
  const ahead = placed.deposit === 0 ? 'nothing paid ahead' : `${money(placed.deposit)} paid ahead`;
  const from = supplierWords(scene, placed);
  return line({
    label: `Lands in ${say.week(placed.lands)}${from === '' ? '' : `, ${from}`}`,
    value: say.count(placed.units),
    reason: `Goods ${money(placed.goods)}, freight and duty ${money(placed.freight)}; ${ahead}`,
    ...leads(scene, placed),
  });
}

/** To what a unit costs; where the item stands on no shelf yet there is no such figure, and it leads to its supply. */
function leads(scene: Scene, { item }: PlacedInstalment): Pick<ExplanationLine, 'explains' | 'path'> {
  const id = scene.plan.items[item]?.id ?? null;
  const explains = landedKey(scene, id);
  return { explains, path: explains === null ? `items/${id}/supply/leadWeeks` : null };
}

/** Said only where there is more than one way to buy. */
function supplierWords({ plan }: Scene, { item, supplier }: PlacedInstalment): string {
  const { sources = [], expedite = null } = plan.items[item]?.supply ?? {};
  if (supplier < 0) return 'rushed';
  if (supplier > 0) return `from ${sources[supplier - 1]?.name ?? ''}`;
  return sources.length > 0 || expedite !== null ? 'from the first supplier' : '';
}
