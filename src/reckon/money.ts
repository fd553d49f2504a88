// Rival offers of money, for machines: sums as decimal strings, rates and parts as decimals of at most 6 places. The same
// figures as on screen. Worked figure: { "name": "Harl royalty", "kind": "unitRoyalty", "totalPaid": "62311.33", ... }.
import {
  type Cover,
  coversIn,
  drawOffers,
  type Futures,
  futuresOf,
  growthOf,
  type Money,
  moneyOf,
  type OfferResult,
  type TurningPoint,
  turningOf,
} from '../domain/offers/index.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Results } from '../domain/results.ts';
import { moneyText } from './weeks.ts';

export function moneyTextOf(plan: Plan, results: Results): unknown {
  const money = moneyOf(plan, results);
  const sum = (amount: number) => moneyText(Math.round(amount), results.minorDigits);
  // The app's own draws; none are run where nothing is offered.
  const futures = futuresOf(plan.offers.length === 0 ? [] : drawOffers({ plan, results }));
  const points = [...turningOf(plan, money).points, ...growthOf(plan, results, money).points];
  return {
    offers: money.offers.map((offer, at) =>
      offerText({ offer, implied: money.implied[at] ?? [], covers: coversIn(futures, offer), sum }),
    ),
    turningPoints: points.map((point) => pointText(point, sum)),
    ...drawnText(futures, sum),
  };
}

type Sum = (amount: number) => string;

interface OfferArgs {
  offer: OfferResult;
  implied: Money['implied'][number];
  covers: readonly Cover[];
  sum: Sum;
}

function offerText({ offer, implied, covers, sum }: OfferArgs): unknown {
  const { founder, irr, carries } = offer;
  return {
    id: offer.id,
    name: offer.name,
    from: offer.from,
    kind: offer.kind,
    moneyIn: sum(offer.moneyIn),
    never: offer.never.map(({ partId, trancheId, amount }) => ({ partId, trancheId, amount: sum(amount) })),
    lowestCash: { amount: sum(offer.lowestCash), week: offer.lowestWeek },
    covers: [offer.cover, ...covers].map(({ name, need, left, covers }) => ({
      name,
      need: sum(need),
      left: sum(left),
      covers,
    })),
    carriesWeeks: carries.weeks,
    runsOutWeek: carries.runsOutWeek,
    paidByYear: offer.paidByYear.map(({ year, amount }) => ({ year, amount: sum(amount) })),
    paid: sum(offer.paid),
    settles: sum(offer.settles),
    payout: sum(offer.payout),
    totalPaid: sum(offer.totalPaid),
    irr: irr.found === 'one' ? six(irr.rate) : null,
    irrReason:
      irr.found === 'one' ? null : irr.found === 'none' ? NO_RETURN[irr.why] : severalRates(irr.rates),
    multiple: six(offer.multiple),
    perUnit: offer.perUnit === null ? null : perUnitText(offer.perUnit, sum),
    founderShare: six(founder.rate),
    founderMoney: sum(founder.amount),
    salePrice: sum(founder.sale.price),
    owners: offer.holdings.map(({ id, kind, rate, amount }) => ({
      id,
      kind,
      rate: six(rate),
      amount: sum(amount),
    })),
    implied: implied.map((each) => ({
      partId: each.partId,
      by: each.by,
      preMoney: sum(each.preMoney),
      postMoney: sum(each.postMoney),
      timesRunRate: six(each.timesRunRate),
      timesPlanRevenue: six(each.timesPlanRevenue),
      timesPlanProfit: six(each.timesPlanProfit),
      wantedYearlyRate: six(each.wantedYearlyRate),
      salePriceNeeded: each.salePriceNeeded === null ? null : sum(each.salePriceNeeded),
    })),
  };
}

const NO_RETURN = {
  noMoneyIn: 'no money comes in',
  nothingBack: 'nothing is paid back',
  noRate: 'no yearly rate between -99.99 % and 1,000,000 % makes its flows come to nothing',
} as const;

function severalRates(rates: readonly number[]): string {
  return `its flows change sign more than once, and several rates fit: ${rates.map(six).join(', ')}`;
}

function perUnitText(perUnit: number, sum: Sum): string {
  const digits = sum(0).split('.')[1]?.length ?? 0;
  return (perUnit / 10 ** digits).toFixed(4);
}

function pointText({ between, on, at, units, below, above }: TurningPoint, sum: Sum): unknown {
  const place = on === 'exit' ? sum(at) : on === 'units' ? Math.round(at) : six(at);
  return { between, on, at: place, units: units === null ? null : Math.round(units), below, above };
}

function drawnText(futures: Futures, sum: Sum): object {
  return {
    futures: futures.outcomes.map(({ name, draw, netSales, founder, best, bestLasts }) => ({
      name,
      draw,
      netSales: sum(netSales),
      best,
      bestLasts,
      founderMoney: founder.map(({ offerId, amount }) => ({ id: offerId, amount: sum(amount) })),
    })),
    wins: futures.offers.map(({ offerId, wins, share, limits, lasts, kept }) => ({
      id: offerId,
      wins,
      share: share.toFixed(4),
      low95: limits.low.toFixed(4),
      high95: limits.high.toFixed(4),
      lasts,
      founderMoney: { p10: sum(kept.p10), p50: sum(kept.p50), p90: sum(kept.p90) },
    })),
    draws: {
      run: futures.draws,
      tooLarge: futures.uncomputed,
      noneLasts: futures.noneLasts,
      ties: futures.ties,
    },
  };
}

function six<T extends number | null>(value: T): string | (T extends null ? null : never) {
  return (value === null ? null : Number(value.toFixed(6)).toString()) as string;
}
