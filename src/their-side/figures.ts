// What a store earns at a shelf price and a rate of sale, from the record's own numbers: the buying price and the stock
// in a store stay as offered. Prices are on the 0.0001 grid, as they were when the record was made.
// Worked figure: 4.00 on the tag without tax, bought at 2.60, 6 a store and week, 12 in the store: penny profit 1.40,
// margin 35 %, a store earns 8.40 a week, turns 6 x 52 / 12 = 26, GMROI 1.40 / 2.60 x 26 = 14.
import type { Offer, Replaced } from './record.ts';

export interface Choice {
  shelf: number;
  unitsPerStoreWeek: number;
}

export interface Earned {
  buying: number;
  /** Part of the shelf price before tax; null at a price of nothing. */
  marginRate: number | null;
  pennyProfit: number;
  perStoreWeek: number;
  perFacingWeek: number | null;
  turnsPerYear: number | null;
  gmroi: number | null;
}

export function earned(offer: Offer, { shelf, unitsPerStoreWeek }: Choice): Earned {
  const { buying } = offer;
  const beforeTax = rounded(shelf / (1 + offer.taxRate), 4);
  const pennyProfit = rounded(beforeTax - buying, 4);
  const perStoreWeek = pennyProfit * unitsPerStoreWeek;
  const faster = offer.unitsPerStoreWeek > 0 ? unitsPerStoreWeek / offer.unitsPerStoreWeek : 1;
  const turns = offer.turnsPerYear === null ? null : rounded(offer.turnsPerYear * faster, 4);
  return {
    buying,
    marginRate: marginRate(pennyProfit, beforeTax),
    pennyProfit,
    perStoreWeek,
    perFacingWeek: rounded(perStoreWeek / offer.facings, 4),
    turnsPerYear: turns,
    gmroi: gmroiAt(offer, { pennyProfit, faster, turns }),
  };
}

/** In proportion to what was offered, so that the offer's own figure is the model's to the last digit. */
function gmroiAt(
  { gmroi, pennyProfit: offered, buying }: Offer,
  now: { pennyProfit: number; faster: number; turns: number | null },
): number | null {
  if (gmroi === null || now.turns === null) return null;
  if (offered !== 0) return rounded((gmroi * now.faster * now.pennyProfit) / offered, 4);
  return rounded((now.pennyProfit / buying) * now.turns, 4);
}

/** The item whose place it would take: its facings and stock aren't known. */
export function earnedByReplaced({ shelfBeforeTax, buying, unitsPerStoreWeek }: Replaced): Earned {
  const pennyProfit = rounded(shelfBeforeTax - buying, 4);
  return {
    buying,
    marginRate: marginRate(pennyProfit, shelfBeforeTax),
    pennyProfit,
    perStoreWeek: pennyProfit * unitsPerStoreWeek,
    perFacingWeek: null,
    turnsPerYear: null,
    gmroi: null,
  };
}

function marginRate(pennyProfit: number, beforeTax: number): number | null {
  return beforeTax > 0 ? rounded(pennyProfit / beforeTax, 6) : null;
}

/** To so many decimals, halves away from zero, as the record's own figures were. */
function rounded(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return (Math.sign(value) * Math.round(Number((Math.abs(value) * scale).toFixed(4)))) / scale;
}

export interface Steps {
  size: number;
  least: number;
  most: number;
}

/**
 * Steps of a tag: a round amount near a hundredth of the offered price, kept while the page is open. The ends are a tenth
 * and ten times of it: they say nothing of what anyone would agree to.
 */
export function priceSteps(offered: number, minorDigits: number): Steps {
  const size = Math.max(10 ** -minorDigits, roundNear(offered / 100));
  return { size, least: Math.min(offered, Math.max(size, offered / 10)), most: offered * 10 };
}

/** Steps of a rate of sale: a round number near a twenty-fifth of it. */
export function rateSteps(offered: number): Steps {
  const size = offered > 0 ? roundNear(offered / 25) : 1;
  return { size, least: Math.min(offered, size), most: Math.max(offered * 10, 10) };
}

/** The next value in a direction, or the same one at an end. A tag keeps its ending: 8.99 goes to 9.09. */
export function stepped(value: number, direction: 1 | -1, steps: Steps): number {
  const next = Number((value + direction * steps.size).toFixed(6));
  return next < steps.least || next > steps.most ? value : next;
}

/** 1, 2 or 5 times a power of ten, the nearest by proportion. */
function roundNear(amount: number): number {
  const power = 10 ** Math.floor(Math.log10(amount));
  const times = amount / power;
  const lead = times < Math.SQRT2 ? 1 : times < Math.sqrt(10) ? 2 : times < Math.sqrt(50) ? 5 : 10;
  return Number((lead * power).toPrecision(1));
}
