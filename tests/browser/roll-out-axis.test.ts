/**
 * The roll-out on one time axis: an opening dragged with a mouse, with a finger and by keys stands in the plan at once,
 * the cash beside it is what the model says of the moved plan, one undo takes a whole drag back, and a week that can't
 * be is refused in a sentence. A swipe beside the grips scrolls and moves nothing. Plans of every shape fit.
 * The expected figures come from evaluate() on a plan changed by hand, never from the page.
 */
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dayNumber } from '../../src/domain/calendar.ts';
import { minorDigitsOf } from '../../src/domain/money/currency.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { getAt, setAt } from '../../src/domain/plan/path.ts';
import { sayFor } from '../../src/reckon/say.ts';
import {
  chooseFile,
  demos,
  goTo,
  type OpenedApp,
  openApp,
  resultsOf,
  settled,
} from '../support/app-driver.ts';
import { desktop, phone, startBrowser } from '../support/browser.ts';
import { axeFaults, bringAxe, fitFaults, openFolds } from '../support/page-audit.ts';
import { type ServedApp, serveApp } from '../support/served-app.ts';

let browser: Browser;
let app: ServedApp;

const all = await demos();
const [first] = all;
if (!first) throw new Error('There are no examples.');
const { plan } = first;
const account = plan.accounts[0] as Account;
const opening = account.waves[0] as Account['waves'][number];
const name = `${account.name}, opening 1`;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

/** The plan with the first opening in another week. */
function openedIn(openWeek: number): Plan {
  const waves = [{ ...opening, openWeek }, ...account.waves.slice(1)];
  return { ...plan, accounts: [{ ...account, waves }, ...plan.accounts.slice(1)] };
}

/** "−12,300 · week 9" as the model has it with the first opening in that week. */
function lowestIn(openWeek: number): string {
  return lowestOf(openedIn(openWeek));
}

/** "36,000 at the end" as the picture says it. */
function endOf(changed: Plan): string {
  return `${sayOf(changed).money(resultsOf(changed).reading.endCash)} at the end`;
}

function sayOf({ currency, startDate }: Plan) {
  const minorDigits = minorDigitsOf(currency) ?? 2;
  return sayFor({ currency, minorDigits, startDay: dayNumber(startDate) });
}

function lowestOf(changed: Plan): string {
  const { reading } = resultsOf(changed);
  const say = sayOf(changed);
  return `${say.money(reading.lowestCash)} · week ${reading.lowestWeek}`;
}

const gripOf = (page: Page) => page.getByRole('slider', { name, exact: true });
const weekOf = async (page: Page) => Number(await gripOf(page).getAttribute('aria-valuenow'));
const lowestShown = (page: Page) => page.locator('.ff-axis-dock .ff-axis-note').innerText();
const said = (page: Page) => page.locator('.ff-axis-strip [role="status"]').innerText();
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true }).click();

async function openAxis(device: Parameters<typeof openApp>[1]['device']): Promise<OpenedApp> {
  const opened = await openApp(browser, {
    address: app.address,
    hash: `#/p/${plan.id}/roll-out`,
    ...(device ? { device } : {}),
  });
  await gripOf(opened.page).waitFor();
  await gripOf(opened.page).scrollIntoViewIfNeeded();
  return opened;
}

async function middleOf(page: Page): Promise<{ x: number; y: number }> {
  const box = await gripOf(page).boundingBox();
  if (!box) throw new Error('The grip is not on the page.');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** How wide a week is: the way the grip goes for one press of a key. */
async function weekPx(page: Page): Promise<number> {
  const before = await middleOf(page);
  await gripOf(page).press('ArrowRight');
  await expect.poll(() => weekOf(page)).toBe(opening.openWeek + 1);
  const after = await middleOf(page);
  await undo(page);
  await expect.poll(() => weekOf(page)).toBe(opening.openWeek);
  return after.x - before.x;
}

test('a mouse drags an opening, the cash follows while it moves, and one undo brings it back', async () => {
  const { page, context, troubles } = await openAxis(desktop);
  const step = await weekPx(page);
  const { x, y } = await middleOf(page);
  expect(await lowestShown(page)).toBe(lowestIn(opening.openWeek));
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const weeks of [1, 2, 3, 4]) {
    await page.mouse.move(x + weeks * step, y);
    await expect.poll(() => weekOf(page)).toBe(opening.openWeek + weeks);
    expect(await lowestShown(page)).toBe(lowestIn(opening.openWeek + weeks));
  }
  await page.mouse.up();
  expect(await said(page)).toContain('4 weeks later: lowest cash');
  await undo(page);
  await expect.poll(() => weekOf(page)).toBe(opening.openWeek);
  expect(await lowestShown(page)).toBe(lowestIn(opening.openWeek));
  expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
  expect(troubles).toEqual([]);
  await context.close();
});

test('a week before the first delivery is refused in a sentence, and the last good week stays', async () => {
  const { page, context } = await openAxis(desktop);
  const step = await weekPx(page);
  const { x, y } = await middleOf(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let weeks = 1; weeks <= opening.openWeek + 2; weeks += 1) await page.mouse.move(x - weeks * step, y);
  const { transitWeeks } = account.terms;
  await expect.poll(() => weekOf(page)).toBe(transitWeeks);
  expect(await said(page)).toContain(`It stays in week ${transitWeeks}`);
  expect(await said(page)).toContain('Expected a week from');
  await page.mouse.up();
  expect(await lowestShown(page)).toBe(lowestIn(transitWeeks));
  await undo(page);
  await expect.poll(() => weekOf(page)).toBe(opening.openWeek);
  await context.close();
});

