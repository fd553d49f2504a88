// How an item is bought has to be possible: a line that is there and has hours for it, a rush that is quicker than the
// ordinary order, prices that fall in order, goods that still keep long enough when they arrive.
// Worked figure: shares of 0.6 and 0.5 of one line come to 110 % of its hours.
import { landedOf, MOST } from '../../ladder/landed.ts';
import { minorDigitsOf } from '../../money/currency.ts';
import { type Decimal, dec, ONE, ZERO } from '../../money/decimal.ts';
import { percentText, priceText } from '../../money/plain.ts';
import type { Problem } from '../../problems.ts';
import { goodUnitsPerHour } from '../../rollout/compile-supply.ts';
import type { Account, Item, Plan } from '../index.ts';
import { shown } from '../shown.ts';
import { inside, stepWeeks } from './dates.ts';

export function supplyProblems(plan: Plan): Problem[] {
  return [
    ...plan.business.lines.flatMap((line) => lineProblems(plan, line)),
    ...plan.items.flatMap((item) => [
      ...onLine(plan, item),
      ...priceBreaks(item),
      ...goodsPrices(item),
      ...rush(item),
      ...currency(plan, item),
      ...plan.accounts.flatMap((account) => keepsForShelf(item, account)),
    ]),
  ];
}

type Line = Plan['business']['lines'][number];

function lineProblems(plan: Plan, line: Line): Problem[] {
  const path = `business/lines/${line.id}`;
  return [...stepWeeks(line.steps, `${path}/steps`, plan.horizonWeeks), ...sharesOf(plan, line)];
}

/** Fixed shares of one line, together at most all of it; less where others live on what they leave. */
function sharesOf({ items }: Plan, line: Line): Problem[] {
  const own = items.filter(({ supply }) => supply.line?.lineId === line.id);
  const shares = own.map(({ supply }) => supply.line?.hoursShare ?? null);
  const total = shares.reduce<Decimal>((sum, share) => sum.plus(share ?? '0'), ZERO);
  const lastFixed = own.filter((_, i) => shares[i] !== null).at(-1);
  const leftOut = own.find((_, i) => shares[i] === null);
  if (!lastFixed || total.lt(ONE) || (total.eq(ONE) && !leftOut)) return [];
  const rest = leftOut
    ? `less than 100 %, since ${leftOut.name} takes what is left`
    : 'at most 100 % together';
  return [
    {
      code: 'takes-too-much',
      path: `items/${lastFixed.id}/supply/line/hoursShare`,
      got: `fixed shares of ${percentText(total.toFixed())} of the hours of ${shown(line.name)}`,
      expected: rest,
    },
  ];
}

function onLine({ business }: Plan, { id, supply }: Item): Problem[] {
  const { line } = supply;
  if (!line) return [];
  const path = `items/${id}/supply/line`;
  if (!business.lines.some((each) => each.id === line.lineId)) {
    const names = business.lines.map((each) => shown(each.id)).join(', ');
    const expected =
      names === '' ? 'no line, since the business has none' : `a line of the business: ${names}`;
    return [{ code: 'reference-unknown', path: `${path}/lineId`, got: shown(line.lineId), expected }];
  }
  if (goodUnitsPerHour(line) < 1) {
    const got = `${percentText(line.yieldRate)} good of ${line.unitsPerHour} units an hour`;
    return [
      { code: 'field-invalid', path: `${path}/yieldRate`, got, expected: 'at least one good unit an hour' },
    ];
  }
  if (line.hoursShare === null || Number(line.hoursShare) > 0) return [];
  const expected = 'a share above 0, or null for what other items leave';
  return [{ code: 'field-invalid', path: `${path}/hoursShare`, got: shown(line.hoursShare), expected }];
}

function priceBreaks({ id, supply }: Item): Problem[] {
  return supply.priceBreaks.flatMap((each, index): Problem[] => {
    const before = supply.priceBreaks[index - 1];
    if (!before || each.fromUnits > before.fromUnits) return [];
    const path = `items/${id}/supply/priceBreaks/${each.id}/fromUnits`;
    const expected = `more than the ${before.fromUnits} units of the break before it`;
    return [{ code: 'field-invalid', path, got: `${each.fromUnits} units`, expected }];
  });
}

