/**
 * The Promise view and the investor's page in a browser: the ruler says in words what the model says, a rung moves the
 * verdict in the same frame and comes back by undo, bad input is told and loses nothing, the range drawn in workers is
 * the one that the model draws alone, and the page for an investor fits the width of A4 in print.
 * Published: ISO 216 (A4 is 210 mm wide: 688 px of 96 an inch inside margins of 14 mm).
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import { chanceWords } from '../../src/domain/promise/chance-words.ts';
import { placeClaim } from '../../src/domain/promise/place-claim.ts';
import { rangeOf } from '../../src/domain/promise/range/index.ts';
import {
  demos,
  field,
  goTo,
  type OpenedApp,
  openApp,
  problemUnder,
  resultsOf,
  typeInto,
} from '../support/app-driver.ts';
import { startBrowser } from '../support/browser.ts';
import { fitFaults } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const ONE = 'demo-pays-but-runs-dry';
let browser: Browser;
let app: ServedApp;
let opened: OpenedApp;
let page: Page;
let plan: Plan;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
  opened = await openApp(browser, { address: app.address, hash: `#/p/${ONE}/promise` });
  ({ page } = opened);
  const found = (await demos()).find((each) => each.plan.id === ONE);
  if (!found) throw new Error(`There is no example ${ONE}.`);
  ({ plan } = found);
});

afterAll(async () => {
  expect(opened?.troubles).toEqual([]);
  await browser?.close();
  await app?.stop();
});

const head = (): Promise<string> => page.locator('.ff-view-head .ff-verdict-line').innerText();

test('the ruler says the range and the claim as the model has them', async () => {
  const { placed } = placeClaim(plan, resultsOf(plan).pass);
  if (placed === null) throw new Error('The example has no claim that can be placed.');
  const name = (await page.locator('.ff-rule').getAttribute('aria-label')) ?? '';
  expect(name).toContain(`${placed.at(0.1)} doors to ${placed.at(0.9)} doors in 8 of 10 futures`);
  expect(name).toContain(`The claim of ${Number(placed.claim.amount)} doors`);
  expect(name).toContain(`Planned: ${placed.planned} doors.`);
});

test('a surer rung lifts the chance at once, and undo brings the old one back', async () => {
  const before = await head();
  expect(before.startsWith('Tight.'), before).toBe(true);
  await page.locator('summary', { hasText: 'Tarrowby Grocers' }).click();
  await field(page, 'How far it is agreed').selectOption('orderInHand');
  const accounts = plan.accounts.map((account) => ({
    ...account,
    standing: account.standing && { ...account.standing, rung: 'orderInHand' as const },
  }));
  const { chance } = placeClaim({ ...plan, accounts }, resultsOf(plan).pass).placed ?? { chance: -1 };
  const words = chanceWords(chance, (share) => `${Math.round(100 * share)}\u00a0%`, [0.2, 0.5]);
  expect(await head()).toContain(`A chance of ${words} of`);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  expect(await head()).toBe(before);
});

test('what can’t be is told at its field, and the last good figures stay', async () => {
  const before = await head();
  await typeInto(page, 'Late by at most', '1');
  expect(await problemUnder(page, 'Late by at most')).toMatch(
    /most likely slip, 2 weeks, not to pass the longest, 1 week/,
  );
  await page.locator('summary', { hasText: 'Change the claim' }).click();
  await typeInto(page, 'How many doors', 'lots');
  expect(await problemUnder(page, 'How many doors')).toMatch(/lots/);
  expect(await head()).toBe(before);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  expect(await field(page, 'How many doors').inputValue()).toBe('170');
});

test('a claim taken out leaves a view that says what is missing', async () => {
  await page.getByRole('button', { name: 'Take out the claim' }).click();
  await page.getByText('No claim yet. Add what was promised').waitFor();
  expect((await head()).startsWith('Not known yet.')).toBe(true);
  await page.getByRole('button', { name: 'Add the claim' }).click();
  await page.locator('.ff-rule').waitFor();
  expect(await field(page, 'How many doors').inputValue()).toBe('180');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  expect(await field(page, 'How many doors').inputValue()).toBe('170');
});

test('the range drawn in workers is the range that the model draws alone', async () => {
  await page.getByRole('button', { name: 'Draw the range' }).click();
  await page.getByText('of them run exactly').waitFor();
  const { need } = rangeOf({ plan, results: resultsOf(plan), seed: 1 }, 10_000);
  const shown = page.locator('.ff-figure', { hasText: 'Enough in 8 of 10' }).locator('.ff-figure-value');
  expect(await shown.innerText()).toBe(Math.round(need.p80 / 100).toLocaleString('en-US'));
});

test('the page for an investor holds all of it, and fits A4 in print', async () => {
  await goTo(page, `#/p/${ONE}/investor`, 'For an investor');
  for (const part of ['What stores sold', 'How far each account is agreed', 'What would have to be true'])
    await page.getByRole('heading', { name: part }).waitFor();
  await page.getByText('Computed, not advice.').waitFor();
  await page.getByText('Yes to 180 stores, by mail').waitFor();
  await page.setViewportSize({ width: 688, height: 971 });
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Print these pages' }).isVisible()).toBe(false);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(688);
  expect(await fitFaults(page)).toEqual([]);
  expect(await page.evaluate(inGrids)).toEqual([]);
});

/** What may not be broken but lies in a grid: moved to the next sheet, it would lie over what comes after it. */
function inGrids(): string[] {
  const paper = document.querySelector('.ff-investor');
  const whole = [...(paper?.querySelectorAll('*') ?? [])].filter(
    (each) => getComputedStyle(each).breakInside === 'avoid' && each.getClientRects().length > 0,
  );
  if (whole.length < 5) return [`only ${whole.length} parts may not be broken`];
  return whole.flatMap((each) => {
    for (let around = each.parentElement; around !== null; around = around.parentElement) {
      if (/grid|flex/.test(getComputedStyle(around).display))
        return [`${each.className} in ${around.className}`];
      if (around === paper) return [];
    }
    return [];
  });
}