test('arrow keys move it a week, Escape in a drag puts it back, and the steppers do the same', async () => {
  const { page, context } = await openAxis(desktop);
  await gripOf(page).focus();
  for (const weeks of [1, 2]) {
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => lowestShown(page)).toBe(lowestIn(opening.openWeek + weeks));
  }
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => weekOf(page)).toBe(opening.openWeek + 1);
  await page.getByRole('button', { name: `${name}: a week later` }).click();
  await expect.poll(() => lowestShown(page)).toBe(lowestIn(opening.openWeek + 2));
  const { x, y } = await middleOf(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y);
  await expect.poll(() => weekOf(page)).toBeGreaterThan(opening.openWeek + 2);
  await page.keyboard.press('Escape');
  await expect.poll(() => weekOf(page)).toBe(opening.openWeek + 2);
  await page.mouse.up();
  await context.close();
});

const twelve = all.find((each) => each.plan.id === 'demo-twelve-chains')?.plan as Plan;
const [promotion] = twelve.accounts.flatMap(({ id, promotions }) =>
  promotions.map((each) => `accounts/${id}/promotions/${each.id}/fromWeek`),
);
const [delisting] = twelve.accounts.flatMap(({ id, cutWeek }) =>
  cutWeek === null ? [] : [`accounts/${id}/cutWeek`],
);

test.each([
  ['a promotion', promotion as string],
  ['the week a chain takes it off its shelves', delisting as string],
])('%s is moved in the same way', async (_, path) => {
  const { page, context } = await openApp(browser, {
    address: app.address,
    hash: `#/p/${twelve.id}/roll-out`,
    device: desktop,
  });
  const grip = page.locator(`[data-bar="${path}"]`);
  await grip.focus();
  const from = Number(getAt(twelve, path));
  for (const week of [from + 1, from + 2]) {
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => lowestShown(page)).toBe(lowestOf(setAt(twelve, path, week)));
    expect(Number(await grip.getAttribute('aria-valuenow'))).toBe(week);
    const picture = page.locator('.ff-axis-dock svg');
    expect(await picture.getAttribute('aria-label')).toContain(endOf(setAt(twelve, path, week)));
  }
  expect(endOf(setAt(twelve, path, from + 2))).not.toBe(endOf(twelve));
  await context.close();
});

describe('on a phone', () => {
  test('a finger on the grip drags, a finger beside it scrolls', async () => {
    const { page, context, troubles } = await openAxis(phone);
    const touch = await context.newCDPSession(page);
    const step = await weekPx(page);
    const { x, y } = await middleOf(page);
    await finger(touch, 'touchStart', { x, y });
    for (const weeks of [1, 2, 3]) {
      await finger(touch, 'touchMove', { x: x + weeks * step, y });
      await expect.poll(() => weekOf(page)).toBe(opening.openWeek + weeks);
      expect(await lowestShown(page)).toBe(lowestIn(opening.openWeek + weeks));
    }
    const dock = await page.locator('.ff-axis-dock').boundingBox();
    expect(dock && dock.y + dock.height, 'the cash is in sight').toBeLessThanOrEqual(phone.viewport.height);
    await finger(touch, 'touchEnd', null);
    await undo(page);
    await expect.poll(() => weekOf(page)).toBe(opening.openWeek);

    const region = page.locator('.ff-axis-region');
    const at = await middleOf(page);
    const beside = { x: at.x + 100, y: at.y };
    await finger(touch, 'touchStart', beside);
    for (const moved of [10, 30, 60, 90]) {
      await finger(touch, 'touchMove', { x: beside.x - moved, y: beside.y });
    }
    await finger(touch, 'touchEnd', null);
    await expect.poll(() => region.evaluate((each) => each.scrollLeft)).toBeGreaterThan(40);
    expect(await weekOf(page)).toBe(opening.openWeek);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

async function finger(
  touch: CDPSession,
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  at: { x: number; y: number } | null,
): Promise<void> {
  await touch.send('Input.dispatchTouchEvent', { type, touchPoints: at === null ? [] : [at] });
}

const long =
  'Purveyors of uncommonly long names and still longer shop signs between the rivers, northern branch';
const many = (count: number): Account[] =>
  Array.from({ length: count }, (_, index) => ({
    ...account,
    id: `chain-${index}`,
    name: index === 0 ? long : `Chain ${index}`,
    table: null,
  }));
const shapes: readonly (readonly [string, Plan])[] = [
  ['no chain', { ...plan, id: 'none', accounts: [] }],
  ['a chain with no opening', { ...plan, id: 'still', accounts: [{ ...account, waves: [], table: null }] }],
  ['one chain with a long name', { ...plan, id: 'long', accounts: many(1) }],
  ['sixty chains', { ...plan, id: 'sixty', accounts: many(60) }],
];

describe.each(shapes)('a plan of %s', (_, shaped) => {
  test('fits at every size and breaks no rule of axe', async () => {
    const kept = shaped.basis.filter(({ path }) => !path.startsWith('accounts/'));
    const text = JSON.stringify({ format: 'firstfill-plan', plan: { ...shaped, basis: kept } });
    const context = await browser.newContext({ ...phone, locale: 'en-US' });
    await bringAxe(context);
    const page = await context.newPage();
    await page.goto(`${app.address}#/plans`);
    await settled(page);
    await chooseFile(page, 'shape.json', text);
    await page.waitForURL(/#\/p\//);
    await goTo(page, `#/p/${shaped.id}/roll-out`, 'Roll-out');
    for (const size of [phone.viewport, { width: 320, height: 640 }, desktop.viewport]) {
      await page.setViewportSize(size);
      await openFolds(page);
      expect.soft(await fitFaults(page), `${size.width} px`).toEqual([]);
    }
    expect(await axeFaults(page, null)).toEqual([]);
    await context.close();
  });
});
