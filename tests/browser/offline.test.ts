/**
 * With no network: from the second start on the whole app works, edits included, and says that it is offline. A newer
 * version that came meanwhile waits: it never reloads the page by itself, takes nothing that is being typed, and once
 * it is let in it finds every edit. The server is really stopped; the newer version is really another build.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  field,
  goTo,
  openApp,
  openTab,
  problemUnder,
  saved,
  settled,
  typeInto,
} from '../support/app-driver.ts';
import { startBrowser } from '../support/browser.ts';
import { buildApp, freePort, freshBuild, serveFolder } from '../support/served-app.ts';

const PLAN = 'demo-pays-but-runs-dry';
const NAME = 'Quillmoor hot honey, 180 stores';
const CASH = `#/p/${PLAN}/cash`;
const LABEL = 'Cash we have today';

let browser: Browser;

beforeAll(async () => {
  browser = await startBrowser();
});

afterAll(async () => {
  await browser?.close();
});

test('a second start needs no server: every view opens, an edit is kept over a reload, and it says it is offline', async () => {
  const server = await serveFolder({ folder: await freshBuild(), port: await freePort() });
  const { context, page, troubles } = await openApp(browser, { address: server.address, hash: '' });
  await workerReady(page);
  await page.close();
  await server.stop();
  await context.setOffline(true);

  const second = await openTab(context, { address: server.address, hash: '#/plans' });
  await second.page.locator('.ff-toast').getByText('Offline. Everything works.').waitFor();
  await expect
    .poll(() => second.page.getByRole('banner').getByText('Offline', { exact: true }).isVisible())
    .toBe(true);
  await second.page.locator('.ff-plan-link', { hasText: NAME }).tap();
  for (const view of ['Ladder', 'Deal', 'Promise', 'Cash']) {
    await second.page.getByRole('navigation').getByRole('link', { name: view }).tap();
    await second.page.locator('h1', { hasText: view }).waitFor({ state: 'attached' });
    await settled(second.page);
  }
  await second.page.getByRole('navigation').getByRole('link', { name: 'Table' }).tap();
  await second.page.locator('h1', { hasText: 'Across the table' }).waitFor({ state: 'attached' });
  await settled(second.page);
  await goTo(second.page, `#/p/${PLAN}/roll-out`, 'Roll-out');
  await goTo(second.page, `#/p/${PLAN}/inputs`, 'Inputs');
  await goTo(second.page, '#/seven', 'Seven numbers');
  await goTo(second.page, `${CASH}?sheet=why%3Acash%2FlowestCash`, 'Cash');
  await second.page.getByRole('dialog').getByRole('heading', { name: 'Where from?' }).waitFor();
  await goTo(second.page, CASH, 'Cash');
  await typeInto(second.page, LABEL, '91000');
  await saved(second.page);
  await second.page.reload();
  await settled(second.page);
  await expect.poll(() => field(second.page, LABEL).inputValue()).toBe('91000');

  const faults = second.troubles.filter((trouble) => !isNoNetwork(trouble));
  expect([...troubles, ...faults]).toEqual([]);
  await context.setOffline(false);
  await second.page.getByRole('banner').getByText('Offline', { exact: true }).waitFor({ state: 'detached' });
  await context.close();
});

test('a new version waits, keeps what is being typed, and has every edit once it is let in', async () => {
  const place = mkdtempSync(join(tmpdir(), 'firstfill-update-'));
  const newer = join(place, 'newer');
  const port = await freePort();
  await buildApp({ folder: newer, name: 'newer' });
  let server = await serveFolder({ folder: await freshBuild(), port });
  const { context, page, troubles } = await openApp(browser, { address: server.address, hash: CASH });
  await workerReady(page);
  await page.reload(); // from now on the page is the worker's
  await settled(page);
  const older = await buildName(page);
  expect(older).not.toBe('newer');

  await typeInto(page, LABEL, '64000');
  await saved(page);
  await field(page, LABEL).fill('64 thou');
  await page.evaluate(() => document.documentElement.setAttribute('data-same-page', ''));
  await server.stop();
  server = await serveFolder({ folder: newer, port });
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  const banner = page.locator('.ff-banner', { hasText: 'New version ready. Your edits are kept.' });
  await banner.waitFor();

  // It was installed behind a page that goes on as it was.
  expect(await page.locator('html[data-same-page]').count()).toBe(1);
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('64 thou');
  expect(await buildName(page)).toBe(older);
  await banner.getByRole('button', { name: 'Later' }).click();
  await banner.waitFor({ state: 'detached' });
  await page.reload();
  await settled(page);
  await expect.poll(() => buildName(page)).toBe(older);

  // Asked for again at the next start, and this time let in.
  await banner.waitFor();
  await banner.getByRole('button', { name: 'Use it now' }).click();
  // Opened anew once it took over, or to let it.
  await expect.poll(() => buildName(page).catch(() => 'on its way'), { timeout: 30_000 }).toBe('newer');
  await settled(page);
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('64 thou');
  await expect.poll(() => problemUnder(page, LABEL)).toContain('Still showing the result for 64000.');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(() => field(page, LABEL).inputValue()).toBe('64000');
  expect(troubles.filter((trouble) => !isNoNetwork(trouble))).toEqual([]);

  await context.close();
  await server.stop();
  rmSync(place, { recursive: true });
});

/** Installed, with every file of the app. */
async function workerReady(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === 'activated') return;
    await new Promise((done) => active?.addEventListener('statechange', done, { once: true }));
  });
}

/** The browser itself notes that its look for a newer service worker failed. */
function isNoNetwork(trouble: string): boolean {
  return /ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|fetching the script/.test(trouble);
}

async function buildName(page: Page): Promise<string | null> {
  return page.locator('meta[name="firstfill-build"]').getAttribute('content');
}
