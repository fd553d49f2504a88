// From the plan to the flat numbers of the weekly pass (see compiled.ts). Decimals end here: amounts become whole minor
// units, unit prices whole 1/10,000, rates whole millionths. Worked figure: "36000" in a currency of 2 digits is 3,600,000.
import { dayNumber, monthIndexOf, quarterIndexOf } from '../calendar.ts';
import type { LadderResult, Landed } from '../ladder/types.ts';
import { minorOf, rateOf, toTenThousandths } from '../money/decimal.ts';
import { perMinorUnit } from '../money/integer.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import { type Cohorts, cohortsOf } from './cohorts.ts';
import { compileBusiness } from './compile-business.ts';
import { addCells, closingsOf, orderCells } from './compile-cells.ts';
import { compileConduct } from './compile-conduct.ts';
import { demandOfCells, hotCells } from './compile-demand.ts';
import { compileListing } from './compile-listing.ts';
import { buyingOf, type Hours, hoursOf } from './compile-supply.ts';
import type { Compiled, CompiledAccount, CompiledItem } from './compiled.ts';
import { depotsOf, writeNeeds } from './depot-need.ts';
import { fixedSums } from './fixed.ts';
import { type CutSeries, seriesOf } from './series.ts';

export interface CompileArgs {
  plan: Plan;
  /** In plan order: account outside, listing inside. */
  ladders: readonly LadderResult[];
  /** By item, in plan order. */
  landed: readonly Landed[];
  minorDigits: number;
}

/** Every array and number the pass needs. The plan must have passed its rules. */
export function compile(args: CompileArgs): Compiled {
  const { plan, minorDigits } = args;
  const weeks = plan.horizonWeeks;
  const startDay = dayNumber(plan.startDate);
  const reach =
    weeks + Math.max(...plan.items.map((item) => item.supply.leadWeeks + item.supply.coverWeeks)) + 1;
  const cohorts = cohortsOf(plan.accounts, reach);
  const hours = hoursOf(plan);
  const compiled: Compiled = {
    weeks,
    reach,
    minorDigits,
    perMinor: perMinorUnit(minorDigits),
    startDay,
    months: Int32Array.from({ length: weeks }, (_, w) => monthIndexOf(startDay + 7 * w)),
    quarters: Int32Array.from({ length: weeks }, (_, w) => quarterIndexOf(startDay + 7 * w)),
    items: plan.items.map((_, i) => compileItem(args, i, hours)),
    hours: hours.seconds,
    accounts: [],
    listings: [],
    cohorts: [],
    cells: [],
    depots: [],
    hot: hotCells({ cells: [], listings: [], depots: [], doors: cohorts.doors, doorsKnown: cohorts.known }),
    demand: [],
    closings: [],
    business: compileBusiness(plan, minorDigits),
  };
  const listed = plan.accounts.reduce((sum, account) => sum + account.listings.length, 0);
  const prices = seriesOf(listed * weeks);
  for (let a = 0; a < plan.accounts.length; a++) addAccount(compiled, args, { cohorts, prices }, a);
  const { cells, listings } = compiled;
  const depots = depotsOf(compiled, plan);
  compiled.depots = depots;
  compiled.hot = hotCells({ cells, listings, depots, doors: cohorts.doors, doorsKnown: cohorts.known });
  compiled.demand = demandOfCells(compiled, plan);
  if (depots.length > 0) writeNeeds(compiled, plan);
  orderCells(compiled, plan);
  compiled.closings = closingsOf(compiled);
  return compiled;
}

