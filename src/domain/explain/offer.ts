// Where the figures of a rival offer come from: its dated payments by what they are, laid over the plan's cash without new
// money; what the funder gets at the sale; what is left of the sale for the founder.
// Worked figure: −12,300 within week 9 without it, 20,000 of money in by then: lowest cash 7,700.
import { dec } from '../money/decimal.ts';
import { type Basis, type Holding, moneyOf, type OfferResult } from '../offers/index.ts';
import { isDueFor, resultOf } from '../offers/result.ts';
import { type OfferRun, runOffer } from '../offers/run.ts';
import type { Plan } from '../plan/index.ts';
import { multipleFigure, returnFigure } from './offer-return.ts';
import { offerFlowWord, partPath } from './offer-words.ts';
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
    case 'return':
      return returnFigure(scene, at);
    case 'multiple':
      return multipleFigure(scene, at);
    case 'perUnit':
      return perUnit(scene, at);
  }
}

/**
 * What the founder keeps under an offer in another future than the plan's own, which `basis` is. Lines that would lead to
 * the plan's own weeks lead nowhere: they are of that future.
 */
export function keptIn(scene: Scene, offer: At['offer'], basis: Basis): Draft {
  const run = runOffer(basis, offer, scene.plan.ownership);
  const result = resultOf(scene.plan, run, { cashNeed: 0, cashNeedWeek: null });
  const draft = founderAmount(scene, { offer, run, result });
  return { ...draft, lines: draft.lines.map((each) => ({ ...each, explains: null })) };
}

function lowestCash(scene: Scene, at: At): Draft {
  const { offer, run, result } = at;
  const { lowestWeek: week, lowestCash: lowest } = result;
  const counted = run.flows.filter(
    (flow) => flow.week < week || (flow.week === week && (flow.amount < 0 || flow.early)),
  );
  return money(scene, lowest, {
    title: `Lowest cash with ${offer.name}`,
    meaning: 'The least cash within any week of the plan, with this offer’s payments laid over it.',
    lines: [
      moneyPart(scene, run.basis.low[week] ?? 0, {
        label: `Lowest within ${scene.say.week(week)}, without new money`,
        explains: { of: 'week', run: 'unfunded', week, figure: 'low' },
      }),
      ...byKind(scene, at, counted, 1),
      ...roundLines(scene, run, week),
    ],
  });
}

function totalPaid(scene: Scene, at: At): Draft {
  const { offer, run, result } = at;
  const paid = run.flows.filter(({ amount }) => amount < 0);
  const shares = result.holdings.filter(({ kind, amount }) => kind === 'part' && amount !== 0);
  return money(scene, result.totalPaid, {
    title: `Paid under ${offer.name}`,
    meaning: 'All that goes to the funder: payments by date, and what it gets when the company is sold.',
    lines: [
      ...byKind(scene, at, paid, -1),
      ...some(result.settles, (settled) =>
        moneyPart(scene, settled, {
          label: 'Settled when the company is sold',
          owner: 'theirs',
          path: partPath(offer.id),
        }),
      ),
      ...shares.map(({ id, amount }) =>
        moneyPart(scene, amount, {
          label: 'Their part of the sale',
          owner: 'theirs',
          path: partPath(offer.id, id),
        }),
      ),
    ],
  });
}

