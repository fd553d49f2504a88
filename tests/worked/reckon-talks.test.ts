/**
 * Talks on the command line, run as a process: --deal, --ask and --target add the deal before and after, counter-offers and
 * worth to what is printed anyway; a counter-offer asked for in turn comes out at what it said; what the plan can't take is
 * a sentence and code 1.
 */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../support/source-files.ts';
import { linesOf, RECKON_TIMEOUT, ran } from '../support/spawned-reckon.ts';

const demo = join(root, 'demo-catalog/pays-but-runs-dry.json');
const timed = { timeout: RECKON_TIMEOUT };

interface Offer {
  kind: string;
  terms: Record<string, string>;
  target: string;
  reached: string;
  miss: string;
  holds: boolean;
}

interface Side {
  terms: Record<string, string>;
  figures: { firstYear: string; paybackWeeks: string };
  standing: { state: string; value: string; gap: string };
}

interface Answer {
  plan: unknown;
  deals: { firstYearAfterFixed: string }[];
  deal: { target: string; before: Side; asked: Side };
  counters: Offer[];
  closest: Offer | null;
  withoutEffect: string[];
  worth: {
    terms: string[];
    steps: Record<string, string>;
    effects: Record<string, string>;
    cells: unknown[];
  };
}

async function answerTo(...asks: string[]): Promise<Answer> {
  const words = asks.flatMap((ask) => ['--ask', ask]);
  const { code, out } = await ran([demo, '--deal', 'tarrowby', ...words]);
  expect(code).toBe(0);
  return JSON.parse(out) as Answer;
}

describe('a demo plan asked for a margin of 42 %', () => {
  test(
    'prints the deal, counters and worth; each counter asked in turn reaches what it said',
    timed,
    async () => {
      const [answer, same] = await Promise.all([answerTo('margin=42%'), answerTo('margin=0.42')]);
      expect(answer).toEqual(same);
      expect(answer.plan).toBeDefined();
      const { deal, counters, closest, withoutEffect, worth } = answer;
      expect(deal.target).toBe(answer.deals[0]?.firstYearAfterFixed);
      expect(deal.before.standing).toMatchObject({ state: 'holds', gap: '0' });
      expect(deal.before.terms['margin']).toBe('0.38');
      expect(deal.asked.terms).toEqual({ margin: '0.42' });
      expect(Number(deal.asked.standing.gap)).toBeLessThan(0);
      expect(counters.length).toBeGreaterThanOrEqual(3);
      expect(counters.at(-1)?.kind).toBe('mix');
      expect(closest).toBeNull();
      expect(withoutEffect).toContain('paymentDays');
      expect(worth.terms).not.toContain('paymentDays');
      expect(worth.cells).toHaveLength(worth.terms.length * (worth.terms.length - 1));
      for (const { terms, target, reached, miss, holds } of counters) {
        const asked = Object.entries(terms).map(([term, value]) => `${term}=${value}`);
        const put = await answerTo('margin=0.42', ...asked);
        expect(put.deal.asked.figures.firstYear).toBe(reached);
        expect(Number(put.deal.asked.standing.gap)).toBeCloseTo(Number(miss), 4);
        expect(Number(reached) - Number(target)).toBeCloseTo(Number(miss), 4);
        expect(holds && Number(miss) >= 0).toBe(true);
      }
    },
  );

  test('by another target the deal is measured in its unit', timed, async () => {
    const { code, out } = await ran([
      demo,
      '--deal',
      'tarrowby',
      '--ask',
      'margin=0.42',
      '--target',
      'payback',
    ]);
    expect(code).toBe(0);
    const { deal, counters } = JSON.parse(out) as Answer;
    expect(deal.target).toBe(deal.before.figures.paybackWeeks);
    expect(deal.asked.standing.value).toBe(deal.asked.figures.paybackWeeks);
    for (const { reached, target } of counters) expect(Number(reached)).toBeLessThanOrEqual(Number(target));
  });
});

describe('what the plan can’t take: code 1, nothing on standard output', () => {
  test.each([
    [
      'an unknown account',
      ['--deal', 'nobody'],
      /^reckon: "nobody" is no account of the plan; there are tarrowby\.$/,
    ],
    [
      'a margin of 120 %',
      ['--deal', 'tarrowby', '--ask', 'margin=1.2'],
      /^accounts\/tarrowby\/table\/draft\/margin: got 1\.2; expected a share from 0 to 0\.99; 42 % is 0\.42\.$/,
    ],
    [
      'a tag of an item it does not list',
      ['--deal', 'tarrowby', '--ask', 'shelf:tea=4'],
      /got "shelf:tea"; expected one of/,
    ],
    [
      'spoils of all of it',
      ['--deal', 'tarrowby', '--ask', 'spoils=0.9', '--ask', 'earlyDiscount=50%'],
      /allowances that leave something of the price/,
    ],
  ] as const)('%s', timed, async (_, words, says) => {
    const { code, out, err } = await ran([demo, ...words]);
    expect([code, out]).toEqual([1, '']);
    expect(linesOf(err)).toHaveLength(1);
    expect(err.trimEnd()).toMatch(says);
  });
});
