// The demo plans of the catalogue as tests use them: read, computed, and with how far things may come out otherwise changed.
// Worked example: withSpreads(demoPlan('third-chain.json')) is a plan every draw of which is the plan itself.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { root } from './source-files.ts';

export const demoFiles = readdirSync(join(root, 'demo-catalog')).filter((name) => name.endsWith('.json'));

export function demoPlan(file: string): Plan {
  const parsed = parsePlanText(readFileSync(join(root, 'demo-catalog', file), 'utf8'));
  if (!parsed.ok) throw new Error(`${file} is no plan`);
  return parsed.value;
}

/** Null where the plan can't be computed. */
export function resultsOf(plan: Plan): Results | null {
  const results = evaluate(plan, sayFor);
  return results.ok ? results.value : null;
}

/** Throws where the plan can't be computed. */
export function computed(plan: Plan): { plan: Plan; results: Results } {
  const results = resultsOf(plan);
  if (results === null) throw new Error(`${plan.id} can't be computed`);
  return { plan, results };
}

/** Without spreads, and doors as planned, but for what is given. */
export function withSpreads(plan: Plan, changes: Partial<Plan['promise']['spreads']> = {}): Plan {
  const spreads: Plan['promise']['spreads'] = {
    rateOfSaleRate: '0',
    doors: 'asPlanned',
    rampRate: '0',
    latenessDays: 0,
    goodsRate: '0',
    deductionsRate: '0',
    voidRate: '0',
    sharedRate: '0.3',
    ...changes,
  };
  return { ...plan, promise: { ...plan.promise, spreads } };
}
