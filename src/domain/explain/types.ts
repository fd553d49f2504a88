// "Where from?" of every figure: what it is called, what it means, how it came about, and the lines that made it, each
// leading on to another figure or down to what was typed. A key names a figure; keys.ts writes it into an address.
// Worked figure: { of: 'deal', accountId: 'chain', figure: 'paybackWeeks' } is "deal/chain/paybackWeeks".
import type { Owner } from '../allowances/contract.ts';
import type { BasisNote, Thresholds } from '../plan/index.ts';
import type { VerdictName } from '../results.ts';
import type { EventName } from '../rollout/events.ts';
import type { BalanceName, FlowName, UnitName } from '../rollout/types.ts';
import type { LineName } from '../statements/lines.ts';

/** Of one item on one account's shelf. */
export const LISTING_FIGURES = [
  'landed',
  'list',
  'invoice',
  'net',
  'contribution',
  'contributionRate',
  'ladderMarginRate',
  'tradeRate',
  'shelf',
  'shelfBeforeTax',
  'tax',
  'givenBack',
  'sellingCosts',
] as const;
export type ListingFigure = (typeof LISTING_FIGURES)[number];

/** Of one account's deal. */
export const DEAL_FIGURES = [
  'contributionPerStoreWeek',
  'fixedAmount',
  'moneyDownPerDoor',
  'paybackWeeks',
  'breakEvenRatio',
  'firstYearContribution',
  'firstYearAfterFixed',
  'fullyLoadedNetPerUnit',
  'fillMargin',
] as const;
export type DealFigure = (typeof DEAL_FIGURES)[number];

/** Of one item in one account's deal. */
export const DEAL_ITEM_FIGURES = [
  'contributionPerUnit',
  'riskPerUnit',
  'deliveryPerUnit',
  'contributionPerStoreWeek',
  'firstYearUnits',
  'breakEvenUnitsPerStoreWeek',
] as const;
export type DealItemFigure = (typeof DEAL_ITEM_FIGURES)[number];

/** The retailer's side of one item. */
export const RETAILER_FIGURES = [
  'buying',
  'pennyProfit',
  'pennyProfitAllIn',
  'frontMarginRate',
  'allInMarginRate',
  'perStoreWeek',
  'perFacingWeek',
  'averageStockPerStore',
  'turnsPerYear',
  'gmroi',
  'weeksOfSupply',
  'againstReplacedPerStoreWeek',
] as const;
export type RetailerFigure = (typeof RETAILER_FIGURES)[number];

/** Read off the weekly pass. */
export const CASH_FIGURES = [
  'lowestCash',
  'cashNeed',
  'depthFromZero',
  'bufferAmount',
  'backAboveOpeningWeek',
  'endCash',
  'daysInventory',
  'daysReceivable',
  'daysPayable',
  'cashCycleDays',
  'fillRate',
  'demandUnits',
  'soldUnits',
  'lostUnits',
] as const;
export type CashFigure = (typeof CASH_FIGURES)[number];

/** Of one account in one week. */
export const ACCOUNT_WEEK_FIGURES = ['doors', 'sold', 'lost'] as const;
export type AccountWeekFigure = (typeof ACCOUNT_WEEK_FIGURES)[number];

/** Of one rival offer of money, on the plan without new funding. */
export const OFFER_FIGURES = [
  'lowestCash',
  'totalPaid',
  'founderAmount',
  'return',
  'multiple',
  'perUnit',
] as const;
export type OfferFigure = (typeof OFFER_FIGURES)[number];

/** What a week of scans was on, beside plain ones. */
export const LIFT_KINDS = ['display', 'price', 'both'] as const;
export type LiftKind = (typeof LIFT_KINDS)[number];

/** The plan with the funding it counts on, or the same without (the cash need is read off that one). */
export type Run = 'plan' | 'unfunded';

export type FigureKey =
  | { of: 'costLine'; itemId: string; lineId: string }
  | { of: 'listing'; accountId: string; itemId: string; figure: ListingFigure }
  | { of: 'hand'; accountId: string; itemId: string; handId: string }
  /** A step of list -> invoice -> net -> contribution, deal weeks' money too; the id is the ladder's own. */
  | { of: 'step'; accountId: string; itemId: string; stepId: string }
  | { of: 'deal'; accountId: string; figure: DealFigure }
  | { of: 'dealItem'; accountId: string; itemId: string; figure: DealItemFigure }
  | { of: 'fixedLine'; accountId: string; lineId: string }
  | { of: 'retailer'; accountId: string; itemId: string; figure: RetailerFigure }
  | { of: 'cash'; figure: CashFigure }
  /** A balance at the end of a week, or the lowest cash within it. */
  | { of: 'week'; run: Run; week: number; figure: BalanceName | 'low' }
  /** A cash flow, in one week or summed over weeks fromWeek to toWeek (both counted in). */
  | { of: 'flow'; run: Run; flow: FlowName; fromWeek: number; toWeek: number }
  /** A line of a statement over weeks, both counted in; a balance stands at the end of the last. */
  | { of: 'statement'; line: LineName; fromWeek: number; toWeek: number }
  /** What one kind of posting did to a balance over weeks, both counted in. */
  | { of: 'event'; event: EventName; on: BalanceName; fromWeek: number; toWeek: number }
  /** All documents dated in a week, and one of them by what it is and whose. */
  | { of: 'documents'; week: number }
  | { of: 'document'; week: number; document: string }
  /** Units of the week, or at its end: of all products, or of one. */
  | { of: 'planUnits'; unit: UnitName; week: number }
  | { of: 'itemUnits'; itemId: string; unit: UnitName; week: number }
  /** Doors at the end of a week: of all chains, or of one, beside what its shoppers found. */
  | { of: 'planDoors'; week: number }
  | { of: 'accountWeek'; accountId: string; figure: AccountWeekFigure; week: number }
  | { of: 'offer'; offerId: string; figure: OfferFigure }
  /** The rate of sale that scans of an item speak for. */
  | { of: 'evidence'; itemId: string }
  /** What weeks on a display, at a lower price, or both added to them. */
  | { of: 'lift'; itemId: string; on: LiftKind }
  /** Doors of one account by the date of the claim. */
  | { of: 'claimDoors'; accountId: string }
  | { of: 'verdict'; verdict: VerdictName }
  | { of: 'threshold'; threshold: keyof Thresholds };

export interface ExplanationLine {
  label: string;
  /** As shown: unit prices with all their decimals, money to the minor unit. */
  value: string;
  /** How it came about, in words; '' where the label says it all. */
  reason: string;
  owner: Owner | 'tax' | null;
  /** The field of the plan it was typed into (or left at its default in); null when it was computed. */
  path: string | null;
  /** Where the default at `path` comes from; null when it was typed, or has no path. */
  basis: Pick<BasisNote, 'kind' | 'source'> | null;
  /** The figure this line is, to be opened in turn. */
  explains: FigureKey | null;
  /** What it adds to the figure, as exact decimal text; null when it is an ingredient and no part of a sum. */
  adds: string | null;
}

export interface Explanation {
  key: FigureKey;
  title: string;
  /** As the screens show it. */
  value: string;
  /** The same without rounding for show, as decimal text; null when the figure isn't known. */
  exact: string | null;
  /** One sentence in trade words. */
  meaning: string;
  /** The formula with this plan's numbers in it. */
  formula: string;
  /** Lines that have `adds` come to `exact`, to the last digit. */
  lines: readonly ExplanationLine[];
  caution: string | null;
}
