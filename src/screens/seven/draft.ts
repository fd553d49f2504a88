// The seven numbers of a plan to be, as typed, kept on the device so that a reload or a killed tab loses no keystroke.
// Worked example: "12o" typed into Stores is there after a reload, with its sentence.

import { minorDigitsOf } from '../../domain/money/currency.ts';
import { otherRegion, REGIONS, type Region, regionOf, SEVEN_KEYS } from '../../domain/quick/index.ts';
import { browserLocale } from '../shared/screen-say.ts';
import { NO_TEXTS, type SevenTexts } from './read-seven.ts';

export interface SevenDraft {
  texts: SevenTexts;
  freeFill: boolean;
  distributor: boolean;
  productName: string;
  chainName: string;
  regionId: string;
  /** Of a region that isn't in the table. */
  currency: string;
}

export const DRAFT_NAME = 'seven';

/** Nothing typed; the region from the browser's locale, the first of the table where that says none. */
export function emptyDraft(): SevenDraft {
  const code = /[-_]([A-Z]{2})\b/.exec(browserLocale())?.[1] ?? '';
  const region = regionOf(code) ?? REGIONS[0];
  return {
    texts: NO_TEXTS,
    freeFill: false,
    distributor: false,
    productName: '',
    chainName: '',
    regionId: region?.id ?? 'other',
    currency: region?.currency ?? 'USD',
  };
}

/** What was kept, field by field; anything that isn't what it should be is as empty. */
export function draftOf(kept: unknown): SevenDraft {
  const empty = emptyDraft();
  if (typeof kept !== 'object' || kept === null) return empty;
  const { texts, freeFill, distributor, productName, chainName, regionId, currency } = kept as Record<
    string,
    unknown
  >;
  const text = (value: unknown, otherwise: string) =>
    typeof value === 'string' ? value.slice(0, 200) : otherwise;
  const from = typeof texts === 'object' && texts !== null ? (texts as Record<string, unknown>) : {};
  const isRegion = typeof regionId === 'string' && (regionId === 'other' || regionOf(regionId) !== null);
  const isCurrency = typeof currency === 'string' && minorDigitsOf(currency) !== null;
  return {
    texts: Object.fromEntries(SEVEN_KEYS.map((key) => [key, text(from[key], '')])) as SevenTexts,
    freeFill: freeFill === true,
    distributor: distributor === true,
    productName: text(productName, ''),
    chainName: text(chainName, ''),
    regionId: isRegion ? regionId : empty.regionId,
    currency: isCurrency ? currency : empty.currency,
  };
}

export function regionOfDraft({ regionId, currency }: SevenDraft): Region {
  return regionOf(regionId) ?? otherRegion(currency);
}

/** Whether anything was typed that would be worth keeping. */
export function isEmptyDraft({ texts, productName, chainName }: SevenDraft): boolean {
  return SEVEN_KEYS.every((key) => texts[key].trim() === '') && `${productName}${chainName}`.trim() === '';
}
