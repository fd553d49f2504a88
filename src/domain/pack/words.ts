// What is said of a pack: where the plan's own counts don't fit its sizes, and what a load is limited by. The plan's counts
// stay what freight and orders are reckoned with; a warning changes nothing.
// Worked example: 12 cases of 400 x 300 mm in a layer on 1200 x 1000: "12 cases in a layer don't fit: at most 10 of
// 400 x 300 mm lie on 1200 x 1000 mm."
import type { Item } from '../plan/index.ts';
import type { Say } from '../verdicts/say.ts';
import { LAYER_MOST, type PalletFigures } from './layer.ts';
import { type LoadFigures, loadedPallet } from './load.ts';
import { LOADS } from './loads.ts';
import { type Pack, palletSides } from './pallets.ts';

interface Told {
  item: Item;
  pack: Pack;
  pallet: PalletFigures;
  say: Say;
}

/** Everything about the pallet that doesn't fit together; empty where it does. */
export function packWarnings(told: Told): string[] {
  return [layerWarning(told), palletWarning(told), innerWarning(told)].filter((each) => each !== null);
}

function layerWarning({ pack, pallet, say }: Told): string | null {
  const { length, width } = palletSides(pack.pallet);
  const sizes = `${say.count(pack.caseLengthMm)} × ${say.count(pack.caseWidthMm)} mm`;
  const floor = `${say.count(length)} × ${say.count(width)} mm`;
  const { layerAtMost, layerCases } = pallet;
  const own = cases(pack.layerCases, say);
  if (pallet.layer === null) {
    return `More than ${say.count(LAYER_MOST)} cases of ${sizes} would lie in a layer. Is the case that small?`;
  }
  if (layerAtMost === 0) return `A case of ${sizes} doesn’t lie inside a pallet of ${floor}.`;
  if (pack.layerCases > layerAtMost) {
    return `${own} in a layer don’t fit: at most ${say.count(layerAtMost)} of ${sizes} lie on ${floor}.`;
  }
  if (pack.layerCases > layerCases) {
    return `${own} in a layer: an arrangement of ${say.count(layerCases)} was found, none of ${say.count(pack.layerCases)}. Try it with real cases.`;
  }
  return null;
}

function palletWarning({ item, pack, say }: Told): string | null {
  const { heightMm } = loadedPallet(pack, item.palletCases);
  const own = cases(item.palletCases, say);
  if (heightMm > pack.palletMostHeightMm) {
    return `${own} on a pallet stand ${say.count(heightMm)} mm high, ${say.count(pack.layerCases)} in a layer; the most is ${say.count(pack.palletMostHeightMm)} mm.`;
  }
  const loadKg = Math.ceil((item.palletCases * pack.caseGrams) / 1000);
  if (loadKg > pack.palletMostKg) {
    return `${own} on a pallet weigh ${say.count(loadKg)} kg; the most is ${say.count(pack.palletMostKg)} kg.`;
  }
  return null;
}

function innerWarning({ item, pack, say }: Told): string | null {
  if (item.caseUnits % pack.innerUnits === 0) return null;
  return `A case of ${say.count(item.caseUnits)} units isn’t whole inner packs of ${say.count(pack.innerUnits)}.`;
}

/** "10 cases in a layer, 7 layers: 70 cases; height limits." */
export function palletSentence({ pallet, say }: Told): string {
  const { layerCases, layersByHeight, layersByWeight, limits } = pallet;
  if (limits === 'floor') return 'Not one case lies on it.';
  const layers = Math.min(layersByHeight, layersByWeight ?? layersByHeight);
  const what = `${cases(layerCases, say)} in a layer, ${say.count(layers)} ${layers === 1 ? 'layer' : 'layers'}`;
  return `${what}: ${cases(pallet.cases, say)}; ${limits === 'weight' ? 'weight' : 'height'} limits.`;
}

/** "10 pallets, 700 cases, 8,400 units: the floor limits (75 by weight)." */
export function loadSentence(
  { load, onFloor, high, byWeight, pallets, limits }: LoadFigures,
  say: Say,
): string {
  const { heightMm } = LOADS[load];
  if (high === 0) return `A loaded pallet is higher than its door, ${say.count(heightMm)} mm.`;
  const room = `${say.count(onFloor)} on the floor${high > 1 ? `, ${say.count(high)} high` : ''}`;
  if (pallets === 0) return 'One loaded pallet is heavier than it may carry.';
  const by =
    limits === 'weight' ? 'weight limits' : limits === 'height' ? 'height limits' : 'the floor limits';
  return `${room}, ${say.count(byWeight)} by weight: ${by}.`;
}

function cases(count: number, say: Say): string {
  return `${say.count(count)} ${count === 1 ? 'case' : 'cases'}`;
}
