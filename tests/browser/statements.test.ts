/**
 * Statements as they are used: reached from Cash, stepped through, switched; every amount is the model's and opens to
 * itself; a total opens down to a document of one week and to what was typed; Back closes; print is A4 across.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { type PeriodKind, type StatementName, statementsOf } from '../../src/domain/statements/index.ts';
import type { LineName } from '../../src/domain/statements/lines.ts';
import { demos, goTo, looksKept, type OpenedApp, openApp } from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const PLAN = 'demo-pays-but-runs-dry';
const found = (await demos()).find(({ plan }) => plan.id === PLAN);
if (!found) throw new Error(`There is no example "${PLAN}".`);
const { results } = found;

let browser: Browser;
let app: ServedApp;
let opened: OpenedApp | null = null;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterEach(async () => {
  expect(opened?.troubles ?? []).toEqual([]);
  await opened?.context.close();
  opened = null;
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

async function open(device: typeof phone | typeof desktop, view: string): Promise<Page> {
  opened = await openApp(browser, { address: app.address, hash: `#/p/${PLAN}/${view}`, device });
  return opened.page;
}

/** What the model says of a line in every period of a kind, as it is written. */
function written(kind: PeriodKind, statement: StatementName, line: LineName): string[] {
  const look = new Intl.NumberFormat('en-US', { minimumFractionDigits: 2 });
  return statementsOf(results, kind).map(({ amounts }) =>
    look.format((amounts[statement][line] ?? Number.NaN) / 100).replace('-', '−'),
  );
}

/** The amounts of a row, without what it is called. */
async function rowOf(page: Page, label: string): Promise<string[]> {
  const row = page.locator('.ff-statements tr', {
    has: page.getByRole('rowheader', { name: label, exact: true }),
  });
  return row.locator('td').allInnerTexts();
}

const choose = (page: Page, label: string, value: string) =>
  page.getByLabel(label, { exact: true }).selectOption(value);
const sheet = (page: Page) => page.locator('dialog[open]');

test('on a phone: from Cash, one period at a time, to the week’s documents and back', async () => {
  const page = await open(phone, 'cash');
  await page.getByRole('link', { name: /^Statements/ }).click();
  await page.locator('h1', { hasText: 'Statements' }).waitFor({ state: 'attached' });
  const months = statementsOf(results, 'month');
  const start = months.findIndex(({ period }) => results.reading.lowestWeek <= period.toWeek);
  await expect
    .poll(() => rowOf(page, 'Net sales'))
    .toEqual([written('month', 'profitAndLoss', 'netSales')[start]]);

  await page.getByRole('button', { name: 'Later' }).click();
  await expect
    .poll(() => rowOf(page, 'Net sales'))
    .toEqual([written('month', 'profitAndLoss', 'netSales')[start + 1]]);

  await choose(page, 'Periods', 'retail');
  await choose(page, 'Statement', 'cashIndirect');
  const periods = statementsOf(results, 'retail');
  const week = months[start + 1]?.period.fromWeek ?? -1;
  const at = periods.findIndex(({ period }) => week <= period.toWeek);
  expect(await rowOf(page, 'Cash from operations')).toEqual([
    written('retail', 'cashDirect', 'operating')[at],
  ]);

  await choose(page, 'Periods', 'week');
  await page.getByRole('button', { name: `Documents of week ${week}`, exact: false }).click();
  await sheet(page)
    .getByRole('heading', { name: `Documents of week ${week}`, exact: false })
    .waitFor();
  await sheet(page)
    .getByRole('button', { name: /^Remittance, Tarrowby Grocers/ })
    .click();
  await sheet(page).getByText('Spoils allowance, Tarrowby Grocers').waitFor();
  await sheet(page)
    .getByRole('button', { name: `‹ Documents of week ${week}`, exact: false })
    .click();
  await sheet(page)
    .getByRole('button', { name: /^Overhead/ })
    .click();
  await sheet(page).getByRole('button', { name: 'Change Rent and wages' }).waitFor();
  await page.goBack();
  await sheet(page).waitFor({ state: 'detached' });
  expect(page.url()).toContain('/statements');
  await page.goBack();
  await page.locator('h1', { hasText: 'Cash' }).waitFor({ state: 'attached' });
});