/** The dearest goods price an order can have, by break and shock. */
function goodsPrices(item: Item): Problem[] {
  const { priceBreaks: breaks, purchaseCurrency } = item.supply;
  const landed = landedOf(item);
  if (!landed.ok) return [];
  const shock = purchaseCurrency ? ONE.plus(purchaseCurrency.shockRate) : ONE;
  const factor = breaks.reduce(
    (most, each) => (dec(each.goodsFactor).gt(most) ? dec(each.goodsFactor) : most),
    ONE,
  );
  const price = landed.value.goods.times(factor).times(shock.gt(ONE) ? shock : ONE);
  if (price.lte(MOST)) return [];
  return [
    {
      code: 'number-too-large',
      path: `items/${item.id}/supply`,
      got: `goods at ${priceText(price.toDecimalPlaces(2))} a unit, breaks and shock counted`,
      expected: 'at most 1,000,000,000 a unit',
    },
  ];
}

function rush({ id, caseUnits, supply }: Item): Problem[] {
  const { expedite, leadWeeks } = supply;
  if (!expedite) return [];
  const path = `items/${id}/supply/expedite`;
  const problems: Problem[] = [];
  if (expedite.leadWeeks >= leadWeeks) {
    const expected =
      leadWeeks === 0
        ? 'no rush order, since an ordinary one lands at once'
        : `fewer weeks than the ${leadWeeks} of an ordinary order`;
    problems.push({
      code: 'field-invalid',
      path: `${path}/leadWeeks`,
      got: `${expedite.leadWeeks} weeks`,
      expected,
    });
  }
  const most = expedite.mostUnitsPerWeek;
  if (most !== null && most < caseUnits) {
    const expected = `at least a case of ${caseUnits} units, or null for as many as are missing`;
    problems.push({
      code: 'field-invalid',
      path: `${path}/mostUnitsPerWeek`,
      got: `${most} units`,
      expected,
    });
  }
  return problems;
}

function currency(plan: Plan, { id, supply }: Item): Problem[] {
  const { purchaseCurrency: bought } = supply;
  if (!bought) return [];
  const path = `items/${id}/supply/purchaseCurrency`;
  if (minorDigitsOf(bought.code) === null || bought.code === plan.currency) {
    const isOwn = bought.code === plan.currency;
    return [
      {
        code: isOwn ? 'field-invalid' : 'currency-unknown',
        path: `${path}/code`,
        got: shown(bought.code),
        expected: isOwn
          ? `a currency other than the plan's own, ${plan.currency}`
          : 'a currency code of ISO 4217, like "EUR"',
      },
    ];
  }
  return Number(bought.shockRate) === 0
    ? []
    : inside(`${path}/shockFromWeek`, bought.shockFromWeek, plan.horizonWeeks);
}

/** Fresh goods that can't reach a shelf with enough time left would never ship there. */
function keepsForShelf({ id, supply, name }: Item, account: Account): Problem[] {
  const { shelfLife } = supply;
  if (!shelfLife || !account.listings.some(({ itemId }) => itemId === id)) return [];
  const way = account.depot ? account.depot.transitWeeks : account.terms.transitWeeks;
  const left = shelfLife.weeks - way;
  if (left >= shelfLife.leastWeeksAtReceipt) return [];
  const on = way === 1 ? '1 week' : `${way} weeks`;
  return [
    {
      code: 'dates-out-of-order',
      path: `items/${id}/supply/shelfLife/leastWeeksAtReceipt`,
      got: `${shelfLife.leastWeeksAtReceipt} weeks of the ${shelfLife.weeks} that ${name} keeps, and ${on} on the way to ${account.name}`,
      expected: left < 0 ? `goods that keep at least ${way} weeks` : `at most ${left} weeks left at receipt`,
    },
  ];
}
