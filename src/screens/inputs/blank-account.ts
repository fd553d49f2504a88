// A chain for a plan that has none: the terms a quick plan would give it, and nothing asked for yet.
// Worked example: one hand at a margin of 35 %, ten stores opening in week 12, paid in 30 days and 10 late.
import type { Account } from '../../domain/plan/index.ts';
import { askingNothing, DEFAULTS } from '../../domain/quick/index.ts';

export function blankAccount(args: { id: string; itemId: string; horizonWeeks: number }): Account {
  const { id, itemId, horizonWeeks } = args;
  const account = askingNothing({
    id,
    name: 'The chain',
    hands: [
      { id: 'shop', name: 'The chain', rule: { by: 'margin', rate: '0.35' }, requiredMarginRate: null },
    ],
    listings: [
      {
        itemId,
        list: { by: 'solved' },
        shelf: { by: 'price', amount: '4.99' },
        lockedRungs: [],
        unitsPerStoreWeek: '1',
        facings: 1,
        depthUnits: DEFAULTS.caseUnits,
        backStockUnits: 0,
        coverWeeks: DEFAULTS.shelfCoverWeeks,
        freeCasesPerDoor: 0,
        replaces: null,
      },
    ],
  });
  const openWeek = Math.min(DEFAULTS.firstOpenWeek, horizonWeeks - 1);
  return { ...account, waves: [{ id: 'first', openWeek, doors: 10, doorsPerWeek: 10 }] };
}
