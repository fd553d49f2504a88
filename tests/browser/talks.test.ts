/**
 * Across the table as it is used: a whole negotiation by touch on a phone without a network, a reload and a killed tab in
 * the middle, nothing lost; three asks to a counter-offer in eleven taps at most; figures that are the model's; the
 * verdict never covered; one screen at 360 x 560; ink only, and no word of our costs or of where we would stop.
 * The tap budget, the size and "ink only" are the product's own; no published source.
 */
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import { countersFor, figuresFor, targetsOf, termsOf, withTerms } from '../../src/domain/talks/index.ts';
import { droppedAtReview } from '../../src/domain/talks/review.ts';
import type { Terms } from '../../src/domain/talks/types.ts';
import { demos, goTo, type OpenedApp, openApp, openTab, settled } from '../support/app-driver.ts';
import { desktop, startBrowser } from '../support/browser.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

const PLAN = 'demo-pays-but-runs-dry';
const HASH = `#/p/${PLAN}/table`;
const SMALL = { width: 360, height: 560 };
const ASKS = { margin: 0.42, slotting: 250, freeFill: 2 };

const all = await demos();
const plan = all.find((demo) => demo.plan.id === PLAN)?.plan as Plan;
const accountId = plan.accounts[0]?.id ?? '';

let browser: Browser;
let app: ServedApp;
let context: BrowserContext | null = null;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterEach(async () => {
  await context?.close();
  context = null;
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

async function open(viewport = SMALL, hash = HASH): Promise<OpenedApp> {
  const opened = await openApp(browser, { address: app.address, hash, device: { viewport } });
  context = opened.context;
  await opened.page.locator('.ff-talks').waitFor();
  return opened;
}

test('a whole negotiation by touch, offline, with a reload and a killed tab in it', async () => {
  const first = await open();
  await first.page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === 'activated') return;
    await new Promise((done) => active?.addEventListener('statechange', done, { once: true }));
  });
  await first.context.setOffline(true);
  const { page } = first;
  await page.reload();
  await talksShown(page);

  const hand = tapping(page);
  await hand.tap(value(page, 'margin'));
  await hand.keys('42', 'Next', '250', 'Next', '2', 'Done');
  await instead(page).waitFor();
  // The three asks; what is said in between is the buyer's. The log key is one tap more.
  expect(hand.taps).toBeLessThanOrEqual(11);
  await hand.tap(logKey(page, 'They ask'));
  const asked = await shown(page);
  expect(asked.terms).toEqual({ margin: '42', slotting: '250', freeFill: '2' });
  expect(asked.gap).toBe(gapOf(ASKS));
  const told = countersOf(ASKS);
  expect(told.counters.length).toBeGreaterThanOrEqual(3);

  await hand.tap(page.getByRole('button', { name: 'Use', exact: true }));
  const [used] = told.counters;
  await expect.poll(async () => (await shown(page)).gap).toBe(gapOf({ ...ASKS, ...used?.terms }));
  await hand.tap(logKey(page, 'We offer'));
  await hand.tap(value(page, 'slotting'));
  await hand.keys('21');
  await saved(page);
  const before = await shown(page);
  await page.reload();
  await talksShown(page);
  await expect.poll(() => shown(page)).toEqual(before);
  expect(await keypad(page).isVisible()).toBe(true);
  await expect.poll(() => value(page, 'slotting').inputValue()).toBe('21');
  await hand.keys('0', 'Done');
  expect((await shown(page)).terms.slotting).toBe('210');
  await hand.tap(logKey(page, 'Agreed'));
  const agreed = await shown(page);
  await saved(page);
  await page.close();

  const second = await openTab(first.context, { address: app.address, hash: HASH });
  await talksShown(second.page);
  await expect.poll(() => shown(second.page)).toEqual(agreed);
  await second.page.getByRole('button', { name: 'More', exact: true }).tap();
  await second.page.getByRole('button', { name: 'Said so far' }).tap();
  expect(await second.page.locator('.ff-talks-offer > .ff-label:first-child').allInnerTexts()).toEqual([
    expect.stringContaining('Agreed'),
    expect.stringContaining('We offer'),
    expect.stringContaining('They ask'),
  ]);
  expect(await second.page.getByRole('region', { name: 'In short' }).innerText()).toMatch(
    /^Agreed: it cost [\d,]+/,
  );
  await second.page.getByRole('button', { name: 'Take into the plan' }).tap();
  await second.page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
  expect((await shown(second.page)).terms.slotting).toBe('210');
  expect((await shown(second.page)).word).toBe('Holds');
  await goTo(second.page, `#/p/${PLAN}/deal?sheet=inputs%3AmoneyDown%3A${accountId}`, 'Deal');
  await expect.poll(() => second.page.locator('dialog .ff-input-number').first().inputValue()).toBe('210');
  await second.page.goBack();
  await talksShown(second.page);
  await second.page.getByRole('button', { name: 'Undo' }).tap();
  await expect.poll(() => shown(second.page)).toEqual(agreed);
  const faults = [...first.troubles, ...second.troubles].filter(
    (each) => !/ERR_INTERNET|fetching the script/.test(each),
  );
  expect(faults).toEqual([]);
}, 180_000);

