/**
 * Laws of a deal, on random accounts (fast-check prints the seed of a failure). The curve is recomputed here door by
 * door, week by week, from the definitions, sharing no code with the room that made it.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DealResult } from '../../src/domain/deals/types.ts';
import type { Account } from '../../src/domain/plan/index.ts';
import { aListing, anAccount, anItem, aPromotion } from '../support/builders.ts';
import { dealOf, firstItem, oddNumbers } from '../support/deals.ts';

const hundredths = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 100), max: Math.round(most * 100) }).map((n) => (n / 100).toFixed(2));

const promotion = fc.record({
  fromWeek: fc.integer({ min: 0, max: 51 }),
  weeks: fc.integer({ min: 1, max: 6 }),
  depthRate: hundredths(0, 0.5),
  fundedShare: hundredths(0, 1),
  fundedBy: fc.constantFrom('scanBack' as const, 'offInvoice' as const),
  liftRate: hundredths(0, 3),
  dipShare: hundredths(0, 1),
  dipWeeks: fc.integer({ min: 0, max: 4 }),
});

const anyAccount: fc.Arbitrary<Account> = fc
  .record({
    rate: hundredths(0.1, 40),
    price: hundredths(1.05, 9),
    doors: fc.integer({ min: 1, max: 400 }),
    doorsPerWeek: fc.integer({ min: 1, max: 50 }),
    openWeek: fc.integer({ min: 1, max: 40 }),
    attritionYearlyRate: hundredths(0, 0.6),
    startRate: hundredths(0, 1),
    rampWeeks: fc.integer({ min: 0, max: 30 }),
    termWeeks: fc.integer({ min: 1, max: 130 }),
    hurdleAmount: hundredths(0, 500),
    slotting: hundredths(0, 300),
    per: fc.constantFrom('item' as const, 'door' as const, 'chain' as const, 'itemDoor' as const),
    freeCasesPerDoor: fc.integer({ min: 0, max: 3 }),
    displayWeeks: fc.integer({ min: 1, max: 10 }),
    displayFee: hundredths(0, 5),
    displayLift: hundredths(0, 2),
    cutAfter: fc.option(fc.integer({ min: 1, max: 60 }), { nil: null }),
    promotions: fc.array(promotion, { maxLength: 2 }),
  })
  .map((drawn) =>
    anAccount({
      listings: [
        aListing({
          list: { by: 'price', amount: drawn.price },
          unitsPerStoreWeek: drawn.rate,
          freeCasesPerDoor: drawn.freeCasesPerDoor,
        }),
      ],
      waves: [
        { id: 'first', openWeek: drawn.openWeek, doors: drawn.doors, doorsPerWeek: drawn.doorsPerWeek },
      ],
      attritionYearlyRate: drawn.attritionYearlyRate,
      cutWeek: drawn.cutAfter === null ? null : drawn.openWeek + drawn.cutAfter,
      ramp: { startRate: drawn.startRate, weeks: drawn.rampWeeks },
      slotting: { amount: drawn.slotting, per: drawn.per, settled: 'atOpening' },
      display: {
        buildAmountPerDoor: '3',
        freightAmountPerDoor: '1',
        buildWeeks: 2,
        feeAmountPerStoreWeek: drawn.displayFee,
        weeks: drawn.displayWeeks,
        liftRate: drawn.displayLift,
        liftEndRate: null,
      },
      promotions: drawn.promotions.map((each, index) => aPromotion({ ...each, id: `promotion-${index}` })),
      deal: { termWeeks: drawn.termWeeks, hurdleAmount: drawn.hurdleAmount },
    }),
  );

const seasonFactors = Array.from({ length: 52 }, (_, index) => (index % 7 === 0 ? '1.3' : '0.9'));
const plan = { items: [anItem({ seasonFactors })], startDate: '2026-03-02' };

/** The term's cumulated curve, by definition, in the plan's currency. */
function curve(account: Account, unitPrice: number, shelf: number): number[] {
  const [listing] = account.listings;
  const [wave] = account.waves;
  const { display } = account;
  if (!listing || !wave || !display) throw new Error('the generator makes one of each');
  const levels: number[] = [];
  let level = 0;
  for (let t = 0; t < account.deal.termWeeks; t++) {
    const week = wave.openWeek + t;
    if (t === 0 && account.slotting?.per !== 'door' && account.slotting?.per !== 'itemDoor') {
      level -= Number(account.slotting?.amount);
    }
    const date = new Date(Date.UTC(2026, 2, 2 + 7 * week));
    for (let door = 0; door < wave.doors; door++) {
      const opens = wave.openWeek + Math.floor(door / wave.doorsPerWeek);
      if (opens > week || opens >= (account.cutWeek ?? Infinity)) continue;
      const age = week - opens;
      if (age === 0) {
        const free = Math.min(listing.freeCasesPerDoor, 1) * 12;
        level -= Number(display.buildAmountPerDoor) + Number(display.freightAmountPerDoor) + free * 1;
        if (account.slotting?.per === 'door' || account.slotting?.per === 'itemDoor')
          level -= Number(account.slotting.amount);
      }
      if (week >= (account.cutWeek ?? Infinity)) continue;
      const left = (1 - Number(account.attritionYearlyRate)) ** (age / 52);
      const { startRate, weeks } = account.ramp;
      const ramp = weeks === 0 ? 1 : Number(startRate) + (1 - Number(startRate)) * Math.min(1, age / weeks);
      let units =
        Number(listing.unitsPerStoreWeek) *
        left *
        ramp *
        Number(seasonFactors[Math.min(52, isoWeek(date)) - 1]);
      let earns = unitPrice - 1;
      if (age < display.weeks) {
        units *= 1 + Number(display.liftRate);
        level -= left * Number(display.feeAmountPerStoreWeek);
      }
      for (const each of account.promotions) {
        const end = each.fromWeek + each.weeks;
        if (week >= each.fromWeek && week < end) {
          units *= 1 + Number(each.liftRate);
          earns -= Math.round(shelf * Number(each.depthRate) * Number(each.fundedShare) * 1e4 + 1e-7) / 1e4;
        } else if (week >= end && week < end + each.dipWeeks) {
          const extra = Number(each.liftRate) * each.weeks;
          units *= Math.max(0, 1 - (Number(each.dipShare) * extra) / each.dipWeeks);
        }
      }
      level += units * earns;
    }
    levels.push(level);
  }
  return levels;
}

