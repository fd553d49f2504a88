/**
 * Units by a date worked by hand: one chain whose doors are certain, or several, 30 doors from week 4 on that sell 6 a store and
 * week, nothing else unknown than what a test says. Shares of the standard normal distribution are Abramowitz & Stegun's, table
 * 26.1: 0.158655 lie above 1, a tenth below -1.281552.
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Account, Plan, Standing } from '../../src/domain/plan/index.ts';
import { placeClaim } from '../../src/domain/promise/place-claim.ts';
import '../../src/domain/promise/sales-odds.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { anAccount, aPlan, aWave } from '../support/builders.ts';

interface Unknown {
  rate: string;
  shared?: string;
  chains?: number;
  chance?: string;
}

/** A claim of units by the plan's last day, so many times what the plan sells. */
function placedWith({ rate, shared = '0.3', chains = 1, chance = '1' }: Unknown, times = 1) {
  const standing: Standing = { rung: 'signed', chance, slipLikelyWeeks: 0, slipMostWeeks: 0, papers: [] };
  const accounts = Array.from({ length: chains }, (_, at): Account => {
    return anAccount({
      id: `chain-${at}`,
      standing,
      waves: [aWave({ openWeek: 4, doors: 30, doorsPerWeek: 30 })],
    });
  });
  const bare = aPlan({ accounts });
  const results = evaluate(bare, sayFor);
  if (!results.ok) throw new Error(JSON.stringify(results.problems));
  const { pass } = results.value;
  const sold = pass.accounts.reduce((sum, each) => sum + each.sold.reduce((all, units) => all + units, 0), 0);
  const spreads = { ...bare.promise.spreads, rateOfSaleRate: rate, sharedRate: shared };
  const claim = { of: 'units', amount: String(sold * times), byDate: '2027-02-28', who: '' } as const;
  const plan: Plan = { ...bare, promise: { ...bare.promise, spreads, claim } };
  return { ...placeClaim(plan, pass), sold };
}

function placed(unknown: Unknown, times = 1) {
  const { placed: found, sold } = placedWith(unknown, times);
  if (found === null) throw new Error('the claim can be placed');
  return { ...found, sold };
}

describe('certain doors, a rate of sale known to within a factor of e^0.3', () => {
  test.each(['0', '0.3', '0.7', '1'])(
    'whatever all share (%s): e^0.3 times the plan has a chance of 0.1587',
    (shared) => {
      const found = placed({ rate: '0.3', shared }, Math.exp(0.3));
      expect(found.chance).toBeCloseTo(0.158655, 3);
      expect(found.at(0.1) / found.sold).toBeCloseTo(Math.exp(-1.281552 * 0.3), 3);
      expect(found.at(0.9) / found.sold).toBeCloseTo(Math.exp(1.281552 * 0.3), 3);
      // The mean of a lognormal: e^(0.09 / 2) times its middle.
      expect(found.expected / found.sold).toBeCloseTo(Math.exp(0.045), 3);
    },
  );

  test('however wide: half of all futures sell the plan’s, a tenth less than e^(-1.28 x 4) of it', () => {
    const found = placed({ rate: '4' });
    expect(found.at(0.5) / found.sold).toBeCloseTo(1, 5);
    expect(found.at(0.1) / found.sold).toBeCloseTo(Math.exp(-1.281552 * 4), 5);
  });
});

describe('nothing unknown but whether chains come', () => {
  test.each([1, 3, 6, 7, 12])('%i chains that surely come: the plan, and not a unit more', (chains) => {
    const found = placed({ rate: '0', chains });
    expect(found.chance).toBe(1);
    expect(found.expected).toBeCloseTo(found.sold, 6);
    expect([found.at(0.1), found.at(0.9)]).toEqual([found.sold, found.sold]);
    expect(placed({ rate: '0', chains }, 1 + 1e-6).chance).toBe(0);
  });

  test.each([3, 7, 12])(
    '%i chains alike at 0.6 each: 0.6 of the plan on average, all of it with 0.6^n',
    (chains) => {
      const found = placed({ rate: '0', chains, chance: '0.6', shared: '0' });
      // A 256th of the most is as fine as it is told.
      expect(found.expected / found.sold).toBeCloseTo(0.6, 2);
      expect(placed({ rate: '0', chains, chance: '0.6', shared: '0' }, 1 - 1 / 256).chance).toBeCloseTo(
        0.6 ** chains,
        9,
      );
    },
  );
});

test('a rate of sale that may be anything is said to be so', () => {
  expect(placedWith({ rate: '100', chance: '0.6' })).toMatchObject({ placed: null, why: 'tooWide' });
});
