// One pallet of one item: cases in a layer as they can really lie, layers by height and by weight, and what the plan says
// of both. Cases stand upright, turned by a quarter at most, inside the pallet's edges.
// Worked figure: cases of 400 x 300 x 200 mm and 5 kg on 1200 x 1000, at most 1,600 mm and 1,000 kg: 10 a layer, 7 layers by
// height ((1600 - 144) / 200), 20 by weight, so 70 cases, and height is what limits.
import { type Arrangement, arrange } from './arrange.ts';
import { PALLET_HEIGHT_MM, type Pack, palletSides } from './pallets.ts';
import { mostBoxes } from './raster.ts';

export interface PalletFigures {
  /** How one layer lies; null where more than 1,000 cases would: the case is hardly that small. */
  layer: Arrangement | null;
  /** Cases in a layer that were found to fit; none where a case is larger than the pallet. */
  layerCases: number;
  /** No layer holds more. */
  layerAtMost: number;
  layersByHeight: number;
  /** Whole layers of `layerCases` within the weight; null where none fits a layer. */
  layersByWeight: number | null;
  /** In whole layers, or in single cases where not one layer is within the weight. */
  cases: number;
  limits: 'height' | 'weight' | 'floor';
}

/** As many cases as a plan may say of a layer. */
export const LAYER_MOST = 1000;

const known = new Map<string, PalletFigures>();

/** What a pallet can carry, from the sizes alone; worked out once for the same sizes. */
export function palletOf(pack: Pack): PalletFigures {
  const { caseLengthMm, caseWidthMm, caseHeightMm, caseGrams, pallet, palletMostHeightMm, palletMostKg } =
    pack;
  const key = [
    caseLengthMm,
    caseWidthMm,
    caseHeightMm,
    caseGrams,
    pallet,
    palletMostHeightMm,
    palletMostKg,
  ].join();
  const before = known.get(key);
  if (before) return before;
  if (known.size > 200) known.clear();
  const found = figuresOf(pack);
  known.set(key, found);
  return found;
}

function figuresOf(pack: Pack): PalletFigures {
  const sizes = { ...palletSides(pack.pallet), boxLength: pack.caseLengthMm, boxWidth: pack.caseWidthMm };
  const layerAtMost = mostBoxes(sizes);
  const layer = layerAtMost > LAYER_MOST ? null : arrange(sizes);
  const layerCases = layer === null ? LAYER_MOST : layer.boxes.length;
  const layersByHeight = Math.max(
    0,
    Math.floor((pack.palletMostHeightMm - PALLET_HEIGHT_MM) / pack.caseHeightMm),
  );
  const casesByWeight = Math.floor((pack.palletMostKg * 1000) / pack.caseGrams);
  const layersByWeight = layerCases === 0 ? null : Math.floor(casesByWeight / layerCases);
  const isHeavy = layersByWeight !== null && layersByWeight < layersByHeight;
  const layers = Math.min(layersByHeight, layersByWeight ?? 0);
  const whole = layers * layerCases;
  const cases = isHeavy && layers === 0 ? casesByWeight : whole;
  const limits = layerCases === 0 ? 'floor' : isHeavy ? 'weight' : 'height';
  return { layer, layerCases, layerAtMost, layersByHeight, layersByWeight, cases, limits };
}
