/**
 * The retailer's side against published figures: GMROI, stock turnover and its days, weeks of supply. Money of the
 * exercises is scaled to one store; turnover and GMROI are ratios and do not change with it.
 */
import { expect, test } from 'vitest';
import type { RetailerSide } from '../../src/domain/deals/types.ts';
import { aCostLine, aHand, aListing, anAccount, anItem } from '../support/builders.ts';
import { dealOf, firstItem } from '../support/deals.ts';

/** One store all year: it buys at `buying`, sells at `shelf`, so many units a week, with so many on the shelf. */
function retailer(from: { buying: string; shelf: string; rate: string; stock: number }): RetailerSide {
  const account = anAccount({
    hands: [aHand({ rule: { by: 'solved' } })],
    listings: [
      aListing({
        list: { by: 'price', amount: from.buying },
        shelf: { by: 'price', amount: from.shelf },
        unitsPerStoreWeek: from.rate,
        facings: 4,
      }),
    ],
    waves: [{ id: 'first', openWeek: 4, doors: 1, doorsPerWeek: 1 }],
  });
  const items = [anItem({ costLines: [aCostLine({ rule: { by: 'unit', amount: '0.1' } })] })];
  return firstItem(dealOf({ account, plan: { items }, stock: [from.stock] })).retailer;
}

test('Dunne & Lusch, Retailing, ch. 9: sales 400,000, cost 250,000, stock 40,000 and 60,000 give a GMROI of 3.0', () => {
  // 5,200 units a year at 4.00 and 2.50 are the same ratios: stock 50,000 / 250,000 x 5,200 = 1,040 units.
  const side = retailer({ buying: '2.50', shelf: '4.00', rate: '100', stock: 1040 });
  expect(side.gmroi?.toString()).toBe('3');
  expect(side.frontMarginRate.toString()).toBe('0.375');
  const margin = side.frontMarginRate.toNumber();
  // the same chapter's identity: GMROI = margin % / (1 - margin %) x turns
  expect(side.gmroi?.toNumber()).toBeCloseTo(
    (margin / (1 - margin)) * (side.turnsPerYear?.toNumber() ?? 0),
    9,
  );
});

test('IMA, CMA practice question: cost of goods 4,380,000 on stock of 870,000 turns 5.03 times, 72.5 days', () => {
  const side = retailer({ buying: '1', shelf: '2', rate: (4380 / 52).toFixed(6), stock: 870 });
  const turns = side.turnsPerYear?.toNumber() ?? 0;
  expect(turns).toBeCloseTo(5.03, 2);
  expect(365 / turns).toBeCloseTo(72.5, 1);
});

test('retailing exercise: turnover of 1.42 in 26 weeks is 18.31 weeks of supply (recomputed)', () => {
  const side = retailer({ buying: '1', shelf: '2', rate: (142 / 26).toFixed(6), stock: 100 });
  expect(side.weeksOfSupply?.toNumber()).toBeCloseTo(18.31, 2);
});

test('penny profit per store and per facing (common practice, no source): 1.50 a unit, 100 a week, 4 facings', () => {
  const side = retailer({ buying: '2.50', shelf: '4.00', rate: '100', stock: 1040 });
  expect([side.pennyProfit, side.perStoreWeek, side.perFacingWeek].map(String)).toEqual([
    '1.5',
    '150',
    '37.5',
  ]);
});
