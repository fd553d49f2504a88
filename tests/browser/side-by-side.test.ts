/**
 * Deals side by side, as a person opens them: one tap from the Deal, on a phone and on a desk, offline too. The figures are
 * the model's, written as the page writes them; the table scrolls in its own box, and Back puts it away.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { compareDeals } from '../../src/domain/talks/compare.ts';
import { type Demo, demos, openApp, openTab } from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let served: ServedApp;
let browser: Browser;
let demo: Demo;

beforeAll(async () => {
  served = await serveApp();
  browser = await startBrowser();
  const found = (await demos()).find(({ plan }) => plan.accounts.length > 2);
  if (!found) throw new Error('no example with three chains');
  demo = found;
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const box = (page: Page) => page.getByRole('region', { name: 'Deals side by side' });

/** A second start without a network: the worker of the first one serves it. */
async function opened(device: typeof phone | typeof desktop) {
  const first = await openApp(browser, { address: served.address, hash: '', device });
  await first.page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === 'activated') return;
    await new Promise((done) => active?.addEventListener('statechange', done, { once: true }));
  });
  const { context } = first;
  await first.page.close();
  await context.setOffline(true);
  const accountId = demo.plan.accounts[0]?.id ?? '';
  const app = await openTab(context, {
    address: served.address,
    hash: `#/p/${demo.plan.id}/deal/${accountId}`,
  });
  await app.page.getByRole('button', { name: 'Side by side', exact: true }).click();
  await box(app.page).waitFor();
  return { ...app, accountId };
}

test.each([
  ['a phone', phone],
  ['a desk', desktop],
] as const)(
  'on %s, offline: the model’s figures in one tap, in a box of their own; Back puts it away',
  async (_, device) => {
    const { page, context, troubles, accountId } = await opened(device);
    const other = demo.plan.accounts[1]?.id ?? '';
    const found = compareDeals(demo.plan, [
      { accountId, route: 'asPlanned' },
      { accountId, route: 'distributor' },
      { accountId: other, route: 'asPlanned' },
    ]);
    if (!found.ok) throw new Error('the example can’t be compared');
    const row = box(page).getByRole('row').filter({ hasText: 'Contribution a unit' });
    const shown = await row.getByRole('cell').allInnerTexts();
    expect(shown).toEqual(found.value.map(({ figures }) => figures?.contributionPerUnit.toFixed(2)));
    const headers = await box(page).getByRole('columnheader').allInnerTexts();
    expect(headers).toHaveLength(4);
    expect(headers[2]).toContain('distributor');
    expect(await page.getByText('US Census Bureau, 2023').count()).toBe(1);
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBe(0);

    await page
      .getByRole('button', { name: demo.plan.accounts[1]?.name ?? '', exact: true })
      .last()
      .click();
    await expect.poll(() => box(page).getByRole('columnheader').count()).toBe(3);

    await page.goBack();
    await box(page).waitFor({ state: 'detached' });
    // the browser itself notes that its look for a newer service worker failed
    const own = /ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|fetching the script/;
    expect(troubles.filter((trouble) => !own.test(trouble))).toEqual([]);
    await context.close();
  },
);
