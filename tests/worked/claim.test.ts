/**
 * A claim placed, by hand: chances of doors that come whole, late or not at all, with nothing shared; units at a rate of
 * sale that is not known; the verdict's words at its lines; what would have to be true, each confirmed by a run of the model.
 * Shares of a normal: 0.1587 above one standard deviation (any table of it).
 */
import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { dropsOf } from '../../src/domain/lender/trials.ts';
import type { Account, Plan, Standing } from '../../src/domain/plan/index.ts';
import { NO_EVIDENCE } from '../../src/domain/plan/plainly.ts';
import { atEvidence, withCapacity, withDoors } from '../../src/domain/promise/at-evidence.ts';
import { chanceWords } from '../../src/domain/promise/chance-words.ts';
import { claimWork } from '../../src/domain/promise/claim-work.ts';
import { leaningOn } from '../../src/domain/promise/leaning-on.ts';
import {
  type Claim,
  chanceByAccount,
  type PlacedClaim,
  placeClaim,
} from '../../src/domain/promise/place-claim.ts';
import type { Results } from '../../src/domain/results.ts';
import { leansOn } from '../../src/domain/verdicts/leans-on.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { aBusiness, aHand, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { explained, subjectOf } from '../support/explained.ts';

function resultsOf(plan: Plan): Results {
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function placedOf(plan: Plan): PlacedClaim {
  const { placed } = placeClaim(plan, resultsOf(plan).pass);
  if (placed === null) throw new Error('not placed');
  return placed;
}

function standing(changes: Partial<Standing> = {}): Standing {
  return { rung: 'saidYes', chance: '0.5', slipLikelyWeeks: 0, slipMostWeeks: 0, papers: [], ...changes };
}

/** So many doors, all in week 10. */
function chain(id: string, doors: number, changes: Partial<Account> = {}): Account {
  const waves = [aWave({ openWeek: 10, doors, doorsPerWeek: doors })];
  return anAccount({ id, name: id, waves, standing: standing(), ...changes });
}

interface Said {
  accounts: Account[];
  of?: Claim['of'];
  amount: number;
  week: number;
  spreads?: Partial<Plan['promise']['spreads']>;
  plan?: Partial<Plan>;
}

/** A claim for the last day of a week; nothing shared unless said. */
function claimed({ accounts, of = 'doors', amount, week, spreads = {}, plan = {} }: Said): Plan {
  const base = aPlan({ accounts, ...plan });
  const claim = { of, amount: String(amount), byDate: addDays(base.startDate, 7 * week + 6), who: '' };
  const all = { ...NO_EVIDENCE.spreads, sharedRate: '0', ...spreads };
  return { ...base, promise: { ...NO_EVIDENCE, claim, spreads: all } };
}

const two = [chain('hill', 100), chain('mill', 50)];

describe('doors', () => {
  test.each([
    [0, 1],
    [1, 0.75],
    [50, 0.75],
    [51, 0.5],
    [100, 0.5],
    [101, 0.25],
    [150, 0.25],
    [151, 0],
  ])('100 and 50 at one half each: at least %i has a chance of %d', (amount, chance) => {
    const placed = placedOf(claimed({ accounts: two, amount, week: 20 }));
    expect(placed.chance).toBeCloseTo(chance, 12);
    expect(placed.percentile).toBeCloseTo(1 - chance, 12);
    expect([placed.expected, placed.planned]).toEqual([75, 150]);
  });

  test('before its week nothing is open; a week late with a chance of a third, two thirds are on time', () => {
    const late = { accounts: [chain('hill', 80, { standing: standing({ chance: '1', slipMostWeeks: 1 }) })] };
    const chanceIn = (week: number) => placedOf(claimed({ ...late, amount: 80, week })).chance;
    expect([chanceIn(9), chanceIn(10), chanceIn(11)].map((chance) => chance.toFixed(6))).toEqual([
      '0.000000',
      '0.666667',
      '1.000000',
    ]);
  });

  test('doors that are open count, whatever becomes of the waves', () => {
    const runningDoors = [{ id: 'old', doors: 40, ageWeeks: 30, unitsPerDoor: 12 }];
    const placed = placedOf(
      claimed({ accounts: [chain('hill', 60, { runningDoors })], amount: 41, week: 20 }),
    );
    expect([placed.chance, placed.expected, placed.at(0.1), placed.at(0.9)]).toEqual([0.5, 70, 40, 100]);
  });

  test('what the chance hangs on: without the large chain a claim of 60 is lost, with it sure', () => {
    const plan = claimed({ accounts: two, amount: 60, week: 20 });
    const hangs = chanceByAccount(plan, placedOf(plan)).map(({ without, withIt }) => [without, withIt]);
    expect(hangs).toEqual([
      [0, 1],
      [0.5, 0.5],
    ]);
  });

  test('what accounts share makes all of them likelier, and none too: a third of both at one half, Sheppard', () => {
    const placed = placedOf(
      claimed({ accounts: two, amount: 150, week: 20, spreads: { sharedRate: '0.5' } }),
    );
    expect(placed.chance).toBeCloseTo(1 / 3, 6);
  });
});

describe('units and revenue', () => {
  const sure = [chain('hill', 40, { standing: standing({ chance: '1' }) })];
  const spreads = { rateOfSaleRate: '0.3' };

  test('known to within a factor of e^0.3: what is planned has one half, that factor more 0.1587', () => {
    const said = { accounts: sure, of: 'units' as const, week: 40, spreads };
    const { planned } = placedOf(claimed({ ...said, amount: 1 }));
    const { pass } = resultsOf(claimed({ ...said, amount: 1 }));
    expect(planned).toBe(pass.accounts[0]?.sold.slice(0, 41).reduce((sum, units) => sum + units, 0));
    const chanceOf = (amount: number) => placedOf(claimed({ ...said, amount })).chance;
    expect(chanceOf(planned)).toBeCloseTo(0.5, 2);
    expect(chanceOf(planned * Math.exp(0.3))).toBeCloseTo(0.1587, 2);
    expect(placedOf(claimed({ ...said, amount: 1 })).expected / planned).toBeCloseTo(Math.exp(0.045), 2);
  });

  test('a chain that comes with one half halves every chance', () => {
    const half = [chain('hill', 40)];
    const chanceOf = (accounts: Account[], amount: number) =>
      placedOf(claimed({ accounts, of: 'units', amount, week: 40, spreads })).chance;
    for (const amount of [3000, 6000, 9000])
      expect(chanceOf(half, amount)).toBeCloseTo(chanceOf(sure, amount) / 2, 6);
  });

  test('nothing varies: the plan’s revenue is certain, a twentieth more impossible', () => {
    const said = { accounts: sure, of: 'revenue' as const, week: 40, spreads: { rateOfSaleRate: '0' } };
    const { planned } = placedOf(claimed({ ...said, amount: 1 }));
    const chanceOf = (amount: number) => placedOf(claimed({ ...said, amount })).chance;
    expect([chanceOf(planned * 0.99), chanceOf(planned * 1.05)]).toEqual([1, 0]);
  });
});

describe('the verdict', () => {
  test.each([
    [0.347, '35 %'],
    [0.2, '20 %'],
    [0.1999, 'just under 20 %'],
    [0.499, 'just under 50 %'],
    [0.501, '50 %'],
    [0.01, 'under 5 %'],
    [0, 'under 5 %'],
    [0.999, 'over 95 %'],
    [1, '100 %'],
  ])('a chance of %d reads "%s"', (chance, words) => {
    expect(chanceWords(chance, (share) => `${Math.round(share * 100)} %`, [0.2, 0.5])).toBe(words);
  });

  const stateAt = (chance: string) => {
    const accounts = [chain('hill', 100, { standing: standing({ chance }) })];
    return resultsOf(claimed({ accounts, amount: 100, week: 20 })).verdicts.promise.state;
  };

  test('fails below 20 %, is tight below 50 %, holds from there', () => {
    expect(['0.19', '0.2', '0.49', '0.5'].map(stateAt)).toEqual(['fails', 'tight', 'tight', 'holds']);
  });

  test('says the chance, the claim, what the evidence comes to, and on whom most hangs', () => {
    const { promise } = resultsOf(claimed({ accounts: two, amount: 60, week: 20 })).verdicts;
    expect(promise.figure).toBe('50 % · 60 doors');
    expect(promise.reason).toBe(
      'Holds. A chance of 50 % of 60 doors by 2026-07-26; the evidence speaks for 75 doors on average. Most hangs on hill, the buyer said yes.',
    );
    const more = resultsOf(claimed({ accounts: two, amount: 151, week: 20 })).verdicts.promise;
    expect(more.reason).toContain('With every chain on time the plan opens 150 doors by 2026-07-26');
  });

  test('a claim stands as it was typed, and less than ten doors on average have their tenth', () => {
    const one = [chain('hill', 1, { standing: standing({ chance: '0.2' }) })];
    const said = (amount: number) =>
      resultsOf(claimed({ accounts: one, amount, week: 20 })).verdicts.promise.reason;
    expect(said(0.4)).toMatch(
      /^Tight\. A chance of .* of 0\.4 doors by .*; the evidence speaks for 0\.2 doors on/,
    );
    expect(said(170.4)).toMatch(/the plan opens 1 door by .*; the evidence speaks for 0\.2 doors on average/);
    const { verdicts } = resultsOf(claimed({ accounts: two, amount: 149.4, week: 20 }));
    expect(verdicts.promise.figure).toContain('149.4 doors');
    expect(verdicts.promise.reason).toContain('the evidence speaks for 75 doors on average');
  });

  test('without claim, evidence or a date inside the plan it is unknown, and says what to add', () => {
    const reasons = [
      aPlan(),
      aPlan({ accounts: two }),
      claimed({ accounts: [chain('hill', 100, { standing: null })], amount: 1, week: 20 }),
      claimed({ accounts: two, amount: 1, week: -3 }),
      claimed({ accounts: two, of: 'units', amount: 1, week: 60 }),
    ].map((plan) => resultsOf(plan).verdicts.promise);
    expect(reasons.map(({ state, value }) => [state, value])).toEqual(reasons.map(() => ['unknown', null]));
    const said = [
      'No evidence entered yet',
      'No claim yet',
      'No evidence entered yet',
      'before this plan',
      'after this plan',
    ];
    said.forEach((words, place) => {
      expect(reasons[place]?.reason).toContain(words);
    });
  });

  test('leans on the rung whose chance nobody typed, where that turns it', () => {
    const accounts = [chain('hill', 100, { standing: standing({ chance: null }) })];
    const plan = claimed({ accounts, amount: 100, week: 20 });
    const results = resultsOf(plan);
    expect(results.verdicts.promise.state).toBe('holds');
    expect(leansOn({ plan, results, sayFor }).promise).toMatchObject({
      path: 'accounts/hill/standing/chance',
      label: 'hill, the buyer said yes, comes with a chance of 60 %',
      flips: true,
      end: '0.4',
      stateThere: 'tight',
    });
  });
});

describe('what would have to be true', () => {
  const wave = aWave({ openWeek: 10, doors: 200, doorsPerWeek: 25 });
  const lidded = anItem();
  const items = [{ ...lidded, supply: { ...lidded.supply, capacityUnitsPerWeek: 600 } }];
  const accounts = [anAccount({ waves: [wave], standing: standing() })];
  const business = aBusiness({ openingCashAmount: '2000' });
  const said = { accounts, plan: { items, business } };
  const rowsOf = (plan: Plan) => {
    const { having } = claimWork(plan, resultsOf(plan));
    if (having === null) throw new Error('no rows');
    return { ...having, row: Object.fromEntries(having.rows.map((row) => [row.what, row])) };
  };

  test('150 doors after eight weeks of opening, 100 expected: 18.75 a week instead of 12.5', () => {
    const { row } = rowsOf(claimed({ ...said, amount: 150, week: 17 }));
    expect(row['doorsAWeek']).toMatchObject({
      needed: 18.75,
      shown: 12.5,
      low80: 0,
      high80: 25,
      isEnough: false,
    });
    expect(row['rateOfSale']).toMatchObject({ shown: 6, because: 'paysBack' });
  });

  test('its cash carries the claim’s doors to the date, and not a cent less does', () => {
    const plan = claimed({ ...said, amount: 150, week: 17 });
    const needed = rowsOf(plan).row['cash']?.needed ?? 0;
    expect(needed).toBeGreaterThan(0);
    const lowest = (minor: number) => {
      const with_ = { ...plan, business: { ...business, openingCashAmount: (minor / 100).toFixed(2) } };
      const run = resultsOf(withDoors(withCapacity(atEvidence(with_), Number.POSITIVE_INFINITY), 1.5));
      return Math.min(...run.pass.low.slice(0, 18));
    };
    expect(lowest(needed)).toBeGreaterThanOrEqual(0);
    expect(lowest(needed - 1)).toBeLessThan(0);
  });

  test('money that comes after the hole doesn’t fill it; what comes before does', () => {
    const withMoney = (week: number) => {
      const funding = [{ kind: 'equity' as const, id: 'in', label: 'In', week, amount: '500000' }];
      const plan = { items, business: aBusiness({ openingCashAmount: '2000', funding }) };
      return rowsOf(claimed({ ...said, plan, amount: 150, week: 30 })).row['cash'];
    };
    const bare = rowsOf(claimed({ ...said, amount: 150, week: 30 })).row['cash'];
    const late = withMoney(30);
    // Goods are ordered weeks before the first doors of week 10: in week 29 that is still missing.
    expect(late).toMatchObject({ needed: expect.any(Number), shown: 200_000, isEnough: false });
    expect(late?.needed).toBeLessThanOrEqual(bare?.needed ?? 0);
    expect(withMoney(0)).toMatchObject({ needed: bare?.needed, shown: 50_200_000, isEnough: true });
  });

  test('its capacity serves them, a tenth less doesn’t', () => {
    const plan = claimed({ ...said, amount: 150, week: 30 });
    const { needed, shown } = rowsOf(plan).row['capacity'] ?? { needed: null, shown: null };
    expect(shown).toBe(600);
    const soldAt = (lid: number | null) => {
      const supply = { ...lidded.supply, capacityUnitsPerWeek: lid };
      const run = resultsOf(withDoors(atEvidence({ ...plan, items: [{ ...lidded, supply }] }), 1.5));
      return run.pass.accounts[0]?.sold.slice(0, 31).reduce((sum, units) => sum + units, 0) ?? 0;
    };
    const all = soldAt(null);
    expect(soldAt(needed ?? 0)).toBeGreaterThanOrEqual(0.99 * all);
    expect(soldAt(Math.round(0.9 * (needed ?? 0)))).toBeLessThan(0.995 * all);
  });

  test('its rate of sale reaches the units with the doors expected, a fiftieth less doesn’t', () => {
    const plan = claimed({ ...said, of: 'units', amount: 30_000, week: 40 });
    const { needed, because } = rowsOf(plan).row['rateOfSale'] ?? { needed: null, because: null };
    expect(because).toBe('reaches');
    const soldAt = (rate: number) => {
      const free = withCapacity(atEvidence(plan), Number.POSITIVE_INFINITY);
      const listings = [aListing({ unitsPerStoreWeek: rate.toFixed(6) })];
      const run = resultsOf({
        ...free,
        accounts: free.accounts.map((account) => ({ ...account, listings })),
      });
      return run.pass.accounts[0]?.sold.slice(0, 41).reduce((sum, units) => sum + units, 0) ?? 0;
    };
    expect(soldAt(needed ?? 0)).toBeGreaterThanOrEqual(30_000);
    expect(soldAt((needed ?? 0) * 0.98)).toBeLessThan(30_000);
  });

  test('evidence enough for all of it binds nowhere', () => {
    const sure = [anAccount({ waves: [wave], standing: standing({ chance: '1' }) })];
    const plan = claimed({ accounts: sure, amount: 100, week: 17 });
    expect(rowsOf(plan).binding).toBeNull();
  });

  test('what binds first is what the evidence carries least of: cash of 2,000', () => {
    const { row, binding } = rowsOf(claimed({ ...said, amount: 150, week: 17 }));
    const carries = (row['cash']?.shown ?? 0) / (row['cash']?.needed ?? 1);
    expect(carries).toBeLessThan(12.5 / 18.75);
    expect(binding).toBe('cash');
  });
});

describe('leaning on one', () => {
  const direct = chain('hill', 60);
  const by = (id: string, doors: number) =>
    chain(id, doors, { hands: [aHand({ id: 'depot', name: 'Depot' }), aHand()] });
  const plan = claimed({ accounts: [direct, by('mill', 30), by('lane', 10)], amount: 90, week: 40 });

  test('shares of doors and the index by hand: 60, 30 and 10 % are 4,600; by route 60 and 40 % are 5,200', () => {
    const leaning = leaningOn(plan, resultsOf(plan));
    expect(leaning?.accounts.by.doors.shares).toEqual([0.6, 0.3, 0.1]);
    expect(leaning?.accounts.by.doors.index).toBeCloseTo(4600, 9);
    expect(leaning?.routes.names).toEqual(['Direct', 'Depot']);
    expect(leaning?.routes.by.doors.index).toBeCloseTo(5200, 9);
  });

  test('without the largest it is the lender’s chain that drops us at its review', () => {
    const results = resultsOf(plan);
    const { without } = leaningOn(plan, results)?.accounts ?? { without: null };
    const drop = dropsOf(plan, results).find(({ accountId }) => accountId === 'hill');
    expect(without?.week).toBe(36);
    expect(without?.there).toEqual(drop?.there);
  });
});

describe('where from', () => {
  test('the chance leads to each account’s doors, and they to what was said of it', () => {
    const plan = claimed({ accounts: two, amount: 60, week: 20 });
    const subject = subjectOf(plan);
    const chance = explained(subject, { of: 'verdict', verdict: 'promise' });
    expect(chance.formula).toContain('on average 75 doors, as much as claimed in 50 % of futures');
    const hill = explained(subject, { of: 'claimDoors', accountId: 'hill' });
    expect(chance.lines.map(({ explains }) => explains)).toContainEqual(hill.key);
    expect([hill.value, hill.formula]).toEqual([
      '50',
      '100 on time; it comes with a chance of 50 %: 50 on average',
    ]);
    expect(hill.lines.map(({ path }) => path)).toContain('accounts/hill/standing/rung');
  });
});
