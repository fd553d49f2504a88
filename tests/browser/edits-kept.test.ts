/**
 * Edits are saved as they are made: what was typed is there after the page was closed, killed or loaded again, refused
 * texts with their sentences too; undo takes it back, and that is kept as well; and the address brings back the view.
 * The page is killed by the browser's own crash command (Chrome DevTools Protocol, Page.crash).
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import {
  exportedText,
  field,
  goTo,
  type OpenedApp,
  openApp,
  openTab,
  planOf,
  problemUnder,
  saved,
  settled,
  typeInto,
} from '../support/app-driver.ts';
import { startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const PLAN = 'demo-pays-but-runs-dry';
const NAME = 'Quillmoor hot honey, 180 stores';
const CASH = `#/p/${PLAN}/cash`;
const LABEL = 'Cash we have today';

let browser: Browser;
let app: ServedApp;
let opened: OpenedApp;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

beforeEach(async () => {
  opened = await openApp(browser, { address: app.address, hash: CASH });
  return () => opened.context.close();
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

test('a value typed a moment before the page is closed is there in the next one', async () => {
  await field(opened.page, LABEL).fill('81234');
  await opened.page.close();
  const again = await openTab(opened.context, { address: app.address, hash: CASH });
  await expect.poll(() => field(again.page, LABEL).inputValue()).toBe('81234');
});

test('a value that was saved survives a crash of the page, and the plan is a plan of one’s own from then on', async () => {
  const { page, context } = opened;
  await field(page, LABEL).fill('81k');
  await saved(page);
  await crash(page);
  const again = await openTab(context, { address: app.address, hash: '' });
  expect(new URL(again.page.url()).hash).toBe(CASH);
  await expect.poll(() => field(again.page, LABEL).inputValue()).toBe('81000');
  await goTo(again.page, '#/plans', 'Plans');
  await expect.poll(() => again.page.getByText(NAME, { exact: true }).count()).toBe(1);
  const own = again.page.locator('section', { has: again.page.getByText('On this device') });
  expect(await own.getByText(NAME, { exact: true }).count()).toBe(1);
});

test('undo takes an edit back and redo brings it again; both are kept over a reload', async () => {
  const { page } = opened;
  const before = await field(page, LABEL).inputValue();
  await typeInto(page, LABEL, '12345');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(() => field(page, LABEL).inputValue()).toBe(before);
  await saved(page);
  await page.reload();
  await settled(page);
  await expect.poll(() => field(page, LABEL).inputValue()).toBe(before);
  await typeInto(page, LABEL, '12345');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('12345');
  await saved(page);
  await page.reload();
  await settled(page);
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('12345');
});

test('a refused text stays, is named under its field, and is there after a reload; the plan keeps its last good value', async () => {
  const { page } = opened;
  await typeInto(page, LABEL, '81000');
  await typeInto(page, LABEL, 'lots');
  const sentence = await problemUnder(page, LABEL);
  expect(sentence).toMatch(
    /^Cash we have today: got “lots”\. Expected .+\. Still showing the result for 81000\./,
  );
  await saved(page);
  await page.reload();
  await settled(page);
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('lots');
  await expect.poll(() => problemUnder(page, LABEL)).toBe(sentence);
  expect(await page.locator('.ff-older').count()).toBeGreaterThan(0);
  expect(planOf(await exportedText(page, NAME)).business.openingCashAmount).toBe('81000');
  await goTo(page, CASH, 'Cash');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('81000');
  expect(await page.locator('.ff-older').count()).toBe(0);
});

test('every view is at the address it had before a reload, the chosen chain and product and an open sheet too', async () => {
  const { page } = opened;
  const third = '#/p/demo-third-chain';
  for (const [hash, heading, proof] of [
    [`${third}/ladder/dornwies/ginger`, 'Ladder', null],
    [`${third}/deal/kestrup`, 'Deal', null],
    [`${third}/cash?sheet=why%3Acash%2FlowestCash`, 'Cash', 'Where from?'],
  ] as const) {
    await goTo(page, hash, heading);
    const chosen = await chosenIn(page);
    const at = page.url();
    await page.reload();
    await settled(page);
    expect(page.url()).toBe(at);
    await expect.poll(() => page.locator('h1', { hasText: heading }).count()).toBe(1);
    await expect.poll(() => chosenIn(page)).toEqual(chosen);
    if (proof !== null) await page.getByRole('heading', { name: proof }).waitFor();
  }
});

test('Back closes the sheet first, then goes to the view before', async () => {
  const { page } = opened;
  await goTo(page, `#/p/${PLAN}/deal`, 'Deal');
  await page.getByRole('button', { name: 'How it is judged' }).click();
  await page.getByRole('dialog').waitFor();
  await page.goBack();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await expect.poll(() => page.locator('h1', { hasText: 'Deal' }).count()).toBe(1);
  await page.goBack();
  await page.locator('h1', { hasText: 'Cash' }).waitFor({ state: 'attached' });
});

test('a deleted plan comes back whole with Undo, also after it was changed', async () => {
  const { page } = opened;
  await typeInto(page, LABEL, '81000');
  await saved(page);
  const before = await exportedText(page, NAME);
  await page.getByRole('button', { name: `More for ${NAME}` }).click();
  await page.getByRole('button', { name: 'Delete', exact: true }).click();
  const toast = page.locator('.ff-toast');
  await toast.getByText('was deleted').waitFor();
  await toast.getByRole('button', { name: 'Undo' }).click();
  const own = page.locator('section', { has: page.getByText('On this device') });
  await own.getByText(NAME, { exact: true }).waitFor();
  expect(await exportedText(page, NAME)).toBe(before);
});

/** The page's process dies; nothing of the page runs any more. */
async function crash(page: Page): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  devtools.send('Page.crash').catch(() => undefined);
  await crashed;
  await page.close();
}

/** What the lists of chain and product stand at. */
async function chosenIn(page: Page): Promise<string[]> {
  return page
    .locator('main select')
    .evaluateAll((lists) => lists.map((list) => (list as HTMLSelectElement).value));
}
