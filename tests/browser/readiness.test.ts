/**
 * Readiness, as it is used: a starter set taken in, a gate done and undone, a slip tried on the calendar, owners on the
 * run-sheet, the calendar file read back, numbers with a wrong check digit; the full view for everybody, phone and desk,
 * light and dark. The calendar file is read by ical.js; the check digit is GS1's own example (629104150021, then 3).
 */
import ICAL from 'ical.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { downloaded, goTo, openTab, problemUnder, saved, typeInto } from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { axeFaults, bringAxe, fitFaults, openFolds, tabFaults, targetFaults } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const THREE = '#/p/demo-third-chain';
let browser: Browser;
let app: ServedApp;
let page: Page;
let troubles: string[];

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
  const context = await browser.newContext({ ...phone, locale: 'en-US', timezoneId: 'UTC' });
  context.setDefaultTimeout(20_000);
  await context.clock.setFixedTime('2026-01-12T09:00:00Z');
  await bringAxe(context);
  ({ page, troubles } = await openTab(context, { address: app.address, hash: `${THREE}/readiness` }));
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const row = (name: string) => page.locator('.ff-gate', { has: page.getByText(name, { exact: true }) });

test('a starter set is taken in, a gate is done, and undone', async () => {
  await page.getByRole('button', { name: 'What usually has to be ready' }).click();
  await page.getByRole('button', { name: /^Take in \d+$/ }).click();
  await row('Item and case numbers').click();
  const sheet = page.locator('dialog[open]');
  await sheet.getByText('done', { exact: true }).click();
  await sheet.getByRole('button', { name: 'Close' }).click();
  await page.locator('.ff-fold', { hasText: 'Done' }).waitFor();
  // What waited for it alone can begin now.
  expect(await page.locator('.ff-part', { hasText: 'Can begin now' }).innerText()).toContain('Artwork');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.locator('.ff-fold', { hasText: 'Done' }).waitFor({ state: 'detached' });
});

test('a slip tried on the calendar moves the opening there, costs money, and leaves the plan as it is', async () => {
  await page.setViewportSize(desktop.viewport);
  const late = page.locator('.ff-gate-foot .ff-gate-line').first();
  await page
    .getByLabel('If it slips', { exact: true })
    .selectOption({ label: 'Money for the fill in the bank' });
  await page.getByLabel('It takes longer by', { exact: true }).fill('60');
  const moved = page.locator('.ff-gate-strip .ff-slip-moves');
  await expect.poll(() => moved.innerText()).toMatch(/weeks later than planned, \w+ \d+, 2026/);
  await page.getByText(/^Against the plan: [\d,.]+ less contribution/).waitFor();
  await expect.poll(() => late.innerText()).toContain('later than planned');
  await page.locator('.ff-gate-calendar button', { hasText: 'Recall plan' }).focus();
  await page.keyboard.press('ArrowRight');
  expect(await page.getByLabel('It takes longer by', { exact: true }).inputValue()).toBe('1');
  await page.getByLabel('If it slips', { exact: true }).selectOption('');
  expect(await page.getByRole('button', { name: 'Undo', exact: true }).isEnabled()).toBe(true);
});

test('the full view is for everybody, on a phone and a desk, in light and dark', async () => {
  await page.getByText(/^From 2,000 runs/).waitFor();
  expect.soft(await axeFaults(page, null), 'desk').toEqual([]);
  expect.soft(await fitFaults(page), 'desk').toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.setViewportSize(phone.viewport);
  expect.soft(await tabFaults(page), 'Tab').toEqual([]);
  await openFolds(page);
  expect.soft(await targetFaults(page), 'targets').toEqual([]);
  expect.soft(await axeFaults(page, null), 'dark').toEqual([]);
  await page.setViewportSize({ width: 320, height: 640 });
  expect.soft(await fitFaults(page), '320 px').toEqual([]);
  await page.setViewportSize({ width: 640, height: 900 });
  await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
  expect.soft(await fitFaults(page), '200 %').toEqual([]);
  await page.evaluate(() => document.documentElement.style.removeProperty('font-size'));
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize(phone.viewport);
});

test('an owner has a list, and a calendar file of it with reminders', async () => {
  await row('Shelf life tested').click();
  const sheet = page.locator('dialog[open]');
  await sheet.getByLabel('Whose it is', { exact: true }).fill('Ana');
  expect.soft(await axeFaults(page, null, 'sheet'), 'gate').toEqual([]);
  await sheet.getByRole('button', { name: 'Close' }).click();
  await goTo(page, `${THREE}/run-sheet`, 'Run-sheet');
  await page.getByLabel('Whose', { exact: true }).selectOption({ label: 'Ana' });
  const text = await downloaded(page, page.getByRole('button', { name: 'Save as a calendar file' }));
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
  expect(events.map((event) => event.getFirstPropertyValue('summary'))).toEqual(['Late: Shelf life tested']);
  expect(events[0]?.getAllSubcomponents('valarm').length).toBeGreaterThan(0);
  expect.soft(await axeFaults(page, null), 'run-sheet').toEqual([]);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
  await page.emulateMedia({ media: null });
});

test('a wrong check digit is said with the right one; the case’s number follows; symbols are drawn', async () => {
  await goTo(page, `${THREE}/numbers`, 'Item and case numbers');
  await page.getByRole('button', { name: 'Add its numbers' }).first().click();
  await typeInto(page, 'Unit', '6291041500214');
  await expect.poll(() => problemUnder(page, 'Unit')).toContain('Expected 3 as the last digit');
  await typeInto(page, 'Unit', '6291041500213');
  await page.getByRole('button', { name: 'Take 16291041500210 for the case' }).click();
  await page.getByRole('img', { name: /unit: 6291041500213/ }).waitFor();
  await page.getByRole('img', { name: /case: 16291041500210/ }).waitFor();
  expect.soft(await axeFaults(page, null), 'numbers').toEqual([]);
  expect.soft(await fitFaults(page), 'numbers').toEqual([]);
});

test('the first view says what is next, what is late and what it costs a week', async () => {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `${THREE}/front`);
  const line = page.locator('section[aria-label="Readiness"] a');
  await line.getByText(/Next: .* 1 late; .* weeks later, at [\d,.]+ a week\./).waitFor();
  await saved(page);
  expect(troubles).toEqual([]);
});
