// The door of "Where from?": a plan, its results and the key of a figure in, what made the figure out. Pure; each call
// works out one figure, and the lines name the keys of the next.
// Worked figure: explain({ key: { of: 'listing', ..., figure: 'net' }, ... }) is invoice 2.60 − spoils 0.052 = 2.548.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import type { Say } from '../verdicts/say.ts';
import { cashFigure } from './cash.ts';
import { claimDoorsFigure } from './claim.ts';
import { dealFigure } from './deal.ts';
import { dealItemFigure } from './deal-item.ts';
import { documentFigure, documentsFigure } from './document.ts';
import { accountWeekFigure, planDoorsFigure } from './doors-week.ts';
import { evidenceFigure } from './evidence.ts';
import { fixedLineFigure } from './fixed.ts';
import { flowFigure } from './flow.ts';
import { handFigure } from './hand.ts';
import { costLineFigure } from './landed.ts';
import { liftFigure } from './lift.ts';
import { listingFigure } from './listing.ts';
import { offerFigure } from './offer.ts';
import { type Place, placeOf } from './place.ts';
import { retailerFigure } from './retailer.ts';
import { eventFigure, statementFigure } from './statement.ts';
import { stepFigure } from './step.ts';
import { thresholdFigure } from './threshold.ts';
import type { Explanation, FigureKey } from './types.ts';
import { itemUnitsFigure, planUnitsFigure } from './units-week.ts';
import { verdictFigure } from './verdict.ts';
import { weekFigure } from './week.ts';
import type { Draft, Scene } from './write.ts';

export { keyOfSheet, keyOfText, keyText, sheetOfKey } from './keys.ts';
export { keysOf } from './keys-of.ts';
export type { Explanation, ExplanationLine, FigureKey } from './types.ts';

/**
 * Where the figure of a key comes from. Null when the plan has nothing of that name: an account, an item, a step or a
 * week that is gone. The results must be those of the plan.
 */
export function explain(args: {
  plan: Plan;
  results: Results;
  key: FigureKey;
  say: Say;
}): Explanation | null {
  const { key, ...scene } = args;
  const draft = draftOf(scene, key);
  return draft && { key, ...draft };
}

function draftOf(scene: Scene, key: FigureKey): Draft | null {
  const at = (accountId: string, itemId: string, draft: (place: Place) => Draft | null) => {
    const place = placeOf(scene, accountId, itemId);
    return place && draft(place);
  };
  switch (key.of) {
    case 'costLine':
      return costLineFigure(scene, key.itemId, key.lineId);
    case 'listing':
      return at(key.accountId, key.itemId, (place) => listingFigure(scene, place, key.figure));
    case 'hand':
      return at(key.accountId, key.itemId, (place) => handFigure(scene, place, key.handId));
    case 'step':
      return at(key.accountId, key.itemId, (place) => stepFigure(scene, place, key.stepId));
    case 'deal':
      return dealFigure(scene, key.accountId, key.figure);
    case 'dealItem':
      return at(key.accountId, key.itemId, (place) => dealItemFigure(scene, place, key.figure));
    case 'fixedLine':
      return fixedLineFigure(scene, key.accountId, key.lineId);
    case 'retailer':
      return at(key.accountId, key.itemId, (place) => retailerFigure(scene, place, key.figure));
    case 'cash':
      return cashFigure(scene, key.figure);
    case 'week':
      return weekFigure(scene, key);
    case 'flow':
      return flowFigure(scene, key);
    case 'statement':
      return statementFigure(scene, key);
    case 'event':
      return eventFigure(scene, key);
    case 'documents':
      return documentsFigure(scene, key.week);
    case 'document':
      return documentFigure(scene, key);
    case 'planUnits':
      return planUnitsFigure(scene, key);
    case 'itemUnits':
      return itemUnitsFigure(scene, key);
    case 'planDoors':
      return planDoorsFigure(scene, key.week);
    case 'accountWeek':
      return accountWeekFigure(scene, key);
    case 'offer':
      return offerFigure(scene, key);
    case 'claimDoors':
      return claimDoorsFigure(scene, key.accountId);
    case 'evidence':
      return evidenceFigure(scene, key.itemId);
    case 'lift':
      return liftFigure(scene, key.itemId, key.on);
    case 'verdict':
      return verdictFigure(scene, key.verdict);
    case 'threshold':
      return thresholdFigure(scene, key.threshold);
  }
}