describe('one screen at 360 x 560', () => {
  test.each(all.map((demo) => [demo.plan.name, demo.plan.id] as const))('%s', async (_, id) => {
    const { page } = await open(SMALL, `#/p/${id}/table`);
    expect(await overflow(page)).toEqual([0, 0]);
    await page.locator('.ff-talks-steps > :last-child').first().tap();
    for (let press = 0; press < 12; press += 1)
      await page.locator('.ff-talks-steps > :last-child').first().tap();
    await instead(page).or(page.getByText('No single term')).waitFor();
    expect(await overflow(page)).toEqual([0, 0]);
    await page.locator('.ff-talks-input').nth(2).tap();
    await keypad(page).waitFor();
    expect(await overflow(page)).toEqual([0, 0]);
    for (const part of ['.ff-talks-verdict', '.ff-talks-figures', '.ff-talks-review', '.ff-talks-active']) {
      expect(await isWholeInView(page, part), part).toBe(true);
    }
  });
});

test('what is typed wrong stays, with its sentence where no keypad covers it, and figures stand', async () => {
  const { page } = await open();
  const before = await shown(page);
  await value(page, 'margin').tap();
  await tapping(page).keys('120');
  await expect.poll(() => value(page, 'margin').inputValue()).toBe('120');
  expect(await page.locator('.ff-talks-reason').innerText()).toMatch(
    /^Margin: got “120”\. Expected a percentage from 0 to 99/,
  );
  expect(await isWholeInView(page, '.ff-talks-verdict')).toBe(true);
  // "1" and "12" on the way were margins; the last of them is in force.
  expect((await shown(page)).gap).toBe(gapOf({ margin: 0.12 }));
  await page.getByRole('button', { name: 'Undo' }).tap();
  expect((await shown(page)).gap).toBe(before.gap);
});

test('a hold repeats and is one undo; a press after it is another', async () => {
  const { page } = await open();
  const more = page.getByRole('button', { name: 'Slotting, more' });
  const start = await value(page, 'slotting').inputValue();
  const box = await more.boundingBox();
  if (box === null) throw new Error('no key');
  const cdp = await page.context().newCDPSession(page);
  const at = { x: box.x + 20, y: box.y + 20 };
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at] });
  await page.waitForTimeout(1000);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  const held = Number(await value(page, 'slotting').inputValue());
  expect(held - Number(start)).toBeGreaterThanOrEqual(30);
  await more.tap();
  expect(Number(await value(page, 'slotting').inputValue())).toBeGreaterThan(held);
  await page.getByRole('button', { name: 'Undo' }).tap();
  expect(Number(await value(page, 'slotting').inputValue())).toBe(held);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await expect.poll(() => value(page, 'slotting').inputValue()).toBe(start);
});

test('keys and pastes of a real keyboard work, and no device keyboard is asked for by touch', async () => {
  const { page } = await open();
  const box = value(page, 'margin');
  expect(await box.getAttribute('inputmode')).toBe('none');
  await box.focus();
  await page.keyboard.type('43.5');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => box.inputValue()).toBe('44');
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => box.inputValue()).toBe('43.95');
  await box.fill('41 %');
  expect((await shown(page)).gap).toBe(gapOf({ margin: 0.41 }));
});

