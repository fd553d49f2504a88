/**
 * A walk through every view of every example, everything opened: no text that a program forgot to make words of, no
 * figure that says one thing here and another there, nothing asked of another origin, no policy broken, no error on the
 * console. A verdict's figure is one figure: on the first view, at the head of its own view, as a mark in the rail and
 * in the list of plans.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import type { VerdictName } from '../../src/domain/results.ts';
import { demos, goTo, type OpenedApp, openApp, verdictsOnFront, WORDS } from '../support/app-driver.ts';
import { desktop, startBrowser } from '../support/browser.ts';
import { openFolds } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let browser: Browser;
let app: ServedApp;
let opened: OpenedApp;

const all = await demos();

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
  const before = (): void => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  };
  // Nothing is edited on the walk, so one device serves it all.
  opened = await openApp(browser, { address: app.address, hash: '#/plans', device: desktop, before });
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

describe.each(all.map(({ plan, results }) => ({ name: plan.name, plan, results })))(
  '$name',
  ({ plan, results }) => {
    test('has words and figures in every place, asks for nothing outside, and breaks no policy', async () => {
      const { page, troubles } = opened;
      for (const [hash, heading] of placesOf(plan)) {
        await goTo(page, hash, heading);
        if (hash.includes('sheet=')) await page.locator('dialog[open]').waitFor();
        await openFolds(page);
        expect(await oddTexts(page), hash).toEqual([]);
      }
      expect(troubles).toEqual([]);
    });

    test('says each verdict once and the same everywhere', async () => {
      const { page } = opened;
      await goTo(page, '#/plans', 'Plans');
      const marks = page.locator('.ff-plan-row', { hasText: plan.name }).locator('.ff-plan-marks .ff-spoken');
      const inList = await marks.innerText();
      await goTo(page, `#/p/${plan.id}/front`, plan.name);
      const front = await verdictsOnFront(page);
      for (const name of ['ladder', 'deal', 'cash', 'promise'] as const) {
        const { state } = results.verdicts[name];
        expect(front[name].word).toBe(WORDS[state]);
        expect(inList.toLowerCase()).toContain(`${name} ${WORDS[state].toLowerCase()}`);
        const view = name.charAt(0).toUpperCase() + name.slice(1);
        await goTo(page, `#/p/${plan.id}/${name}`, view);
        const tag = page.getByRole('navigation').getByRole('link', { name: new RegExp(`^${view}\\b`) });
        await expect.poll(() => tag.textContent()).toContain(WORDS[state]);
        if (name === 'promise') continue;
        const head = await page.locator('.ff-view-head .ff-verdict-line').innerText();
        expect(head.startsWith(`${WORDS[state]}.`), head).toBe(true);
        for (const figure of numbersIn(front[name].figure)) expect(numbersIn(head), head).toContain(figure);
      }
      await goTo(page, `#/p/${plan.id}/cash`, 'Cash');
      const tag = await page.locator('.ff-plumb-amount').innerText();
      expect(tag).toBe(front.cash.figure);
    });
  },
);

test('every figure opens to itself: the sheet it opens says the same number', async () => {
  const { page } = opened;
  const at = '#/p/demo-third-chain';
  let checked = 0;
  for (const [hash, heading] of [
    [`${at}/ladder`, 'Ladder'],
    [`${at}/cash`, 'Cash'],
    [`${at}/roll-out`, 'Roll-out'],
    ['#/p/demo-beauty-chain-returns/deal', 'Deal'],
  ] as const) {
    await goTo(page, hash, heading);
    const figures = page.locator('main .ff-where', { hasText: /\d/ });
    const sheet = page.locator('dialog[open]');
    for (let index = 0; index < (await figures.count()); index += 1) {
      const shown = await figures.nth(index).innerText();
      await figures.nth(index).click();
      const opens = await sheet.locator('.ff-why-value').innerText();
      expect.soft(isSameFigure(shown, opens), `${hash}: “${shown}” opens “${opens}”`).toBe(true);
      await page.keyboard.press('Escape');
      await sheet.waitFor({ state: 'detached' });
      checked += 1;
    }
  }
  expect(checked).toBeGreaterThan(50);
});

/** Every address of a plan: its views, each chain and product, every section of its inputs, and where figures come from. */
function placesOf(plan: Plan): [hash: string, heading: string][] {
  const at = `#/p/${plan.id}`;
  const cash = (sheet: string): [string, string] => [`${at}/cash?sheet=${encodeURIComponent(sheet)}`, 'Cash'];
  const [account] = plan.accounts;
  const verdicts: VerdictName[] = ['ladder', 'deal', 'cash', 'promise'];
  return [
    [`${at}/front`, plan.name],
    ...plan.accounts.flatMap(({ id, listings }): [string, string][] => [
      ...listings.map(({ itemId }): [string, string] => [`${at}/ladder/${id}/${itemId}`, 'Ladder']),
      [`${at}/deal/${id}`, 'Deal'],
      [`${at}/table/${id}`, 'Across the table'],
    ]),
    [`${at}/cash`, 'Cash'],
    [`${at}/roll-out`, 'Roll-out'],
    [`${at}/readiness`, 'Readiness'],
    [`${at}/run-sheet`, 'Run-sheet'],
    [`${at}/numbers`, 'Item and case numbers'],
    [`${at}/statements`, 'Statements'],
    [`${at}/lender`, 'For a lender'],
    [`${at}/money`, 'Money'],
    [`${at}/promise`, 'Promise'],
    [`${at}/investor`, 'For an investor'],
    [`${at}/inputs`, 'Inputs'],
    ...['more', 'terms', 'said', 'worth', 'beside', 'prepare'].map((name): [string, string] => [
      `${at}/table?sheet=${name}`,
      'Across the table',
    ]),
    ...verdicts.map((name) => cash(`why:verdict/${name}`)),
    ...['lowestCash', 'cashNeed', 'cashCycleDays', 'backAboveOpeningWeek'].map((name) =>
      cash(`why:cash/${name}`),
    ),
    ...['paybackWeeks', 'fixedAmount'].map((name) => cash(`why:deal/${account?.id}/${name}`)),
  ];
}

