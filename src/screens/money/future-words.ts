// What draws say of rival offers, in sentences: who wins how often, under whom cash lasts, what is kept, and what draws nobody
// wins. Worked example: "Alder wins 124 of 200 draws (55 % to 69 %). Cash lasts in 150 of them all."
import type { FutureOutcome, Futures, OfferOdds } from '../../domain/offers/types.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { nameOf } from './words.ts';

export function futureName(name: FutureOutcome['name']): string {
  return name.toUpperCase();
}

/** A sentence: what stands before a figure that has a where-from, that figure, and what follows. */
export interface Odds {
  /** Null in what is nobody's: it has no such figure. */
  offerId: string | null;
  before: string;
  won: string;
  after: string;
}

/** The winner first; then what is nobody's, each only where there is some. */
export function oddsWords(plan: Plan, futures: Futures, say: ScreenSay): Odds[] {
  const { draws, uncomputed } = futures;
  if (draws === 0) {
    return uncomputed === 0
      ? []
      : [
          plainly(
            `None of ${say.count(uncomputed)} draws can be computed: amounts come out too large to keep exact. Lower the rates of sale, or how far they may come out otherwise.`,
          ),
        ];
  }
  const inOrder = [...futures.offers].sort((a, b) => b.wins - a.wins);
  return [
    ...inOrder.map((odds) => offerWords(plan, odds, draws, say)),
    ...nobodyWords(futures, say).map(plainly),
  ];
}

function plainly(words: string): Odds {
  return { offerId: null, before: words, won: '', after: '' };
}

function offerWords(plan: Plan, odds: OfferOdds, draws: number, say: ScreenSay): Odds {
  const { offerId, wins, lasts, kept } = odds;
  const lasting = lasts === draws ? 'all' : lasts === 0 ? 'none' : say.count(lasts);
  return {
    offerId,
    before: `${nameOf(plan, offerId)} wins `,
    won: wonWords(wins, draws, say),
    after: ` draws (${limitsWords(odds, say)}). Cash lasts in ${lasting} of them; we keep ${say.money(kept.p50)} in the middle, ${say.money(kept.p10)} to ${say.money(kept.p90)} in 8 of 10.`,
  };
}

/** "172 of 200", "none of 200", "all 200". */
export function wonWords(wins: number, draws: number, say: ScreenSay): string {
  const of = say.count(draws);
  return wins === 0 ? `none of ${of}` : wins === draws ? `all ${of}` : `${say.count(wins)} of ${of}`;
}

export function limitsWords({ limits }: OfferOdds, say: ScreenSay): string {
  const [low, high] = [limits.low, limits.high].map((share) => say.percent(Math.round(share * 100) / 100));
  return `${low} to ${high}`;
}

function nobodyWords({ draws, noneLasts, ties, uncomputed }: Futures, say: ScreenSay): string[] {
  const words: string[] = [];
  if (noneLasts === draws) words.push('Cash runs out under every offer in all of them: nobody wins.');
  else if (noneLasts > 0)
    words.push(`Cash runs out under every offer in ${say.count(noneLasts)}: nobody wins those.`);
  if (ties > 0) words.push(`The best come out equal in ${say.count(ties)}: nobody wins those.`);
  if (uncomputed > 0) {
    words.push(
      `${say.count(uncomputed)} more can’t be computed: amounts come out too large to keep exact. They count nowhere.`,
    );
  }
  return words;
}