function compileItem({ plan, landed, minorDigits }: CompileArgs, i: number, hours: Hours): CompiledItem {
  const item = plan.items[i] as Item;
  const { supply, opening } = item;
  const cost = landed[i] as Landed;
  const weeks = plan.horizonWeeks;
  return {
    caseUnits: item.caseUnits,
    palletUnits: item.caseUnits * item.palletCases,
    landed: toTenThousandths(cost.goods) + toTenThousandths(cost.freightAndDuty),
    coverWeeks: supply.coverWeeks,
    ordersFrom: 0,
    buying: buyingOf(item, cost, { weeks, place: hours.ofItem[i] ?? -1 }),
    shelfLife: supply.shelfLife && {
      weeks: supply.shelfLife.weeks,
      least: supply.shelfLife.leastWeeksAtReceipt,
    },
    openingUnits: opening.units,
    openingStock: minorOf(opening.stockAmount, minorDigits),
    onOrder: opening.onOrder.map((order) => ({
      week: order.landsWeek,
      units: order.units,
      deposit: minorOf(order.depositPaidAmount, minorDigits),
    })),
    removals: item.removals.map(({ week, units, reason }) => ({
      week,
      units,
      writeOff: reason === 'writeOff',
    })),
    byPriority: [],
    fillsByWeek: Array.from({ length: weeks + 1 }, () => []),
  };
}

/** What all accounts share. */
interface Shared {
  cohorts: Cohorts;
  prices: CutSeries;
}

function addAccount(
  compiled: Compiled,
  args: CompileArgs,
  { cohorts: all, prices }: Shared,
  a: number,
): void {
  const { plan, minorDigits } = args;
  const account = plan.accounts[a] as Account;
  const firstCohort = compiled.cohorts.length;
  const cohorts = all.byAccount[a] ?? [];
  compiled.cohorts.push(...cohorts);
  const firstListing = compiled.listings.length;
  const firstCell = compiled.cells.length;
  account.listings.forEach((listing, l) => {
    const item = plan.items.findIndex(({ id }) => id === listing.itemId);
    const ladder = args.ladders[firstListing + l] as LadderResult;
    compiled.listings.push({ account: a, item, ...compileListing(account, ladder, prices(compiled.weeks)) });
    addCells(compiled, {
      plan,
      a,
      account,
      listing,
      listingIndex: firstListing + l,
      item,
      cohorts,
      firstCohort,
    });
  });
  compiled.accounts.push({
    ...accountTerms(account),
    ...compileConduct(account, { minorDigits, pickUp: args.ladders[firstListing]?.forPass.pickUp ?? false }),
    ...fixedSums({ account, cohorts, weeks: compiled.weeks, minorDigits }),
    listings: account.listings.map((_, l) => firstListing + l),
    cells: compiled.cells.slice(firstCell).map((_, c) => firstCell + c),
    cohorts: cohorts.map((_, c) => firstCohort + c),
  });
}

type TermsPart = Omit<
  CompiledAccount,
  | 'listings'
  | 'cells'
  | 'cohorts'
  | keyof ReturnType<typeof fixedSums>
  | keyof ReturnType<typeof compileConduct>
>;

function accountTerms(account: Account): TermsPart {
  const { terms, sale } = account;
  const early = terms.earlyDiscount;
  const guaranteed = sale.by === 'guaranteed' ? sale : null;
  return {
    collectWeeks: Math.ceil((terms.paymentDays + terms.latenessDays) / 7),
    discount: early && {
      rate: rateOf(early.rate),
      takenShare: rateOf(early.takenShare),
      collectWeeks: Math.ceil(early.days / 7),
    },
    badDebtRate: rateOf(terms.badDebtRate),
    failsWeek: Number.POSITIVE_INFINITY,
    cancels: terms.shortage === 'cancelled',
    closedStock: account.closedStock,
    sale: sale.by,
    expectedReturnRate: guaranteed ? rateOf(guaranteed.expectedReturnRate) : 0,
    reviewWeeks: guaranteed ? guaranteed.reviewWeeks : 0,
    resaleableShare: guaranteed ? rateOf(guaranteed.resaleableShare) : 0,
    shrinkRate: sale.by === 'scan' ? rateOf(sale.shrinkRate) : 0,
    exitMarkdownRate: rateOf(account.exitMarkdownRate),
    firstOrderWeek: account.ordering.firstWeek,
    orderEveryWeeks: account.ordering.everyWeeks,
    billBack: account.freeFill.settled === 'billedBack' ? { lagWeeks: account.freeFill.lagWeeks } : null,
  };
}
