/**
 * reckon on every demo plan, run as a process: exit codes, the keys that are fixed for analysts, and the books recomputed
 * from the printed texts alone. Money is added up as whole minor units in BigInt, so nothing here rounds.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { root } from '../support/source-files.ts';
import { linesOf, type Ran, RECKON_TIMEOUT, ran } from '../support/spawned-reckon.ts';

interface Week {
  week: number;
  date: string;
  flows: Record<string, string>;
  balances: Record<string, string>;
  low: string;
  profit: Record<string, string>;
  units: Record<string, Record<string, number>>;
  doors: Record<string, number>;
}

interface Answer {
  minorDigits: number;
  verdicts: Record<string, { state: string; figure: string; reason: string }>;
  deals: { cumulated: string[] }[];
  rollout: {
    startDate: string;
    openingCash: string;
    cashNeed: { amount: string; week: number | null };
    lowestCash: { amount: string; week: number };
    weeks: Week[];
    statements: object;
    journal: { week: number; event: string; amount: string; account: string | null; item: string | null }[];
  };
  solves: Record<string, unknown>;
}

interface PlanFile {
  plan: {
    horizonWeeks: number;
    items: { id: string; opening: { units: number } }[];
    business: { funding: unknown[] };
    accounts: { listings: { itemId: string }[]; runningDoors: { doors: number; unitsPerDoor: number }[] }[];
  };
}

const folder = join(root, 'demo-catalog');
const demos = readdirSync(folder).filter((name) => name.endsWith('.json'));

const BALANCES = [
  'cash',
  'receivables',
  'stock',
  'deposits',
  'equipment',
  'payables',
  'accrued',
  'loans',
  'paidIn',
  'retained',
];

async function unfundedWeeks(text: string): Promise<Week[]> {
  const file = JSON.parse(text) as PlanFile;
  file.plan.business.funding = [];
  const { out } = await ran(['-', '--weeks'], JSON.stringify(file));
  return (JSON.parse(out) as Answer).rollout.weeks;
}

test('there are demo plans', () => {
  expect(demos.length).toBeGreaterThanOrEqual(4);
});

describe.each(demos)('%s', (name) => {
  const path = join(folder, name);
  const text = readFileSync(path, 'utf8');
  const { plan } = JSON.parse(text) as PlanFile;
  let short: Ran;
  let long: Ran;
  let answer: Answer;
  let weeks: Week[];
  /** Without the funding the plan counts on. */
  let bare: Week[];

  beforeAll(async () => {
    // The long answer is asked for through standard input: both ways in have to say the same.
    [short, long] = await Promise.all([ran([path]), ran(['-', '--weeks', '--journal'], text)]);
    answer = JSON.parse(long.out) as Answer;
    weeks = answer.rollout.weeks;
    bare = plan.business.funding.length === 0 ? weeks : await unfundedWeeks(text);
  }, RECKON_TIMEOUT);

  test('computes, and warns on standard error only', () => {
    expect([short.code, long.code]).toEqual([0, 0]);
    expect(linesOf(short.err)).toEqual(linesOf(short.err).filter((line) => line.startsWith('reckon: ')));
    expect(long.err).toBe(short.err);
  });

  test('a file and standard input give the same answer, to the byte where both print it', () => {
    const { weeks: _weeks, statements: _statements, journal: _journal, ...rest } = answer.rollout;
    expect(`${JSON.stringify({ ...answer, rollout: rest }, null, 2)}\n`).toBe(short.out);
  });

  test('no figure is none: no NaN, no infinity, nothing undefined', () => {
    expect(short.err + long.out).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });

  test('verdicts: four, each with a state, a figure and a reason', () => {
    expect(Object.keys(answer.verdicts)).toEqual(['ladder', 'deal', 'cash', 'promise']);
    for (const { state, figure, reason } of Object.values(answer.verdicts)) {
      expect(['holds', 'tight', 'fails', 'unknown']).toContain(state);
      const word = { holds: 'Holds.', tight: 'Tight.', fails: 'Fails.', unknown: 'Not known yet.' }[state];
      expect(reason.startsWith(`${word} `)).toBe(true);
      expect(reason).toMatch(/\.$/);
      if (state !== 'unknown') expect(figure).not.toBe('');
    }
  });

  test('cash need: amount and week, nothing else, and it is the depth of the lowest low', () => {
    const { cashNeed, lowestCash } = answer.rollout;
    expect(Object.keys(cashNeed)).toEqual(['amount', 'week']);
    const lows = weeks.map(({ low }) => minor(low));
    const lowest = [...lows].sort((a, b) => Number(a - b))[0] ?? 0n;
    expect(minor(lowestCash.amount)).toBe(lowest);
    expect(lowestCash.week).toBe(lows.indexOf(lowest));
    // The need is read off the plan without the funding it counts on.
    const bareLows = bare.map(({ low }) => minor(low));
    const deepest = [...bareLows].sort((a, b) => Number(a - b))[0] ?? 0n;
    expect(minor(cashNeed.amount)).toBe(deepest < 0n ? -deepest : 0n);
    expect(cashNeed.week).toBe(deepest < 0n ? bareLows.indexOf(deepest) : null);
  });

  test('every week of the horizon, seven days apart', () => {
    expect(weeks.map(({ week }) => week)).toEqual(Array.from({ length: plan.horizonWeeks }, (_, w) => w));
    const days = weeks.map(({ date }) => Date.parse(`${date}T00:00:00Z`) / 86_400_000);
    expect(weeks[0]?.date).toBe(answer.rollout.startDate);
    expect(days.every((day, w) => day === (days[0] ?? 0) + 7 * w)).toBe(true);
  });

  test('money has exactly the currency’s decimals', () => {
    const decimals = answer.minorDigits === 0 ? '' : `\\.\\d{${answer.minorDigits}}`;
    const pattern = new RegExp(`^-?(?:0|[1-9]\\d*)${decimals}$`);
    const sums = [
      ...weeks.flatMap(({ flows, balances, profit, low }) =>
        [flows, balances, profit].flatMap((each) => Object.values(each)).concat(low),
      ),
      ...answer.rollout.journal.map(({ amount }) => amount),
      ...answer.deals.flatMap(({ cumulated }) => cumulated),
      answer.rollout.openingCash,
      answer.rollout.cashNeed.amount,
    ];
    expect(sums.filter((sum) => !pattern.test(sum))).toEqual([]);
    expect(sums.filter((sum) => /^-0(?:\.0*)?$/.test(sum))).toEqual([]);
  });

  test('the ten balances, and what is owned is what is owed, every week', () => {
    for (const { week, balances } of weeks) {
      expect(Object.keys(balances)).toEqual(BALANCES);
      const [cash, receivables, stock, deposits, equipment, ...claims] = Object.values(balances).map(minor);
      const owned = sum([cash, receivables, stock, deposits, equipment]);
      expect(owned, `week ${week}`).toBe(sum(claims));
    }
  });

  test('cash moves by the flows, from opening cash on; no week ends below its low', () => {
    let cash = minor(answer.rollout.openingCash);
    for (const { week, flows, balances, low } of weeks) {
      const after = minor(balances['cash'] ?? '');
      expect(after - cash, `week ${week}`).toBe(sum(Object.values(flows).map(minor)));
      expect(minor(low) <= after && minor(low) <= cash + sum(Object.values(flows).map(minor))).toBe(true);
      cash = after;
    }
  });

  test('the low is opening cash and new money, less everything paid in the week', () => {
    let cash = minor(answer.rollout.openingCash);
    for (const { week, flows, balances, low } of weeks) {
      const isFirst = (name: string) => name === 'equityIn' || name === 'loanIn';
      const first = Object.entries(flows).filter(([name]) => isFirst(name));
      const paid = Object.values(flows).filter((flow) => flow.startsWith('-'));
      const lowest = cash + sum(first.map(([, flow]) => minor(flow))) + sum(paid.map(minor));
      expect(minor(low), `week ${week}`).toBe(lowest);
      cash = minor(balances['cash'] ?? '');
    }
  });

  test('units: what was there and what was made is sold, gone, or somewhere', () => {
    for (const item of plan.items) {
      let known = item.opening.units;
      for (const account of plan.accounts) {
        if (!account.listings.some(({ itemId }) => itemId === item.id)) continue;
        for (const { doors, unitsPerDoor } of account.runningDoors) known += doors * unitsPerDoor;
      }
      for (const { week, units } of weeks) {
        const of = (unit: string) => units[item.id]?.[unit] ?? Number.NaN;
        known += of('made') - of('sold') - of('gone');
        expect(
          of('ours') + of('inTransit') + of('inStores') + of('atDepot'),
          `${item.id}, week ${week}`,
        ).toBe(known);
        expect(of('demand')).toBe(of('sold') + of('lost'));
        expect(of('fillShipped')).toBeLessThanOrEqual(of('shipped'));
        expect(Object.values(units[item.id] ?? {}).every((each) => Number.isInteger(each) && each >= 0)).toBe(
          true,
        );
      }
    }
  });

  test('the journal’s postings by week are what retained moved by', () => {
    // Every posting of the pass is printed: none lies outside the horizon, none is of nothing.
    const { journal } = answer.rollout;
    expect(journal.length).toBeGreaterThan(plan.horizonWeeks);
    expect(journal.filter(({ week }) => week < 0 || week >= plan.horizonWeeks)).toEqual([]);
    expect(journal.filter(({ amount }) => minor(amount) === 0n)).toEqual([]);
    const overhead = (week: number) =>
      sum(
        journal
          .filter((each) => each.week === week && each.event === 'overhead')
          .map(({ amount }) => minor(amount)),
      );
    for (const { week, flows } of weeks) expect(-overhead(week)).toBe(minor(flows['overhead'] ?? ''));
  });
});

test(
  'two runs print the same bytes',
  async () => {
    const path = join(folder, demos[0] ?? '');
    const [one, two] = await Promise.all([ran([path, '--weeks']), ran(['--weeks', path])]);
    expect(one.code).toBe(0);
    expect(one.out).toBe(two.out);
    expect(one.err).toBe(two.err);
  },
  RECKON_TIMEOUT,
);

/** "-12.34" is -1234n, whatever the currency's decimals, since all of one answer have the same. */
function minor(text: string): bigint {
  if (!/^-?\d+(?:\.\d+)?$/.test(text)) throw new Error(`"${text}" is no sum`);
  return BigInt(text.replace('.', ''));
}

function sum(parts: readonly (bigint | undefined)[]): bigint {
  return parts.reduce<bigint>((total, part) => total + (part ?? 0n), 0n);
}
