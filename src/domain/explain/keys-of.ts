// Every figure of a plan that can be asked about, for checks that walk them all; week figures only for the weeks named.
// Worked figure: a plan of one chain and one item has about a hundred, and some two hundred more for each week.
import { stepsInDealWeeks } from '../ladder/deal-week.ts';
import { evidenceOf } from '../promise/evidence.ts';
import { placeClaim } from '../promise/place-claim.ts';
import type { Results } from '../results.ts';
import { FLOW_NAMES, UNIT_NAMES } from '../rollout/types.ts';
import { EVENT_NAMES, entryOf, ledgerOf, sumOfWeeks } from '../statements/ledger.ts';
import { LINES, type LineName } from '../statements/lines.ts';
import { documentsOf } from './documents.ts';
import { THRESHOLD_NAMES } from './keys.ts';
import { WEEK_FIGURES } from './keys-read.ts';
import {
  ACCOUNT_WEEK_FIGURES,
  CASH_FIGURES,
  DEAL_FIGURES,
  DEAL_ITEM_FIGURES,
  type FigureKey,
  LISTING_FIGURES,
  OFFER_FIGURES,
  RETAILER_FIGURES,
} from './types.ts';
import type { Scene } from './write.ts';

export function keysOf(args: Scene & { weeks: readonly number[] }): FigureKey[] {
  const { plan, results, weeks } = args;
  const verdicts = ['ladder', 'deal', 'cash', 'promise'] as const;
  return [
    ...plan.items.flatMap(({ id, costLines }) =>
      costLines.map((line): FigureKey => ({ of: 'costLine', itemId: id, lineId: line.id })),
    ),
    ...results.ladders.flatMap(listingKeys),
    ...results.deals.flatMap(dealKeys),
    ...CASH_FIGURES.map((figure): FigureKey => ({ of: 'cash', figure })),
    ...weeks.flatMap((week) => [
      ...weekKeys(week),
      ...statementKeys(results, week),
      ...documentKeys(args, week),
      ...unitKeys(plan, week),
    ]),
    ...plan.offers.flatMap(({ id }) =>
      OFFER_FIGURES.map((figure): FigureKey => ({ of: 'offer', offerId: id, figure })),
    ),
    ...(placeClaim(plan, results.pass).placed?.doors.accounts ?? []).map(
      ({ accountId }): FigureKey => ({ of: 'claimDoors', accountId }),
    ),
    ...evidenceOf(plan).flatMap(({ itemId, lifts }): FigureKey[] => [
      { of: 'evidence', itemId },
      ...lifts.map(({ on }): FigureKey => ({ of: 'lift', itemId, on })),
    ]),
    ...verdicts.map((verdict): FigureKey => ({ of: 'verdict', verdict })),
    ...THRESHOLD_NAMES.map((threshold): FigureKey => ({ of: 'threshold', threshold })),
  ];
}

function listingKeys(ladder: Results['ladders'][number]): FigureKey[] {
  const { accountId, itemId } = ladder;
  const steps = [...ladder.steps, ...stepsInDealWeeks(ladder)];
  return [
    ...LISTING_FIGURES.map((figure): FigureKey => ({ of: 'listing', accountId, itemId, figure })),
    ...ladder.hands.map(({ id }): FigureKey => ({ of: 'hand', accountId, itemId, handId: id })),
    ...steps.map(({ id }): FigureKey => ({ of: 'step', accountId, itemId, stepId: id })),
    ...DEAL_ITEM_FIGURES.map((figure): FigureKey => ({ of: 'dealItem', accountId, itemId, figure })),
    ...RETAILER_FIGURES.map((figure): FigureKey => ({ of: 'retailer', accountId, itemId, figure })),
  ];
}

function dealKeys({ accountId, fixedLines }: Results['deals'][number]): FigureKey[] {
  return [
    ...DEAL_FIGURES.map((figure): FigureKey => ({ of: 'deal', accountId, figure })),
    ...fixedLines.map(({ id }): FigureKey => ({ of: 'fixedLine', accountId, lineId: id })),
  ];
}

function weekKeys(week: number): FigureKey[] {
  return (['plan', 'unfunded'] as const).flatMap((run) => [
    ...WEEK_FIGURES.map((figure): FigureKey => ({ of: 'week', run, week, figure })),
    ...FLOW_NAMES.flatMap((flow): FigureKey[] => [
      { of: 'flow', run, flow, fromWeek: week, toWeek: week },
      { of: 'flow', run, flow, fromWeek: 0, toWeek: week },
    ]),
  ]);
}

function documentKeys(scene: Scene, week: number): FigureKey[] {
  return [
    { of: 'documents', week },
    ...documentsOf(scene, week).map(({ id }): FigureKey => ({ of: 'document', week, document: id })),
  ];
}

function unitKeys({ items, accounts }: Scene['plan'], week: number): FigureKey[] {
  return [
    { of: 'planDoors', week },
    ...accounts.flatMap(({ id }) =>
      ACCOUNT_WEEK_FIGURES.map((figure): FigureKey => ({ of: 'accountWeek', accountId: id, figure, week })),
    ),
    ...UNIT_NAMES.flatMap((unit): FigureKey[] => [
      { of: 'planUnits', unit, week },
      ...items.map(({ id }): FigureKey => ({ of: 'itemUnits', itemId: id, unit, week })),
    ]),
  ];
}

/** Every line of the statements, and every kind of posting behind them: in that week, and in all up to it. */
function statementKeys(results: Results, week: number): FigureKey[] {
  const { events } = ledgerOf(results);
  return (week === 0 ? [0] : [week, 0]).flatMap((fromWeek) => [
    ...(Object.keys(LINES) as LineName[]).map(
      (line): FigureKey => ({ of: 'statement', line, fromWeek, toWeek: week }),
    ),
    ...EVENT_NAMES.filter((event) => sumOfWeeks(events[event], fromWeek, week) !== 0).flatMap((event) => {
      const { dr, cr } = entryOf(event);
      return [dr, cr].map((on): FigureKey => ({ of: 'event', event, on, fromWeek, toWeek: week }));
    }),
  ]);
}
