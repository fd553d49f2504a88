/**
 * What the speed test runs inside a real browser, in one page and one run: the whole recalculation of the big plan, a
 * bare loop over as many cells, and the store side of the same plan in a general formula engine. Medians, milliseconds.
 */
import { HyperFormula } from 'hyperformula';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { setAt } from '../../src/domain/plan/path.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { bigPlan } from '../support/big-plan.ts';
import { formulaSheet } from './formula-sheet.ts';

export interface Timings {
  recalculation: number;
  bareLoop: number;
  formulaEngineOneInput: number;
  formulaEngineBuild: number;
  cells: number;
  formulas: number;
  /** Changes between runs prove that nothing was merely remembered. */
  lowestCash: number[];
}

const CELLS = 104 * 12 * 3 * 27;

function median(times: number[]): number {
  const sorted = [...times].sort((x, y) => x - y);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function timed(runs: number, work: (run: number) => void): number {
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    work(run);
    times.push(performance.now() - start);
  }
  return median(times);
}

function changed(plan: Plan, run: number): Plan {
  return setAt(plan, 'accounts/chain-0/listings/plum/unitsPerStoreWeek', String(4 + (run % 7) / 10));
}

function recalculate(plan: Plan): number {
  const results = evaluate(plan, ({ minorDigits, startDay }) =>
    plainSay({ minorDigits, startDay, dateOf: isoDateOf }),
  );
  if (!results.ok)
    throw new Error(results.problems.map(({ path, expected }) => `${path}: ${expected}`).join('; '));
  return results.value.reading.lowestCash;
}

function bareLoop(out: Float64Array, factor: number): void {
  for (let cell = 1; cell < out.length; cell++) out[cell] = (out[cell - 1] ?? 0) * 0.999 + factor * cell;
}

function formulaTimes(
  plan: Plan,
): Pick<Timings, 'formulaEngineOneInput' | 'formulaEngineBuild' | 'formulas'> {
  const { rows, formulas, rateCell } = formulaSheet(plan);
  const build = () => HyperFormula.buildFromArray(rows, { licenseKey: 'gpl-v3', smartRounding: false });
  const engine = build();
  const formulaEngineBuild = timed(3, () => {
    build().destroy();
  });
  const formulaEngineOneInput = timed(15, (run) => {
    engine.setCellContents({ sheet: 0, ...rateCell }, 4 + (run % 7) / 10);
  });
  return { formulaEngineOneInput, formulaEngineBuild, formulas };
}

export function run(): Timings {
  const plan = bigPlan();
  const plans = Array.from({ length: 7 }, (_, place) => changed(plan, place));
  const lowestCash = plans.map(recalculate);
  for (let warm = 0; warm < 40; warm++) recalculate(plans[warm % 7] as Plan);
  const recalculation = timed(101, (turn) => {
    recalculate(plans[turn % 7] as Plan);
  });
  const out = new Float64Array(CELLS);
  for (let warm = 0; warm < 40; warm++) bareLoop(out, warm);
  const loops = 10;
  const bare = timed(101, (turn) => {
    for (let again = 0; again < loops; again++) bareLoop(out, turn + again);
  });
  return { recalculation, bareLoop: bare / loops, cells: CELLS, lowestCash, ...formulaTimes(plan) };
}

Object.assign(globalThis, { firstfillBench: run });
