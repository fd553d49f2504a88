// How many pallets, cases and units of one item a trailer or container carries: by floor, by height (one pallet on another
// where it stacks) and by weight; the least of them counts, in whole pallets as the plan packs them.
// Worked figure: pallets of 70 cases of 5 kg (375 kg with the pallet) in a 20 ft container: 10 of 1200 x 1000 on the floor,
// 75 by weight: 10 pallets, 700 cases.
import type { Item } from '../plan/index.ts';
import { LOAD_NAMES, LOADS, type LoadName } from './loads.ts';
import { PALLET_HEIGHT_MM, PALLET_KG, type Pack, type PalletName } from './pallets.ts';

export interface LoadFigures {
  load: LoadName;
  /** Standing on the floor, and how many on each other: 0 where a loaded pallet doesn't pass the door. */
  onFloor: number;
  high: number;
  byWeight: number;
  pallets: number;
  cases: number;
  units: number;
  /** Weight of the load with its pallets, kilograms, rounded up. */
  kg: number;
  limits: 'floor' | 'height' | 'weight';
}

/**
 * Pallets that stand on the floor of a load, PALLET_GAP_MM between them. The counts are what arrange.ts finds
 * (tests/worked/pack.test.ts lays them out again): landed cost needs these few numbers at the app's start, not the search.
 */
const ON_FLOOR: Readonly<Record<LoadName, Readonly<Record<PalletName, number>>>> = {
  trailer53: {
    '1200x1000': 30,
    '1200x800': 39,
    '1219x1016': 30,
    '1140x1140': 26,
    '1100x1100': 28,
    '1067x1067': 28,
  },
  trailerEu: {
    '1200x1000': 26,
    '1200x800': 33,
    '1219x1016': 24,
    '1140x1140': 22,
    '1100x1100': 24,
    '1067x1067': 24,
  },
  container20: {
    '1200x1000': 10,
    '1200x800': 11,
    '1219x1016': 10,
    '1140x1140': 10,
    '1100x1100': 10,
    '1067x1067': 10,
  },
  container40: {
    '1200x1000': 21,
    '1200x800': 24,
    '1219x1016': 21,
    '1140x1140': 20,
    '1100x1100': 20,
    '1067x1067': 22,
  },
};

export function palletsOnFloor(load: LoadName, pallet: PalletName): number {
  return ON_FLOOR[load][pallet];
}

/** A pallet of `palletCases` cases: its height in millimetres and its weight in grams, the empty pallet in both. */
export function loadedPallet(pack: Pack, palletCases: number): { heightMm: number; grams: number } {
  const layers = Math.ceil(palletCases / pack.layerCases);
  return {
    heightMm: PALLET_HEIGHT_MM + layers * pack.caseHeightMm,
    grams: PALLET_KG * 1000 + palletCases * pack.caseGrams,
  };
}

/** What one load carries of an item whose pack is known. */
export function loadOf({ caseUnits, palletCases }: Item, pack: Pack, load: LoadName): LoadFigures {
  const { heightMm, grams } = loadedPallet(pack, palletCases);
  const most = LOADS[load];
  const onFloor = palletsOnFloor(load, pack.pallet);
  const high = Math.min(pack.stacks ? 2 : 1, Math.floor(most.heightMm / heightMm));
  const byWeight = Math.floor((most.payloadKg * 1000) / grams);
  const pallets = Math.min(onFloor * high, byWeight);
  const cases = pallets * palletCases;
  const byRoom = high === 0 || (pack.stacks && high === 1) ? 'height' : 'floor';
  return {
    load,
    onFloor,
    high,
    byWeight,
    pallets,
    cases,
    units: cases * caseUnits,
    kg: Math.ceil((pallets * grams) / 1000),
    limits: byWeight < onFloor * high ? 'weight' : byRoom,
  };
}

/** Every load. */
export function loadsOf(item: Item, pack: Pack): LoadFigures[] {
  return LOAD_NAMES.map((load) => loadOf(item, pack, load));
}