test('ink only: no hue of a verdict or an owner, and no word of our costs, in light and dark', async () => {
  const { page } = await open();
  const results = all.find((demo) => demo.plan.id === PLAN)?.results;
  const costs = results?.ladders.flatMap(({ landed, contribution }) =>
    [landed.unit, contribution].flatMap((each) => [each.toFixed(2), each.toFixed(4)]),
  );
  const states: string[] = [];
  for (const margin of ['30', '42', '70']) {
    await value(page, 'margin').fill(margin);
    await page.getByRole('button', { name: 'Done' }).tap();
    states.push((await shown(page)).word);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await huesUsed(page), `${margin} ${colorScheme}`).toEqual([]);
      expect(await huesPainted(page), `${margin} ${colorScheme}`).toEqual([]);
    }
    const text = await page.evaluate(() => `${document.title} ${document.body.innerText}`);
    expect(text).not.toMatch(/walk.?away|landed|our margin|unit cost|contribution/i);
    for (const cost of costs ?? []) expect(text).not.toContain(cost);
  }
  expect(states).toEqual(['Holds', 'Tight', 'Fails']);
});

test('what is lost at the first review is in sight, from the model, and follows the week that was set', async () => {
  const { page } = await open();
  const lost = async (): Promise<string> => page.locator('.ff-talks-review b').innerText();
  const review = (weeks: number): string => {
    const told = droppedAtReview(plan, accountId, weeks);
    if (!told.ok) throw new Error('no review');
    return signed(told.value.amount);
  };
  await expect.poll(() => lost()).toBe(review(26));
  await page.evaluate((hash) => {
    location.hash = `${hash}?sheet=prepare`;
  }, HASH);
  await page.getByLabel('First look at the shelf').fill('12');
  await page.getByLabel('Target', { exact: true }).fill('20k');
  await page.getByRole('button', { name: 'Close' }).tap();
  await expect.poll(() => lost()).toBe(review(12));
  const figures = figuresFor({ plan, accountId, objective: { by: 'firstYear' }, reviewWeeks: 12 });
  expect(figures.ok && signed(figures.value.firstYear - 20_000)).toBe((await shown(page)).gap);
});

test('from 900 px what terms are worth and what was said stand beside it, and no verdict hue shows', async () => {
  const { page } = await open(desktop.viewport);
  await page.getByRole('region', { name: 'Worth in each other, at what is on the table' }).waitFor();
  expect(await page.getByRole('heading', { name: 'Said so far' }).isVisible()).toBe(true);
  expect(await huesUsed(page)).toEqual([]);
});

function value(page: Page, term: string): Locator {
  return page.locator(`[id="talks-${term}"]`);
}

function logKey(page: Page, name: string): Locator {
  return page.locator('.ff-talks-key', { hasText: name });
}

function keypad(page: Page): Locator {
  return page.getByRole('group', { name: /^Keypad for / });
}

function instead(page: Page): Locator {
  return page.locator('.ff-talks-counter > p:not(.ff-older)', { hasText: 'Instead:' });
}

/** Counts every touch of the screen. */
function tapping(page: Page) {
  const hand = {
    taps: 0,
    tap: async (target: Locator): Promise<void> => {
      hand.taps += 1;
      await target.tap();
    },
    /** '250' is three keys; a word is one. */
    keys: async (...texts: string[]): Promise<void> => {
      for (const key of texts.flatMap((text) => (/^\d+$/.test(text) ? [...text] : [text]))) {
        await hand.tap(keypad(page).getByRole('button', { name: key, exact: true }));
      }
    },
  };
  return hand;
}

interface Shown {
  word: string;
  gap: string;
  terms: { margin: string | null; slotting: string | null; freeFill: string | null };
}

/** What the screen says right now; null for a row that the keypad's rows hide. */
async function shown(page: Page): Promise<Shown> {
  return page.evaluate(() => {
    const text = (selector: string) => document.querySelector(selector)?.textContent ?? '';
    const box = (term: string) =>
      (document.getElementById(`talks-${term}`) as HTMLInputElement | null)?.value ?? null;
    return {
      word: text('.ff-talks-word > strong'),
      gap: text('.ff-talks-gap-figure'),
      terms: { margin: box('margin'), slotting: box('slotting'), freeFill: box('freeFill') },
    };
  });
}

async function talksShown(page: Page): Promise<void> {
  await page.locator('.ff-talks').waitFor();
  await settled(page);
}

/** The draft is on the device: the newest write is done. */
async function saved(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let frame = 0; frame < 10; frame += 1) await new Promise(requestAnimationFrame);
    await new Promise((done) => setTimeout(done, 300));
  });
}

