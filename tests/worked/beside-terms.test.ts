/**
 * What an account adds to its terms, by hand: deliveries by drop and pallet, charges for short deliveries, a credit limit,
 * deductions that aren't owed. All on one plan: ten doors open in week 4 behind a week of transit, so their fill of 120 units
 * (10 doors of 12) is ordered at the end of week 2 and leaves in week 3. In week 4 they sell 60 and the target is the demand
 * of three weeks, 180: the gap of 120 is (120 − 9 × 11 ÷ 2) ÷ 12 = 5 cases, 60 units, leaving in week 5.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Item, Plan } from '../../src/domain/plan/index.ts';
import { PLAIN_SUPPLY } from '../../src/domain/plan/plainly.ts';
import type { EventName } from '../../src/domain/rollout/events.ts';
import { replay } from '../../src/domain/rollout/index.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan } from '../support/builders.ts';
import { explained, subjectOf } from '../support/explained.ts';

/** Plenty in stock, nothing to be bought in time. */
const supply = { ...anItem().supply, leadWeeks: 40, coverWeeks: 0, ...PLAIN_SUPPLY };
const stocked = (units: number): Item => {
  return anItem({ supply, opening: { units, stockAmount: String(units), onOrder: [] } });
};
const planWith = (account: Partial<Account>, units = 10_000): Plan =>
  aPlan({ accounts: [anAccount(account)], items: [stocked(units)] });

function runOf(plan: Plan) {
  const { results } = subjectOf(plan);
  const posted: Partial<Record<EventName, Record<number, number>>> = {};
  replay(results, ({ event, week, amount }) => {
    const weeks = posted[event] ?? {};
    weeks[week] = (weeks[week] ?? 0) + amount;
    posted[event] = weeks;
  });
  const { pass } = results;
  return { pass, posted, units: pass.units[0] as (typeof pass.units)[number] };
}

describe('deliveries by drop and pallet', () => {
  const delivery = { amountPerDrop: '4.255', amountPerPallet: '30' };

  test('the fill of ten doors is ten drops and a pallet; five cases reach five doors', () => {
    const { pass, posted } = runOf(planWith({ delivery }));
    // 10 x 4.255 = 42.55, and a pallet of 600 units is begun: 30.00.
    expect(posted.dropsPaid?.[3]).toBe(4255);
    expect(posted.palletsPaid?.[3]).toBe(3000);
    expect(pass.flows.freightOut[3]).toBe(-7255);
    expect(pass.profit.sellingCosts[3]).toBe(-7255);
    // 60 units are 5 cases: 5 x 4.255 = 21.275, rounded once to 21.28.
    expect(pass.flows.freightOut[4]).toBe(0);
    expect(pass.flows.freightOut[5]).toBe(-(2128 + 3000));
  });

  test('the documents of the week say how many', () => {
    const subject = subjectOf(planWith({ delivery }));
    const flow = { of: 'flow', run: 'plan', flow: 'freightOut', fromWeek: 3, toWeek: 3 } as const;
    expect(explained(subject, flow).lines.map(({ label, adds, path }) => [label, adds, path])).toEqual([
      ['10 drops at 4.2550, Corner', '-42.55', 'accounts/corner/delivery/amountPerDrop'],
      ['1 pallet at 30.00, Corner', '-30', 'accounts/corner/delivery/amountPerPallet'],
    ]);
  });

  test('pallets are begun by item: 12 cases of one and 11 of another on pallets of 10 are 2 + 2', () => {
    // Fills of 144 and 132 units in one door each of 12 facings and 11, both 12 deep.
    const items = [stocked(1000), { ...stocked(1000), id: 'mint', name: 'Mint' }].map((item) => ({
      ...item,
      palletCases: 10,
    }));
    const listings = [
      aListing({ facings: 12, depthUnits: 12 }),
      aListing({ itemId: 'mint', facings: 11, depthUnits: 12 }),
    ];
    const waves = [{ id: 'first', openWeek: 4, doors: 1, doorsPerWeek: 1 }];
    const { posted } = runOf(aPlan({ items, accounts: [anAccount({ delivery, listings, waves })] }));
    expect(posted.palletsPaid?.[3]).toBe(4 * 3000);
    expect(posted.dropsPaid?.[3]).toBe(426); // one door, 4.255
  });

  test('nothing where the buyer picks up', () => {
    const allowances: Account['allowances'] = [
      { kind: 'freightAllowance', id: 'fetch', amountPerUnit: '0.1', pickUp: true },
    ];
    const { pass } = runOf(planWith({ delivery, allowances }));
    expect(pass.flows.freightOut.every((amount) => amount === 0)).toBe(true);
  });
});

