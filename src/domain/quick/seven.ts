// The seven numbers no default can stand in for: each moves a verdict. The first three give the ladder, the next three
// the deal, the last the cash. Any of them may be missing while they are being typed.
// Worked figure: of { shelfPrice: '4.99', landedPerUnit: '1.10' } the ladder still misses the retailer's margin.
import type { VerdictName } from '../results.ts';

export interface SevenNumbers {
  /** As on the tag, tax in it where the region shows it so. Decimal text, like the next two. */
  shelfPrice: string | null;
  /** One unit, landed at our door. */
  landedPerUnit: string | null;
  /** Margin on its own selling price; 42 % is "0.42". */
  retailerMarginRate: string | null;
  /** Zero is an answer. */
  moneyDownPerStore: string | null;
  stores: number | null;
  unitsPerStoreWeek: string | null;
  /** Cash we have today; null gives the need and no verdict. */
  cash: string | null;
  /** Each store's first case is free. */
  freeFill: boolean;
  /** A distributor stands between us and the chain. */
  distributor: boolean;
  productName: string;
  chainName: string;
}

export const SEVEN_KEYS = [
  'shelfPrice',
  'landedPerUnit',
  'retailerMarginRate',
  'moneyDownPerStore',
  'stores',
  'unitsPerStoreWeek',
  'cash',
] as const;
export type SevenKey = (typeof SEVEN_KEYS)[number];

/** Nothing typed yet. */
export const NO_NUMBERS: SevenNumbers = {
  shelfPrice: null,
  landedPerUnit: null,
  retailerMarginRate: null,
  moneyDownPerStore: null,
  stores: null,
  unitsPerStoreWeek: null,
  cash: null,
  freeFill: false,
  distributor: false,
  productName: '',
  chainName: '',
};

const LADDER_KEYS = SEVEN_KEYS.slice(0, 3);
const DEAL_KEYS = SEVEN_KEYS.slice(0, 6);

/** The numbers a verdict can't be given without. None of the seven is evidence for a promise: it has a room of its own. */
const NEEDED: Record<VerdictName, readonly SevenKey[]> = {
  ladder: LADDER_KEYS,
  deal: DEAL_KEYS,
  cash: SEVEN_KEYS,
  promise: [],
};

/** The numbers still missing for a verdict, in the order they are asked for. */
export function missingFor(verdict: VerdictName, seven: SevenNumbers): SevenKey[] {
  return NEEDED[verdict].filter((key) => seven[key] === null);
}

/** Parts of the results that rest on typed numbers alone; what isn't named rests on a stand-in and must not be shown. */
export const SHOWN_PARTS = ['ladder', 'deal', 'cashNeed', 'cashVerdict'] as const;
export type ShownPart = (typeof SHOWN_PARTS)[number];

/**
 * ladder: `ladders` and `verdicts.ladder`. deal: `deals` and `verdicts.deal`. cashNeed: `pass` and `reading`, counted
 * from zero cash until cash is typed ("needs 48,200 by week 9"). cashVerdict: `verdicts.cash`.
 */
export function shownWith(seven: SevenNumbers): ShownPart[] {
  const parts: ShownPart[] = [];
  if (missingFor('ladder', seven).length === 0) parts.push('ladder');
  if (missingFor('deal', seven).length === 0) parts.push('deal', 'cashNeed');
  if (missingFor('cash', seven).length === 0) parts.push('cashVerdict');
  return parts;
}