function signed(amount: number): string {
  const size = Math.abs(amount);
  const text = size >= 100 || size < 0.005 ? Math.round(size).toLocaleString('en-US') : size.toFixed(2);
  return size < 0.005 ? text : `${amount < 0 ? '−' : '+'}${text}`;
}

function gapOf(terms: Terms): string {
  const targets = targetsOf({ plan, accountId });
  const offered = withTerms(plan, accountId, terms);
  if (!targets.ok || !offered.ok) throw new Error('no such offer');
  const { objective, target } = targets.value;
  const figures = figuresFor({ plan: offered.value, accountId, objective, reviewWeeks: 26 });
  if (!figures.ok) throw new Error('no figures');
  return signed(figures.value.firstYear - target);
}

function countersOf(asked: Terms) {
  const targets = targetsOf({ plan, accountId });
  expect(termsOf(plan, accountId).length).toBeGreaterThan(5);
  if (!targets.ok) throw new Error('no target');
  const { objective, target } = targets.value;
  const told = countersFor({ plan, accountId, objective, target, asked, limits: {}, order: [] });
  if (!told.ok) throw new Error('no counters');
  return told.value;
}

async function overflow(page: Page): Promise<[down: number, across: number]> {
  return page.evaluate(() => {
    const { scrollHeight, scrollWidth } = document.documentElement;
    return [scrollHeight - innerHeight, scrollWidth - innerWidth] as [number, number];
  });
}

/** The element lies in the window from edge to edge, and nothing lies over its middle or corners. */
async function isWholeInView(page: Page, selector: string): Promise<boolean> {
  return page.evaluate((wanted) => {
    const element = document.querySelector(wanted);
    if (element === null) return false;
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const points = [
      [left + 2, top + 2],
      [right - 2, top + 2],
      [left + 2, bottom - 2],
      [right - 2, bottom - 2],
      [(left + right) / 2, (top + bottom) / 2],
    ] as const;
    const inside = left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight;
    return inside && points.every(([x, y]) => element.contains(document.elementFromPoint(x, y)));
  }, selector);
}

/** Elements whose colours, as computed, are a hue of a verdict or an owner. */
async function huesUsed(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const names = ['holds', 'tight', 'fails', 'ours', 'theirs', 'at-risk', 'between'];
    const probe = document.createElement('i');
    document.body.append(probe);
    const hues = new Set(
      names.map((name) => {
        probe.style.color = `var(--ff-${name})`;
        return getComputedStyle(probe).color;
      }),
    );
    probe.remove();
    const parts = ['color', 'fill', 'stroke', 'backgroundColor', 'borderTopColor', 'outlineColor'] as const;
    return [...document.body.querySelectorAll('*')].flatMap((element) => {
      if (element.closest('.ff-pattern-defs') || !element.checkVisibility()) return [];
      const style = getComputedStyle(element);
      return parts
        .filter((part) => hues.has(style[part]))
        .map((part) => `${element.outerHTML.slice(0, 80)} ${part}`);
    });
  });
}

/** The same by the picture: how many pixels lie near a verdict's hue. */
async function huesPainted(page: Page): Promise<string[]> {
  const picture = (await page.screenshot()).toString('base64');
  return page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = Object.assign(document.createElement('canvas'), {
      width: image.width,
      height: image.height,
    });
    const pen = canvas.getContext('2d');
    if (pen === null) return ['no canvas'];
    pen.drawImage(image, 0, 0);
    const { data: pixels } = pen.getImageData(0, 0, canvas.width, canvas.height);
    const style = getComputedStyle(document.documentElement);
    return ['holds', 'tight', 'fails'].flatMap((name) => {
      const hex = style.getPropertyValue(`--ff-${name}`).trim();
      const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
        Number.parseInt(hex.slice(at, at + 2), 16),
      );
      let count = 0;
      for (let at = 0; at < pixels.length; at += 4) {
        const apart =
          Math.abs((pixels[at] ?? 0) - red) +
          Math.abs((pixels[at + 1] ?? 0) - green) +
          Math.abs((pixels[at + 2] ?? 0) - blue);
        if (apart < 24) count += 1;
      }
      return count > 0 ? [`${count} pixels of ${name}`] : [];
    });
  }, picture);
}
