// Keys of figures as text, for addresses and links, and back. What an address says that names no kind of figure is null
// here; whether the plan has the account or the week is explain()'s to find out.
// Worked figure: "deal/chain/paybackWeeks" <-> { of: 'deal', accountId: 'chain', figure: 'paybackWeeks' }.
import type { Thresholds } from '../plan/index.ts';
import type { VerdictName } from '../results.ts';
import { UNIT_NAMES } from '../rollout/types.ts';
import { eventKey, flowKey, found, inWeek, namedInWeek, statementKey, weekKey } from './keys-read.ts';
import {
  ACCOUNT_WEEK_FIGURES,
  CASH_FIGURES,
  DEAL_FIGURES,
  DEAL_ITEM_FIGURES,
  type FigureKey,
  LIFT_KINDS,
  LISTING_FIGURES,
  OFFER_FIGURES,
  RETAILER_FIGURES,
} from './types.ts';

const SHEET = 'why:';
const VERDICTS: readonly VerdictName[] = ['ladder', 'deal', 'cash', 'promise'];

export const THRESHOLD_NAMES = [
  'ladderFloorRate',
  'ladderTightPoints',
  'dealTightRatio',
  'cashBufferWeeks',
  'promiseFailsBelowRate',
  'promiseTightBelowRate',
] as const satisfies readonly (keyof Thresholds)[];

/** The name of the sheet that explains a figure. */
export function sheetOfKey(key: FigureKey): string {
  return `${SHEET}${keyText(key)}`;
}

/** The figure that a sheet explains; null for any other sheet, or an address cut off. */
export function keyOfSheet(sheet: string): FigureKey | null {
  return sheet.startsWith(SHEET) ? keyOfText(sheet.slice(SHEET.length)) : null;
}

/** Ids hold letters, digits and hyphens only, so that "/" keeps the parts apart. */
export function keyText(key: FigureKey): string {
  return [key.of, ...partsOf(key)].join('/');
}

function partsOf(key: FigureKey): (string | number)[] {
  switch (key.of) {
    case 'costLine':
      return [key.itemId, key.lineId];
    case 'listing':
    case 'dealItem':
    case 'retailer':
      return [key.accountId, key.itemId, key.figure];
    case 'hand':
      return [key.accountId, key.itemId, key.handId];
    case 'step':
      return [key.accountId, key.itemId, key.stepId];
    case 'deal':
      return [key.accountId, key.figure];
    case 'fixedLine':
      return [key.accountId, key.lineId];
    case 'cash':
      return [key.figure];
    case 'week':
      return [key.run, key.week, key.figure];
    case 'flow':
      return [key.run, key.flow, key.fromWeek, key.toWeek];
    case 'statement':
      return [key.line, key.fromWeek, key.toWeek];
    case 'event':
      return [key.event, key.on, key.fromWeek, key.toWeek];
    case 'document':
      return [key.week, key.document];
    case 'planUnits':
      return [key.unit, key.week];
    case 'itemUnits':
      return [key.itemId, key.unit, key.week];
    case 'documents':
    case 'planDoors':
      return [key.week];
    case 'accountWeek':
      return [key.accountId, key.figure, key.week];
    case 'offer':
      return [key.offerId, key.figure];
    case 'evidence':
      return [key.itemId];
    case 'lift':
      return [key.itemId, key.on];
    case 'claimDoors':
      return [key.accountId];
    case 'verdict':
      return [key.verdict];
    case 'threshold':
      return [key.threshold];
  }
}

/** The key that a text names, or null. */
export function keyOfText(text: string): FigureKey | null {
  const [of, ...parts] = text.split('/');
  if (parts.some((part) => !/^[A-Za-z0-9-]{1,80}$/.test(part))) return null;
  const [first = '', second = '', third = '', fourth = ''] = parts;
  const read = of !== undefined && Object.hasOwn(READERS, of) ? READERS[of as FigureKey['of']] : null;
  if (!read || parts.length !== read.parts) return null;
  return read.key(first, second, third, fourth);
}

interface Reader {
  parts: number;
  key: (first: string, second: string, third: string, fourth: string) => FigureKey | null;
}

const READERS: Record<FigureKey['of'], Reader> = {
  costLine: { parts: 2, key: (itemId, lineId) => ({ of: 'costLine', itemId, lineId }) },
  listing: {
    parts: 3,
    key: (accountId, itemId, name) =>
      found(LISTING_FIGURES, name, (figure) => ({ of: 'listing', accountId, itemId, figure })),
  },
  hand: { parts: 3, key: (accountId, itemId, handId) => ({ of: 'hand', accountId, itemId, handId }) },
  step: { parts: 3, key: (accountId, itemId, stepId) => ({ of: 'step', accountId, itemId, stepId }) },
  deal: {
    parts: 2,
    key: (accountId, name) => found(DEAL_FIGURES, name, (figure) => ({ of: 'deal', accountId, figure })),
  },
  dealItem: {
    parts: 3,
    key: (accountId, itemId, name) =>
      found(DEAL_ITEM_FIGURES, name, (figure) => ({ of: 'dealItem', accountId, itemId, figure })),
  },
  fixedLine: { parts: 2, key: (accountId, lineId) => ({ of: 'fixedLine', accountId, lineId }) },
  retailer: {
    parts: 3,
    key: (accountId, itemId, name) =>
      found(RETAILER_FIGURES, name, (figure) => ({ of: 'retailer', accountId, itemId, figure })),
  },
  cash: { parts: 1, key: (name) => found(CASH_FIGURES, name, (figure) => ({ of: 'cash', figure })) },
  week: { parts: 3, key: weekKey },
  flow: { parts: 4, key: flowKey },
  statement: { parts: 3, key: statementKey },
  event: { parts: 4, key: eventKey },
  documents: { parts: 1, key: (text) => inWeek(text, (week) => ({ of: 'documents', week })) },
  document: {
    parts: 2,
    key: (text, document) => inWeek(text, (week) => ({ of: 'document', week, document })),
  },
  planUnits: {
    parts: 2,
    key: (name, week) =>
      namedInWeek(week, UNIT_NAMES, name, (unit, at) => ({ of: 'planUnits', unit, week: at })),
  },
  itemUnits: {
    parts: 3,
    key: (itemId, name, week) =>
      namedInWeek(week, UNIT_NAMES, name, (unit, at) => ({ of: 'itemUnits', itemId, unit, week: at })),
  },
  planDoors: {
    parts: 1,
    key: (text) => inWeek(text, (week) => ({ of: 'planDoors', week })),
  },
  accountWeek: {
    parts: 3,
    key: (accountId, name, week) =>
      namedInWeek(week, ACCOUNT_WEEK_FIGURES, name, (figure, at) => ({
        of: 'accountWeek',
        accountId,
        figure,
        week: at,
      })),
  },
  offer: {
    parts: 2,
    key: (offerId, name) => found(OFFER_FIGURES, name, (figure) => ({ of: 'offer', offerId, figure })),
  },
  evidence: { parts: 1, key: (itemId) => ({ of: 'evidence', itemId }) },
  lift: { parts: 2, key: (itemId, name) => found(LIFT_KINDS, name, (on) => ({ of: 'lift', itemId, on })) },
  claimDoors: { parts: 1, key: (accountId) => ({ of: 'claimDoors', accountId }) },
  verdict: {
    parts: 1,
    key: (name) => found(VERDICTS, name, (verdict) => ({ of: 'verdict', verdict })),
  },
  threshold: {
    parts: 1,
    key: (name) => found(THRESHOLD_NAMES, name, (threshold) => ({ of: 'threshold', threshold })),
  },
};