function founderAmount(scene: Scene, at: At): Draft {
  const { offer, run, result } = at;
  const { sale, amount } = result.founder;
  const last = run.basis.weeks - 1;
  const others = result.holdings.filter((each) => each.kind !== 'founder' && each.amount !== 0);
  const inside = run.flows.filter(({ week }) => week <= last);
  const parts = [
    moneyPart(scene, sale.price, { label: 'The company is sold for', path: 'ownership/exit' }),
    moneyPart(scene, run.basis.cash[last] ?? 0, {
      label: 'Cash at the end of the plan, without new money',
      explains: { of: 'week', run: 'unfunded', week: last, figure: 'cash' },
    }),
    ...byKind(scene, at, inside, 1),
    ...roundLines(scene, run, last),
    ...some(-sale.debt, (debt) =>
      moneyPart(scene, debt, {
        label: 'Loans still owed',
        explains: { of: 'week', run: 'unfunded', week: last, figure: 'loans' },
      }),
    ),
    ...some(-sale.owed, (owed) =>
      moneyPart(scene, owed, {
        label: 'Still owed to the funder',
        owner: 'theirs',
        path: partPath(offer.id),
      }),
    ),
    ...others.map((each) => moneyPart(scene, -each.amount, { ...holderOf(offer.id, each), owner: 'theirs' })),
  ];
  const reason = 'Owners share nothing where debts are more than the price';
  return money(scene, amount, {
    title: `What we keep under ${offer.name}`,
    meaning: 'The founder’s part of the company’s sale at the end of the plan, after whoever comes first.',
    lines: comingTo(scene, amountOf(scene, amount), parts, reason),
  });
}

/** What another owner's part is called, and the field it was typed into. */
function holderOf(offerId: string, { kind, id, name }: Holding): { label: string; path: string } {
  if (kind === 'part') return { label: 'Their part of the sale', path: partPath(offerId, id) };
  if (kind === 'round') return { label: `Part of ${name}`, path: `ownership/rounds/${id}` };
  return kind === 'pool'
    ? { label: 'Option pool', path: 'ownership/poolRate' }
    : { label: 'Part of other owners', path: 'ownership/founderRate' };
}

function perUnit(scene: Scene, at: At): Draft {
  const { offer, run, result } = at;
  const units = run.basis.unitsSold.reduce((sum, sold) => sum + sold, 0);
  const inside = run.flows.filter((flow) => flow.amount < 0 && isDueFor(flow, run.basis.weeks));
  const about = {
    title: `Cost a unit of ${offer.name}`,
    meaning:
      'Fees and interest paid within the plan’s weeks, royalties and shares of what is sold in them, for each unit sold.',
    lines: [
      ...byKind(scene, at, inside, -1).map((each) => ({ ...each, adds: null })),
      line({
        label: 'Units sold in the plan’s weeks',
        value: scene.say.count(units),
        explains: { of: 'cash', figure: 'soldUnits' },
      }),
    ],
    caution:
      'Money paid back is no cost of a unit: it stands among the payments, and is left out of the sum.',
  };
  if (result.perUnit === null) {
    return { ...about, value: 'none sold', exact: null, formula: 'No unit is sold in the plan’s weeks' };
  }
  const amount = dec(result.perUnit).div(10 ** scene.results.minorDigits);
  const cost = Math.round(result.perUnit * units);
  const formula = `${exactMoney(scene, cost)} ÷ ${scene.say.count(units)} units`;
  return { ...about, value: scene.say.price(amount), exact: amount.toFixed(), formula };
}

/** A line for each kind of payment of each part, its sign as asked for. */
function byKind(scene: Scene, { offer }: At, flows: OfferResult['flows'], sign: 1 | -1): ExplanationLine[] {
  const sums = new Map<string, { label: string; partId: string; sum: number }>();
  for (const { what, partId, amount } of flows) {
    const key = `${partId} ${what}`;
    const before = sums.get(key)?.sum ?? 0;
    sums.set(key, { label: offerFlowWord(what), partId, sum: before + sign * amount });
  }
  return [...sums.values()].map(({ label, partId, sum }) =>
    moneyPart(scene, sum, { label, path: partPath(offer.id, partId) }),
  );
}

function roundLines(scene: Scene, { company }: OfferRun, week: number): ExplanationLine[] {
  const come = company.roundMoney.filter((round) => round.week <= week);
  const sum = come.reduce((total, { amount }) => total + amount, 0);
  return some(sum, (amount) =>
    moneyPart(scene, amount, { label: 'Later rounds, by then', path: 'ownership/rounds' }),
  );
}

function some(amount: number, write: (amount: number) => ExplanationLine): ExplanationLine[] {
  return amount === 0 ? [] : [write(amount)];
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
