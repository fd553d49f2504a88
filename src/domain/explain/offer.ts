// Where the figures of a rival offer come from: its dated payments by what they are, laid over the plan's cash without new
// money; what the funder gets at the sale; what is left of the sale for the founder.
// Worked figure: −12,300 within week 9 without it, 20,000 of money in by then: lowest cash 7,700.
import { dec } from '../money/decimal.ts';
import { moneyOf, type OfferResult } from '../offers/index.ts';
import type { OfferRun } from '../offers/run.ts';
import type { Plan } from '../plan/index.ts';
import { offerFlowWord } from './offer-words.ts';
import type { ExplanationLine, OfferFigure } from './types.ts';
import {
  amountOf,
  comingTo,
  type Draft,
  exactMoney,
  line,
  moneyPart,
  type Scene,
  sumFormula,
} from './write.ts';

interface At {
  offer: Plan['offers'][number];
  run: OfferRun;
  result: OfferResult;
}

export function offerFigure(
  scene: Scene,
  { offerId, figure }: { offerId: string; figure: OfferFigure },
): Draft | null {
  const offer = scene.plan.offers.find(({ id }) => id === offerId);
  if (offer === undefined) return null;
  const money = moneyOf({ ...scene.plan, offers: [offer] }, scene.results);
  const [run, result] = [money.runs[0], money.offers[0]];
  if (run === undefined || result === undefined) return null;
  const at = { offer, run, result };
  switch (figure) {
    case 'lowestCash':
      return lowestCash(scene, at);
    case 'totalPaid':
      return totalPaid(scene, at);
    case 'founderAmount':
      return founderAmount(scene, at);
    case 'perUnit':
      return perUnit(scene, at);
  }
}

function lowestCash(scene: Scene, { offer, run, result }: At): Draft {
  const { lowestWeek: week, lowestCash: lowest } = result;
  const counted = run.flows.filter(
    (flow) => flow.week < week || (flow.week === week && (flow.amount < 0 || flow.early)),
  );
  const rounds = run.company.roundMoney.filter((round) => round.week <= week);
  const fromRounds = rounds.reduce((sum, { amount }) => sum + amount, 0);
  const lines = [
    moneyPart(scene, run.basis.low[week] ?? 0, {
      label: `Lowest within ${scene.say.week(week)}, without new money`,
      explains: { of: 'week', run: 'unfunded', week, figure: 'low' },
    }),
    ...byKind(scene, counted, 1),
    ...(fromRounds === 0 ? [] : [moneyPart(scene, fromRounds, { label: 'Later rounds, by then' })]),
  ];
  return money(scene, lowest, {
    title: `Lowest cash with ${offer.name}`,
    meaning: 'The least cash within any week of the plan, with this offer’s payments laid over it.',
    lines,
  });
}

function totalPaid(scene: Scene, { offer, run, result }: At): Draft {
  const paid = run.flows.filter(({ amount }) => amount < 0);
  const lines = [
    ...byKind(scene, paid, -1),
    ...(result.settles === 0
      ? []
      : [moneyPart(scene, result.settles, { label: 'Settled when the company is sold', owner: 'theirs' })]),
    ...(result.payout === 0
      ? []
      : [moneyPart(scene, result.payout, { label: 'Their part of the sale', owner: 'theirs' })]),
  ];
  return money(scene, result.totalPaid, {
    title: `Paid under ${offer.name}`,
    meaning: 'All that goes to the funder: payments by date, and what it gets when the company is sold.',
    lines,
  });
}

function founderAmount(scene: Scene, { offer, result }: At): Draft {
  const { sale, amount } = result.founder;
  const others = result.holdings.filter((each) => each.kind !== 'founder' && each.amount !== 0);
  const parts = [
    moneyPart(scene, sale.price, { label: 'The company is sold for', path: 'ownership/exit' }),
    moneyPart(scene, sale.cash, { label: 'Cash at the end of the plan' }),
    ...(sale.debt === 0 ? [] : [moneyPart(scene, -sale.debt, { label: 'Loans still owed' })]),
    ...(sale.owed === 0 ? [] : [moneyPart(scene, -sale.owed, { label: 'Still owed to the funder' })]),
    ...others.map((each) =>
      moneyPart(scene, -each.amount, {
        label: HOLDERS[each.kind] ?? `Part of ${each.name}`,
        owner: 'theirs',
      }),
    ),
  ];
  const reason = 'Owners share nothing where debts are more than the price';
  return money(scene, amount, {
    title: `What we keep under ${offer.name}`,
    meaning: 'The founder’s part of the company’s sale at the end of the plan, after whoever comes first.',
    lines: comingTo(scene, amountOf(scene, amount), parts, reason),
  });
}

const HOLDERS: Readonly<Record<string, string>> = { others: 'Part of other owners', pool: 'Option pool' };

function perUnit(scene: Scene, { offer, run, result }: At): Draft {
  const title = `Cost a unit of ${offer.name}`;
  const meaning =
    'Fees, interest, royalties and shares paid within the plan’s weeks, for each unit sold in them.';
  if (result.perUnit === null) {
    const none = 'No unit is sold in the plan’s weeks';
    return { title, meaning, value: 'none sold', exact: null, formula: none, lines: [], caution: null };
  }
  const units = run.basis.unitsSold.reduce((sum, sold) => sum + sold, 0);
  const amount = dec(result.perUnit).div(10 ** scene.results.minorDigits);
  const cost = Math.round(result.perUnit * units);
  const inside = run.flows.filter(({ week, amount: flow }) => flow < 0 && week < run.basis.weeks);
  return {
    title,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    meaning,
    formula: `${exactMoney(scene, cost)} ÷ ${scene.say.count(units)} units`,
    lines: [
      ...byKind(scene, inside, -1).map((each) => ({ ...each, adds: null })),
      line({ label: 'Units sold in the plan’s weeks', value: scene.say.count(units) }),
    ],
    caution:
      'Money paid back is no cost of a unit: it stands among the payments, and is left out of the sum.',
  };
}

/** A line for each kind of payment, its sign as asked for. */
function byKind(scene: Scene, flows: OfferResult['flows'], sign: 1 | -1): ExplanationLine[] {
  const sums = new Map<string, number>();
  for (const { what, amount } of flows) {
    const label = offerFlowWord(what);
    sums.set(label, (sums.get(label) ?? 0) + sign * amount);
  }
  return [...sums].map(([label, sum]) => moneyPart(scene, sum, { label }));
}

/** An amount of money that its lines come to. */
function money(scene: Scene, minorUnits: number, from: Pick<Draft, 'title' | 'meaning' | 'lines'>): Draft {
  const amount = amountOf(scene, minorUnits);
  return {
    ...from,
    value: scene.say.money(minorUnits),
    exact: amount.toFixed(),
    formula: sumFormula(scene, from.lines, amount),
    caution: null,
  };
}
