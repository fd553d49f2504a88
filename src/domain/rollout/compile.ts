// From the plan to the flat numbers of the weekly pass (see compiled.ts). Decimals end here: amounts become whole minor
// units, unit prices whole 1/10,000, rates whole millionths. Worked figure: "36000" in a currency of 2 digits is 3,600,000.
import { dayNumber, monthIndexOf, quarterIndexOf } from '../calendar.ts';
import type { LadderResult, Landed } from '../ladder/types.ts';
import { minorOf, rateOf, toTenThousandths } from '../money/decimal.ts';
import { perMinorUnit } from '../money/integer.ts';
import type { Item, Plan } from '../plan/index.ts';
import { compileBusiness } from './compile-business.ts';
import { compileListing } from './compile-listing.ts';
import type { Cell, Compiled, CompiledAccount, CompiledItem, CompiledListing } from './compiled.ts';
import { cohortsOf, demandAndTarget, fillPerDoor, promotionByWeek, seasonByWeek } from './cells.ts';
import { fixedSums } from './fixed.ts';

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
  const { plan, landed, minorDigits } = args;
  const weeks = plan.horizonWeeks;
  const startDay = dayNumber(plan.startDate);
  const reach = weeks + Math.max(...plan.items.map((item) => item.supply.leadWeeks + item.supply.coverWeeks)) + 1;
  const compiled: Compiled = {
    weeks,
    reach,
    minorDigits,
    perMinor: perMinorUnit(minorDigits),
    startDay,
    months: Int32Array.from({ length: weeks }, (_, w) => monthIndexOf(startDay + 7 * w)),
    quarters: Int32Array.from({ length: weeks }, (_, w) => quarterIndexOf(startDay + 7 * w)),
    items: plan.items.map((item, i) => compileItem(item, landed[i] as Landed, weeks, minorDigits)),
    accounts: [],
    listings: [],
    cohorts: [],
    cells: [],
    business: compileBusiness(plan, minorDigits),
  };
  for (let a = 0; a < plan.accounts.length; a++) addAccount(compiled, args, a);
  orderCells(compiled, plan);
  return compiled;
}

function compileItem(item: Item, landed: Landed, weeks: number, minorDigits: number): CompiledItem {
  const { supply, opening } = item;
  const capacity = new Float64Array(weeks).fill(supply.capacityUnitsPerWeek ?? Number.POSITIVE_INFINITY);
  for (const step of supply.capacitySteps) capacity.fill(step.unitsPerWeek, step.fromWeek);
  const landedGoods = toTenThousandths(landed.goods);
  const landedFreight = toTenThousandths(landed.freightAndDuty);
  return {
    caseUnits: item.caseUnits,
    landedGoods,
    landedFreight,
    landed: landedGoods + landedFreight,
    leadWeeks: supply.leadWeeks,
    coverWeeks: supply.coverWeeks,
    minimumOrderUnits: supply.minimumOrderUnits,
    batchUnits: supply.batchUnits,
    capacity,
    depositRate: rateOf(supply.depositRate),
    supplierWeeks: Math.floor(supply.supplierDays / 7),
    openingUnits: opening.units,
    openingStock: minorOf(opening.stockAmount, minorDigits),
    onOrder: opening.onOrder.map((order) => ({
      week: order.landsWeek,
      units: order.units,
      deposit: minorOf(order.depositPaidAmount, minorDigits),
    })),
    removals: item.removals.map(({ week, units, reason }) => ({ week, units, writeOff: reason === 'writeOff' })),
    cellsByPriority: [],
    listings: [],
  };
}

function addAccount(compiled: Compiled, args: CompileArgs, a: number): void {
  const { plan, minorDigits } = args;
  const account = plan.accounts[a] as Plan['accounts'][number];
  const firstCohort = compiled.cohorts.length;
  const cohorts = cohortsOf({ account, accountIndex: a, reach: compiled.reach });
  compiled.cohorts.push(...cohorts);
  const promotion = promotionByWeek(account, compiled.reach + 80);
  const listings: number[] = [];
  const cells: number[] = [];
  for (const listing of account.listings) {
    const itemIndex = plan.items.findIndex((item) => item.id === listing.itemId);
    const item = plan.items[itemIndex] as Item;
    const ladder = args.ladders[compiled.listings.length] as LadderResult;
    const listingIndex = compiled.listings.length;
    const part: CompiledListing = { account: a, item: itemIndex, ...compileListing(account, ladder, compiled.weeks) };
    compiled.listings.push(part);
    compiled.items[itemIndex]?.listings.push(listingIndex);
    listings.push(listingIndex);
    const season = seasonByWeek(item, compiled.startDay, compiled.reach + 80);
    const perDoor = fillPerDoor(listing, item.caseUnits);
    const freePerDoor = Math.min(perDoor, listing.freeCasesPerDoor * item.caseUnits);
    cohorts.forEach((cohort, c) => {
      const running = c < account.runningDoors.length;
      cells.push(compiled.cells.length);
      compiled.cells.push({
        account: a,
        listing: listingIndex,
        item: itemIndex,
        cohort: firstCohort + c,
        caseUnits: item.caseUnits,
        transitWeeks: account.terms.transitWeeks,
        openWeek: cohort.openWeek,
        fillUnits: running ? 0 : perDoor * cohort.doorsAtOpening,
        freeUnits: running ? 0 : freePerDoor * cohort.doorsAtOpening,
        openingStock: running ? cohort.doorsAtOpening * (account.runningDoors[c]?.unitsPerDoor ?? 0) : 0,
        ...demandAndTarget({
          plan,
          account,
          listing,
          cohort,
          fillPerDoorUnits: perDoor,
          season,
          promotion,
          reach: compiled.reach,
        }),
      });
    });
  }
  compiled.accounts.push({
    ...accountTerms(account, a),
    ...fixedSums({ account, cohorts, weeks: compiled.weeks, minorDigits }),
    listings,
    cells,
    cohorts: cohorts.map((_, c) => firstCohort + c),
  });
}

type TermsPart = Omit<
  CompiledAccount,
  'listings' | 'cells' | 'cohorts' | keyof ReturnType<typeof fixedSums>
>;

function accountTerms(account: Plan['accounts'][number], _index: number): TermsPart {
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
    cancels: terms.shortage === 'cancelled',
    closedStock: account.closedStock,
    sale: sale.by,
    expectedReturnRate: guaranteed ? rateOf(guaranteed.expectedReturnRate) : 0,
    reviewWeeks: guaranteed ? guaranteed.reviewWeeks : 0,
    resaleableShare: guaranteed ? rateOf(guaranteed.resaleableShare) : 0,
    shrinkRate: sale.by === 'scan' ? rateOf(sale.shrinkRate) : 0,
    billBack: account.freeFill.settled === 'billedBack' ? { lagWeeks: account.freeFill.lagWeeks } : null,
  };
}

/** Shipping order of each item's cells: account priority, then file order. */
function orderCells(compiled: Compiled, plan: Plan): void {
  compiled.items.forEach((item, i) => {
    item.cellsByPriority = compiled.cells
      .map((cell, index) => ({ cell, index }))
      .filter(({ cell }) => cell.item === i)
      .sort((x, y) => priorityOf(plan, x.cell) - priorityOf(plan, y.cell) || x.index - y.index)
      .map(({ index }) => index);
  });
}

function priorityOf(plan: Plan, cell: Cell): number {
  return plan.accounts[cell.account]?.priority ?? 99;
}
