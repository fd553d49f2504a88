// What is computed of rival offers over many draws of the plan's range, as plain data. Money is whole minor units.
// Worked figure: cash lasts in 160 of 200 draws: `lowest.p80` is at or above 0, `lowest.p95` may not be.

/** What one offer leaves the founder in one future, and the lowest cash there; minor units. */
export interface FounderIn {
  offerId: string;
  amount: number;
  lowestCash: number;
}

/** One draw of the range, in order of the plan's offers; `found` is null where amounts are too large to compute exactly. */
export interface DrawnOffers {
  /** Its number, from 0. */
  draw: number;
  /** Net sales over the plan, and its lowest cash without any offer; minor units. */
  found: { netSales: number; lowestCash: number; founder: FounderIn[] } | null;
}

/** One future in which offers are compared. */
export interface FutureOutcome {
  name: 'p10' | 'p50' | 'p90';
  draw: number;
  netSales: number;
  founder: FounderIn[];
  /** The offer that leaves the founder most among those whose cash lasts, else among all; null when none, or when two tie. */
  best: string | null;
  bestLasts: boolean;
}

/** Minor units at 50, 80, 95 of 100 draws. */
export interface ByShare {
  p50: number;
  p80: number;
  p95: number;
}

/** How often one offer is the best. */
export interface OfferOdds {
  offerId: string;
  /** Draws in which it leaves the founder most and cash lasts; their share of all, with 95 % limits by Wilson. */
  wins: number;
  share: number;
  limits: { low: number; high: number };
  /** Draws in which cash lasts under it. */
  lasts: number;
  /** The lowest cash that so many of 100 draws don't fall below. */
  lowest: ByShare;
  /** What the founder keeps: a tenth, half, nine tenths of the draws leave no more. */
  kept: { p10: number; p50: number; p90: number };
}

/** All wins, `ties` and `noneLasts` together are `draws`. */
export interface Futures {
  draws: number;
  /** Draws beside those, too large to compute: counted nowhere else. */
  uncomputed: number;
  /** Draws in which cash runs out under every offer: nobody wins them. */
  noneLasts: number;
  /** Draws in which the best of those whose cash lasts come out equal: nobody's. */
  ties: number;
  /** In the plan's order; empty without draws. */
  offers: OfferOdds[];
  /** The cash need without any offer that so many of 100 draws don't pass; 0 or more. */
  need: ByShare;
  /** The draws at P10, P50 and P90 in order of net sales; empty without draws. */
  outcomes: FutureOutcome[];
}
