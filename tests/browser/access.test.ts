/**
 * Every view and every sheet for everybody: axe finds nothing in light or dark, every control can be hit with a thumb,
 * lies under nothing and is reached by Tab with a focus that shows; nothing is cut off or reaches past the screen at 320
 * px, nor with text of twice the size. Tables that scroll sideways say so.
 * Published: W3C "Web Content Accessibility Guidelines 2.2"; axe-core judges what a program can judge of it.
 */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { chooseFile, demos, goTo, openTab, settled, typeInto } from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { axeFaults, bringAxe, fitFaults, openFolds, tabFaults, targetFaults } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const ONE = '#/p/demo-pays-but-runs-dry';
const THREE = '#/p/demo-third-chain';

type Place = readonly [hash: string, heading: string];

const views: Place[] = [
  ['#/plans', 'Plans'],
  [`${ONE}/front`, 'Quillmoor hot honey, 180 stores'],
  [`${THREE}/ladder`, 'Ladder'],
  [`${THREE}/deal`, 'Deal'],
  [`${THREE}/cash`, 'Cash'],
  [`${THREE}/roll-out`, 'Roll-out'],
  [`${THREE}/readiness`, 'Readiness'],
  [`${THREE}/numbers`, 'Item and case numbers'],
  [`${THREE}/statements`, 'Statements'],
  [`${THREE}/lender`, 'For a lender'],
  [`${THREE}/promise`, 'Promise'],
  [`${ONE}/promise`, 'Promise'],
  [`${ONE}/investor`, 'For an investor'],
  [`${ONE}/money`, 'Money'],
  [`${ONE}/table`, 'Across the table'],
  [`${THREE}/table`, 'Across the table'],
  [`${ONE}/inputs`, 'Inputs'],
  [`${THREE}/bulk/doors`, 'Paste a table'],
  ['#/seven', 'Seven numbers'],
  ['#/nowhere', 'No such page'],
];

const sheet = (name: string): Place => [`${THREE}/cash?sheet=${encodeURIComponent(name)}`, 'Cash'];
/** The same of a plan that holds what these sections may leave out. */
const full = (name: string): Place => [
  `#/p/demo-twelve-chains/cash?sheet=${encodeURIComponent(name)}`,
  'Cash',
];
const longerLook = [
  ...['ordering:tollerby', 'deductions:tollerby', 'deductions:pennimoor', 'openings:wendlecote'],
  ...['pack:plum', 'supply:plum', 'season:plum', 'buying:plum', 'buying:pepper', 'lines'],
];
const chainSections = ['hands', 'listings', 'openings', 'terms', 'allowances', 'moneyDown', 'promotions'];
const productSections = ['cost', 'pack', 'supply', 'stock'];
const planSections = ['market', 'cash', 'overhead', 'funding', 'books', 'verdictLines'];
const talksSheets = ['more', 'terms', 'said', 'worth', 'beside', 'prepare'];
const sheets: Place[] = [
  ...talksSheets.map((name): Place => [`${THREE}/table?sheet=${name}`, 'Across the table']),
  [`${THREE}/readiness?sheet=starters`, 'Readiness'],
  ['#/plans?sheet=about', 'Plans'],
  ['#/plans?sheet=plan%3Ademo-third-chain', 'Plans'],
  sheet('why:cash/lowestCash'),
  sheet('why:verdict/deal'),
  sheet('why:statement/netSales/13/16'),
  sheet('why:documents/13'),
  ...chainSections.map((name) => sheet(`inputs:${name}:almersfeld`)),
  ...productSections.map((name) => sheet(`inputs:${name}:lemon`)),
  ...planSections.map((name) => sheet(`inputs:${name}`)),
  ...longerLook.map((name) => full(`inputs:${name}`)),
];

let browser: Browser;
let app: ServedApp;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
  context = await browser.newContext({ ...phone, locale: 'en-US' });
  await bringAxe(context);
  ({ page } = await openTab(context, { address: app.address, hash: '#/plans' }));
});

