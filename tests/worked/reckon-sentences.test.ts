/**
 * What a person reads: reasons of verdicts and warnings, whole sentences. Names stand where a plan has more than one to
 * choose from, points and rates are to a tenth unless a tenth would hide the difference, and no figure contradicts
 * the word before it. Figures here are the model's own on a demo plan; tests/worked and tests/outside prove them.
 */
import { describe, expect, test } from 'vitest';
import type { VerdictName } from '../../src/domain/results.ts';
import { oneLine } from '../../src/reckon/print.ts';
import { warningsOf } from '../../src/reckon/warnings.ts';
import { answerTo, demoFile } from '../support/attack.ts';

// biome-ignore lint/suspicious/noExplicitAny: plans are changed here by the names of their fields
type Loose = any;

function answered(change: (plan: Loose) => void) {
  const file = demoFile('pays-but-runs-dry.json');
  file.plan.basis = [];
  change(file.plan);
  const answer = answerTo(JSON.stringify(file));
  if ('problems' in answer) throw new Error(JSON.stringify(answer.problems));
  return answer;
}

const said = (name: VerdictName, change: (plan: Loose) => void) =>
  answered(change).results.verdicts[name].reason;
const asIs = () => {};
const second = (plan: Loose) => {
  const [account] = plan.accounts;
  plan.accounts.push({ ...account, id: 'second', name: 'Second Chain', priority: 2 });
};

describe('ladder', () => {
  test('what we keep, of what, and how far from the floor', () => {
    expect(said('ladder', asIs)).toBe(
      'Holds. We keep 1.99 of 8.99: 39.4 % of the net price, 19.4 points above your floor.',
    );
  });

  test('one point, hardly a point, right at the floor', () => {
    const at = (rate: string) =>
      said('ladder', (plan) => {
        plan.thresholds.ladderFloorRate = rate;
      }).replace(/^.*net price, /, '');
    expect(at('0.383783')).toBe('1 point above your floor.');
    expect(at('0.3937')).toBe('less than 0.1 points above your floor.');
    expect(at('0.393783')).toBe('right at your floor.');
    expect(at('0.394')).toBe('less than 0.1 points below your floor.');
  });

  test('a loss is a loss, not a small gain', () => {
    const reason = said('ladder', (plan) => {
      plan.items[0].costLines[0].rule.amount = '6';
    });
    expect(reason).toBe('Fails. We lose 1.77 of 8.99: −35 % of the net price, 55 points below your floor.');
  });

  test('a hand that gets too little, by name; a hair too little is not "36 % and needs 36 %"', () => {
    const short = (required: string) =>
      said('ladder', (plan) => {
        plan.accounts[0].hands[0].requiredMarginRate = required;
      });
    expect(short('0.4')).toBe('Fails. Tarrowby Grocers gets 38 % and needs 40 %.');
    expect(short('0.3802')).toBe('Fails. Tarrowby Grocers gets just under the 38 % it needs.');
  });

  test('with several chains the one is named', () => {
    expect(said('ladder', second)).toMatch(/ at (?:Tarrowby Grocers|Second Chain): /);
  });
});

describe('deal', () => {
  test('when it is back, what it needs, what is planned', () => {
    expect(said('deal', asIs)).toBe(
      'Holds. Pays back in week 28 of 52; needs 2.2 a store a week, you plan 4.5.',
    );
  });

  test('rates that a tenth would make alike are told to a hundredth', () => {
    const reason = said('deal', (plan) => {
      plan.accounts[0].listings[0].unitsPerStoreWeek = '2.2';
    });
    expect(reason).toBe('Tight. Pays back in week 52 of 52; needs 2.18 a store a week, you plan 2.2.');
  });

  test('a rate of nearly nothing is not nothing', () => {
    const reason = said('deal', (plan) => {
      plan.accounts[0].listings[0].unitsPerStoreWeek = '0.000001';
    });
    expect(reason).toBe(
      'Fails. Not paid back within 52 weeks; needs 2.18 a store a week, you plan less than 0.01.',
    );
  });

  test('one week is a week', () => {
    const reason = said('deal', (plan) => {
      plan.accounts[0].deal.termWeeks = 1;
    });
    expect(reason).toMatch(/^Fails\. Not paid back within 1 week; needs /);
  });

  test('paid back and still failing: the hurdle is named', () => {
    const reason = said('deal', (plan) => {
      plan.accounts[0].deal.hurdleAmount = '900000';
    });
    expect(reason).toMatch(
      /^Fails\. Pays back in week 28 of 52, but does not earn the 900,000\.00 asked of it in 52 weeks; needs /,
    );
  });

  test('with several chains the one is named, with several items the rates are compared', () => {
    expect(said('deal', second)).toMatch(
      /^Holds\. (?:Tarrowby Grocers|Second Chain): pays back in week 28 of 52; /,
    );
    const items = (plan: Loose) => {
      plan.items.push({ ...plan.items[0], id: 'other', name: 'Other honey' });
      plan.accounts[0].listings.push({ ...plan.accounts[0].listings[0], itemId: 'other' });
    };
    expect(said('deal', items)).toMatch(/; needs \d\d(?:\.\d)? % of the rates of sale you plan\./);
    const dear = said('deal', (plan) => {
      items(plan);
      plan.accounts[0].slotting.amount = '1800';
    });
    expect(dear).toMatch(
      /^Fails\. Not paid back within 52 weeks; every item would have to sell \d(?:\.\d)? times as fast as you plan\./,
    );
  });

  test('nothing sold, units that cost, deal weeks that cost: each its own words', () => {
    const season = said('deal', (plan) => {
      plan.items[0].seasonFactors = Array.from({ length: 52 }, () => '0');
    });
    expect(season).toBe('Fails. Nothing is sold in the first year, no money put down comes back.');
    const cost = said('deal', (plan) => {
      plan.items[0].costLines[0].rule.amount = '6';
    });
    expect(cost).toBe('Fails. Each unit sold costs more than it brings, no rate of sale pays this back.');
    const weeks = said('deal', (plan) => {
      Object.assign(plan.accounts[0].promotions[0], { fromWeek: 10, weeks: 52, depthRate: '0.5' });
    });
    expect(weeks).toMatch(/^Fails\. Over its weeks, deals included, units cost more than they bring, /);
  });

  test('shelves that run empty: the deal says that it counts them full', () => {
    const reason = said('deal', (plan) => {
      plan.accounts[0].listings[0].unitsPerStoreWeek = '100';
    });
    expect(reason).toMatch(
      / This counts full shelves; the plan has goods for \d+(?:\.\d)? % of what shoppers want\.$/,
    );
  });

  test('no chain, no doors', () => {
    expect(
      said('deal', (plan) => {
        plan.accounts = [];
      }),
    ).toBe('Not known yet. Add a chain to see what its terms cost.');
    expect(
      said('deal', (plan) => {
        plan.accounts[0].waves = [];
      }),
    ).toBe('Not known yet. No doors open in this plan: add an opening to see what they cost.');
  });
});

