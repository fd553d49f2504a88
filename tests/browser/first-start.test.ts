/**
 * The first start on a phone: the example's four verdicts are in sight without a tap, the way to one's own beside
 * them, and every other example is one tap away. What the screen says is compared with what the model says when it is
 * run here, outside any browser.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  demos,
  exactly,
  goTo,
  openApp,
  saved,
  settled,
  typeInto,
  verdictsOf,
  verdictsOnFront,
} from '../support/app-driver.ts';
import { phone, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

test('shows the example’s four verdicts, its lesson and the ways on, all in the first screenful', async () => {
  const { context, page, troubles } = await openApp(browser, { address: app.address, hash: '' });
  const [first] = await demos();
  if (!first) throw new Error('There are no examples.');
  await expect.poll(() => verdictsOnFront(page)).toEqual(verdictsOf(first.results));
  const inSight = [
    page.getByText(first.lesson),
    ...(await page.locator('.ff-verdict-row').all()),
    page.getByRole('link', { name: 'Start yours: 7 numbers' }),
    page.getByRole('link', { name: 'Other examples' }),
  ];
  expect(inSight).toHaveLength(7);
  const rail = await page.getByRole('navigation').boundingBox();
  for (const each of inSight) {
    const box = await each.boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 1000) + (box?.height ?? 0)).toBeLessThanOrEqual(rail?.y ?? 0);
  }
  expect(troubles).toEqual([]);
  await context.close();
});

test('opens every example with one tap from the list, with the verdicts the model gives it', async () => {
  const { context, page, troubles } = await openApp(browser, { address: app.address, hash: '#/plans' });
  const all = await demos();
  expect(all.length).toBeGreaterThanOrEqual(4);
  for (const { plan, results, lesson } of all) {
    await page.locator('.ff-plan-link', { hasText: plan.name }).tap();
    await page.locator('h1', { hasText: exactly(plan.name) }).waitFor({ state: 'attached' });
    await settled(page);
    await expect.poll(() => verdictsOnFront(page)).toEqual(verdictsOf(results));
    await expect.poll(() => page.getByText(lesson).isVisible()).toBe(true);
    await page.goBack();
    await page.getByRole('heading', { name: 'Plans', exact: true }).waitFor();
  }
  expect(troubles).toEqual([]);
  await context.close();
});

test('keeps nothing of an example that is only looked at', async () => {
  const { context, page } = await openApp(browser, { address: app.address, hash: '#/plans' });
  const [first] = await demos();
  await page.locator('.ff-plan-link', { hasText: first?.plan.name ?? '' }).tap();
  await page.locator('.ff-verdict-row').first().waitFor();
  await page.goBack();
  await page.reload();
  await settled(page);
  await expect
    .poll(() => page.getByText('None yet. Seven numbers make one, in about a minute.').isVisible())
    .toBe(true);
  await context.close();
});

test('doesn’t wait for the script that judges plans, which is asked for at once', async () => {
  const context = await browser.newContext({ ...phone, locale: 'en-US' });
  const page = await context.newPage();
  let letThrough = (): void => {};
  const held = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  let asked = 0;
  await page.route(/\/gate-[^/]*\.js$/, async (route) => {
    asked += 1;
    await held;
    await route.continue();
  });
  await page.goto(app.address);
  await page.locator('.ff-verdict-row').nth(3).waitFor();
  const [first] = await demos();
  await expect.poll(() => verdictsOnFront(page)).toEqual(first && verdictsOf(first.results));
  expect(asked).toBe(1);
  letThrough();
  await goTo(page, `#/p/${first?.plan.id}/cash`, 'Cash');
  await typeInto(page, 'Cash we have today', '500k');
  await saved(page);
  expect((await page.locator('.ff-view-head .ff-verdict-line').innerText()).startsWith('Holds.')).toBe(true);
  await context.close();
});
