/**
 * What follows from a pack, beside its fields: nothing while it isn't known; then the layer drawn case by case, what a pallet
 * and each load hold, and a warning where the plan's own count can't lie. Freight by the load is offered from then on, and
 * what it comes to is the model's. Expected counts are the worked ones of tests/worked/pack.test.ts.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { landedOf } from '../../src/domain/ladder/landed.ts';
import type { Item } from '../../src/domain/plan/index.ts';
import { demos, exportedText, openApp, planOf, saved, typeInto } from '../support/app-driver.ts';
import { phone, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let browser: Browser;
let app: ServedApp;

const [first] = await demos();
if (!first) throw new Error('There are no examples.');
const { plan } = first;
const item = plan.items[0] as Item;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

test('a pack added, a layer that can’t lie, freight by the container', async () => {
  const hash = `#/p/${plan.id}/inputs`;
  const { context, page, troubles } = await openApp(browser, { address: app.address, hash, device: phone });
  await page.evaluate((sheet) => {
    location.hash += `?sheet=${encodeURIComponent(sheet)}`;
  }, `inputs:pack:${item.id}`);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Cases on a pallet').waitFor();
  expect(await dialog.getByRole('region', { name: 'What fits' }).count()).toBe(0);
  await dialog.getByRole('button', { name: /sizes and weight/i }).click();

  const fits = dialog.getByRole('region', { name: 'What fits' });
  await fits.getByText('One layer: cases of 400 × 300 mm on 1,200 × 1,000 mm').waitFor();
  expect(await fits.locator('.ff-layer-case').count()).toBe(10);
  await typeInto(page, 'Cases in a layer', '12');
  await fits
    .getByText('12 cases in a layer don’t fit: at most 10 of 400 × 300 mm lie on 1,200 × 1,000 mm.')
    .waitFor();
  await typeInto(page, 'Cases in a layer', '10');
  await typeInto(page, 'Cases on a pallet', '70');
  // 70 x 6 kg and 25 kg are 445 kg: 10 stand in a 20 ft container, 28,180 kg would carry 63.
  await fits.getByText('20 ft container: 10 pallets').waitFor();
  await fits.getByText('10 on the floor, 63 by weight: the floor limits. 4,450 kg.').waitFor();

  await page.evaluate((sheet) => {
    location.hash = location.hash.replace(/\?.*/, `?sheet=${encodeURIComponent(sheet)}`);
  }, `inputs:cost:${item.id}`);
  await dialog.locator('summary').first().click();
  await dialog.getByLabel('Stated as').first().selectOption({ label: 'so much a full load' });
  await dialog.getByLabel('Which').selectOption({ label: '20 ft container' });
  await saved(page);
  const kept = planOf(await exportedText(page, plan.name)).items[0] as Item;
  const rule = kept.costLines[0]?.rule;
  if (rule?.by !== 'load') throw new Error('The line is not stated by the load.');
  expect(rule.load).toBe('container20');
  const landed = landedOf(kept);
  const perUnit = Number(rule.amount) / (700 * kept.caseUnits);
  expect(landed.ok && landed.value.lines[0]?.amount.toNumber()).toBeCloseTo(perUnit, 9);
  expect(troubles).toEqual([]);
  await context.close();
});
