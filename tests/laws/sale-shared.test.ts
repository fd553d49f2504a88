/**
 * A sale shared among random claims, against a second way to reach it: of all ways in which holders of a preference may take
 * their money or their part, the one in which nobody would have chosen otherwise. All of the sale goes out, and not a cent more. Worked figure: 1,000 put in for 20 %, sold at 3,000: it takes its money, since 20 % were 600.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Claim, sharedOut } from '../../src/domain/offers/waterfall.ts';
import { PLAN_SEED } from '../support/arbitrary-plan.ts';

const claim = fc.record({
  shares: fc.double({ min: 0.01, max: 1, noNaN: true }),
  preference: fc.integer({ min: 0, max: 10_000_000 }),
  participates: fc.boolean(),
});
const claims = fc
  .array(claim, { minLength: 1, maxLength: 4 })
  .map((others): Claim[] => [{ shares: 0.8, preference: 0, participates: false }, ...others]);

/** What each gets when those named turn their preference into plain shares. */
function given(all: readonly Claim[], plain: ReadonlySet<number>, amount: number): number[] {
  const first = all.map(({ preference }, at) => (plain.has(at) ? 0 : preference));
  const sum = first.reduce((total, each) => total + each, 0);
  if (amount < sum) return first.map((each) => (each * amount) / sum);
  const sharing = all.map(({ shares, participates }, at) => (plain.has(at) || participates ? shares : 0));
  const shares = sharing.reduce((total, each) => total + each, 0);
  return all.map((_, at) => (first[at] ?? 0) + ((amount - sum) * (sharing[at] ?? 0)) / shares);
}

/** Of all ways to choose, the one in which nobody gains by choosing otherwise alone. */
function settledAmong(all: readonly Claim[], amount: number): number[] {
  const choosers = all.flatMap(({ participates, preference }, at) =>
    participates || preference === 0 ? [] : [at],
  );
  const never = all.flatMap(({ preference }, at) => (preference === 0 ? [at] : []));
  for (let way = 0; way < 2 ** choosers.length; way++) {
    const plain = new Set([...never, ...choosers.filter((_, bit) => way & (2 ** bit))]);
    const got = given(all, plain, amount);
    const regrets = choosers.some((at) => {
      const otherwise = new Set(plain);
      if (!otherwise.delete(at)) otherwise.add(at);
      return (given(all, otherwise, amount)[at] ?? 0) > (got[at] ?? 0) + 1e-6;
    });
    if (!regrets) return got;
  }
  throw new Error('somebody regrets every way');
}

test('random claims: the whole sale, and what nobody could better by choosing otherwise', () => {
  fc.assert(
    fc.property(claims, fc.integer({ min: 0, max: 60_000_000 }), (all, amount) => {
      const got = sharedOut(all, amount);
      expect(Math.abs(got.reduce((sum, each) => sum + each, 0) - amount)).toBeLessThan(0.01);
      settledAmong(all, amount).forEach((each, at) => {
        expect(Math.abs((got[at] ?? 0) - each)).toBeLessThan(0.01);
      });
    }),
    { seed: PLAN_SEED, numRuns: 5000 },
  );
});

test('a preference over its shares that times the shares misses it by a bit is still paid once', () => {
  const all = [
    { shares: 0.5789936542510986, preference: 0, participates: false },
    { shares: 0.5242979526519775, preference: 6_737_511, participates: false },
  ];
  const [founder = 0, investor = 0] = sharedOut(all, 36_217_606);
  expect(founder + investor).toBeCloseTo(36_217_606, 4);
  expect(investor / founder).toBeCloseTo(0.5242979526519775 / 0.5789936542510986, 12);
});
