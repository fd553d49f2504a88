// One item on one account's shelf, from landed cost up to the tag: which rung gives way, what each hand keeps, what we
// give back and keep, and the whole numbers the weekly pass runs on. Plan in, LadderResult out; nothing else is read.
// Worked figure: landed 1.00, list 2.60, one hand at 40 %: ladder margin 61.54 %, shelf 4.3334, contribution 1.60.
import type { Decimal } from '../money/decimal.ts';
import { gridOf, rateOf } from '../money/grid.ts';
import { kept } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { Account, Hand, Item, Listing, Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { bandsOf } from './bands.ts';
import { landedOf } from './landed.ts';
import { type RungPrices, rungPrices } from './rung-prices.ts';
import type { HandResult, LadderForPass, LadderResult, Landed } from './types.ts';
import { type UnitTerms, unitTermsOf } from './unit-terms.ts';

/**
 * The ladder of one listed item. Problems: not exactly one rung left to solve ('solved-count'), a rung that no price
 * fits ('rung-unsolvable'), allowances that take all of a price ('takes-too-much'), a cost line on a later one
 * ('cost-base'), a price past 1,000,000,000 ('number-too-large').
 */
export function ladderFor(args: {
  plan: Plan;
  account: Account;
  listing: Listing;
  item: Item;
}): Outcome<LadderResult> {
  const { account, listing, item } = args;
  const landed = landedOf(item);
  if (!landed.ok) return landed;
  const { unit } = landed.value;
  const inputs = { account, item, landed: unit };
  const priced = rungPrices({ ...args, inputs });
  if (!priced.ok) return priced;
  const { foot, shelf, shelfUnmoved, sells, tax, solvedRung, miss } = priced.value;
  const terms = unitTermsOf(foot, inputs, howListCame(listing, unit));
  if (!terms.ok) return terms;

  const { net, contribution, sellingCosts, steps } = terms.value;
  const { list, invoice } = foot;
  const listGrid = gridOf(list);
  const hands = account.hands.map((hand, place) => handResult({ hand, place, priced: priced.value }));
  const givenBack = terms.value.givenBack.plus(foot.kept);
  return fine({
    accountId: account.id,
    itemId: item.id,
    landed: landed.value,
    list,
    invoice,
    net,
    contribution,
    contributionRate: rateOf({ part: gridOf(contribution), whole: gridOf(net) }),
    ladderMarginRate: rateOf({ part: listGrid - gridOf(unit), whole: listGrid }),
    tradeRate: rateOf({ part: listGrid - gridOf(net), whole: listGrid }),
    hands,
    shelfBeforeTax: sells[sells.length - 1] as Decimal,
    tax,
    shelf,
    shelfUnmoved,
    steps,
    bands: bandsOf({ landed: unit, contribution, givenBack, sellingCosts, hands, tax, shelf }),
    solvedRung,
    miss,
    forPass: forPass(item, landed.value, priced.value, terms.value),
  });
}

function handResult({ hand, place, priced }: { hand: Hand; place: number; priced: RungPrices }): HandResult {
  const buys = place === 0 ? priced.foot.firstBuys : (priced.sells[place - 1] as Decimal);
  const sells = priced.sells[place] as Decimal;
  const keeps = sells.minus(buys);
  const [part, bought, sold] = [gridOf(keeps), gridOf(buys), gridOf(sells)];
  const required = hand.requiredMarginRate === null ? null : kept(hand.requiredMarginRate);
  return {
    id: hand.id,
    name: hand.name,
    owner: place === priced.sells.length - 1 ? 'theirs' : 'between',
    buys,
    sells,
    keeps,
    marginRate: rateOf({ part, whole: sold }),
    markupRate: bought === 0 ? null : rateOf({ part, whole: bought }),
    requiredMarginRate: required,
    // one step of the price grid is no shortage
    short: required?.times(sold).gt(part + 1) ?? false,
    solved: priced.solvedRung === hand.id,
  };
}

function howListCame({ list }: Listing, landed: Decimal): string {
  if (list.by === 'price') return 'as typed';
  if (list.by === 'margin') return `${percentText(list.rate)} margin on landed cost ${priceText(landed)}`;
  return 'what the shelf price and the hands leave';
}

function forPass(
  item: Item,
  landed: Landed,
  { foot, sells }: RungPrices,
  { charges }: UnitTerms,
): LadderForPass {
  return {
    invoiceTenThousandths: gridOf(foot.invoice),
    landedGoodsTenThousandths: gridOf(landed.goods),
    landedFreightTenThousandths: gridOf(landed.freightAndDuty),
    firstHandSellsTenThousandths: gridOf(sells[0] as Decimal),
    shelfBeforeTaxTenThousandths: gridOf(sells[sells.length - 1] as Decimal),
    charges,
    pickUp: foot.pickUp,
    soldAgain: item.supply.shelfLife === null,
  };
}
