/**
 * The papers of every week of the demo plans and of random plans: each comes to the sum of its lines, each line leads on,
 * no two are the same, and all together they move cash and the result as the pass says.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { DOCUMENT_KINDS } from '../../src/domain/explain/document-kinds.ts';
import { documentsOf } from '../../src/domain/explain/documents.ts';
import { instalmentsOf } from '../../src/domain/explain/runs.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { hasAt } from '../../src/domain/plan/path.ts';
import { FLOW_NAMES } from '../../src/domain/rollout/types.ts';
import { arbitraryPlan, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { planOfText, type Subject, subjectOf } from '../support/explained.ts';

const RANDOM_RUNS = 25;
const LARGE_PLAN_MS = 30_000;

/** In the examples a remittance also names every invoice and allowance, none as one sum. */
function faultsOf({ plan, results, say }: Subject, isExample: boolean): string[] {
  const { pass, minorDigits } = results;
  return Array.from({ length: pass.weeks }, (_, week) => week).flatMap((week) => {
    const papers = documentsOf({ plan, results, say }, week);
    const faults: string[] = [];
    const moved = FLOW_NAMES.reduce((sum, flow) => sum + (pass.flows[flow][week] ?? 0), 0);
    const cash = papers.reduce((sum, paper) => sum + paper.cash, 0);
    if (cash !== moved) faults.push(`papers move ${cash}, flows say ${moved}`);
    if (new Set(papers.map(({ id }) => id)).size !== papers.length) faults.push('a paper stands twice');
    const placed = instalmentsOf({ plan, results, say }).filter((each) => each.week === week);
    pass.units.forEach((units, item) => {
      const own = placed.filter((each) => each.item === item);
      const ordered = own.reduce((sum, each) => sum + each.units, 0);
      const all = instalmentsOf({ plan, results, say }).filter((each) => each.item === item);
      const under = plan.items[item]?.opening.onOrder ?? [];
      const lands =
        all.reduce((sum, each) => sum + (each.lands === week ? each.units : 0), 0) +
        under.reduce((sum, each) => sum + (each.landsWeek === week ? each.units : 0), 0);
      if (lands !== units.made[week]) faults.push(`${lands} are to land, ${units.made[week]} do`);
      if (ordered !== units.ordered[week]) faults.push(`${ordered} placed, ${units.ordered[week]} ordered`);
    });
    const ahead = placed.reduce((sum, { deposit }) => sum + deposit, 0);
    if (ahead + (pass.flows.supplierDeposits[week] ?? 0) !== 0) faults.push(`paid ahead: ${ahead}`);
    const kinds = papers.map(({ kind }) => DOCUMENT_KINDS.indexOf(kind));
    if (kinds.some((kind, at) => kind < (kinds[at - 1] ?? 0))) faults.push('out of order');
    for (const { title, note, lines, amount } of papers) {
      const adding = lines.filter(({ adds }) => adds !== null);
      const sum = adding.reduce((total, { adds }) => total.plus(adds ?? '0'), dec(0));
      const due = dec(amount ?? 0).div(10 ** minorDigits);
      if (!sum.eq(due)) faults.push(`${title}: lines come to ${sum.toFixed()}, it to ${due.toFixed()}`);
      if (lines.length === 0 || title === '' || note === '') faults.push(`${title}: nothing on it`);
      if (/NaN|undefined|null/.test(JSON.stringify([title, note, lines.map(({ value }) => value)])))
        faults.push(`${title}: ${note}`);
      for (const { label, path, explains } of lines) {
        if (isExample && /^(Invoices due|Deductions of these)/.test(label)) faults.push(`${title}: ${label}`);
        if (path === null && explains === null) faults.push(`${title}: "${label}" leads nowhere`);
        if (path !== null && !hasAt(plan, path)) faults.push(`${title}: no field ${path}`);
      }
    }
    return faults.map((fault) => `week ${week}: ${fault}`);
  });
}

describe('the papers of every week', () => {
  test.each(DEMOS.map(({ id }) => id))(
    '%s',
    async (id) => {
      const demo = DEMOS.find((each) => each.id === id);
      const plan: Plan = planOfText(JSON.stringify(await demo?.load()));
      expect(faultsOf(subjectOf(plan), true).slice(0, 10)).toEqual([]);
    },
    LARGE_PLAN_MS,
  );

  test(`${RANDOM_RUNS} random plans (seed ${PLAN_SEED})`, () => {
    const plans = fc.sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: RANDOM_RUNS });
    expect(plans.flatMap((plan) => faultsOf(subjectOf(plan), false)).slice(0, 10)).toEqual([]);
  });

  test('none lies beyond the plan', async () => {
    const plan = planOfText(JSON.stringify(await DEMOS[0]?.load()));
    expect(documentsOf(subjectOf(plan), plan.horizonWeeks)).toEqual([]);
  });
});

test('an invoice of the first demo, by hand: units at their price, less 1.5 % spoils, paid nine weeks on', async () => {
  const subject = subjectOf(planOfText(JSON.stringify(await DEMOS[0]?.load())));
  const week = subject.results.pass.flows.remittances.findIndex((amount) => amount > 0) - 9;
  const invoice = documentsOf(subject, week).find(({ kind }) => kind === 'invoice');
  // 45 + 12 days are nine weeks, rounded up.
  expect(invoice?.note).toMatch(new RegExp(`^Paid in week ${week + 9}\\b`));
  const [units, gross, spoils] = invoice?.lines ?? [];
  expect(units?.label).toBe('Units invoiced');
  const price = subject.results.ladders[0]?.invoice;
  expect(
    price
      ?.times(units?.value.replaceAll(',', '') ?? 'NaN')
      .toDecimalPlaces(2)
      .eq(gross?.adds ?? 'NaN'),
  ).toBe(true);
  const taken = dec(gross?.adds ?? 'NaN')
    .times('0.015')
    .toDecimalPlaces(2);
  expect(dec(spoils?.adds ?? 'NaN').toFixed()).toBe(taken.negated().toFixed());
});
