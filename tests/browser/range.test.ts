/**
 * The range on Cash, as a person uses it: asked for, drawn in real workers beside the page, with the figures that the
 * command line prints; an edit draws it anew. What held the page's thread up is printed, to be read on a quiet machine.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { RANGE_DRAWS, RANGE_SEED } from '../../src/app/range.ts';
import { rangeOf } from '../../src/domain/promise/range/index.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { type Demo, demos, openApp } from '../support/app-driver.ts';
import { phone, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let served: ServedApp;
let browser: Browser;
let third: Demo;

beforeAll(async () => {
  served = await serveApp();
  browser = await startBrowser();
  const found = (await demos()).find(({ plan }) => plan.id === 'demo-third-chain');
  if (!found) throw new Error('the example with a third chain is gone');
  third = found;
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** Tasks of the page's own thread that held it up, as the browser tells them (W3C "Long Tasks": 50 ms and more). */
const watchTasks = () => {
  const held: number[] = [];
  Object.assign(globalThis, { held });
  new PerformanceObserver((list) => held.push(...list.getEntries().map(({ duration }) => duration))).observe({
    type: 'longtask',
  });
};

const heldSoFar = (page: Page) =>
  page.evaluate(() => (globalThis as unknown as { held: number[] }).held.slice());

test('on a phone: a fan of the figures the command line has, kept up with an edit', async () => {
  const { plan, results } = third;
  const opened = await openApp(browser, {
    address: served.address,
    hash: `#/p/${plan.id}/cash`,
    device: phone,
  });
  const { page, context, troubles } = opened;
  const key = page.getByRole('button', { name: 'Show the range' });
  await key.waitFor();
  await page.evaluate(watchTasks);
  await key.click();
  const exact = page.getByText(/A quicker pass than the plan’s own/);
  await exact.waitFor({ timeout: 60_000 });
  const drawing = await heldSoFar(page);
  const range = rangeOf({ plan, results, seed: RANGE_SEED }, RANGE_DRAWS);
  const { currency, minorDigits, compiled } = results;
  const say = sayFor({ currency, minorDigits, startDay: compiled.startDay });
  const needs = page.getByText(/^Half of them need /);
  expect(range.need.p50).toBe(0);
  await expect.poll(() => needs.innerText()).toContain('need no more than there is');
  for (const share of ['p80', 'p95'] as const) {
    await expect.poll(() => needs.innerText()).toContain(say.money(range.need[share]));
  }
  expect(await page.locator('.ff-chart-key').first().innerText()).toContain('Half of the draws below');
  const before = await needs.innerText();
  const cash = page.getByLabel('Cash we have today', { exact: true }).first();
  await cash.fill('10000');
  await cash.blur();
  await expect.poll(() => needs.innerText().catch(() => before), { timeout: 60_000 }).not.toBe(before);
  const edited = (await heldSoFar(page)).slice(drawing.length);
  const told = (held: number[]) => held.map((ms) => ms.toFixed(0)).join(', ') || 'none';
  console.log(
    `page's tasks of 50 ms and more: drawing ${told(drawing)}; an edit and drawing anew ${told(edited)}`,
  );
  expect(troubles).toEqual([]);
  await context.close();
});
