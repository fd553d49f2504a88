/**
 * What limits and what lifts it, and the lender's page, as a person uses them: the figures are the model's, a change is put
 * in with one tap and taken out with one undo, the searches answer in place; the lender's page is reached from Cash and
 * steps through weeks. On a phone and on a desk.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { changedPlan, changeWords, liftsFrom } from '../../src/domain/answers/index.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { lenderFrom, weeksAroundLow } from '../../src/domain/lender/index.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { type Demo, demos, openApp } from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let served: ServedApp;
let browser: Browser;
let dry: Demo;

beforeAll(async () => {
  served = await serveApp();
  browser = await startBrowser();
  const found = (await demos()).find(({ plan }) => plan.id === 'demo-pays-but-runs-dry');
  if (!found) throw new Error('the example that runs dry is gone');
  dry = found;
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const devices = [
  ['a phone', phone],
  ['a desk', desktop],
] as const;

const say = () => {
  const { currency, minorDigits, compiled } = dry.results;
  return sayFor({ currency, minorDigits, startDay: compiled.startDay });
};
const lowestOn = (page: Page) => page.locator('.ff-plumb-amount').innerText();
const lifted = (page: Page) => page.locator('.ff-lift');
/** A percent sign stands behind a space that does not break; reckon's is a plain one. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

test.each(devices)('on %s: the best change, put in and taken out', async (_, device) => {
  const hash = `#/p/${dry.plan.id}/cash`;
  const { page, context, troubles } = await openApp(browser, { address: served.address, hash, device });
  const { best } = liftsFrom(dry.plan, dry.results);
  const [first] = best;
  if (!first) throw new Error('nothing lifts it');
  const words = changeWords(first.change, dry.plan, say());
  await lifted(page).first().waitFor();
  expect(await lifted(page).count()).toBe(Math.min(3, best.length));
  const row = plain(await lifted(page).first().innerText());
  expect(row).toContain(words);
  const { before, after } = first;
  const moved = `Lowest cash ${say().money(before.lowestCash)} to ${say().money(after.lowestCash)}, in week ${after.lowestWeek}`;
  expect(row).toContain(moved);

  await lifted(page)
    .first()
    .getByRole('button', { name: /^Put in: / })
    .click();
  const there = evaluate(changedPlan(dry.plan, first.change), sayFor);
  if (!there.ok) throw new Error('the changed plan can’t be computed');
  const { lowestCash, lowestWeek } = there.value.reading;
  await expect.poll(() => lowestOn(page)).toBe(`${say().money(lowestCash)} · week ${lowestWeek}`);
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect
    .poll(() => lowestOn(page))
    .toBe(`${say().money(before.lowestCash)} · week ${before.lowestWeek}`);
  expect(troubles).toEqual([]);
  await context.close();
});

test('all changes tried stand in a table, the plan as it is first', async () => {
  const hash = `#/p/${dry.plan.id}/cash`;
  const { page, context } = await openApp(browser, { address: served.address, hash, device: desktop });
  const { best, others, noHelp } = liftsFrom(dry.plan, dry.results);
  await page.getByText('All changes tried', { exact: true }).click();
  const table = page.getByRole('region', { name: 'The plan with each change alone, the best first' });
  const rows = table.locator('tbody tr');
  await expect.poll(() => rows.count()).toBe(1 + best.length + others.length + noHelp.length);
  await expect.poll(() => rows.first().innerText()).toContain(say().money(dry.results.reading.lowestCash));
  await context.close();
});

test('the searches answer in place', async () => {
  const hash = `#/p/${dry.plan.id}/cash`;
  const { page, context, troubles } = await openApp(browser, {
    address: served.address,
    hash,
    device: phone,
  });
  await page.getByRole('button', { name: 'How late, how fast, how slow a sale', exact: true }).click();
  const answer = page.locator('.ff-solve-answer', { hasText: 'Each value was run through the whole plan' });
  await answer.waitFor();
  expect(await answer.innerText()).toMatch(
    /First order of Hot honey, 12 oz: week 2 .* at the latest; planned in week 0\./,
  );
  expect(troubles).toEqual([]);
  await context.close();
});

test.each(devices)('on %s: for a lender, from Cash, week by week', async (_, device) => {
  const hash = `#/p/${dry.plan.id}/cash`;
  const { page, context, troubles } = await openApp(browser, { address: served.address, hash, device });
  await page.getByRole('link', { name: /^For a lender/ }).click();
  await page.locator('h1', { hasText: 'For a lender' }).waitFor({ state: 'attached' });
  const from = weeksAroundLow(dry.results);
  const block = lenderFrom(dry.plan, dry.results, from);
  const shown = page.locator('.ff-lender');
  await expect.poll(() => shown.innerText()).toContain(`Weeks ${from} to ${from + 12}`);
  await expect.poll(() => shown.innerText()).toContain(say().money(block.collateral.amount));
  const owes = page.getByRole('region', { name: `Receivables at the end of week ${from - 1}` });
  expect(await owes.locator('tbody tr').last().innerText()).toContain(
    (block.receivables.total.sum / 100).toLocaleString('en-US', { minimumFractionDigits: 2 }),
  );
  const wrong = page.getByRole('region', { name: 'The plan as it is, and with one thing going wrong' });
  await wrong.waitFor();
  await expect.poll(() => wrong.innerText()).toContain(say().money(block.downside?.there.lowestCash ?? 0));
  await page.getByRole('button', { name: 'A week later', exact: true }).click();
  await expect.poll(() => shown.innerText()).toContain(`Weeks ${from + 1} to ${from + 13}`);
  await page.goBack();
  await page.locator('h1', { hasText: 'Cash' }).waitFor({ state: 'attached' });
  expect(troubles).toEqual([]);
  await context.close();
});
