// The seven rows: what each is called, how it is typed, what it reads back. Plain data, in the order they are asked.
// Worked example: a margin of 42 reads back "markup 72.4 %": 0.42 / 0.58.
import { dec, ONE } from '../../domain/money/decimal.ts';
import type { SevenKey } from '../../domain/quick/index.ts';
import type { FieldKind } from '../shared/typed-kinds.ts';

export interface SevenRow {
  key: SevenKey;
  label: string;
  kind: FieldKind;
  /** After the number. */
  unit: 'currency' | '%' | '';
  /** What others use, shown while the row is active and empty. */
  hint: string;
}

export const SEVEN_ROWS: readonly SevenRow[] = [
  { key: 'shelfPrice', label: 'Shelf price, as on the tag', kind: 'amount', unit: 'currency', hint: '' },
  { key: 'landedPerUnit', label: 'One unit, landed at our door', kind: 'amount', unit: 'currency', hint: '' },
  {
    key: 'retailerMarginRate',
    label: 'Margin the retailer wants',
    kind: 'percent',
    unit: '%',
    hint: 'Supermarkets 25.0, pharmacies 31.5, gift and miscellaneous 40.2 (Statistics Canada, 2007).',
  },
  {
    key: 'moneyDownPerStore',
    label: 'Money down per store',
    kind: 'amount',
    unit: 'currency',
    hint: 'Slotting and the like, once for each store. Zero is an answer.',
  },
  { key: 'stores', label: 'Stores', kind: 'whole', unit: '', hint: '' },
  { key: 'unitsPerStoreWeek', label: 'Sold per store per week', kind: 'rateOfSale', unit: '', hint: '' },
  {
    key: 'cash',
    label: 'Cash we have today',
    kind: 'amount',
    unit: 'currency',
    hint: 'Left empty, you get the cash it needs and no verdict.',
  },
];

export function rowOf(key: SevenKey): SevenRow {
  const row = SEVEN_ROWS.find((each) => each.key === key);
  if (!row) throw new Error(`no row for ${key}`);
  return row;
}

/** A margin on its own price as the markup on what was paid: the two are mixed up more than any others. */
export function markupOf(marginRate: string): string {
  const margin = dec(marginRate);
  return margin.div(ONE.minus(margin)).toFixed();
}
