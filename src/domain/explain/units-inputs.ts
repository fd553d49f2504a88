// What units of a product in a week rest on, as lines that lead to the fields: its shoppers, its supply, and what takes
// units out of stores again. Worked figure: a product listed at two chains has two rates of sale.
import type { Item } from '../plan/index.ts';
import { countLine, doorLines, liftLines, paceLines, rateOfSaleLine } from './inputs.ts';
import { type Place, placesOf } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { type Scene, typed } from './write.ts';

export interface At {
  scene: Scene;
  item: Item;
  /** The item's place in the plan. */
  index: number;
  week: number;
}

/** The listings of the product. */
function listed({ scene, item }: At): Place[] {
  return scene.plan.accounts.flatMap((account) =>
    placesOf(scene, account).filter((place) => place.item.id === item.id),
  );
}

export function doorsOf(at: At): ExplanationLine[] {
  return listed(at).flatMap(({ account }) => doorLines(at.scene, account));
}

/** What shoppers want rests on. */
export function shopperLines(at: At): ExplanationLine[] {
  const { scene } = at;
  return listed(at).flatMap((place) => [
    ...doorLines(scene, place.account),
    rateOfSaleLine(scene, place),
    ...paceLines(scene, place.account),
    ...liftLines(scene, place.account, [place]),
  ]);
}

export function supplyLines({ scene, item: { id, supply } }: At): ExplanationLine[] {
  const path = `items/${id}/supply`;
  const { leadWeeks, coverWeeks, minimumOrderUnits, batchUnits } = supply;
  return [
    countLine(scene, `${path}/leadWeeks`, 'Weeks to make', leadWeeks),
    countLine(scene, `${path}/coverWeeks`, 'Weeks of supply ahead', coverWeeks),
    countLine(scene, `${path}/minimumOrderUnits`, 'Smallest order', minimumOrderUnits),
    countLine(scene, `${path}/batchUnits`, 'Ordered in batches of', batchUnits),
  ];
}

/** What sends units back, or loses them. */
export function closingLines(at: At): ExplanationLine[] {
  const { scene, item } = at;
  const out = typed(scene, `items/${item.id}/removals`, {
    label: 'Samples and write-offs planned',
    value: scene.say.count(item.removals.length),
  });
  const closed = { kept: 'kept by the chain', credited: 'credited', ours: 'ours again' };
  const doors = listed(at).map(({ account }) =>
    typed(scene, `accounts/${account.id}/closedStock`, {
      label: `Stock of a closed door, ${account.name}`,
      value: closed[account.closedStock],
    }),
  );
  return [out, ...doors];
}
