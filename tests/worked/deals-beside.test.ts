/**
 * What an account adds to its terms, in its deal: deductions that aren't owed, drops and pallets. On the builders' account:
 * ten doors at 6 a week, 2.60 invoiced and 1.00 landed, 12 to a case and 600 to a pallet.
 */
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/domain/plan/index.ts';
import { aListing, anAccount, aPlan } from '../support/builders.ts';
import { explained, subjectOf } from '../support/explained.ts';

const delivery = { amountPerDrop: '4.255', amountPerPallet: '30' };

function itemOf(account: Partial<Account>) {
  const subject = subjectOf(aPlan({ accounts: [anAccount(account)] }));
  const item = subject.results.deals[0]?.items[0];
  if (!item) throw new Error('no deal');
  const figure = (name: 'riskPerUnit' | 'deliveryPerUnit' | 'contributionPerUnit') =>
    explained(subject, { of: 'dealItem', accountId: 'corner', itemId: 'tea', figure: name });
  return { ...item, results: subject.results, figure };
}

describe('deductions that are not owed', () => {
  test('3 % of 2.60, of which two fifths stay lost: 0.0312 a unit off 1.60', () => {
    const disputed = { wrongRate: '0.03', recoveredShare: '0.6', recoveryWeeks: 10 };
    const { riskPerUnit, contributionPerUnit, figure } = itemOf({ disputed });
    expect(riskPerUnit.toString()).toBe('0.0312');
    expect(contributionPerUnit.toString()).toBe('1.5688');
    expect(figure('riskPerUnit').lines.map(({ path, adds }) => [path, adds])).toEqual([
      ['accounts/corner/terms/badDebtRate', '0'],
      ['accounts/corner/disputed/wrongRate', '0.0312'],
      ['accounts/corner/disputed/recoveredShare', null],
      [null, null],
    ]);
  });

  test('all of it won back costs the deal nothing', () => {
    const disputed = { wrongRate: '0.03', recoveredShare: '1', recoveryWeeks: 10 };
    expect(itemOf({ disputed }).contributionPerUnit.toString()).toBe('1.6');
  });
});

describe('drops and pallets', () => {
  test('60 units a week are 5 cases, 5 drops at 4.255 and a pallet at 30.00: 51.275 ÷ 60', () => {
    const { deliveryPerUnit, contributionPerUnit, figure } = itemOf({ delivery });
    expect(deliveryPerUnit.toString()).toBe('0.8546');
    expect(contributionPerUnit.toString()).toBe('0.7454');
    expect(figure('deliveryPerUnit').formula).toBe(
      '(5 drops × 4.2550 + 1 pallet × 30.00) ÷ 60 units = 0.8546',
    );
    expect(figure('contributionPerUnit').formula).toBe('1.60 − 0.8546 = 0.7454');
  });

  test('the weekly pass pays as much a unit once all doors sell', () => {
    const { results } = itemOf({ delivery });
    const sum = (series: Float64Array | undefined) =>
      Array.from(series?.subarray(20, 46) ?? []).reduce((total, each) => total + each, 0);
    const paid = -sum(results.pass.flows.freightOut) / 100 / sum(results.pass.units[0]?.shipped);
    expect(paid).toBeCloseTo(0.8546, 3);
  });

  test('a slow seller is not delivered every week: 5 units a week are 0.4167 of a case, a drop and a pallet', () => {
    const listings = [aListing({ unitsPerStoreWeek: '0.5' })];
    // 5 ÷ 12 x (4.255 + 30) = 14.2729, over 5 units.
    expect(itemOf({ delivery, listings }).deliveryPerUnit.toString()).toBe('2.8546');
  });

  test('every second week, twice as much at a time: 10 drops and a pallet over 120 units', () => {
    const ordering = { ...anAccount().ordering, everyWeeks: 2 };
    expect(itemOf({ delivery, ordering }).deliveryPerUnit.toString()).toBe('0.6046');
  });

  test('to a depot it is one drop: 34.255 ÷ 60; of at least 240 units, every fourth week', () => {
    const depot = {
      keptBy: 'chain' as const,
      transitWeeks: 0,
      fillWeeks: 0,
      openingWeeks: 0,
      coverWeeks: 1,
      minimumOrderUnits: 0,
      orderIn: 'case' as const,
    };
    expect(itemOf({ delivery, depot }).deliveryPerUnit.toString()).toBe('0.5709');
    const large = { ...depot, minimumOrderUnits: 240 };
    expect(itemOf({ delivery, depot: large }).deliveryPerUnit.toString()).toBe('0.1427');
  });

  test('nothing where the buyer picks up', () => {
    const allowances: Account['allowances'] = [
      { kind: 'freightAllowance', id: 'fetch', amountPerUnit: '0', pickUp: true },
    ];
    expect(itemOf({ delivery, allowances }).deliveryPerUnit.toString()).toBe('0');
  });
});

test('charges for short deliveries are the weekly pass’s, and the deal says so', () => {
  const service = { leastFillRate: '0.95', chargeRate: '0.03', lagWeeks: 2 };
  const { contributionPerUnit, figure } = itemOf({ service });
  expect(contributionPerUnit.toString()).toBe('1.6');
  expect(figure('contributionPerUnit').caution).toContain('short deliveries');
});
