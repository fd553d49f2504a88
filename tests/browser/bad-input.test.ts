/**
 * Whatever is typed into a plan's fields: a wrong text stays as it was typed, a sentence below it names the field, what
 * came and what was expected, and the last good result stays, marked as older. Then every box of every section is given
 * texts that make no sense; none may break the app, lose the text, or put a figure on the screen that is none.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { goTo, type OpenedApp, openApp } from '../support/app-driver.ts';
import { startBrowser } from '../support/browser.ts';
import { openFolds } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const ONE = '#/p/demo-pays-but-runs-dry/cash';
const THREE = '#/p/demo-third-chain/cash';

let browser: Browser;
let app: ServedApp;
let opened: OpenedApp;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

beforeEach(async () => {
  opened = await openApp(browser, { address: app.address, hash: ONE });
  return () => opened.context.close();
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const wrong: [section: string, label: string, text: string, sentence: RegExp][] = [
  ['hands:tarrowby', 'Margin', '120', /^Margin: got “120”\. It must be from 0 to below 100 %\./],
  ['hands:tarrowby', 'Margin', '100', /^Margin: got “100”\. It must be from 0 to below 100 %\./],
  ['hands:tarrowby', 'Margin', '-3', /^Margin: got “-3”\. It must be from 0 to below 100 %\./],
  ['listings:tarrowby', 'Shelf price', 'lots', /^Shelf price: got “lots”\. Expected an amount/],
  ['listings:tarrowby', 'Shelf price', '-8.99', /^Shelf price: got “-8\.99”\. Expected .*0/],
  ['listings:tarrowby', 'Shelf price', '', /^Shelf price: got nothing\. Expected/],
  [
    'listings:tarrowby',
    'Sold per store per week',
    '0',
    /^Sold per store per week: got “0”\. Expected .*above 0/,
  ],
  [
    'listings:tarrowby',
    'Sold per store per week',
    '1000000000',
    /^Sold per store per week: got “1000000000”\. Expected/,
  ],
  ['openings:tarrowby', 'Doors', '0', /^Doors: got “0”\. Expected a whole number of doors from 1 to/],
  ['openings:tarrowby', 'Doors', '2.5', /^Doors: got “2\.5”\. Expected a whole number/],
  ['openings:tarrowby', 'Doors', '1000000000', /^Doors: got “1000000000”\. Expected/],
  [
    'market',
    'Weeks in the plan',
    '0',
    /^Weeks in the plan: got “0”\. Expected a whole number of weeks from 4 to 260/,
  ],
  ['cash', 'Cash we have today', '1e400', /^Cash we have today: got “1e400”\. Expected an amount/],
];

test('is refused in a sentence, stays as typed, and leaves the last good result, marked', async () => {
  const { page, troubles } = opened;
  for (const [section, label, text, sentence] of wrong) {
    await openSection(page, ONE, section);
    const box = page.getByRole('dialog').getByLabel(label, { exact: true }).first();
    const good = await box.inputValue();
    const verdicts = await strip(page);
    await box.fill(text);
    const what = `${label} “${text}”`;
    const ids = ((await box.getAttribute('aria-describedby')) ?? '').split(' ');
    const problem = page.locator(`[id="${ids.find((id) => id.endsWith('-problem'))}"]`);
    const said = (await problem.innerText()).replaceAll('\u00a0', ' ');
    expect.soft(said, what).toMatch(sentence);
    expect.soft(said, what).toContain('Still showing the result for');
    expect.soft(await box.inputValue(), what).toBe(text);
    expect.soft(await box.getAttribute('aria-invalid'), what).toBe('true');
    expect.soft((await strip(page)).replace(/\s*…/g, ''), what).toBe(verdicts);
    expect.soft(await page.getByRole('dialog').locator('.ff-older').count(), what).toBeGreaterThan(0);
    await box.fill(good);
    expect.soft(await strip(page), what).toBe(verdicts);
  }
  expect(troubles).toEqual([]);
});

const senseless = ['lots', '-5', '0', '1000000000', '1e400', '1,2,3', 'NaN', ''];

const sections = {
  chain: ['hands', 'listings', 'openings', 'terms', 'allowances', 'moneyDown', 'promotions'].map(
    (name) => `${name}:almersfeld`,
  ),
  product: ['cost', 'pack', 'supply', 'stock'].map((name) => `${name}:lemon`),
  plan: ['market', 'cash', 'overhead', 'funding', 'books', 'verdictLines'],
};

describe.each(Object.entries(sections))('every box of a %s', (_, names) => {
  test('takes or refuses what makes no sense, in words, and breaks nothing', async () => {
    const { page, troubles } = opened;
    let tried = 0;
    for (const section of names) {
      await openSection(page, THREE, section);
      const boxes = page.getByRole('dialog').locator('input[type="text"]');
      const before = await strip(page);
      for (let index = 0; index < (await boxes.count()); index += 1) {
        tried += 1;
        expect.soft(await boxes.nth(index).evaluate(faultsOf, senseless), section).toEqual([]);
      }
      expect.soft(await strip(page), section).toBe(before);
    }
    expect(tried).toBeGreaterThan(10);
    expect(troubles).toEqual([]);
    // Hundreds of edits, each painted and looked at: a minute on a quiet machine.
  }, 240_000);
});

async function openSection(page: Page, hash: string, section: string): Promise<void> {
  await goTo(page, '#/nowhere', 'No such page');
  await goTo(page, `${hash}?sheet=${encodeURIComponent(`inputs:${section}`)}`, 'Cash');
  await page.getByRole('dialog').waitFor();
  await openFolds(page);
}

async function strip(page: Page): Promise<string> {
  return page.getByRole('dialog').locator('.ff-verdict-strip').innerText();
}

/**
 * Runs in the page: types each text, looks, and at the end types back what was there. A text that is refused has its
 * sentence; one that is taken leaves results that are up to date, or says why there are none.
 */