/** ISO 8601 week by the textbook way: the week of the nearest Thursday. */
function isoWeek(date: Date): number {
  const thursday = new Date(date);
  thursday.setUTCDate(date.getUTCDate() + 4 - (date.getUTCDay() || 7));
  return Math.ceil(((thursday.getTime() - Date.UTC(thursday.getUTCFullYear(), 0, 1)) / 86_400_000 + 1) / 7);
}

const price = (account: Account) => {
  const rule = account.listings[0]?.list;
  return rule?.by === 'price' ? Number(rule.amount) : Number.NaN;
};
/** A 40 % margin on a price of whole cents, rounded up to 4 decimals where it doesn't come out. */
const shelfOf = (account: Account) => Math.ceil((price(account) / 0.6) * 1e4 - 1e-7) / 1e4;
const sold = (account: Account, rate: string): DealResult =>
  dealOf({
    account: { ...account, listings: account.listings.map((each) => ({ ...each, unitsPerStoreWeek: rate })) },
    plan,
  });

test('the curve is the sum of its doors and weeks, to the cent', () => {
  fc.assert(
    fc.property(anyAccount, (account) => {
      const deal = dealOf({ account, plan });
      const due = curve(account, price(account), shelfOf(account));
      expect(deal.cumulated.length).toBe(account.deal.termWeeks);
      deal.cumulated.forEach((level, week) => {
        expect(Math.abs(level - (due[week] ?? Number.NaN) * 100)).toBeLessThanOrEqual(
          0.5 + 1e-6 * Math.abs(level),
        );
      });
    }),
    { numRuns: 60 },
  );
});

test('at its break-even rate a deal just earns what was put down and the hurdle; one step less and it does not', () => {
  fc.assert(
    fc.property(anyAccount, (account) => {
      const rate = firstItem(dealOf({ account, plan })).breakEvenUnitsPerStoreWeek;
      if (!rate || rate.lte('0.000002') || rate.gte(1000)) return fc.pre(false);
      const at = sold(account, rate.toFixed(6));
      const hurdle = Number(account.deal.hurdleAmount) * 100;
      expect(at.breakEvenRatio?.gte(1)).toBe(true);
      expect(at.cumulated.at(-1)).toBeGreaterThanOrEqual(Math.round(hurdle));
      const less = sold(account, rate.minus('0.000001').toFixed(6));
      expect(less.breakEvenRatio?.lt(1)).toBe(true);
      expect(firstItem(at).breakEvenUnitsPerStoreWeek?.minus(rate).abs().lte('0.000001')).toBe(true);
    }),
  );
});

test('payback: at it the curve crosses zero, and from it on to the end of the term it is never below', () => {
  fc.assert(
    fc.property(anyAccount, (account) => {
      const { cumulated, paybackWeeks } = dealOf({ account, plan });
      if (paybackWeeks === null) {
        expect(cumulated.at(-1)).toBeLessThanOrEqual(0);
        return;
      }
      const after = Math.ceil(paybackWeeks.toNumber());
      expect(cumulated.slice(Math.max(0, after - 1)).every((level) => level >= 0)).toBe(true);
      if (after >= 2) expect(cumulated[after - 2]).toBeLessThanOrEqual(0);
    }),
  );
});

test('nothing of a deal is NaN or infinite, whatever the account', () => {
  fc.assert(
    fc.property(anyAccount, hundredths(0.01, 1), (account, low) => {
      const listings = account.listings.map((each) => ({
        ...each,
        list: { by: 'price' as const, amount: low },
      }));
      const deal = dealOf({ account: { ...account, listings }, plan, stock: [3] });
      expect(oddNumbers(deal)).toEqual([]);
    }),
  );
});
