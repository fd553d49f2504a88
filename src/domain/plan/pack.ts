// What a case is: sizes and weight, how cases stand on a pallet, and what the pallets travel in. Lengths are
// millimetres, weights grams, so that all are whole. Null in a plan while nobody has measured it.
// Worked figure: cases of 400 x 300 x 200 mm on a 1200 x 1000 mm pallet: 10 a layer.
import * as z from 'zod/mini';
import * as f from './fields.ts';

const millimetres = (unit: string) => f.whole({ least: 1, most: 20_000, unit });

export const pack = z.strictObject({
  innerUnits: f.whole({ least: 1, most: 10_000, unit: 'units in an inner pack' }),
  caseLengthMm: millimetres('millimetres of case length'),
  caseWidthMm: millimetres('millimetres of case width'),
  caseHeightMm: millimetres('millimetres of case height'),
  caseGrams: f.whole({ least: 1, most: 1_000_000, unit: 'grams a case' }),
  layerCases: f.whole({ least: 1, most: 1000, unit: 'cases in a layer' }),
  pallet: z.enum(['1200x1000', '1200x800', '1219x1016', '1140x1140', '1100x1100', '1067x1067'], {
    error: 'a pallet of ISO 6780, its sides in millimetres, like "1200x1000"',
  }),
  /** Most height of a loaded pallet, its own included, and most weight of its load. */
  palletMostHeightMm: millimetres('millimetres of loaded height'),
  palletMostKg: f.whole({ least: 1, most: 5000, unit: 'kilograms of load' }),
  /** Whether a second loaded pallet may stand on the first. */
  stacks: z.boolean({ error: 'true or false' }),
});
