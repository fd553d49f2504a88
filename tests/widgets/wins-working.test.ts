// @vitest-environment happy-dom
/**
 * Where "who wins how often" comes from: the draws by whose they are come to all of them, Wilson's limits are worked by hand,
 * and what is kept in a draw is a sum of lines that comes to what the table shows. Wilson's score interval: E. B. Wilson,
 * "Probable inference, the law of succession, and statistical inference", JASA 22 (1927), z = 1.959964, from memory.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import type { FoundFutures } from '../../src/app/offer-draws.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { basesOfDraws, drawOffers, futuresOf } from '../../src/domain/offers/index.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { keptWorked, winsWorked } from '../../src/screens/money/wins-sheet.tsx';
import { sayFor, sayOf } from '../../src/screens/shared/use-say.ts';
import { aPlan } from '../support/builders.ts';
import { anOffer, equityPart, loanPart, royaltyPart } from '../support/offers.ts';

const plan: Plan = aPlan({
  offers: [
    anOffer([equityPart({ amount: '40000' })], { id: 'alder', name: 'Alder' }),
    anOffer([royaltyPart({ amount: '40000', amountPerUnit: '2.4' })], { id: 'birch', name: 'Birch' }),
    anOffer([loanPart({ amount: '40000' })], { id: 'cedar', name: 'Cedar' }),
  ],
});
const say = sayOf(plan);
let model: { plan: Plan; results: Results };
let found: FoundFutures;

beforeAll(() => {
  const results = evaluate(plan, sayFor);
  if (!results.ok) throw new Error(JSON.stringify(results.problems));
  model = { plan, results: results.value };
  const futures = futuresOf(drawOffers(model));
  const bases = basesOfDraws(
    model,
    futures.outcomes.map(({ draw }) => draw),
  );
  found = {
    futures,
    bases: futures.outcomes.flatMap(({ name }, at) => {
      const basis = bases[at] ?? null;
      return basis === null ? [] : [{ name, basis }];
    }),
  };
});

const added = (lines: readonly { adds: string | null }[]): number =>
  lines.reduce((sum, { adds }) => sum + Number(adds), 0);

describe('how often an offer wins', () => {
  test('all draws, by whose they are', () => {
    for (const { offerId, wins } of found.futures.offers) {
      const sheet = winsWorked(model, found.futures, offerId, say);
      expect(added(sheet?.lines ?? [])).toBe(200);
      expect(sheet?.formula).toContain(`${wins} ÷ 200 = `);
    }
  });

  test('what is nobody’s has its lines, and what can’t be computed is said', () => {
    const [first, ...others] = found.futures.offers;
    if (first === undefined) throw new Error('no offer');
    const futures = {
      ...found.futures,
      offers: [
        { ...first, wins: 150, share: 0.75 },
        ...others.map((each) => ({ ...each, wins: 0, share: 0 })),
      ],
      noneLasts: 38,
      ties: 12,
      uncomputed: 3,
    };
    const sheet = winsWorked(model, futures, first.offerId, say);
    expect(sheet?.lines.map(({ value }) => value)).toEqual(['150', '0', '0', '38', '12']);
    expect(sheet?.caution).toContain('3 more draws');
  });

  test('limits by Wilson, in closed form', () => {
    const z = 1.959964;
    for (const odds of found.futures.offers) {
      const p = odds.wins / 200;
      const middle = (p + z ** 2 / 400) / (1 + z ** 2 / 200);
      const reach = (z * Math.sqrt((p * (1 - p)) / 200 + z ** 2 / 160_000)) / (1 + z ** 2 / 200);
      const shown = [middle - reach, middle + reach].map((share) =>
        say.percent(Math.round(Math.min(1, Math.max(0, share)) * 100) / 100),
      );
      expect(winsWorked(model, found.futures, odds.offerId, say)?.formula).toContain(shown.join(' to '));
    }
  });

  test('an id that is no offer’s has none', () => {
    expect(winsWorked(model, found.futures, 'larch', say)).toBeNull();
  });
});

describe('what is kept in a draw', () => {
  test('is the figure of the table, and its lines come to it', () => {
    expect(found.bases).toHaveLength(3);
    const values = new Set<string>();
    for (const { name, founder } of found.futures.outcomes) {
      for (const { offerId, amount } of founder) {
        const sheet = keptWorked(model, found, `${name}:${offerId}`, say);
        expect(sheet?.value, `${name} ${offerId}`).toBe(say.money(amount));
        expect(Math.abs(added(sheet?.lines ?? []) * 100 - amount)).toBeLessThan(1);
        expect(sheet?.lines.every(({ explains }) => explains === null)).toBe(true);
        values.add(sheet?.value ?? '');
      }
    }
    expect(values.size).toBe(9);
  });

  test('is not that of the plan, unless nothing varies', () => {
    const [first] = model.plan.offers;
    const [outcome] = found.futures.outcomes;
    if (first === undefined || outcome === undefined) throw new Error('no offer');
    const sheet = keptWorked(model, found, `p10:${first.id}`, say);
    expect(sheet?.title).toBe('What we keep under Alder, at P10');
    expect(sheet?.meaning).toContain(say.money(outcome.netSales));
    expect(keptWorked(model, found, 'p20:alder', say)).toBeNull();
    expect(keptWorked(model, found, 'p10:larch', say)).toBeNull();
  });
});
