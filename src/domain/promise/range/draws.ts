// Draw n of a range: from the seed and n alone. Every quantity has a normal score, made of what all accounts share and of
// its own part (a normal copula with one common factor), so that a bad year is bad everywhere: less sold, fewer doors,
// later. As many random numbers are drawn whether a spread is 0 or not: changing one spread leaves the others' draws.
// Worked figure: a shared part of 0.3 correlates the scores of any two accounts by 0.3.
import type { Draw } from './bench.ts';
import type { Coarse } from './coarse.ts';
import { normalOf, normalTable } from './normal.ts';
import { DEMAND, SLIPS } from './places.ts';
import { type Random, randomOf } from './random.ts';
import { readTable } from './score-table.ts';
import type { Varies, VaryingAccount } from './varies.ts';

/** What drivers are looked for among: what a draw changed for all, then of each account whether it opened. */
export const CAUSES = [
  'shared',
  'rateOfSale',
  'doors',
  'slip',
  'ramp',
  'lateness',
  'goods',
  'deductions',
  'voids',
] as const;
export type Cause = (typeof CAUSES)[number];

export interface Drawing {
  seed: number;
  varies: Varies;
  coarse: Coarse;
  quantiles: Float64Array;
  /** Planned units by row: how much each weighs in the mean rate of sale. */
  weights: Float64Array;
  /** Scores of items and of listings, written over. */
  itemScores: Float64Array;
  listingScores: Float64Array;
}

export function drawingOf(varies: Varies, coarse: Coarse, seed: number): Drawing {
  const weights = new Float64Array(coarse.rows);
  const { slipping, rows } = coarse;
  for (let at = 0; at < slipping.length; at += SLIPS) {
    const row = (at / SLIPS) % rows;
    weights[row] = (weights[row] ?? 0) + (slipping[at + DEMAND] ?? 0);
  }
  return {
    seed,
    varies,
    coarse,
    quantiles: normalTable(),
    weights,
    itemScores: new Float64Array(varies.items),
    listingScores: new Float64Array(varies.listings.length),
  };
}

/** Days, shares and chances that stand behind a draw's whole weeks, for the plan that is run exactly. */
export interface DrawnDetail {
  rampFactor: number;
  latenessDays: Float64Array;
  voidRate: Float64Array;
}

export function newDetail(accounts: number): DrawnDetail {
  return { rampFactor: 1, latenessDays: new Float64Array(accounts), voidRate: new Float64Array(accounts) };
}

/** Writes draw n; `causes` gets CAUSES, then 0 or 1 by account. */
export function drawInto(
  drawing: Drawing,
  n: number,
  { draw, detail, causes }: { draw: Draw; detail: DrawnDetail; causes: Float64Array },
): void {
  const { varies, quantiles } = drawing;
  const random = randomOf(drawing.seed, n);
  const common = normalOf(random, quantiles);
  detail.rampFactor = Math.exp(varies.ramp * normalOf(random, quantiles));
  draw.ramp = detail.rampFactor - 1;
  draw.goods = Math.exp(varies.goods * normalOf(random, quantiles));
  const from = varies.shared * common;
  causes.fill(0);
  causes[0] = common;
  causes[4] = draw.ramp;
  causes[6] = draw.goods;
  let doors = 0;
  varies.accounts.forEach((account, a) => {
    drawAccount({ drawing, random, account, a, from }, draw, detail);
    const share = account.doors;
    doors += share;
    const opens = draw.opens[a] ?? 0;
    causes[2] = (causes[2] ?? 0) + share * opens;
    causes[3] = (causes[3] ?? 0) + share * (draw.slip[a] ?? 0);
    causes[5] = (causes[5] ?? 0) + share * (detail.latenessDays[a] ?? 0);
    causes[7] = (causes[7] ?? 0) + share * (draw.deducted[a] ?? 0);
    causes[8] = (causes[8] ?? 0) + share * (detail.voidRate[a] ?? 0);
    causes[CAUSES.length + a] = opens;
  });
  if (doors > 0) for (const place of [3, 5, 7, 8]) causes[place] = (causes[place] ?? 0) / doors;
  causes[1] = drawRates(drawing, random, from, draw);
}

interface AccountArgs {
  drawing: Drawing;
  random: Random;
  account: VaryingAccount;
  a: number;
  from: number;
}

/** Its doors, slip, lateness, deductions and voids, a score each. */
function drawAccount(
  { drawing, random, account, a, from }: AccountArgs,
  draw: Draw,
  detail: DrawnDetail,
): void {
  const { varies, quantiles, coarse } = drawing;
  const score = () => from + varies.own * normalOf(random, quantiles);
  draw.opens[a] = score() > account.opensAbove ? 1 : 0;
  const late = -score();
  let slip = 0;
  while (slip < account.slipAbove.length && late > (account.slipAbove[slip] ?? 0)) slip += 1;
  draw.slip[a] = Math.min(coarse.pad, slip);
  const days = Math.max(0, account.latenessDays + Math.round(-score() * account.latenessSpread));
  detail.latenessDays[a] = days;
  const { paymentDays, latenessDays } = account;
  draw.late[a] = Math.ceil((paymentDays + days) / 7) - Math.ceil((paymentDays + latenessDays) / 7);
  draw.deducted[a] = -score() * account.deductionsSpread;
  const voids = Math.min(MOST_VOIDS, Math.max(0, account.voidRate - score() * account.voidSpread));
  const isVaried = account.voidSpread > 0;
  detail.voidRate[a] = isVaried ? voids : account.voidRate;
  draw.sells[a] = isVaried ? (1 - voids) / (1 - account.voidRate) : 1;
}

const MOST_VOIDS = 0.95;

/** Rates of sale by row; returns their mean over the plan's units. */
function drawRates(drawing: Drawing, random: Random, from: number, draw: Draw): number {
  const { varies, quantiles, coarse, itemScores, listingScores, weights } = drawing;
  for (let i = 0; i < itemScores.length; i++) itemScores[i] = from + varies.own * normalOf(random, quantiles);
  for (let l = 0; l < listingScores.length; l++) listingScores[l] = normalOf(random, quantiles);
  let sum = 0;
  let weight = 0;
  for (let row = 0; row < coarse.rows; row++) {
    const l = coarse.listing[row] ?? 0;
    const listing = varies.listings[l] as Varies['listings'][number];
    const own = listingScores[l] ?? 0;
    const score = listing.isCommon ? (itemScores[listing.item] ?? 0) : from + varies.own * own;
    const { ownSpread } = listing;
    // The mean over an account's stores lies about that of all stores, not above it: hence the half square.
    const beside = ownSpread === 0 ? 1 : Math.exp(ownSpread * own - (ownSpread * ownSpread) / 2);
    const rate = readTable(listing.rate, score) * beside;
    draw.rate[row] = rate;
    sum += rate * (weights[row] ?? 0);
    weight += weights[row] ?? 0;
  }
  return weight > 0 ? sum / weight : 1;
}