describe('cash', () => {
  test('how much, when, and what took it', () => {
    expect(said('cash', asIs)).toBe(
      'Fails. Short by 31,416 in week 26 (2026-08-31). Stock took the largest part of what was paid by then.',
    );
  });

  test('when the low comes before the first payment, or in its week', () => {
    const never = said('cash', (plan) => {
      plan.accounts[0].terms.paymentDays = 200;
      plan.accounts[0].promotions = [];
      plan.horizonWeeks = 40;
    });
    expect(never).toMatch(/ by then, and no chain pays before the plan ends\./);
    const before = said('cash', (plan) => {
      Object.assign(plan.accounts[0], { cutWeek: 11, promotions: [] });
      plan.accounts[0].terms.paymentDays = 100;
      Object.assign(plan.business, { overheads: [], openingCashAmount: '10000' });
    });
    expect(before).toMatch(/ by then, and the first payment comes only in week 25 \(2026-08-24\)\.$/);
    const inWeek = said('cash', (plan) => {
      plan.business.vat = { salesRate: '0.9', purchasesRate: '0.9' };
    });
    expect(inWeek).toMatch(/ in week 18 .+ by then, and the first payment comes only after that\./);
  });

  test('shelves that run empty are said so', () => {
    const reason = said('cash', (plan) => {
      plan.accounts[0].listings[0].unitsPerStoreWeek = '100';
    });
    expect(reason).toMatch(/ Shelves run empty: there are goods for \d+(?:\.\d)? % of what shoppers want\.$/);
  });

  test('what is in the bank is not known: what the plan needs, and by when', () => {
    const reason = said('cash', (plan) => {
      plan.business.openingCashAmount = null;
    });
    expect(reason).toBe(
      'Not known yet. It needs 91,416 by week 26 (2026-08-31); say what is in the bank for a verdict.',
    );
  });
});

describe('warnings', () => {
  test('counts are grouped, weeks have their date', () => {
    const { plan, results } = answered((each) => {
      each.accounts[0].listings[0].unitsPerStoreWeek = '1000';
    });
    const warnings = warningsOf(plan, results);
    expect(warnings[0]).toMatch(
      /^\d{1,3}(?:,\d{3})+ units of demand find an empty shelf, the first in week \d+ \(2026-\d\d-\d\d\)\.$/,
    );
    expect(
      warnings.some((each) =>
        each.startsWith('orders for Hot honey, 12 oz found no capacity within reach: '),
      ),
    ).toBe(true);
  });

  test('what a door sells before a reorder is a figure, not a binary fraction', () => {
    const warned = (rate: string, transitWeeks: number) => {
      const { plan, results } = answered((each) => {
        each.accounts[0].terms.transitWeeks = transitWeeks;
        each.accounts[0].listings[0].unitsPerStoreWeek = rate;
      });
      return warningsOf(plan, results).find((each) => each.includes('a door is filled'));
    };
    // 3 x 5.1 is 15.299999999999999 in doubles.
    expect(warned('5.1', 2)).toMatch(
      /^Tarrowby Grocers: a door is filled with 12 of Hot honey, 12 oz and sells 15\.3 before a reorder arrives; /,
    );
    expect(warned('4', 2)).toBeUndefined();
  });

  test('a name with control signs in it stays on its line', () => {
    expect(oneLine('Corner\nShop\u001b[31m\u0085\u2028x')).toBe('Corner Shop [31m  x');
  });
});