describe('charges for short deliveries', () => {
  const service = { leastFillRate: '0.95', chargeRate: '0.03', lagWeeks: 2 };

  test('60 of 120 leave: 60 x 2.60 x 3 % = 4.68, and again while they are late', () => {
    const { pass, posted } = runOf(planWith({ service }, 60));
    // Week 5: the 60 of the fill and the 60 ordered at the end of week 4 are due, nothing leaves: 120 x 2.60 x 3 % = 9.36.
    expect(posted.shortCharged?.[3]).toBe(468);
    expect(posted.shortCharged?.[4]).toBe(468);
    expect(posted.shortCharged?.[5]).toBe(936);
    // Invoiced in week 3: 156.00, due in week 8 (30 days from its last day), less the charges of weeks 3 to 6.
    expect(pass.flows.remittances[7]).toBe(0);
    expect(pass.profit.tradeMoney[3]).toBe(-468);
    const charged = [3, 4, 5, 6].reduce((sum, week) => sum + (posted.shortCharged?.[week] ?? 0), 0);
    expect(pass.flows.remittances[8]).toBe(15_600 - charged);
  });

  test('a share that is met exactly costs nothing', () => {
    const { posted } = runOf(planWith({ service: { ...service, leastFillRate: '0.5' } }, 60));
    expect(posted.shortCharged?.[3]).toBeUndefined();
    expect(posted.shortCharged?.[4]).toBe(468);
  });

  test('rounded once: 60 units at 0.3333 and 2.5 % are 0.49995, 0.50', () => {
    const listings = [aListing({ list: { by: 'price', amount: '0.3333' } })];
    const { posted } = runOf(planWith({ listings, service: { ...service, chargeRate: '0.025' } }, 60));
    expect(posted.shortCharged?.[3]).toBe(50);
  });
});

describe('a credit limit', () => {
  test('200.00 leaves room for 76 units at 2.60, six cases; the rest waits for the remittance', () => {
    const { pass, units } = runOf(planWith({ creditLimitAmount: '200' }));
    const heldBack = pass.accounts[0]?.heldBack as Float64Array;
    expect(units.shipped[3]).toBe(72);
    expect(heldBack[3]).toBe(48);
    expect(units.backlog[3]).toBe(48);
    // 187.20 is owed until the remittance of week 8 (step 9): 12.80 is room for no case. In week 9 again six cases.
    expect([4, 5, 6, 7, 8].map((week) => units.shipped[week])).toEqual([0, 0, 0, 0, 0]);
    expect(pass.flows.remittances[8]).toBe(18_720);
    expect(units.shipped[9]).toBe(72);
    expect(Math.max(...pass.balances.receivables)).toBe(18_720);
  });

  test('tax counts towards it: at 25 % a unit is 3.25, five cases', () => {
    const business = aBusiness({ vat: { salesRate: '0.25', purchasesRate: '0' } });
    const { pass, units } = runOf({ ...planWith({ creditLimitAmount: '200' }), business });
    expect(units.shipped[3]).toBe(60);
    expect(pass.balances.receivables[3]).toBe(19_500);
  });

  test('free goods need no room, those billed back do', () => {
    const listings = [aListing({ freeCasesPerDoor: 1 })];
    const free = runOf(planWith({ creditLimitAmount: '0', listings }));
    expect(free.units.shipped[3]).toBe(120);
    expect(free.units.shipped[5]).toBe(0);
    const freeFill = { settled: 'billedBack', lagWeeks: 0 } as const;
    expect(runOf(planWith({ creditLimitAmount: '0', listings, freeFill })).units.shipped[3]).toBe(0);
  });

  test('an order may be cancelled for it, a fill never; what is held back is not a short delivery', () => {
    const terms = { ...anAccount().terms, shortage: 'cancelled' as const };
    const service = { leastFillRate: '1', chargeRate: '0.03', lagWeeks: 0 };
    const { units, posted } = runOf(planWith({ creditLimitAmount: '400', terms, service }));
    // Week 3: 120 units, 312.00. Week 5: 88.00 is room for 33 units, two cases of the five ordered; three are cancelled.
    expect(units.shipped[3]).toBe(120);
    expect(units.shipped[5]).toBe(24);
    expect(units.backlog[5]).toBe(36);
    expect(posted.shortCharged).toBeUndefined();
  });

  test('goods on scan are not invoiced as they leave: no limit holds them', () => {
    const { units } = runOf(planWith({ creditLimitAmount: '0', sale: { by: 'scan', shrinkRate: '0' } }));
    expect(units.shipped[3]).toBe(120);
  });
});

describe('deductions that are not owed', () => {
  const disputed = { wrongRate: '0.03', recoveredShare: '0.6', recoveryWeeks: 10 };

  test('3 % of 312.00 is taken off in week 8; 60 % of it is back in week 18', () => {
    const { pass, posted } = runOf(planWith({ disputed }));
    expect(posted.wrongDeducted?.[3]).toBe(936);
    expect(pass.flows.remittances[8]).toBe(31_200 - 936);
    expect(pass.flows.recovered[17]).toBe(0);
    expect(pass.flows.recovered[18]).toBe(562); // 9.36 x 60 % = 5.616
    expect(pass.profit.tradeMoney[3]).toBe(-936);
    // 60 units of week 18 are invoiced at 156.00: 4.68 taken wrongly, 5.62 won back.
    expect(pass.profit.tradeMoney[18]).toBe(562 - 468);
  });

  test('half of it paid early: half of the deduction goes with that part, and comes back that much sooner', () => {
    const terms = { ...anAccount().terms, earlyDiscount: { rate: '0.02', days: 10, takenShare: '0.5' } };
    const { pass } = runOf(planWith({ disputed, terms }));
    // 156.00 in week 5 (10 days), less 2 % and 4.68; 4.68 x 60 % = 2.808 ten weeks later.
    expect(pass.flows.remittances[5]).toBe(15_600 - 312 - 468);
    expect(pass.flows.recovered[14]).toBe(0);
    expect(pass.flows.recovered[15]).toBe(281);
  });
});