/** Texts and names that no person wrote: what a program shows of a value it did not expect. */
async function oddTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const odd = /\bNaN\b|Infinity|\bundefined\b|\bnull\b|\[object|\bfunction\b|%%|\$\{|−−|--|\.\.(?!\.)/;
    const found: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      if (odd.test(node.textContent ?? '')) found.push(node.textContent ?? '');
    }
    for (const element of document.querySelectorAll('*')) {
      for (const name of [
        'aria-label',
        'aria-valuetext',
        'title',
        'alt',
        'placeholder',
        'value',
        'd',
        'style',
      ]) {
        const text = element.getAttribute(name) ?? '';
        if (/\bNaN\b|Infinity|\bundefined\b|\[object/.test(text))
          found.push(`${name}="${text.slice(0, 80)}"`);
      }
      if (element instanceof HTMLInputElement && /NaN|Infinity|undefined/.test(element.value)) {
        found.push(`value "${element.value}"`);
      }
    }
    return found;
  });
}

/** "−31,416 · week 26" has the figures "31,416" and "26". */
function numbersIn(text: string): string[] {
  return text.match(/\d[\d,.]*\d|\d/g) ?? [];
}

/**
 * The same number, written with as many decimals as each place has: "1.4229" and "1.42", "17 days" and "17.31". What a
 * line takes away is a positive amount in its own sheet, so signs are left out.
 */
function isSameFigure(one: string, other: string): boolean {
  const pairs = numbersIn(one).map((text, index) => [text, numbersIn(other)[index] ?? ''] as const);
  return (
    pairs.length > 0 &&
    pairs.every(([left, right]) => {
      const decimals = Math.min(...[left, right].map((text) => text.split('.')[1]?.length ?? 0));
      const apart = Math.abs(Number(left.replaceAll(',', '')) - Number(right.replaceAll(',', '')));
      return apart <= 0.5001 * 10 ** -decimals;
    })
  );
}
