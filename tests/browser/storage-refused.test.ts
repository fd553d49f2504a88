/**
 * A device that will not keep anything: storage switched off, opening refused, or no room left. The app says so in
 * words, computes all the same, and offers the plan as a file. The refusals are those of W3C "Indexed Database API 3.0":
 * open() fails with an error event, put() throws QuotaExceededError.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  demos,
  downloaded,
  field,
  goTo,
  openApp,
  planOf,
  resultsOf,
  saved,
  typeInto,
  verdictsOf,
  verdictsOnFront,
} from '../support/app-driver.ts';
import { startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const PLAN = 'demo-pays-but-runs-dry';
const NAME = 'Quillmoor hot honey, 180 stores';

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const withoutIt = (): void => {
  Object.defineProperty(window, 'indexedDB', { value: undefined });
};

const openFails = (): void => {
  IDBFactory.prototype.open = () => {
    const request = new EventTarget() as IDBOpenDBRequest;
    Object.defineProperty(request, 'error', { value: new DOMException('refused', 'InvalidStateError') });
    setTimeout(() => request.dispatchEvent(new Event('error')), 0);
    return request;
  };
};

describe.each([
  ['is not there', withoutIt],
  ['refuses to open', openFails],
])('storage that %s', (_, before) => {
  test('is said in words, and everything is worked out all the same', async () => {
    const { context, page, troubles } = await openApp(browser, { address: app.address, hash: '', before });
    const [first] = await demos();
    if (!first) throw new Error('There are no examples.');
    await expect.poll(() => verdictsOnFront(page)).toEqual(verdictsOf(first.results));
    const said = page.getByRole('alert').getByText('This device won’t store plans here', { exact: false });
    expect(await said.or(page.getByText("This device won't store plans here")).first().isVisible()).toBe(
      true,
    );

    await goTo(page, `#/p/${PLAN}/cash`, 'Cash');
    await typeInto(page, 'Cash we have today', '200000');
    await page.getByRole('status').getByText('Not saved', { exact: true }).waitFor();
    await goTo(page, `#/p/${PLAN}/front`, NAME);
    const { plan } = first;
    const richer = { ...plan, business: { ...plan.business, openingCashAmount: '200000' } };
    await expect.poll(() => verdictsOnFront(page)).toEqual(verdictsOf(resultsOf(richer)));

    await goTo(page, '#/plans', 'Plans');
    await page.getByText('Everything works meanwhile', { exact: false }).waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

test('a full device: “Not saved”, the plan offered as a file with the edit in it, and saved once there is room', async () => {
  const fillable = (): void => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...args) {
      const full = document.documentElement.hasAttribute('data-full');
      if (full && this.name === 'plans') throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    };
  };
  const hash = `#/p/${PLAN}/cash`;
  const { context, page, troubles } = await openApp(browser, {
    address: app.address,
    hash,
    before: fillable,
  });
  await page.evaluate(() => document.documentElement.setAttribute('data-full', ''));
  await typeInto(page, 'Cash we have today', '77000');
  await page.getByRole('status').getByText('Not saved', { exact: true }).waitFor();
  const banner = page.locator('.ff-banner');
  await expect
    .poll(() => banner.innerText())
    .toContain('This device has no room left for plans. Nothing was lost');
  const text = await downloaded(page, banner.getByRole('button', { name: 'Save as a file' }));
  expect(planOf(text).business.openingCashAmount).toBe('77000');

  await page.evaluate(() => document.documentElement.removeAttribute('data-full'));
  await typeInto(page, 'Cash we have today', '78000');
  await saved(page);
  expect(await banner.count()).toBe(0);
  await page.reload();
  await page.locator('h1').first().waitFor({ state: 'attached' });
  await expect.poll(() => field(page, 'Cash we have today').inputValue()).toBe('78000');
  expect(troubles).toEqual([]);
  await context.close();
});
