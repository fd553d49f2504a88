// The flat pallets of international trade: sides in millimetres by ISO 6780:2003, which fixes plan sizes only. Height and
// weight of the empty pallet: 144 mm and 25 kg for 1200 x 800 (EN 13698-1, the European exchange pallet); for the others
// the same, common practice, no source: pallets differ, and a wet one weighs more.
// Worked figure: "1219x1016" is the 48 x 40 inch pallet, 1219 mm long.
import type { Item } from '../plan/index.ts';

export type Pack = NonNullable<Item['pack']>;
export type PalletName = Pack['pallet'];

export const PALLET_HEIGHT_MM = 144;
export const PALLET_KG = 25;

/** Sides in millimetres, the longer first. */
export function palletSides(pallet: PalletName): { length: number; width: number } {
  const [length = 0, width = 0] = pallet.split('x').map(Number);
  return { length, width };
}
