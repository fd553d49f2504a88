/**
 * The critical path method and three-point estimates against published worked examples.
 * Worked figure: the contractor's project takes 44 weeks, by A, B, C, E, F, J, L, N, and 47 with a probability of 0.84.
 */
import { describe, expect, test } from 'vitest';
import { drawn, drawsFrom, meanOf, varianceOf } from '../../src/domain/readiness/lead-time.ts';
import { chainTo, finishes, inOrder, type Step, timesOf } from '../../src/domain/readiness/network.ts';

type Arrow = [arrow: string, time: number, es: number, ef: number, ls: number, lf: number, slack: number];

/** Activities on arrows "from-to": each waits for all that end where it starts. */
function stepsOf(arrows: readonly Arrow[]): Step[] {
  const ends = (arrow: string) => arrow.split('-');
  return arrows.map(([arrow, time]) => ({
    id: arrow,
    time,
    after: arrows.filter(([other]) => ends(other)[1] === ends(arrow)[0]).map(([other]) => other),
  }));
}

describe('Taylor, Introduction to Management Science, solutions to chapter 8 (networks on pp. 114-115, as published)', () => {
  const seven: Arrow[] = [
    ['1-2', 7, 0, 7, 2, 9, 2],
    ['1-3', 10, 0, 10, 0, 10, 0],
    ['2-4', 6, 7, 13, 9, 15, 2],
    ['3-4', 5, 10, 15, 10, 15, 0],
    ['3-5', 4, 10, 14, 14, 18, 4],
    ['4-5', 3, 15, 18, 15, 18, 0],
    ['5-6', 2, 18, 20, 18, 20, 0],
  ];
  const twelve: Arrow[] = [
    ['1-2', 8, 0, 8, 1, 9, 1],
    ['1-3', 10, 0, 10, 0, 10, 0],
    ['1-4', 9, 0, 9, 6, 15, 6],
    ['2-5', 6, 8, 14, 9, 15, 1],
    ['2-6', 4, 8, 12, 16, 20, 8],
    ['3-5', 5, 10, 15, 10, 15, 0],
    ['4-5', 0, 9, 9, 15, 15, 6],
    ['4-7', 7, 9, 16, 20, 27, 11],
    ['5-7', 12, 15, 27, 15, 27, 0],
    ['5-8', 15, 15, 30, 16, 31, 1],
    ['6-9', 18, 12, 30, 20, 38, 8],
    ['7-8', 4, 27, 31, 27, 31, 0],
    ['8-9', 7, 31, 38, 31, 38, 0],
  ];

  test.each([
    ['seven activities', seven, ['1-3', '3-4', '4-5', '5-6']],
    ['thirteen activities', twelve, ['1-3', '3-5', '5-7', '7-8', '8-9']],
  ])('%s: times, slack, critical path', (_, arrows, critical) => {
    const steps = stepsOf(arrows);
    const times = timesOf(steps);
    expect(
      arrows.map(([id, time]) => {
        const found = times.get(id);
        if (!found) return null;
        const { earliestStart, earliestFinish, latestStart, latestFinish, slack } = found;
        return [id, time, earliestStart, earliestFinish, latestStart, latestFinish, slack];
      }),
    ).toEqual(arrows);
    const last = critical.at(-1) ?? '';
    expect(chainTo(last, steps, finishes(inOrder(steps)))).toEqual(critical);
  });
});

/**
 * Hillier & Lieberman, Introduction to Operations Research, the project of a building contractor (PERT/CPM chapter): three
 * estimates in weeks, predecessors, and the published mean. The table is from memory.
 */
const CONTRACTOR: Record<string, [o: number, m: number, p: number, mean: number, after: string]> = {
  A: [1, 2, 3, 2, ''],
  B: [2, 3.5, 8, 4, 'A'],
  C: [6, 9, 18, 10, 'B'],
  D: [4, 5.5, 10, 6, 'C'],
  E: [1, 4.5, 5, 4, 'C'],
  F: [4, 4, 10, 5, 'E'],
  G: [5, 6.5, 11, 7, 'D'],
  H: [5, 8, 17, 9, 'EG'],
  I: [3, 7.5, 9, 7, 'C'],
  J: [3, 9, 9, 8, 'FI'],
  K: [4, 4, 4, 4, 'J'],
  L: [1, 5.5, 7, 5, 'J'],
  M: [1, 2, 3, 2, 'H'],
  N: [5, 5.5, 9, 6, 'KL'],
};
const range = (id: string) => {
  const [optimistic = 0, likely = 0, pessimistic = 0] = (CONTRACTOR[id] ?? []) as number[];
  return { optimistic, likely, pessimistic };
};
const contractorSteps = (timeOf: (id: string) => number): Step[] =>
  Object.entries(CONTRACTOR).map(([id, [, , , , after]]) => ({ id, time: timeOf(id), after: [...after] }));

