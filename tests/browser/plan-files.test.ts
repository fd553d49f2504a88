/**
 * Plans as files, through the screen: a broken one is refused in a sentence that names the field, what came and what was
 * expected, and nothing on the device changes; a sound one goes out of one device and into another with the same text and
 * the same verdicts. What JSON is, is RFC 8259's to say; the broken files break it, or the plan's own format.
 */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import {
  chooseFile,
  demos,
  exactly,
  exportedText,
  goTo,
  openApp,
  saved,
  settled,
  typeInto,
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

describe('a broken file', () => {
  test('is refused in words that say where, what came and what was expected, and changes nothing', async () => {
    const { context, page, troubles } = await openApp(browser, {
      address: app.address,
      hash: `#/p/${PLAN}/cash`,
    });
    await typeInto(page, 'Cash we have today', '70000');
    await saved(page);
    const before = await exportedText(page, NAME);
    for (const { name, text, said } of await brokenFiles()) {
      await chooseFile(page, name, text);
      const note = page.getByRole('alert').filter({ hasText: said });
      await note.first().waitFor();
      await expect.poll(() => note.first().innerText(), { message: name }).toMatch(said);
      expect(new URL(page.url()).hash, name).toBe('#/plans');
      await expect.poll(() => ownPlans(page), { message: name }).toEqual([NAME]);
      await note.first().getByRole('button', { name: 'Close' }).click();
      await note.first().waitFor({ state: 'detached' });
    }
    expect(await exportedText(page, NAME)).toBe(before);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a sound file', () => {
  test('gives the same plan, text and verdicts on another device', async () => {
    const one = await openApp(browser, { address: app.address, hash: `#/p/${PLAN}/cash` });
    await typeInto(one.page, 'Cash we have today', '123456.78');
    await saved(one.page);
    const text = await exportedText(one.page, NAME);
    await goTo(one.page, `#/p/${PLAN}/front`, NAME);
    const verdicts = await verdictsOnFront(one.page);
    // The example's own id is taken wherever the examples are: give it one that is free.
    const moved = text.replace(`"id": "${PLAN}"`, '"id": "moved"');
    expect(moved).not.toBe(text);
    await one.context.close();

    const other = await openApp(browser, { address: app.address, hash: '#/plans' });
    await chooseFile(other.page, 'moved.json', moved);
    await other.page.locator('h1', { hasText: exactly(NAME) }).waitFor({ state: 'attached' });
    expect(new URL(other.page.url()).hash).toBe('#/p/moved/front');
    await expect.poll(() => verdictsOnFront(other.page)).toEqual(verdicts);
    await saved(other.page);
    await other.page.reload();
    await settled(other.page);
    await expect.poll(() => verdictsOnFront(other.page)).toEqual(verdicts);
    await goTo(other.page, '#/plans', 'Plans');
    const own = ownSection(other.page);
    await own.getByRole('button', { name: `More for ${NAME}` }).click();
    const [download] = await Promise.all([
      other.page.waitForEvent('download'),
      other.page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('Quillmoor-hot-honey-180-stores.firstfill.json');
    expect(readFileSync(await download.path(), 'utf8')).toBe(moved);
    expect([...one.troubles, ...other.troubles]).toEqual([]);
    await other.context.close();
  });

  test('of a plan that is still here becomes a second plan and overwrites nothing', async () => {
    const { context, page } = await openApp(browser, { address: app.address, hash: `#/p/${PLAN}/cash` });
    await typeInto(page, 'Cash we have today', '70000');
    await saved(page);
    const text = await exportedText(page, NAME);
    await chooseFile(page, 'again.json', text);
    await page.locator('h1', { hasText: exactly(NAME) }).waitFor({ state: 'attached' });
    expect(new URL(page.url()).hash).not.toBe(`#/p/${PLAN}/front`);
    await goTo(page, '#/plans', 'Plans');
    await expect.poll(() => ownPlans(page)).toEqual([NAME, NAME]);
    await context.close();
  });
});

interface Broken {
  readonly name: string;
  readonly text: string;
  readonly said: RegExp;
}

async function brokenFiles(): Promise<Broken[]> {
  const [first] = await demos();
  if (!first) throw new Error('There are no examples.');
  const withPlan = (change: (plan: Record<string, unknown>) => void): string => {
    const plan = structuredClone(first.plan) as Plan & Record<string, unknown>;
    change(plan);
    return JSON.stringify({ format: 'firstfill-plan', plan });
  };
  return [
    {
      name: 'not-json.json',
      text: '{ "format": "firstfill-plan", nope',
      said: /got "nope" at line 1, column 31.*expected/s,
    },
    { name: 'empty.json', text: '', said: /got an empty file.*expected a plan file/s },
    {
      name: 'other.json',
      text: '{"format":"something-else","plan":{}}',
      said: /something-else.*firstfill-plan/s,
    },
    { name: 'list.json', text: '[1, 2, 3]', said: /got a list of 3.*expected.*firstfill-plan/s },
    {
      name: 'bad-field.json',
      text: withPlan((plan) => {
        plan['horizonWeeks'] = 'a year';
      }),
      said: /horizonWeeks.*a year.*[Ee]xpected/s,
    },
    {
      name: 'missing-field.json',
      text: withPlan((plan) => {
        delete plan['startDate'];
      }),
      said: /startDate.*[Ee]xpected/s,
    },
    {
      name: 'unknown-field.json',
      text: withPlan((plan) => {
        plan['colour'] = 'red';
      }),
      said: /colour.*red.*[Ee]xpected/s,
    },
    {
      name: 'margin.json',
      text: withPlan((plan) => {
        const [account] = plan['accounts'] as Plan['accounts'];
        const [hand] = account?.hands ?? [];
        if (hand) (hand as { rule: unknown }).rule = { by: 'margin', rate: '1.2' };
      }),
      said: /accounts\/tarrowby\/hands.*1\.2.*[Ee]xpected a share from 0 to below 1/s,
    },
    {
      name: 'newer.json',
      text: withPlan((plan) => {
        plan['version'] = 99;
      }),
      said: /format version 99.*reads versions up to 3/s,
    },
  ];
}

function ownSection(page: Page) {
  return page.locator('section', { has: page.getByRole('heading', { name: 'On this device' }) });
}

async function ownPlans(page: Page): Promise<string[]> {
  return ownSection(page).locator('.ff-plan-name').allInnerTexts();
}
