// What a closed section of the inputs says of what is in it; the same words wherever that section stands.
// Worked example: "Money down" of one chain is "180.00 a door, 1 free case", "Payment and delivery" "30 days, 10 late".
import { dec } from '../../domain/money/decimal.ts';
import type { Account, Item, Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import { shapeOf } from '../../domain/season-shapes.ts';
import { claimText, rungText } from '../promise/words.ts';
import type { ChainSection, InputPlace, PlanSection, ProductSection } from '../shared/input-places.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

/** Results are those of the last plan that could be computed; null where there are none yet. */
interface Told {
  plan: Plan;
  results: Results | null;
  say: ScreenSay;
}

/** '' for a section of something that is not in the plan. */
export function sectionWords(place: InputPlace, told: Told): string {
  if (place.of === 'plan') return PLAN_WORDS[place.section](told);
  if (place.of === 'product') {
    const item = told.plan.items.find(({ id }) => id === place.id);
    return item ? PRODUCT_WORDS[place.section](item, told) : '';
  }
  const account = told.plan.accounts.find(({ id }) => id === place.id);
  return account ? CHAIN_WORDS[place.section](account, told) : '';
}

const PER: Record<'item' | 'door' | 'chain' | 'itemDoor', string> = {
  item: 'a product',
  door: 'a door',
  chain: 'the chain',
  itemDoor: 'a product and door',
};

const CHAIN_WORDS: Record<ChainSection, (account: Account, told: Told) => string> = {
  openings: doorsWords,
  listings: ratesWords,
  moneyDown: moneyDownWords,
  ordering: orderingWords,
  terms: termsWords,
  deductions: deductionsWords,
  allowances: allowancesWords,
  hands: handsWords,
  standing: ({ standing }) => rungText(standing).toLowerCase(),
  promotions: ({ promotions }, { say }) => countWords(promotions.length, 'promotion', say),
};

const PRODUCT_WORDS: Record<ProductSection, (item: Item, told: Told) => string> = {
  cost: landedWords,
  pack: ({ caseUnits, pack }, { say }) =>
    `${say.count(caseUnits)} in a case${pack === null ? '' : `, ${say.count(pack.layerCases)} cases a layer`}`,
  supply: supplyWords,
  buying: buyingWords,
  season: seasonWords,
  stock: ({ opening: { units } }, { say }) => (units === 0 ? 'none' : countWords(units, 'unit', say)),
};

const PLAN_WORDS: Record<PlanSection, (told: Told) => string> = {
  market: ({ plan, say }) => `${plan.currency}, ${say.count(plan.horizonWeeks)} weeks`,
  cash: ({ plan: { business }, say }) =>
    business.openingCashAmount === null ? 'not known' : `${say.sum(business.openingCashAmount)} today`,
  overhead: ({ plan: { business }, say }) => {
    const lines = business.overheads.length + business.capital.length;
    return lines === 0 ? 'not in this yet' : countWords(lines, 'line', say);
  },
  lines: ({ plan: { business }, say }) => countWords(business.lines.length, 'line', say),
  funding: ({ plan: { business }, say }) => countWords(business.funding.length, 'line', say),
  books: ({ plan, say }) => {
    const { receivables, payables, accrued, loans } = plan.business.openingBooks;
    const lines = receivables.length + payables.length + accrued.length + loans.length;
    return countWords(lines, 'line', say);
  },
  verdictLines: ({ plan: { thresholds }, say }) =>
    `floor ${say.percent(dec(thresholds.ladderFloorRate))}, buffer ${countWords(thresholds.cashBufferWeeks, 'week', say)}`,
  claim: ({ plan, say }) => {
    const { claim } = plan.promise;
    return claim === null ? 'nothing yet' : claimText(plan, claim, say);
  },
};

function doorsWords(account: Account, { say }: Told): string {
  const doors = account.waves.reduce((sum, wave) => sum + wave.doors, 0);
  const running = account.runningDoors.reduce((sum, group) => sum + group.doors, 0);
  const first =
    account.waves.length === 0 ? null : Math.min(...account.waves.map(({ openWeek }) => openWeek));
  const parts = [
    running > 0 ? `${say.count(running)} already sell` : '',
    first === null ? '' : `${say.count(doors)} from ${say.week(first)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'none yet' : parts.join(', ');
}

/** "12 and 7": a comma between numbers would read as a decimal mark. */
function ratesWords({ listings, ramp }: Account, { say }: Told): string {
  if (listings.length === 0) return 'nothing listed';
  const rates = listings.map(({ unitsPerStoreWeek }) => say.number(dec(unitsPerStoreWeek))).join(' and ');
  return `${rates} a store a week${ramp.weeks === 0 ? '' : `, full in week ${ramp.weeks}`}`;
}

function moneyDownWords({ slotting, openingFees, display, listings }: Account, { say }: Told): string {
  const free = Math.max(0, ...listings.map(({ freeCasesPerDoor }) => freeCasesPerDoor));
  const parts = [
    slotting === null ? '' : `${say.sum(slotting.amount)} ${PER[slotting.per]}`,
    free === 0 ? '' : countWords(free, 'free case', say),
    openingFees.length === 0 ? '' : countWords(openingFees.length, 'fee', say),
    display === null ? '' : 'a display',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

function termsWords({ terms, sale }: Account, { say }: Told): string {
  const late = terms.latenessDays === 0 ? '' : `, ${say.count(terms.latenessDays)} late`;
  const kind = { shipment: '', guaranteed: ', guaranteed sale', scan: ', pay on scan' }[sale.by];
  return `${say.count(terms.paymentDays)} days${late}${kind}`;
}

function allowancesWords({ id, allowances }: Account, { results, say }: Told): string {
  const ladder = results?.ladders.find(({ accountId }) => accountId === id);
  const count = countWords(allowances.length, 'line', say);
  return ladder ? `${count}, trade rate ${say.percent(ladder.tradeRate)}` : count;
}

function handsWords({ id, hands }: Account, { results, say }: Told): string {
  const last = results?.ladders.find(({ accountId }) => accountId === id)?.hands.at(-1);
  const between = hands.length - 1;
  const route = between === 0 ? 'direct' : `${countWords(between, 'hand', say)} between`;
  return last ? `${route}, margin ${say.percent(last.marginRate)}` : route;
}

function landedWords(item: Item, { results, say }: Told): string {
  const ladder = results?.ladders.find(({ itemId }) => itemId === item.id);
  return ladder ? `${say.price(ladder.landed.unit)} a unit` : countWords(item.costLines.length, 'line', say);
}

function supplyWords({ supply }: Item, { say }: Told): string {
  const lid = supply.capacityUnitsPerWeek;
  const weeks = `${say.count(supply.leadWeeks)} ${supply.leadWeeks === 1 ? 'week' : 'weeks'} to make`;
  const life = supply.shelfLife === null ? '' : `, keeps ${countWords(supply.shelfLife.weeks, 'week', say)}`;
  return `${weeks}${lid === null ? '' : `, at most ${say.count(lid)} a week`}${life}`;
}

function orderingWords({ ordering, depot }: Account, { say }: Told): string {
  const { everyWeeks, daily, orderIn } = ordering;
  const often = daily
    ? 'by the day'
    : everyWeeks === 1
      ? 'every week'
      : `every ${say.count(everyWeeks)} weeks`;
  const inWhole = orderIn === 'case' ? '' : `, by the ${orderIn}`;
  const by = { chain: ', its own depot', distributor: ', a distributor’s depot' };
  return `${often}${inWhole}${depot === null ? '' : by[depot.keptBy]}`;
}

function deductionsWords({ delivery, service, disputed }: Account, { say }: Told): string {
  const parts = [
    delivery === null ? '' : 'each delivery costs',
    service === null ? '' : `${say.percent(dec(service.leastFillRate))} or a charge`,
    disputed === null ? '' : `${say.percent(dec(disputed.wrongRate))} not owed`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'none' : parts.join(', ');
}

function buyingWords({ supply }: Item, { say }: Told): string {
  const { sources, priceBreaks, expedite, purchaseCurrency } = supply;
  const parts = [
    sources.length === 0 ? '' : countWords(sources.length + 1, 'supplier', say),
    priceBreaks.length === 0 ? '' : countWords(priceBreaks.length, 'price break', say),
    expedite === null ? '' : 'rush orders',
    purchaseCurrency === null ? '' : `in ${purchaseCurrency.code}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'one supplier' : parts.join(', ');
}

function seasonWords({ seasonFactors }: Item): string {
  if (seasonFactors === null) return 'none';
  return shapeOf(seasonFactors)?.label.toLowerCase() ?? 'own factors';
}

function countWords(count: number, noun: string, say: ScreenSay): string {
  if (count === 0) return 'none';
  return `${say.count(count)} ${noun}${count === 1 ? '' : 's'}`;
}
