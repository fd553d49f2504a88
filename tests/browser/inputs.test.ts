/**
 * The inputs of the roll-out as it really goes, as a person fills them in: every key that adds a part or a place gives a
 * plan that can be computed; a part is added, typed into, taken out, and undone; a season starts from a shape and is typed
 * over; a production line goes with what was made on it.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  field,
  goTo,
  type OpenedApp,
  openApp,
  problemUnder,
  saved,
  typeInto,
} from '../support/app-driver.ts';
import { startBrowser } from '../support/browser.ts';
import { openFolds } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const PLAN = 'demo-third-chain';
const CHAIN = 'almersfeld';
const PRODUCT = 'lemon';

let browser: Browser;
let app: ServedApp;
let opened: OpenedApp;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

beforeEach(async () => {
  opened = await openApp(browser, { address: app.address, hash: `#/p/${PLAN}/promise` });
  return async () => {
    expect(opened.troubles).toEqual([]);
    await opened.context.close();
  };
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

function key(page: Page, name: string) {
  return page.getByRole('button', { name, exact: true });
}

async function openSheet(page: Page, section: string): Promise<void> {
  await goTo(page, `#/p/${PLAN}/promise?sheet=${encodeURIComponent(`inputs:${section}`)}`, 'Promise');
  await page.locator('dialog[open]').waitFor();
}

async function undo(page: Page): Promise<void> {
  await page.keyboard.press('Control+z');
}

test('every key that adds something adds it, and nothing is refused', async () => {
  const { page } = opened;
  const sections = [
    ...['openings', 'ordering', 'deductions', 'moneyDown', 'promotions'].map((each) => `${each}:${CHAIN}`),
    ...['pack', 'supply', 'buying', 'stock'].map((each) => `${each}:${PRODUCT}`),
    ...['lines', 'overhead', 'funding', 'books'],
  ];
  let pressed = 0;
  for (const section of sections) {
    await openSheet(page, section);
    const sheet = page.locator('dialog[open]');
    const names = (await sheet.getByRole('button').allInnerTexts()).filter((name) => name.startsWith('Add '));
    expect(names.length, section).toBeGreaterThan(0);
    for (const name of names) {
      const before = await sheet.locator('fieldset').count();
      await sheet.getByRole('button', { name, exact: true }).click();
      expect(await sheet.getByRole('alert').allInnerTexts(), `${section}: ${name}`).toEqual([]);
      expect(await sheet.locator('fieldset').count(), `${section}: ${name}`).toBeGreaterThan(before);
      pressed += 1;
    }
    await openFolds(page);
  }
  expect(pressed).toBeGreaterThan(20);
  await saved(page);
});

describe.each([
  {
    section: `pack:${PRODUCT}`,
    part: 'sizes and weight',
    label: 'Case, length',
    text: '380',
    wrong: ['0', 'from 1 to'],
  },
  {
    section: `buying:${PRODUCT}`,
    part: 'rush orders',
    label: 'Costs more, a unit',
    text: '0.75',
    wrong: ['lots', 'an amount'],
  },
  {
    section: `ordering:${CHAIN}`,
    part: 'a depot',
    label: 'The depot orders up to',
    text: '5',
    wrong: ['60', 'from 0 to 52'],
  },
  {
    section: `deductions:${CHAIN}`,
    part: 'a charge for short deliveries',
    label: 'Charged below that',
    text: '4.5',
    wrong: ['120', '100'],
  },
] as const)('$part', ({ section, part, label, text, wrong }) => {
  test('is added with its guesses marked, typed into, taken out, and brought back by undo', async () => {
    const { page } = opened;
    await openSheet(page, section);
    const sheet = page.locator('dialog[open]');
    await key(page, `Add ${part}`).click();
    const own = sheet.locator('fieldset', { has: key(page, `Take out ${part}`) });
    const row = own.locator('.ff-field', { has: page.getByLabel(label, { exact: true }) });
    expect(await row.getByRole('button', { name: 'guess' }).count()).toBe(1);
    await typeInto(page, label, text);
    expect(await row.getByRole('button', { name: 'guess' }).count()).toBe(0);
    await expect.poll(() => field(page, label).inputValue()).toBe(text);

    await typeInto(page, label, wrong[0]);
    await expect.poll(() => problemUnder(page, label)).toContain(wrong[1]);
    await expect.poll(() => field(page, label).inputValue()).toBe(wrong[0]);
    await typeInto(page, label, text);

    await key(page, `Take out ${part}`).click();
    await key(page, `Add ${part}`).waitFor();
    await undo(page);
    await expect.poll(() => field(page, label).inputValue()).toBe(text);
    await saved(page);
  });
});

test('a season starts from a shape, and a week typed over makes it an own one', async () => {
  const { page } = opened;
  await openSheet(page, `season:${PRODUCT}`);
  const sheet = page.locator('dialog[open]');
  await field(page, 'Sells by season').selectOption({ label: 'Summer peak' });
  expect(await sheet.getByText('Highest in week 27 of the year, 1.3').count()).toBe(1);
  expect(await sheet.getByRole('button', { name: 'guess' }).count()).toBe(1);
  await openFolds(page);
  expect(await sheet.locator('.ff-season-week input').count()).toBe(52);
  await typeInto(page, 'Week 28', '1.8');
  expect(await sheet.getByText('Highest in week 28 of the year, 1.8').count()).toBe(1);
  expect(await sheet.getByText('in all it changes what a year sells').count()).toBe(1);
  await expect.poll(() => field(page, 'Sells by season').inputValue()).toBe('own');
  expect(await sheet.getByRole('button', { name: 'guess' }).count()).toBe(0);
  await typeInto(page, 'Week 3', 'much');
  expect(await sheet.getByRole('alert').innerText()).toMatch(/Week 3.*much.*a number, like 1\.25/s);
  await expect.poll(() => field(page, 'Week 3').inputValue()).toBe('much');
});

test('a line made under a product stands in the business, and taken out there frees the product', async () => {
  const { page } = opened;
  await openSheet(page, `supply:${PRODUCT}`);
  await field(page, 'Made on').selectOption({ label: 'a new line' });
  await typeInto(page, 'Of these, good', '96');
  await openSheet(page, 'lines');
  await typeInto(page, 'Name', 'Bottling');
  await key(page, 'Add shifts later on').click();
  await expect.poll(() => field(page, 'Shifts then').inputValue()).toBe('2');
  await key(page, 'Take out Bottling').click();
  await openSheet(page, `supply:${PRODUCT}`);
  await expect.poll(() => field(page, 'Made on').inputValue()).toBe('');
  await undo(page);
  await expect.poll(() => field(page, 'Made on').locator('option:checked').innerText()).toBe('Bottling');
  await expect.poll(() => field(page, 'Of these, good').inputValue()).toBe('96');
});
