// The plan that speed is measured on: 104 weeks, 12 accounts, 3 items, 2,400 doors in waves, with trade terms of every
// kind that posts documents. All names invented.
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { aBusiness, aHand, aListing, anAccount, anItem, aPlan, aWave } from './builders.ts';

const ITEM_IDS = ['plum', 'pear', 'quince'];

export function bigPlan(): Plan {
  return aPlan({
    horizonWeeks: 104,
    items: ITEM_IDS.map((id, i) =>
      anItem({
        id,
        name: `${id} preserve`,
        supply: {
          ...anItem({}).supply,
          leadWeeks: 4 + i,
          coverWeeks: 2,
          minimumOrderUnits: 1000,
          batchUnits: 120,
        },
      }),
    ),
    accounts: Array.from({ length: 12 }, (_, a) => bigAccount(a)),
    business: aBusiness({ openingCashAmount: '900000' }),
  });
}

function bigAccount(a: number): Account {
  return anAccount({
    id: `chain-${a}`,
    name: `Chain ${a}`,
    priority: 1 + (a % 4),
    hands: [aHand({ id: `shop-${a}` })],
    listings: ITEM_IDS.map((itemId, i) =>
      aListing({ itemId, unitsPerStoreWeek: String(4 + i + a / 4), coverWeeks: 2 }),
    ),
    waves: [
      aWave({ id: `first-${a}`, openWeek: 6 + a, doors: 80, doorsPerWeek: 20 }),
      aWave({ id: `second-${a}`, openWeek: 30 + a, doors: 120, doorsPerWeek: 30 }),
    ],
    attritionYearlyRate: '0.06',
    allowances: [
      { kind: 'spoils', id: `spoils-${a}`, rate: '0.01' },
      { kind: 'coop', id: `coop-${a}`, rate: '0.03' },
      { kind: 'broker', id: `broker-${a}`, rate: '0.05', onFreeGoods: false },
      { kind: 'freightOut', id: `freight-${a}`, amount: '1.2', per: 'case' },
    ],
  });
}
