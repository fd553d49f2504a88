/**
 * The session with the real model: every frozen example opens with results, an edit moves them, undo brings the very same
 * figures back, and the exported file gives them again. (The other tests of this folder make the model up.)
 */
import { beforeEach, expect, test } from 'vitest';
import type { Session } from '../../src/app/session.ts';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { exampleText } from '../problems/plan-cases.ts';
import { freshDatabase } from '../storage/store.ts';
import { type Around, around, settled, started } from './harness.ts';

let own: Around;

beforeEach(() => {
  freshDatabase();
  own = around();
  own.deps.evaluate = (plan) =>
    evaluate(plan, ({ minorDigits, startDay }) => plainSay({ minorDigits, startDay, dateOf: isoDateOf }));
});

test.each(['small', 'by-hand', 'whole'])('%s', async (name) => {
  const session = await started(own);
  expect(await session.importFile(new File([exampleText(name)], 'plan.json'))).toBe(true);
  const before = figuresOf(session);
  expect(session.results.value?.results.pass.balances.cash.every(Number.isFinite)).toBe(true);
  expect(session.typeInto('accounts/corner/waves/first/doors', '75', 'whole')).toBe(true);
  expect(figuresOf(session)).not.toBe(before);
  session.undo();
  expect(figuresOf(session)).toBe(before);
  await session.exportPlan(session.plan.value?.id ?? '');
  expect(await session.importFile(new File([own.downloads[0]?.text ?? ''], 'again.json'))).toBe(true);
  expect(figuresOf(session)).toBe(before);
  await settled(session);
});

test('an edit that no rung can answer leaves the last good figures, marked', async () => {
  const session = await started(own);
  await session.importFile(new File([exampleText('small')], 'plan.json'));
  const before = figuresOf(session);
  const shelf = 'accounts/corner/listings/tea/shelf/amount';
  expect(session.typeInto(shelf, '0.0001', 'amount')).toBe(false);
  expect(session.problems.value.get(shelf)?.[0]?.code).toBe('rung-unsolvable');
  expect(session.typed.value.get(shelf)).toBe('0.0001');
  expect(session.stale.value).toBe(true);
  expect(figuresOf(session)).toBe(before);
});

function figuresOf(session: Session): string {
  const results = session.results.value?.results;
  if (!results) throw new Error('no results');
  const { ladders, deals, pass, reading, verdicts } = results;
  return JSON.stringify({ ladders, deals, cash: [...pass.balances.cash], reading, verdicts });
}