async function faultsOf(element: HTMLElement | SVGElement, texts: readonly string[]): Promise<string[]> {
  const box = element as HTMLInputElement;
  const good = box.value;
  const faults: string[] = [];
  box.focus();
  for (const text of texts) {
    await type(text);
    const say = (fault: string): number => faults.push(`${box.labels?.[0]?.textContent} “${text}”: ${fault}`);
    if (!box.isConnected) return [...faults, `“${text}”: the box is gone`];
    if (box.value !== text) say(`the text became “${box.value}”`);
    const isRefused = box.getAttribute('aria-invalid') === 'true';
    const sentence = sentenceBelow();
    if (isRefused && !/: got .+\. (?:Expected|It must)/.test(sentence)) say(`the sentence is “${sentence}”`);
    const isOlder = box.closest('dialog')?.querySelector('.ff-older') !== null;
    if (!isRefused && isOlder) say('figures are older and no sentence says why');
    if (document.querySelector('.ff-bug') !== null) say('the app calls it a fault of its own');
    const isName = box.inputMode === '';
    const shown = document.body.textContent?.replaceAll(`“${text}”`, '') ?? '';
    if (!isName && /\bNaN\b|Infinity|\bundefined\b|\[object/.test(shown))
      say('no figure where one should be');
  }
  await type(good);
  if (box.value !== good) faults.push(`“${good}” typed again became “${box.value}”`);
  if (box.getAttribute('aria-invalid') === 'true') faults.push(`“${good}” typed again is refused`);
  box.blur();
  return faults;

  async function type(value: string): Promise<void> {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(box, value);
    box.dispatchEvent(new Event('input', { bubbles: true }));
    await new Promise((done) => setTimeout(done, 0)); // the screen is drawn before the next task
  }

  function sentenceBelow(): string {
    const ids = (box.getAttribute('aria-describedby') ?? '').split(' ');
    return ids
      .map((id) => (id.endsWith('-problem') ? document.getElementById(id)?.textContent : ''))
      .join('');
  }
}
