/**
 * `reckon FILE` on the demo with three rival offers: who wins how often is made of the draws it names, sums up, and is what the
 * app shows, since both run the same draws; without offers nothing is drawn.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { drawOffers, futuresOf } from '../../src/domain/offers/index.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { moneyTextOf } from '../../src/reckon/money.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { root } from '../support/source-files.ts';
import { RECKON_TIMEOUT, ran } from '../support/spawned-reckon.ts';

const file = 'demo-catalog/pays-but-runs-dry.json';

// biome-ignore lint/suspicious/noExplicitAny: what is printed is read by name
type Loose = any;

function computed(changes: Partial<Plan> = {}) {
  const parsed = parsePlanText(readFileSync(join(root, file), 'utf8'));
  if (!parsed.ok) throw new Error('no plan');
  const plan = { ...parsed.value, ...changes };
  const results = evaluate(plan, sayFor);
  if (!results.ok) throw new Error('not computed');
  return { plan, results: results.value };
}

test('money.wins, money.futures and money.draws are the app’s', { timeout: RECKON_TIMEOUT }, async () => {
  const { code, out } = await ran([file]);
  expect(code).toBe(0);
  const { money }: Loose = JSON.parse(out);
  const args = computed();
  const futures = futuresOf(drawOffers(args));
  expect(money.draws).toEqual({ run: 200, tooLarge: 0, noneLasts: futures.noneLasts, ties: futures.ties });
  expect(money.wins.map(({ id, wins, lasts }: Loose) => [id, wins, lasts])).toEqual(
    futures.offers.map(({ offerId, wins, lasts }) => [offerId, wins, lasts]),
  );
  const won = money.wins.reduce((sum: number, { wins }: Loose) => sum + wins, 0);
  expect(won + money.draws.noneLasts + money.draws.ties).toBe(200);
  for (const { wins, share, low95, high95 } of money.wins) {
    expect(Number(share)).toBeCloseTo(wins / 200, 4);
    expect(Number(low95)).toBeLessThanOrEqual(Number(share));
    expect(Number(high95)).toBeGreaterThanOrEqual(Number(share));
  }
  expect(money.futures.map(({ name, draw, best }: Loose) => [name, draw, best])).toEqual(
    futures.outcomes.map(({ name, draw, best }) => [name, draw, best]),
  );
  for (const { founderMoney } of money.futures) {
    expect(founderMoney.map(({ id }: Loose) => id)).toEqual(args.plan.offers.map(({ id }) => id));
  }
});

test('covers: the plan by its lowest cash; P50, P80, P95 where cash lasts in 100, 160, 190 of the 200 draws', () => {
  const { plan, results } = computed();
  const money = moneyTextOf(plan, results) as Loose;
  money.offers.forEach(({ covers, lowestCash }: Loose, at: number) => {
    const { lasts } = money.wins[at];
    expect(covers.map(({ name, covers: does }: Loose) => [name, does])).toEqual([
      ['plan', Number(lowestCash.amount) >= 0],
      ['p50', lasts >= 100],
      ['p80', lasts >= 160],
      ['p95', lasts >= 190],
    ]);
    expect(covers.slice(1).every(({ need }: Loose) => Number(need) >= 0)).toBe(true);
  });
});

test('without offers nothing is drawn', () => {
  const { plan, results } = computed({ offers: [] });
  expect(moneyTextOf(plan, results)).toMatchObject({
    offers: [],
    futures: [],
    wins: [],
    draws: { run: 0, tooLarge: 0, noneLasts: 0, ties: 0 },
  });
});
