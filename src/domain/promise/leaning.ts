// How much hangs on one customer: shares, and their sum of squares on a scale of 10,000.
// Worked figure: 30, 30, 20 and 20 % give 2,600.

export type Concentration = 'low' | 'moderate' | 'high';

export interface Leaning {
  /** In the order given; adding up to 1, all 0 when nothing is sold. */
  shares: number[];
  /** Herfindahl-Hirschman index, 0 to 10,000. */
  index: number;
  band: Concentration;
  /** Place of the largest, or null when nothing is sold. */
  largest: number | null;
}

/**
 * Above 1,800 is highly concentrated by the US Merger Guidelines 2023, section 2.1, which name no lower band; 1,000 to 1,800 is
 * moderate by the US Department of Justice's page on the index, which refers to them (both from memory). Written for markets;
 * borrowed here as a yardstick.
 */
const MODERATE_FROM = 1000;
const HIGH_ABOVE = 1800;

/** `amounts` are 0 or above: revenue, units or doors by customer. */
export function leaningOf(amounts: readonly number[]): Leaning {
  const total = amounts.reduce((sum, amount) => sum + amount, 0);
  if (total <= 0) return { shares: amounts.map(() => 0), index: 0, band: 'low', largest: null };
  const shares = amounts.map((amount) => amount / total);
  const index = shares.reduce((sum, share) => sum + (100 * share) ** 2, 0);
  const band = index > HIGH_ABOVE ? 'high' : index >= MODERATE_FROM ? 'moderate' : 'low';
  return { shares, index, band, largest: shares.indexOf(Math.max(...shares)) };
}