test('what was chosen is kept over a reload, and the week is the one on Cash', async () => {
  const page = await open(phone, 'statements');
  await choose(page, 'Statement', 'balanceSheet');
  await choose(page, 'Periods', 'week');
  await page.getByRole('button', { name: 'Earlier' }).click();
  const week = results.reading.lowestWeek - 1;
  await expect.poll(() => rowOf(page, 'Assets')).toEqual([written('week', 'balanceSheet', 'assets')[week]]);
  await looksKept(page, 'week', String(week));
  await page.reload();
  await page.locator('.ff-statements').waitFor();
  await expect.poll(() => rowOf(page, 'Assets')).toEqual([written('week', 'balanceSheet', 'assets')[week]]);
  await goTo(page, `#/p/${PLAN}/cash`, 'Cash');
  await page.getByRole('heading', { name: `Week ${week} `, exact: false }).waitFor();
});

test('on a desk: a year of months beside the whole plan, a total down to a document of one week', async () => {
  const page = await open(desktop, 'statements');
  const year = (line: LineName) => written('month', 'profitAndLoss', line).slice(0, 12);
  for (const [label, line] of [
    ['Gross sales', 'grossSales'],
    ['Trade spend', 'tradeSpend'],
    ['Result before income tax', 'result'],
  ] as const) {
    await expect
      .poll(() => rowOf(page, label))
      .toEqual([...year(line), ...written('plan', 'profitAndLoss', line)]);
  }
  await page.getByLabel('With the parts of each line').click();
  expect((await rowOf(page, 'Slotting')).at(-1)).toBe('−32,400.00');

  // May: 45 doors a week from week 10, 180.00 a door: 3 weeks of 8,100.00 in weeks 10, 11 and 12.
  await page.getByRole('button', { name: /^Trade spend, May 2026/ }).click();
  await sheet(page)
    .getByRole('button', { name: /^Slotting: −24,300\.00/ })
    .click();
  await sheet(page)
    .getByRole('button', { name: /^week 10 .*−8,100\.00/ })
    .click();
  await sheet(page).getByText('Slotting, Tarrowby Grocers').waitFor();
  await sheet(page).getByRole('button', { name: 'Change Slotting, Tarrowby Grocers' }).waitFor();
  await sheet(page)
    .getByRole('button', { name: /^Documents of week 10/ })
    .click();
  await sheet(page)
    .getByRole('button', { name: /^Payment to a chain, Tarrowby Grocers/ })
    .waitFor();
  await page.keyboard.press('Escape');
  await sheet(page).waitFor({ state: 'detached' });
});

test('every amount of every statement opens to itself', async () => {
  const page = await open(phone, 'statements');
  let checked = 0;
  for (const statement of ['profitAndLoss', 'balanceSheet', 'cashDirect', 'cashIndirect']) {
    await choose(page, 'Statement', statement);
    const amounts = page.locator('.ff-statements tbody .ff-where');
    for (let index = 0; index < (await amounts.count()); index += 1) {
      const shown = await amounts.nth(index).innerText();
      await amounts.nth(index).click();
      expect.soft(await sheet(page).locator('.ff-why-value').innerText(), statement).toBe(shown);
      await page.keyboard.press('Escape');
      await sheet(page).waitFor({ state: 'detached' });
      checked += 1;
    }
  }
  expect(checked).toBeGreaterThan(25);
});

test('print: all four on A4 across (ISO 216: 297 by 210 mm), nothing of the controls', async () => {
  const page = await open(desktop, 'statements');
  await choose(page, 'Statement', 'all');
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const boxes = [...pdf.matchAll(/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  expect(boxes.length).toBeGreaterThan(0);
  expect(boxes.length).toBeLessThanOrEqual(3);
  for (const [, width, height] of boxes) {
    expect(Math.abs(Number(width) - (297 / 25.4) * 72)).toBeLessThan(1);
    expect(Math.abs(Number(height) - (210 / 25.4) * 72)).toBeLessThan(1);
  }
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.ff-statements table').count()).toBe(4);
  for (const control of [
    page.getByLabel('Statement', { exact: true }),
    page.getByRole('button', { name: 'Later' }),
  ]) {
    expect(await control.isVisible()).toBe(false);
  }
});
