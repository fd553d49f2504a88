// What drops and pallets cost a unit: the deliveries of one order to the next, over the units they carry.
// Worked figure: 5 drops at 4.255 and a pallet at 30.00 are 51.275 over 60 units, 0.8546 a unit.
import { deliveryOf } from '../deals/delivery.ts';
import { storeWeeks } from '../deals/store-weeks.ts';
import { type Decimal, dec } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { countLine, doorLines, rateOfSaleLine } from './inputs.ts';
import { type Place, placesOf } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactNumber, exactPrice, type Scene, typed } from './write.ts';

export function deliveryFigure(scene: Scene, place: Place): Draft {
  const { account, dealItem } = place;
  const amount = dealItem.deliveryPerUnit;
  const { delivery } = account;
  const found = deliveryOf({ plan: scene.plan, account, stores: storeWeeks(account) });
  const base = {
    title: `Drops and pallets per unit, ${place.words}`,
    value: exactPrice(scene, amount),
    exact: amount.toFixed(),
    meaning:
      'What deliveries by drop and pallet cost a unit, at the full rate of sale with all doors open; the same for all items that travel together.',
  };
  const path = `accounts/${account.id}/delivery`;
  if (!delivery || !found) {
    const none = typed(scene, path, { label: 'Drops and pallets', value: 'nothing to pay' });
    return { ...base, formula: 'nothing is paid by the drop or pallet', lines: [none], caution: null };
  }
  const { drops, pallets, units, everyWeeks, doors } = found;
  const shown = (value: number) => exactNumber(scene, twoPlaces(value));
  const of = (value: number, one: string) => `${shown(value)} ${value === 1 ? one : `${one}s`}`;
  const price = (text: string) => exactPrice(scene, kept(text));
  return {
    ...base,
    formula:
      `(${of(drops, 'drop')} × ${price(delivery.amountPerDrop)} + ${of(pallets, 'pallet')} × ` +
      `${price(delivery.amountPerPallet)}) ÷ ${of(units, 'unit')} = ${exactPrice(scene, amount)}`,
    lines: [
      typed(scene, `${path}/amountPerDrop`, {
        label: 'A drop',
        value: price(delivery.amountPerDrop),
        owner: 'between',
        reason: account.depot
          ? 'One for all that goes to the depot at a time'
          : `No more than the ${shown(doors)} doors, and than the cases they take`,
      }),
      typed(scene, `${path}/amountPerPallet`, {
        label: 'A pallet begun',
        value: price(delivery.amountPerPallet),
        owner: 'between',
      }),
      countLine(scene, `accounts/${account.id}/ordering/everyWeeks`, 'Weeks from order to order', everyWeeks),
      ...doorLines(scene, account),
      ...placesOf(scene, account).flatMap((each): ExplanationLine[] => [
        rateOfSaleLine(scene, each),
        countLine(
          scene,
          `items/${each.item.id}/palletCases`,
          `Cases on a pallet, ${each.item.name}`,
          each.item.palletCases,
        ),
      ]),
    ],
    caution: 'The weekly pass pays what really leaves each week; fills and short weeks cost more a unit.',
  };
}

function twoPlaces(value: number): Decimal {
  return dec(value).toDecimalPlaces(2);
}