describe('Hillier & Lieberman, Introduction to Operations Research, project of a building contractor', () => {
  test('means of the three estimates', () => {
    for (const [id, [, , , mean]] of Object.entries(CONTRACTOR))
      expect(meanOf(range(id)), id).toBeCloseTo(mean, 9);
  });

  test('44 weeks by A, B, C, E, F, J, L, N; slack of the others', () => {
    const steps = contractorSteps((id) => meanOf(range(id)));
    const times = timesOf(steps);
    expect(Math.max(...[...times.values()].map(({ earliestFinish }) => earliestFinish))).toBeCloseTo(44, 9);
    const slack = Object.fromEntries(
      [...times].map(([id, each]) => [id, Math.round(each.slack * 1e6) / 1e6]),
    );
    const others = { D: 4, G: 4, H: 4, M: 4, I: 2, K: 1 };
    expect(slack).toEqual({ A: 0, B: 0, C: 0, E: 0, F: 0, J: 0, L: 0, N: 0, ...others });
    expect(chainTo('N', steps, finishes(inOrder(steps)))).toEqual([...'ABCEFJLN']);
  });

  test('the variance of its critical path is 9: 3 weeks are one deviation, 47 weeks are kept with 0.84', () => {
    const variance = [...'ABCEFJLN'].reduce((sum, id) => sum + varianceOf(range(id)), 0);
    expect(variance).toBeCloseTo(9, 9);
    // The book's normal approximation is of one path; drawn from beta distributions it comes to nearly the same, and
    // with the other paths beside it to somewhat less. Beta has a variance a little below the book's rule.
    const draw = drawsFrom(1);
    const runs = 20_000;
    let onPath = 0;
    let whole = 0;
    for (let run = 0; run < runs; run++) {
      const time = new Map(Object.keys(CONTRACTOR).map((id) => [id, drawn(range(id), draw)]));
      const timeOf = (id: string) => time.get(id) ?? 0;
      if ([...'ABCEFJLN'].reduce((sum, id) => sum + timeOf(id), 0) <= 47) onPath += 1;
      if (Math.max(...finishes(inOrder(contractorSteps(timeOf))).values()) <= 47) whole += 1;
    }
    expect(onPath / runs).toBeGreaterThan(0.82);
    expect(onPath / runs).toBeLessThan(0.86);
    expect(whole).toBeLessThanOrEqual(onPath);
    expect(whole / runs).toBeGreaterThan(0.7);
  });
});

test('a stadium of twelve activities (Heizer & Render, case "Southwestern University", published solution): means and variances', () => {
  const rows = [
    [20, 30, 40, 30, 11.11],
    [20, 65, 80, 60, 100],
    [50, 60, 100, 65, 69.44],
    [30, 50, 100, 55, 136.11],
    [25, 30, 35, 30, 2.78],
    [10, 20, 30, 20, 11.11],
    [20, 25, 60, 30, 44.44],
    [8, 10, 12, 10, 0.44],
  ];
  for (const [optimistic = 0, likely = 0, pessimistic = 0, mean = 0, variance = 0] of rows) {
    expect(meanOf({ optimistic, likely, pessimistic })).toBeCloseTo(mean, 2);
    expect(varianceOf({ optimistic, likely, pessimistic })).toBeCloseTo(variance, 2);
  }
});

test('draws have the moments of the beta distribution (textbook: mean (a + 4m + b)/6, variance (mean - a)(b - mean)/7)', () => {
  const wide = { optimistic: 5, likely: 10, pessimistic: 30 };
  const draw = drawsFrom(7);
  const runs = 40_000;
  const all = Array.from({ length: runs }, () => drawn(wide, draw));
  const mean = all.reduce((sum, each) => sum + each, 0) / runs;
  const variance = all.reduce((sum, each) => sum + (each - mean) ** 2, 0) / runs;
  const expected = meanOf(wide);
  expect(mean).toBeCloseTo(expected, 1);
  expect(variance / (((expected - 5) * (30 - expected)) / 7)).toBeCloseTo(1, 1);
  expect(Math.min(...all)).toBeGreaterThanOrEqual(5);
  expect(Math.max(...all)).toBeLessThanOrEqual(30);
});

test('a ring of steps is refused', () => {
  const ring = [
    { id: 'a', after: ['b'] },
    { id: 'b', after: ['a'] },
  ];
  expect(() => inOrder(ring)).toThrow('waits for itself');
});