beforeEach(async () => {
  await page.setViewportSize(phone.viewport);
  await page.emulateMedia({ colorScheme: 'light' });
  await page.evaluate(() => document.documentElement.style.removeProperty('font-size'));
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

describe.each([...views, ...sheets])('%s', (hash, heading) => {
  test('is reached by Tab, hit by a thumb, sound by axe in light and dark, and fits', async () => {
    await show(hash, heading);
    expect.soft(await tabFaults(page), 'Tab').toEqual([]);
    await openFolds(page);
    expect.soft(await targetFaults(page), 'targets').toEqual([]);
    // The page behind a sheet is among the views.
    const within = hash.includes('sheet=') ? 'sheet' : 'page';
    expect.soft(await axeFaults(page, null, within), 'light').toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect.soft(await axeFaults(page, ['color-contrast'], within), 'dark').toEqual([]);
    await page.setViewportSize({ width: 320, height: 640 });
    expect.soft(await fitFaults(page), '320 px').toEqual([]);
    await page.setViewportSize({ width: 640, height: 900 });
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    expect.soft(await fitFaults(page), '200 %').toEqual([]);
  });
});

describe('from 900 px', () => {
  test.each(views)('%s breaks no rule of axe and fits', async (hash, heading) => {
    await page.setViewportSize(desktop.viewport);
    await show(hash, heading);
    await openFolds(page);
    expect(await axeFaults(page, null)).toEqual([]);
    expect(await fitFaults(page)).toEqual([]);
  });

  test('an open sheet takes nothing of the page away', async () => {
    await page.setViewportSize(desktop.viewport);
    for (const [hash, heading] of [
      [`${ONE}/front?sheet=about`, 'Quillmoor hot honey, 180 stores'],
      [`${THREE}/deal?sheet=about`, 'Deal'],
      [`${THREE}/cash?sheet=about`, 'Cash'],
    ] as const) {
      await show(hash, heading);
      expect(await targetFaults(page), hash).toEqual([]);
    }
  });
});

test('Escape closes a sheet and gives the focus back to what opened it', async () => {
  for (const size of [phone.viewport, desktop.viewport]) {
    await page.setViewportSize(size);
    await show(`${ONE}/cash`, 'Cash');
    const opener = page.getByRole('button', { name: 'How it is judged' });
    await opener.focus();
    await page.keyboard.press('Enter');
    await page.locator('dialog[open]').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    expect(await opener.evaluate((button) => button === document.activeElement)).toBe(true);
  }
});

test('a plan that can’t be computed says so, and breaks no rule', async () => {
  await show('#/plans', 'Plans');
  const [first] = await demos();
  if (!first) throw new Error('There are no examples.');
  const accounts = first.plan.accounts.map((account) => ({
    ...account,
    hands: account.hands.map((hand) => ({ ...hand, rule: { by: 'fixed', amount: '60', per: 'unit' } })),
  }));
  const plan = { ...first.plan, id: 'unsolvable', accounts };
  await chooseFile(page, 'unsolvable.json', JSON.stringify({ format: 'firstfill-plan', plan }));
  await page.getByText('This plan can’t be computed yet.').waitFor();
  expect(await axeFaults(page, null)).toEqual([]);
  expect(await targetFaults(page)).toEqual([]);
  await page.getByRole('link', { name: 'Mend it in the inputs' }).click();
  await page.locator('h1', { hasText: 'Inputs' }).waitFor({ state: 'attached' });
  expect(await axeFaults(page, null)).toEqual([]);
});

test('a field with a refused text breaks no rule either', async () => {
  await show(`${ONE}/cash`, 'Cash');
  await typeInto(page, 'Cash we have today', 'lots');
  expect(await axeFaults(page, null)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await axeFaults(page, ['color-contrast'])).toEqual([]);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
});

async function show(hash: string, heading: string): Promise<void> {
  await goTo(page, '#/nowhere', 'No such page');
  await goTo(page, hash, heading);
  await settled(page);
  if (hash.includes('sheet=')) await page.locator('dialog[open]').waitFor();
  await page.locator('.ff-chart-loading').first().waitFor({ state: 'detached' });
}
