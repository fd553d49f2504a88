// What a funder makes of an offer, and how many times its money comes back to it: every payment by what it is, and what it
// is worth on the day of the first one at the yearly rate found.
// Worked figure: 100 put in, 110 paid back 365 days later: at 10 % a year those 110 are worth 100 on the first day.
import { isoDateOf } from '../calendar.ts';
import { dec } from '../money/decimal.ts';
import type { OfferResult } from '../offers/index.ts';
import { type FunderFlow, funderFlows } from '../offers/result.ts';
import type { OfferRun } from '../offers/run.ts';
import { offerFlowWord, partPath } from './offer-words.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactMoney, line, type Scene } from './write.ts';

interface At {
  offer: { id: string; name: string };
  run: OfferRun;
  result: OfferResult;
}

/** The yearly rate of return on the dates (365 days a year), or why there is none. */
export function returnFigure(scene: Scene, { offer, run, result }: At): Draft {
  const { say } = scene;
  const { irr } = result;
  const rate = irr.found === 'one' ? irr.rate : null;
  const flows = funderFlows(run, result.payout).filter(({ amount }) => amount !== 0);
  const first = Math.min(...flows.map(({ day }) => day));
  const about = {
    title: `What the funder of ${offer.name} makes a year`,
    meaning:
      'The yearly rate, of 365 days, at which all that goes back to the funder is worth as much on the day of its first payment as all it puts in: the internal rate of return on the dates.',
    lines: linesOf(scene, offer.id, flows, (flow) =>
      rate === null ? flow.amount : flow.amount / (1 + rate) ** ((flow.day - first) / 365),
    ),
  };
  if (irr.found === 'one') {
    const { rate } = irr;
    return {
      ...about,
      value: `${say.percent(rate)} a year`,
      exact: dec(rate).toFixed(),
      formula: `each payment ÷ (1 + ${say.percent(rate)}) ^ (days after ${say.date(isoDateOf(first))} ÷ 365): they come to nothing`,
      caution: null,
    };
  }
  const formula = 'payments as they are, not brought back to the first day';
  if (irr.found === 'several') {
    const rates = irr.rates.map((each) => say.percent(each)).join(', ');
    return {
      ...about,
      value: `${say.count(irr.rates.length)} rates fit`,
      exact: null,
      formula,
      caution: `At ${rates} they come to nothing: money goes back and forth, so none of these is the return.`,
    };
  }
  return {
    ...about,
    value: 'none',
    exact: null,
    formula,
    caution: WHY_NONE[irr.why],
  };
}

const WHY_NONE = {
  noMoneyIn: 'No money comes in, so there is nothing to make a return on.',
  nothingBack: 'Nothing goes back to the funder.',
  noRate: 'At no yearly rate from −99.99 % to 1,000,000 % do its payments come to nothing.',
} as const;

/** Kinds that pay the same money out and back many times. */
const COME_AND_GO: ReadonlySet<string> = new Set(['receivablesAdvance', 'orderFinance']);

/** All that goes to the funder over all it puts in. */
export function multipleFigure(scene: Scene, { offer, result }: Pick<At, 'offer' | 'result'>): Draft {
  const { say } = scene;
  const { multiple, moneyIn, totalPaid, kind } = result;
  const about = {
    title: `How many times its money the funder of ${offer.name} gets back`,
    meaning:
      'All that goes to the funder, by date and at the sale, over all that it puts in. When it comes isn’t counted.',
    lines: [
      line({
        label: 'Paid to them in total',
        value: exactMoney(scene, totalPaid),
        explains: { of: 'offer', offerId: offer.id, figure: 'totalPaid' },
      }),
      line({ label: 'Money in', value: exactMoney(scene, moneyIn), path: partPath(offer.id) }),
    ],
    caution: kind.split(' + ').some((each) => COME_AND_GO.has(each))
      ? 'Money that comes and goes is counted each time: with advances this stays close to 1.'
      : null,
  };
  if (multiple === null) return { ...about, value: '–', exact: null, formula: 'No money comes in' };
  const formula = `${exactMoney(scene, totalPaid)} ÷ ${exactMoney(scene, moneyIn)} = ${say.number(multiple)}`;
  return { ...about, value: `${say.number(multiple)} times`, exact: dec(multiple).toFixed(), formula };
}

/** A line for each kind of payment of each part: what it is worth, and under it what is paid. */
function linesOf(
  scene: Scene,
  offerId: string,
  flows: readonly FunderFlow[],
  worthOf: (flow: FunderFlow) => number,
): ExplanationLine[] {
  const sums = new Map<string, { flow: FunderFlow; worth: number; paid: number; count: number }>();
  for (const flow of flows) {
    const key = `${flow.partId} ${flow.what}`;
    const before = sums.get(key) ?? { flow, worth: 0, paid: 0, count: 0 };
    sums.set(key, {
      flow,
      worth: before.worth + worthOf(flow),
      paid: before.paid + flow.amount,
      count: before.count + 1,
    });
  }
  if (sums.size === 0) {
    return [line({ label: 'Money in', value: exactMoney(scene, 0), path: partPath(offerId) })];
  }
  return [...sums.values()].map(({ flow: { what, partId }, worth, paid, count }) =>
    line({
      label: what === 'sale' ? 'When the company is sold' : offerFlowWord(what),
      value: exactMoney(scene, Math.round(worth)),
      reason: `${exactMoney(scene, paid)} in ${scene.say.count(count)} ${count === 1 ? 'payment' : 'payments'}`,
      ...(paid > 0
        ? { explains: { of: 'offer', offerId, figure: 'totalPaid' } }
        : { path: partPath(offerId, partId) }),
      owner: paid > 0 ? 'theirs' : null,
    }),
  );
}
