/**
 * Kernel against oracle on plans made for what accounts do beside their terms: credit limits, short deliveries, drops and
 * pallets, deductions that aren't owed, each where it meets something else. What it is about is shown to have happened.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Item, Plan } from '../../src/domain/plan/index.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { agreed, totalFrom } from '../support/oracle/agree.ts';

const stocked: Item['opening'] = { units: 100_000, stockAmount: '100000', onOrder: [] };
const depot: NonNullable<Account['depot']> = {
  keptBy: 'distributor',
  transitWeeks: 1,
  openingWeeks: 0,
  fillWeeks: 2,
  coverWeeks: 1,
  minimumOrderUnits: 0,
  orderIn: 'case',
};

function planWith(account: Partial<Account>, changes: Partial<Plan> = {}): Plan {
  return aPlan({ items: [anItem({ opening: stocked })], accounts: [anAccount(account)], ...changes });
}

const freeCases = { listings: [aListing({ freeCasesPerDoor: 1, facings: 4 })] };

describe('a credit limit', () => {
  test.each(['free', 'billedBack'] as const)(
    'counts tax, and free goods that are settled "%s"',
    (settled) => {
      const taxed = aBusiness({ vat: { salesRate: '0.19', purchasesRate: '0.19' } });
      const account = { creditLimitAmount: '400', freeFill: { settled, lagWeeks: 4 }, ...freeCases };
      const pass = agreed(planWith(account, { business: taxed }));
      expect(totalFrom(pass.accounts[0]?.heldBack)).toBeGreaterThan(0);
    },
  );

  test('holds a depot’s orders back, its free goods aside', () => {
    const waves = [aWave({ openWeek: 5, doorsPerWeek: 4 })];
    const pass = agreed(planWith({ depot, waves, creditLimitAmount: '500', ...freeCases }));
    expect(totalFrom(pass.accounts[0]?.heldBack)).toBeGreaterThan(0);
  });

  test('is used up by items in their order, and cancels where the account cancels', () => {
    const items = [anItem({ opening: stocked }), anItem({ id: 'cocoa', name: 'Cocoa', opening: stocked })];
    const listings = [aListing({ itemId: 'cocoa', list: { by: 'price', amount: '3.1' } }), aListing()];
    const terms = { ...anAccount().terms, shortage: 'cancelled' as const };
    const pass = agreed(planWith({ creditLimitAmount: '500', listings, terms }, { items }));
    // 120 of tea are 312.00; 188.00 are left, five cases of cocoa at 3.10. A fill waits, though orders are cancelled.
    expect(pass.units.map(({ shipped }) => shipped[3])).toEqual([120, 60]);
    expect(pass.units[1]?.backlog[3]).toBe(60);
  });

  test('is none for goods on scan, and none of them falls short for it', () => {
    const service = { leastFillRate: '1', chargeRate: '0.1', lagWeeks: 2 };
    const sale = { by: 'scan' as const, shrinkRate: '0.01' };
    const pass = agreed(planWith({ creditLimitAmount: '0', service, sale }));
    expect(totalFrom(pass.accounts[0]?.heldBack)).toBe(0);
    expect(totalFrom(pass.profit.tradeMoney)).toBe(0);
  });
});

describe('short deliveries', () => {
  const service = { leastFillRate: '0.95', chargeRate: '0.03', lagWeeks: 3 };

  test('are charged by the listing, and again the week after while they wait', () => {
    const items = [anItem(), anItem({ id: 'cocoa', name: 'Cocoa', opening: stocked })];
    const listings = [aListing(), aListing({ itemId: 'cocoa' })];
    // Tea is three weeks in the making for a fill that is due in two.
    const tea = anItem({ supply: { ...anItem().supply, leadWeeks: 3 } });
    const waves = [aWave({ openWeek: 2 })];
    const pass = agreed(planWith({ service, listings, waves }, { items: [tea, ...items.slice(1)] }));
    const charged = Array.from(pass.profit.tradeMoney.slice(1, 4));
    expect(charged.map((amount) => amount < 0)).toEqual([true, true, false]);
  });

  test('hold nothing against us that a limit held back', () => {
    const pass = agreed(planWith({ service, creditLimitAmount: '100' }));
    expect(totalFrom(pass.accounts[0]?.heldBack)).toBeGreaterThan(0);
    expect(totalFrom(pass.profit.tradeMoney)).toBe(0);
  });
});

describe('deliveries', () => {
  const delivery = { amountPerDrop: '12.345', amountPerPallet: '38' };
  const freight = (account: Partial<Account>) =>
    totalFrom(agreed(planWith({ delivery, ...account })).flows.freightOut);

  test('go to doors, or to one depot; by the pallet begun either way', () => {
    const many = freight({ waves: [aWave({ openWeek: 6, doors: 30, doorsPerWeek: 30 })] });
    const one = freight({ depot, waves: [aWave({ openWeek: 6, doors: 30, doorsPerWeek: 30 })] });
    expect(many).toBeLessThan(one);
    expect(one).toBeLessThan(0);
  });

  test('are the buyer’s where the buyer picks up', () => {
    expect(
      freight({
        allowances: [{ kind: 'freightAllowance', id: 'dock', amountPerUnit: '0.04', pickUp: true }],
      }),
    ).toBe(0);
  });

  test('go by the multiple ordered: a layer is one drop', () => {
    const item = anItem({
      opening: stocked,
      palletCases: 20,
      pack: {
        innerUnits: 1,
        caseLengthMm: 400,
        caseWidthMm: 300,
        caseHeightMm: 200,
        caseGrams: 5000,
        layerCases: 10,
        pallet: '1200x1000',
        palletMostHeightMm: 1500,
        palletMostKg: 900,
        stacks: false,
      },
    });
    const ordering: Account['ordering'] = { everyWeeks: 1, firstWeek: 0, daily: false, orderIn: 'layer' };
    const pass = agreed(planWith({ delivery, ordering }, { items: [item] }));
    expect(totalFrom(pass.flows.freightOut)).toBeLessThan(0);
  });
});

describe('deductions that aren’t owed', () => {
  test('go with each part of an invoice, and come back by the part', () => {
    const earlyDiscount = { rate: '0.02', days: 10, takenShare: '0.35' };
    const terms = { ...anAccount().terms, earlyDiscount };
    const disputed = { wrongRate: '0.0335', recoveredShare: '0.6', recoveryWeeks: 3 };
    const pass = agreed(planWith({ terms, disputed }));
    expect(totalFrom(pass.flows.recovered)).toBeGreaterThan(0);
  });

  test('are taken of goods on scan too, and of what a depot orders; recovered in the week itself where that is said', () => {
    const disputed = { wrongRate: '0.05', recoveredShare: '1', recoveryWeeks: 0 };
    const sale = { by: 'scan' as const, shrinkRate: '0' };
    const waves = [aWave({ openWeek: 6 })];
    for (const account of [{ sale }, { depot, waves }, { sale, depot, waves }]) {
      const { flows } = agreed(planWith({ disputed, ...account }));
      expect(totalFrom(flows.recovered)).toBeGreaterThan(0);
    }
  });
});
