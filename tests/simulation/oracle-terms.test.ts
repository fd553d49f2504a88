/**
 * Kernel against oracle, one rule of an account's terms a plan: fees, allowances, returns, kinds of sale, payment. Each
 * test also shows that what it is about did happen.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { aHand, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { agreed, totalFrom } from '../support/oracle/agree.ts';

const planWith = (account: Partial<Account>): Plan =>
  aPlan({
    accounts: [anAccount(account)],
    items: [anItem({ opening: { units: 700, stockAmount: '777.77', onOrder: [] } })],
  });
const terms = (changes: Partial<Account['terms']>) => ({ ...anAccount().terms, ...changes });
const slow = [aListing({ unitsPerStoreWeek: '1.3' })];

describe('slotting and fees', () => {
  test('slotting off remittances takes whole remittances, and the rest waits', () => {
    const slotting = { amount: '1000', per: 'chain' as const, settled: 'offRemittances' as const };
    const pass = agreed(planWith({ slotting }));
    expect(pass.accounts[0]?.remitted[8]).toBe(0); // the fill's 312.00 all go to slotting
    expect(totalFrom(pass.accounts[0]?.remitted)).toBeGreaterThan(0);
    expect(totalFrom(pass.flows.slotting)).toBe(0);
  });

  test('slotting of an account that never pays is paid in cash after 8 quiet weeks', () => {
    const slotting = { amount: '90000', per: 'chain' as const, settled: 'offRemittances' as const };
    const pass = agreed(planWith({ slotting, cutWeek: 9, closedStock: 'credited' }));
    const paid = pass.flows.claimsPaid.findIndex((flow) => flow < 0);
    const lastDue = 8 + Math.ceil(30 / 7);
    expect(paid).toBeGreaterThanOrEqual(lastDue);
    expect(pass.balances.accrued[paid]).toBe(0);
  });

  test.each(['item', 'door', 'chain', 'itemDoor'] as const)('per %s, at opening, two waves', (per) => {
    const waves = [aWave({ doorsPerWeek: 4 }), aWave({ id: 'second', openWeek: 20, doors: 3 })];
    const openingFees = [{ id: 'fee', label: 'Set-up', amount: '12.345', per }];
    const pass = agreed(
      planWith({ waves, openingFees, slotting: { amount: '100', per, settled: 'atOpening' } }),
    );
    const times = { item: 1, chain: 1, door: 13, itemDoor: 13 }[per];
    expect(totalFrom(pass.flows.slotting)).toBe(-10_000 * times);
  });

  test('a chain whose doors run already pays once, with the first of its new ones', () => {
    const runningDoors = [{ id: 'old', doors: 5, ageWeeks: 10, unitsPerDoor: 12 }];
    const pass = agreed(
      planWith({ runningDoors, slotting: { amount: '100', per: 'chain', settled: 'atOpening' } }),
    );
    expect(pass.flows.slotting[4]).toBe(-10_000);
  });
});

describe('kinds of sale', () => {
  const guaranteed = {
    by: 'guaranteed' as const,
    expectedReturnRate: '0.333',
    reviewWeeks: 10,
    resaleableShare: '0.45',
  };

  test('guaranteed: at the review what stands on the shelf comes back, the rest is accepted', () => {
    const pass = agreed(planWith({ sale: guaranteed, listings: slow, attritionYearlyRate: '0.6' }));
    expect(pass.units[0]?.returned[14]).toBeGreaterThan(0);
    expect(pass.units[0]?.gone[14]).toBeGreaterThan(0);
  });

  test('guaranteed: returns lower what broker and licensor are owed', () => {
    const allowances: Account['allowances'] = [
      { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: false },
      { kind: 'royalty', id: 'royalty', amountPerUnit: '0.07', rate: '0.011', onFreeGoods: false },
    ];
    const pass = agreed(planWith({ sale: guaranteed, listings: slow, allowances }));
    expect(pass.units[0]?.returned[14]).toBeGreaterThan(0);
  });

  test('guaranteed: the last door closes before the review', () => {
    const pass = agreed(planWith({ sale: guaranteed, listings: slow, cutWeek: 9, closedStock: 'ours' }));
    expect(pass.units[0]?.returned[9]).toBeGreaterThan(0);
    expect(pass.units[0]?.returned[14]).toBe(0);
  });

  test('guaranteed, with free fill billed back and reorders beside the fill', () => {
    const listings = [aListing({ unitsPerStoreWeek: '9', freeCasesPerDoor: 1 })];
    const waves = [aWave({ doors: 23, doorsPerWeek: 6 })];
    const sale = { ...guaranteed, reviewWeeks: 5 };
    agreed(planWith({ sale, listings, waves, freeFill: { settled: 'billedBack', lagWeeks: 3 } }));
    const pass = agreed(planWith({ sale, listings, waves }));
    expect(totalFrom(pass.accounts[0]?.invoiced)).toBeGreaterThan(0);
  });

  test('scan: invoiced at the till, shrink is ours', () => {
    const pass = agreed(planWith({ sale: { by: 'scan', shrinkRate: '0.047' } }));
    expect(pass.accounts[0]?.invoiced[3]).toBe(0);
    expect(pass.accounts[0]?.invoiced[4]).toBe(60 * 260);
    expect(totalFrom(pass.units[0]?.gone)).toBeGreaterThan(20);
  });

  test('scan, with returns, bill-backs and doors that close', () => {
    const allowances: Account['allowances'] = [
      {
        kind: 'expectedReturns',
        id: 'returns',
        rate: '0.11',
        resaleableShare: '0.4',
        freightBackPerUnit: '0.15',
        lagWeeks: 2,
      },
      { kind: 'billBack', id: 'bill', amountPerUnit: '0.21', fromWeek: 6, weeks: 9, lagWeeks: 3 },
    ];
    const sale = { by: 'scan' as const, shrinkRate: '0.02' };
    const pass = agreed(planWith({ sale, allowances, attritionYearlyRate: '0.5', listings: slow }));
    expect(totalFrom(pass.units[0]?.returned)).toBeGreaterThan(0);
  });
});

describe('allowances', () => {
  test('ordinary returns: lagged, resaleable in part, off several cohorts', () => {
    const allowances: Account['allowances'] = [
      { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: true },
      {
        kind: 'expectedReturns',
        id: 'returns',
        rate: '0.087',
        resaleableShare: '0.37',
        freightBackPerUnit: '0.1234',
        lagWeeks: 3,
      },
    ];
    const pass = agreed(planWith({ allowances, waves: [aWave({ doors: 31, doorsPerWeek: 5 })] }));
    expect(totalFrom(pass.units[0]?.returned)).toBeGreaterThan(totalFrom(pass.units[0]?.gone));
    expect(totalFrom(pass.flows.returnsFreight)).toBeLessThan(0);
  });

  test('percent deductions are documents of their own', () => {
    const allowances: Account['allowances'] = [
      { kind: 'spoils', id: 'spoils', rate: '0.0213' },
      { kind: 'coop', id: 'coop', rate: '0.033' },
      { kind: 'dataFee', id: 'data', rate: '0.007' },
      { kind: 'chargebacks', id: 'charge', rate: '0.0111' },
    ];
    const listings = [aListing({ list: { by: 'price', amount: '2.6173' } })];
    const pass = agreed(planWith({ allowances, listings }));
    expect(pass.flows.remittances[8]).toBe(31408 - 669 - 1036 - 220 - 349); // of 314.08
  });

  test('off-invoice, freight allowance, freight out by the case, picking; and pick-up', () => {
    const carried: Account['allowances'] = [
      { kind: 'offInvoice', id: 'off', rate: '0.05', on: 'list', passedOn: false },
      { kind: 'freightAllowance', id: 'dock', amountPerUnit: '0.04', pickUp: false },
      { kind: 'freightOut', id: 'freight', amount: '1.9', per: 'case' },
      { kind: 'pickAndPack', id: 'pick', amount: '0.06', per: 'unit' },
    ];
    expect(agreed(planWith({ allowances: carried })).flows.freightOut[3]).toBe(-1900); // 120 at 0.1583
    const fetched = carried.map((each) =>
      each.kind === 'freightAllowance' ? { ...each, pickUp: true } : each,
    );
    expect(totalFrom(agreed(planWith({ allowances: fetched })).flows.freightOut)).toBe(0);
  });

  test.each(['free', 'billedBack'] as const)('free fill, %s, behind a distributor', (settled) => {
    const allowances: Account['allowances'] = [
      { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: true },
      { kind: 'royalty', id: 'royalty', amountPerUnit: '0.031', rate: '0.02', onFreeGoods: true },
      { kind: 'billBack', id: 'bill', amountPerUnit: '0.21', fromWeek: 2, weeks: 9, lagWeeks: 3 },
      { kind: 'freightOut', id: 'freight', amount: '0.1', per: 'unit' },
    ];
    const hands = [aHand({ id: 'distributor', rule: { by: 'margin', rate: '0.22' } }), aHand()];
    const listings = [aListing({ backStockUnits: 7, freeCasesPerDoor: 1 })];
    const account = { hands, listings, allowances, freeFill: { settled, lagWeeks: 4 } };
    const pass = agreed(planWith(account));
    expect(pass.accounts[0]?.invoiced[3]).toBe((settled === 'free' ? 120 : 240) * 260);
    expect(pass.flows.freightOut[3]).toBe(-2400);
  });

  test('scan-back and bill-back allowances run in their weeks and are claimed later', () => {
    const allowances: Account['allowances'] = [
      { kind: 'scanBack', id: 'scan', amountPerUnit: '0.4031', fromWeek: 10, weeks: 4, lagWeeks: 6 },
      { kind: 'billBack', id: 'bill', amountPerUnit: '0.2', fromWeek: 3, weeks: 1, lagWeeks: 0 },
    ];
    const pass = agreed(planWith({ allowances }));
    expect(pass.profit.tradeMoney[3]).toBe(-2400);
  });

  test('broker by the month, royalty by the quarter', () => {
    const allowances: Account['allowances'] = [
      { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: false },
      { kind: 'royalty', id: 'royalty', amountPerUnit: '0.05', rate: '0', onFreeGoods: false },
    ];
    // From Monday 2 March 2026: week 3 is 23 March; week 5, 6 April, is the first that starts in April.
    const pass = agreed(planWith({ allowances }));
    expect(pass.flows.broker.findIndex((flow) => flow < 0)).toBe(5);
    // The quarter ends on 31 March, 30 days on is 30 April, in the week of 27 April, week 8.
    expect(pass.flows.royalty[8]).toBe(-600);
  });

  test('credits beyond the sales of a month are carried, not paid out to us', () => {
    const allowances: Account['allowances'] = [
      { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: false },
      { kind: 'royalty', id: 'royalty', amountPerUnit: '0.05', rate: '0.03', onFreeGoods: false },
    ];
    const pass = agreed(planWith({ allowances, listings: slow, cutWeek: 18, closedStock: 'credited' }));
    expect(Math.max(...pass.flows.broker)).toBeLessThanOrEqual(0);
    expect(Math.max(...pass.flows.royalty)).toBeLessThanOrEqual(0);
  });
});

describe('payment', () => {
  test('an early discount taken on part of each invoice', () => {
    const earlyDiscount = { rate: '0.02', days: 10, takenShare: '0.433' };
    const allowances: Account['allowances'] = [{ kind: 'spoils', id: 'spoils', rate: '0.031' }];
    const pass = agreed(planWith({ terms: terms({ earlyDiscount, latenessDays: 12 }), allowances }));
    // Of 312.00: 135.10 in week 3 + 2 less 2.70 and 4.19; the rest in week 3 + 6 less 5.48.
    expect(pass.flows.remittances[5]).toBe(13510 - 270 - 419);
    expect(pass.flows.remittances[9]).toBeGreaterThan(0);
  });

  test('paid at once, late, and with bad debt', () => {
    expect(agreed(planWith({ terms: terms({ paymentDays: 0 }) })).flows.remittances[3]).toBe(31_200);
    const pass = agreed(planWith({ terms: terms({ latenessDays: 20, badDebtRate: '0.0137' }) }));
    expect(pass.flows.remittances[11]).toBe(31_200 - 427);
  });

  test('bad debt and deductions that together pass the invoice leave nothing, never less', () => {
    const allowances: Account['allowances'] = [{ kind: 'spoils', id: 'spoils', rate: '0.6' }];
    const pass = agreed(planWith({ terms: terms({ badDebtRate: '0.55' }), allowances }));
    expect(totalFrom(pass.accounts[0]?.invoiced)).toBeGreaterThan(0);
    expect(totalFrom(pass.flows.remittances)).toBe(0);
  });
});
