/**
 * Every frozen plan evaluates to its golden: figures kept when it was frozen, so that neither a migration nor a change of
 * the model moves them unseen. The figures are this model's own (what they should be is proved in tests/worked and
 * tests/outside); a change on purpose writes them anew: npx vitest run -u --project node tests/formats/golden.test.ts
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Results, VerdictName } from '../../src/domain/results.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';

const here = new URL('./', import.meta.url);
const frozen = readdirSync(here, { recursive: true, encoding: 'utf8' }).filter((name) =>
  /^v\d+\/[^/]+\.json$/.test(name),
);

test('there are frozen plans', () => {
  expect(frozen.length).toBeGreaterThan(2);
});

describe.each(frozen)('%s', (name) => {
  test('evaluates to its golden', async () => {
    const figures = figuresOf(resultsOf(readFileSync(new URL(name, here), 'utf8')));
    const golden = fileURLToPath(new URL(name.replace(/^(v\d+)\/(.+)\.json$/, '$1/golden/$2.txt'), here));
    await expect(`${figures.join('\n')}\n`).toMatchFileSnapshot(golden);
  });
});

test('amounts as numbers and as texts have the same results, up to the names', () => {
  const [numbers, texts] = ['v1/by-hand.json', 'v1/small.json'].map((name) =>
    figuresOf(resultsOf(readFileSync(new URL(name, here), 'utf8'))),
  );
  expect(numbers).toEqual(texts);
});

function resultsOf(text: string): Results {
  const plan = parsePlanText(text);
  if (!plan.ok) throw new Error(JSON.stringify(plan));
  const results = evaluate(plan.value, ({ minorDigits, startDay }) =>
    plainSay({ minorDigits, startDay, dateOf: isoDateOf }),
  );
  if (!results.ok) throw new Error(JSON.stringify(results));
  return results.value;
}

function figuresOf({ ladders, deals, pass, reading, verdicts }: Results): string[] {
  const last = pass.weeks - 1;
  return [
    ...ladders.map(
      ({ accountId, itemId, list, invoice, net, contribution, shelf }) =>
        `ladder ${accountId} ${itemId}: list ${list} invoice ${invoice} net ${net} contribution ${contribution} shelf ${shelf}`,
    ),
    ...deals.map(
      ({ accountId, doors, fixedAmount, firstYearContribution, paybackWeeks }) =>
        `deal ${accountId}: doors ${doors} fixed ${fixedAmount} firstYear ${firstYearContribution} payback ${paybackWeeks ?? 'none'}`,
    ),
    `cash: need ${reading.cashNeed} week ${reading.cashNeedWeek} lowest ${reading.lowestCash} week ${reading.lowestWeek} end ${pass.balances.cash[last]}`,
    `units: demand ${reading.demandUnits} sold ${reading.soldUnits} lost ${reading.lostUnits}`,
    ...(Object.keys(verdicts) as VerdictName[]).map(
      (name) => `${name}: ${verdicts[name].state} ${verdicts[name].value}`,
    ),
  ];
}
