// Inputs of one product: its name, how it is counted, and the sizes of its pack, which stay out until somebody measured it.
// Worked example: a new pack starts as cases of 400 x 300 x 200 mm, ten a layer, each size marked as a guess.
import type { VNode } from 'preact';
import { type PalletName, palletSides } from '../../domain/pack/pallets.ts';
import type { Item } from '../../domain/plan/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { useSay } from '../shared/use-say.ts';
import { Fields, type Guess, Part } from './fields.tsx';
import { PackFigures } from './pack-figures.tsx';
import { choice, count, type FieldSpec, onOff } from './specs.ts';

const COUNTS: readonly FieldSpec[] = [
  count('caseUnits', 'Units in a case', '', { step: 'one', least: 1 }),
  count('palletCases', 'Cases on a pallet', '', { least: 1 }),
  count('shipmentUnits', 'Units in a standard shipment', '', {
    hint: 'Costs stated for a shipment are shared out over these.',
  }),
];

const SIZES: readonly FieldSpec[] = [
  count('innerUnits', 'Units in an inner pack', ''),
  count('caseLengthMm', 'Case, length', 'mm'),
  count('caseWidthMm', 'Case, width', 'mm'),
  count('caseHeightMm', 'Case, height', 'mm'),
  count('caseGrams', 'Case, weight with its goods', 'g'),
  count('layerCases', 'Cases in a layer', ''),
];

const STACK: readonly FieldSpec[] = [
  count('palletMostHeightMm', 'Loaded pallet, height at most', 'mm', { hint: 'The empty pallet included.' }),
  count('palletMostKg', 'Its load, at most', 'kg'),
  onOff('stacks', 'A second pallet may stand on it'),
];

const PALLETS: readonly PalletName[] = [
  '1200x800',
  '1200x1000',
  '1219x1016',
  '1140x1140',
  '1100x1100',
  '1067x1067',
];

const GUESSES: readonly Guess[] = [
  guess('caseLengthMm', 'No case was measured yet'),
  guess('caseWidthMm', 'No case was measured yet'),
  guess('caseHeightMm', 'No case was measured yet'),
  guess('caseGrams', 'No case was weighed yet'),
  guess('palletMostHeightMm', 'Ask whoever receives the pallets'),
  guess('palletMostKg', 'Ask whoever receives the pallets'),
];

export function PackSection({ base, item }: { base: string; item: Item }): VNode {
  const say = useSay();
  const pallets = PALLETS.map((value) => {
    const { length, width } = palletSides(value);
    return { value, label: `${say.count(length)} × ${say.count(width)} mm` };
  });
  const path = `${base}/pack`;
  return (
    <>
      <FieldFor path={`${base}/name`} label="Product" kind="text" />
      <Fields base={base} specs={COUNTS} />
      <Part
        path={path}
        label="sizes and weight"
        hint="For layers and full pallets, and what a trailer or container holds."
        blank={() => blankPack(item)}
        guesses={GUESSES}
      >
        <Fields
          base={path}
          specs={[
            ...SIZES,
            choice('pallet', 'Pallet', pallets, { asList: true, hint: 'Sides by ISO 6780.' }),
            ...STACK,
          ]}
        />
      </Part>
      <PackFigures item={item} />
    </>
  );
}

function guess(field: string, source: string): Guess {
  return { field, source, low: null, high: null };
}

function blankPack({ caseUnits, palletCases }: Item): NonNullable<Item['pack']> {
  return {
    innerUnits: caseUnits,
    caseLengthMm: 400,
    caseWidthMm: 300,
    caseHeightMm: 200,
    caseGrams: 6000,
    layerCases: Math.min(10, palletCases),
    pallet: '1200x1000',
    palletMostHeightMm: 1800,
    palletMostKg: 1000,
    stacks: false,
  };
}
