// The record as this page reads it: each field looked at, everything else left behind. It comes from the device's own
// store, so a record that can't be read is from another version, or damaged; then the page shows none of it.
// Worked figure: { shelf: '8.99', ... } becomes { shelf: 8.99, ... }; a record without its shelf price is null.

export interface Shown {
  chain: string;
  item: string;
  currency: string;
  minorDigits: number;
  shelf: number;
  /** Null: nothing was offered yet. */
  offer: Offer | null;
}

export interface Offer {
  taxRate: number;
  buying: number;
  pennyProfit: number;
  unitsPerStoreWeek: number;
  facings: number;
  /** As offered, both: the model's own, which the page carries on in proportion. */
  turnsPerYear: number | null;
  gmroi: number | null;
  replaced: Replaced | null;
}

export interface Replaced {
  shelfBeforeTax: number;
  buying: number;
  unitsPerStoreWeek: number;
}

/** What the page shows of a kept record; null where it can't be read. */
export function shownFrom(kept: unknown): Shown | null {
  const read = reader(kept);
  if (read === null) return null;
  const offer = read.part('offer');
  const shown = {
    chain: read.text('chain'),
    item: read.text('item'),
    currency: read.text('currency'),
    minorDigits: read.number('minorDigits'),
    shelf: read.number('shelf'),
    offer: offer === null ? null : offerFrom(offer),
  };
  return isWhole(shown) && (offer === null || shown.offer !== null) ? shown : null;
}

function offerFrom(kept: unknown): Offer | null {
  const read = reader(kept);
  if (read === null) return null;
  const replaced = read.part('replaced');
  const offer = {
    taxRate: read.number('taxRate'),
    buying: read.number('buying'),
    pennyProfit: read.number('pennyProfit'),
    unitsPerStoreWeek: read.number('unitsPerStoreWeek'),
    facings: read.number('facings'),
    turnsPerYear: read.part('turnsPerYear') === null ? null : read.number('turnsPerYear'),
    gmroi: read.part('gmroi') === null ? null : read.number('gmroi'),
    replaced: replaced === null ? null : replacedFrom(replaced),
  };
  return isWhole(offer) && (replaced === null || offer.replaced !== null) ? offer : null;
}

function replacedFrom(kept: unknown): Replaced | null {
  const read = reader(kept);
  if (read === null) return null;
  const replaced = {
    shelfBeforeTax: read.number('shelfBeforeTax'),
    buying: read.number('buying'),
    unitsPerStoreWeek: read.number('unitsPerStoreWeek'),
  };
  return isWhole(replaced) ? replaced : null;
}

/** Numbers that are none are NaN, texts that are none are '', and isWhole() finds both. */
function reader(kept: unknown) {
  if (typeof kept !== 'object' || kept === null) return null;
  const fields = kept as Record<string, unknown>;
  return {
    part: (name: string): unknown => fields[name] ?? null,
    text: (name: string): string => (typeof fields[name] === 'string' ? fields[name] : ''),
    number: (name: string): number => {
      const value = fields[name];
      return typeof value === 'number' || (typeof value === 'string' && value !== '') ? Number(value) : NaN;
    },
  };
}

function isWhole(shown: object): boolean {
  return Object.values(shown).every((value) => value !== '' && !Number.isNaN(value));
}
