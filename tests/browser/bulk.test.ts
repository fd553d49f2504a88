/**
 * A table pasted, previewed, taken over and taken back, on a phone and on a desk; a bad row keeps the whole table out and
 * the plan as it was; a file of a spreadsheet in another code page; the text is there after a reload. What the plan holds is
 * read from the file it is saved as, and compared with the plan changed by hand.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import {
  demos,
  exportedText,
  field,
  goTo,
  looksKept,
  openApp,
  planOf,
  saved,
  settled,
} from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { axeFaults, bringAxe, fitFaults } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let browser: Browser;
let app: ServedApp;

const plan = (await demos()).find(({ plan: { id } }) => id === 'demo-third-chain')?.plan as Plan;
const account = plan.accounts.find(({ waves }) => waves.length > 0) as Account;
const last = Math.max(
  ...account.waves.map(({ openWeek, doors, doorsPerWeek }) => openWeek + doors / doorsPerWeek),
);
/** A week well after the last opening. */
const week = Math.ceil(last) + 3;
const TABLE = 'The table, from a spreadsheet or a file';
const text = `chain\tweek\tstores\n${account.name}\t${week}\t12\n${account.name}\t${week + 1}\t5`;
const more = { id: `week-${week}`, openWeek: week, doors: 17, doorsPerWeek: 12 };

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const openBulk = (device: typeof phone | typeof desktop) =>
  openApp(browser, { address: app.address, hash: `#/p/${plan.id}/bulk/doors`, device });

async function wavesKept(page: Page): Promise<Account['waves'] | undefined> {
  await saved(page);
  return planOf(await exportedText(page, plan.name)).accounts.find(({ id }) => id === account.id)?.waves;
}

async function rowsShown(page: Page): Promise<string[][]> {
  await page.locator('.ff-table').waitFor();
  return page
    .locator('.ff-table tbody tr')
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
}

describe.each([
  ['a phone', phone],
  ['a desk', desktop],
])('on %s', (_, device) => {
  test('paste, preview, take over, undo', async () => {
    const { context, page, troubles } = await openBulk(device);
    await field(page, TABLE).fill(text);
    const rows = await rowsShown(page);
    expect(rows.map(([where, , now, then]) => [where, now, then])).toEqual([
      [account.name, '0', '12'],
      [account.name, '0', '5'],
    ]);
    expect(rows[0]?.[1]).toContain(`week ${week} (`);
    await page.getByRole('button', { name: 'Take over 2 changes' }).click();
    await page.getByText('2 values were taken over.').waitFor();
    expect(await wavesKept(page)).toEqual([...account.waves, more]);

    await goTo(page, `#/p/${plan.id}/bulk/doors`, 'Paste a table');
    await expect.poll(() => field(page, TABLE).inputValue()).toBe(text); // read from the store
    await page.getByText('Nothing changes: 2 are as in the plan.').waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByRole('button', { name: 'Take over 2 changes' }).waitFor();
    expect(await wavesKept(page)).toEqual(account.waves);
    expect(troubles).toEqual([]);
    await context.close();
  });

  test('a bad row is named by line and column, and keeps all of the table out', async () => {
    const { context, page, troubles } = await openBulk(device);
    await field(page, TABLE).fill(`${text}\n${account.name.slice(0, -1)}\twk9\t1`);
    const alert = page.getByRole('alert');
    await alert.getByText('One thing is wrong').waitFor();
    expect(await alert.innerText()).toContain(
      `Line 4, column 1 (chain): got “${account.name.slice(0, -1)}”; expected the name of a chain of the plan; the nearest is “${account.name}”.`,
    );
    expect(await page.getByRole('button', { name: /^Take over/ }).count()).toBe(0);
    await field(page, TABLE).fill(`${text}\n${account.name}\twk9\t1`);
    await alert.getByText('Line 4, column 2 (week): got “wk9”; expected a week from').waitFor();
    // Over a reload too.
    await looksKept(page, 'bulk-doors', JSON.stringify(`${account.name}\twk9`).slice(1, -1));
    await page.reload();
    await settled(page);
    await page.getByRole('alert').getByText('Line 4, column 2 (week)').waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

test('a file in another code page, with semicolons and decimal commas', async () => {
  const { context, page } = await openApp(browser, {
    address: app.address,
    hash: `#/p/${plan.id}/bulk/season`,
    device: desktop,
  });
  const item = plan.items[0];
  // "für" in windows-1252: FC is no UTF-8.
  const csv = Buffer.from(`Woche für;week;${item?.name}\r\nx;50;1,8\r\n`, 'latin1');
  await page.getByLabel('Choose a file').setInputFiles({ name: 's.csv', mimeType: 'text/csv', buffer: csv });
  // The file is read after it was chosen.
  await expect.poll(() => field(page, TABLE).inputValue()).toContain('Woche für;week');
  await page.getByRole('alert').getByText('Line 1, column 1 (product): got “Woche für”').waitFor();
  await page.getByLabel('3,40').check({ force: true });
  await field(page, TABLE).fill(`week;${item?.name}\n50;1,8`);
  await expect.poll(async () => (await rowsShown(page)).map((cells) => cells.at(-1))).toEqual(['1,8']);
  await context.close();
});

test('the plan’s own values change nothing, and are saved as a file', async () => {
  const { context, page } = await openApp(browser, {
    address: app.address,
    hash: `#/p/${plan.id}/bulk/prices`,
    device: phone,
  });
  await page.getByRole('button', { name: 'Put the plan’s values in' }).click();
  await page.getByText('Nothing changes:').waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save them as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('prices.csv');
  await context.close();
});

test('for everybody: axe in light and dark, nothing cut off at 320 px, with a bad row and with a good table', async () => {
  for (const table of [text, `${text}\n${account.name}\twk9\t1`]) {
    const { context, page } = await openBulk(phone);
    await bringAxe(context);
    await page.reload();
    await settled(page);
    await field(page, TABLE).fill(table);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axeFaults(page, null)).toEqual([]);
    }
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await fitFaults(page)).toEqual([]);
    await context.close();
  }
});
