/**
 * Their side gives nothing of ours away: what the page holds is searched for every own figure, for every example; Back, a
 * reload, another tab, a page out of the browser's cache and a killed browser all come out on their side; and it is left
 * only by holding the corner key, by holding Enter, or by the code. Its build holds nothing of the model.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { withTerms } from '../../src/domain/talks/index.ts';
import { theirRecord } from '../../src/domain/talks/their-record.ts';
import { demos, goTo, type OpenedApp, openApp, openTab, settled } from '../support/app-driver.ts';
import { phone, startBrowser, startBrowserOnProfile } from '../support/browser.ts';
import { freshBuild, type ServedApp, serveApp } from '../support/served-app.ts';
import { importsAtStart } from '../support/source-files.ts';
import {
  atTheTable,
  everythingOf,
  figuresShown,
  has,
  type InTalks,
  inTalks,
  onTheirSide,
  secretsOf,
  textsAllowed,
  turn,
  turnedAt,
} from '../support/their-side.ts';

/** Most of these start the app four times and more. */
vi.setConfig({ testTimeout: 120_000 });

let browser: Browser;
let app: ServedApp;

const all = await demos();
/** Of an example with many accounts, one served straight and one by a distributor: the others show nothing new. */
const places = all.flatMap(({ plan }) => {
  const some = plan.accounts.length > 4 ? [1, 2].map((hands) => firstWith(plan, hands)) : plan.accounts;
  return some.map(({ id, name }) => ({ plan, id, name }));
});

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

afterEach(async () => {
  await Promise.all(browser.contexts().map((context) => context.close()));
});

/** Says so on the console, where each opened app listens, when anything of ours is drawn on a turned device. */
const watchDrawing = (): void => {
  new MutationObserver(() => {
    const drawn = document.querySelector('#app > *') !== null && !document.body.hidden;
    if (drawn && localStorage.getItem('firstfill-their-side') !== null) console.error('ours, while turned');
  }).observe(document, { childList: true, subtree: true });
};

/** Says so when a page is left twice: a browser under load has been seen to lose a tab over the second time. */
const watchLeaving = (): void => {
  let left = 0;
  navigation.addEventListener('navigate', ({ hashChange, navigationType, destination }) => {
    if (hashChange || destination.sameDocument || navigationType === 'traverse') return;
    left++;
    if (left > 1) console.error(`${location.pathname} left ${left} times`);
  });
};

function firstTalks(): InTalks {
  const [demo] = all;
  const account = demo?.plan.accounts[0];
  if (!demo || !account) throw new Error('There are no examples.');
  return inTalks(demo.plan, account.id);
}

async function openTurned(talks: InTalks): Promise<OpenedApp> {
  const opened = await openApp(browser, { address: app.address, hash: '#/plans', before: watchDrawing });
  await turnedAt(opened.page, talks);
  return opened;
}

function firstWith({ accounts }: (typeof all)[number]['plan'], hands: number) {
  const found = accounts.find((account) => account.hands.length === hands);
  if (!found) throw new Error(`No account with ${hands} hands.`);
  return found;
}

/** Their figures, by the model alone. */
function recordOf({ plan, account }: InTalks) {
  const itemId = account.listings[0]?.itemId ?? '';
  const record = theirRecord({ plan, accountId: account.id, itemId, withTerms });
  if (!record.ok) throw new Error(JSON.stringify(record.problems));
  return { itemId, record: record.value };
}

describe('the build', () => {
  test('has a page of its own with a script of its own, in which nothing of the model is', async () => {
    const folder = await freshBuild();
    const theirs = scriptsOf(folder, 'their-side.html');
    const ours = scriptsOf(folder, 'index.html');
    const assets = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'));
    expect([...theirs.keys()].filter((path) => ours.has(path))).toEqual([]);
    const text = [...theirs.values()].join('\n');
    const everywhere = assets.map((name) => readFileSync(join(folder, 'assets', name), 'utf8')).join('\n');
    // Each is really in the app, so that looking for it means something.
    for (const word of [
      'landed',
      'contribution',
      'walkAway',
      'slotting',
      'freeFill',
      'costLines',
      'hands',
      'cashNeed',
    ]) {
      expect(everywhere, word).toContain(word);
      expect(text, word).not.toContain(word);
    }
    expect(text).not.toMatch(/["'`]firstfill["'`]/); // the database of the plans
    expect(text.length).toBeGreaterThan(1000);
  });

  test('keeps the policy of the app, and nothing stands inline', async () => {
    const page = readFileSync(join(await freshBuild(), 'their-side.html'), 'utf8');
    const other = readFileSync(join(await freshBuild(), 'index.html'), 'utf8');
    const policy = /<meta http-equiv="Content-Security-Policy" content="[^"]+">/;
    expect(policy.exec(page)?.[0]).toBe(policy.exec(other)?.[0]);
    expect(page).not.toMatch(/\sstyle\s*=|<style\b|\son\w+\s*=|<script(?![^>]*\ssrc=)[^>]*>/i);
    expect(page).not.toMatch(/(?:src|href)\s*=\s*["']?(?:https?:)?\/\//i);
  });
});

describe.each(places)('$plan.name, $name', ({ plan, id }) => {
  test('shows the last offer of ours, and no own figure is anywhere in the page', async () => {
    const talks = inTalks(plan, id);
    const { itemId, record } = recordOf(talks);
    const { page, troubles } = await openTurned(talks);
    const seen = await page.locator('body').innerText();
    const figures = figuresShown(record);
    for (const figure of figures)
      expect(has(seen, { what: '', text: figure }), `${figure} in ${seen}`).toBe(true);

    const isShown = (text: string) =>
      figures.some((figure) => figure === text || has(figure, { what: '', text }));
    const raw = textsAllowed(record);
    const secrets = secretsOf(talks, itemId).filter(({ text }) => !isShown(text) && !raw.includes(text));
    expect(secrets.length).toBeGreaterThan(30);
    const kinds = new Set(secrets.map(({ what }) => what));
    for (const kind of [
      'landed',
      'net',
      'contribution',
      'contribution rate',
      'draft: buying',
      'target or walk-away',
    ]) {
      expect(kinds, kind).toContain(kind);
    }
    if (talks.account.hands.length > 1) expect(kinds).toContain('list');
    const everything = await everythingOf(page);
    expect(secrets.filter((secret) => has(everything, secret))).toEqual([]);
    expect(await page.title()).toBe('On your shelf');
    expect(new URL(page.url()).pathname + new URL(page.url()).search + new URL(page.url()).hash).toBe(
      '/their-side.html',
    );

    // Stepped as far as anyone would, nothing of ours turns up and nothing stops at a limit.
    for (const name of ['Shelf price: less', 'Sold a store a week: more']) {
      const texts = new Set<string>();
      for (let count = 0; count < 12; count++) {
        await page.getByRole('button', { name }).click();
        texts.add(
          await page
            .locator('.ts-stepper-value')
            .allInnerTexts()
            .then((each) => each.join(' ')),
        );
      }
      expect(texts.size, name).toBe(12);
    }
    const words = secretsOf(talks, itemId).filter(({ what }) => what === 'name');
    const stepped = await everythingOf(page);
    expect(words.filter((secret) => has(stepped, secret))).toEqual([]);
    expect(troubles).toEqual([]);
  });
});

test('before any offer of ours it says that nothing has been offered, and shows the shelf price alone', async () => {
  const talks = firstTalks();
  const { account, plan } = talks;
  const asked = account.table && {
    ...account.table,
    log: account.table.log.filter(({ said }) => said === 'ask'),
  };
  const silent = { ...account, table: asked };
  const accounts = plan.accounts.map((each) => (each.id === account.id ? silent : each));
  const { context, page } = await openTurned({ ...talks, plan: { ...plan, accounts } });
  const seen = await page.locator('body').innerText();
  expect(seen).toContain('Nothing has been offered yet.');
  expect(seen).toContain(account.name);
  expect(seen.match(/\d[\d.,]*\d/g)?.filter((figure) => figure.includes('.'))).toHaveLength(1);
  expect(await page.getByRole('button', { name: /less|more/ }).count()).toBe(0);
  await context.close();
});

describe('a turned device', () => {
  test('stays turned over Back, Forward, a reload, a new tab, any address, and offline', async () => {
    const talks = firstTalks();
    const { context, page, troubles, address } = await openTurned(talks);
    for (const act of [() => page.goBack(), () => page.goForward(), () => page.reload()]) {
      await act().catch(() => null); // a page that gives way ends the navigation it came from
      await onTheirSide(page);
    }
    for (const path of ['', `#/p/${talks.plan.id}/table`, 'index.html', 'any/address?of=ours']) {
      const tab = await context.newPage();
      tab.on('console', (message) => message.type() === 'error' && troubles.push(message.text()));
      await tab.goto(address + path).catch(() => null);
      await onTheirSide(tab);
      await tab.close();
    }
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await page.reload();
    await onTheirSide(page);
    await page.goto(address).catch(() => null);
    await onTheirSide(page);
    expect(troubles.filter((trouble) => !/fetching the script|ERR_INTERNET/.test(trouble))).toEqual([]);
  });

  test('turns every open tab of ours at once, edits kept, and lets all of them go together', async () => {
    const talks = firstTalks();
    const { context, page, troubles, address } = await openApp(browser, {
      address: app.address,
      hash: '#/plans',
      before: watchDrawing,
    });
    await context.addInitScript(watchLeaving);
    await atTheTable(page, talks);
    const other = await openTab(context, { address, hash: `#/p/${talks.plan.id}/cash` });
    await other.page.getByLabel('Cash we have today', { exact: true }).fill('98765');
    await page.bringToFront();
    await turn(page);
    await onTheirSide(other.page);
    await holdReturn(page);
    await backWithUs(other.page);
    await goTo(other.page, `#/p/${talks.plan.id}/cash`, 'Cash');
    await expect
      .poll(() => other.page.getByLabel('Cash we have today', { exact: true }).inputValue())
      .toBe('98765');
    expect([...troubles, ...other.troubles]).toEqual([]);
  });

  test('stays turned after the browser was killed, and a page out of its cache gives way', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'firstfill-their-side-'));
    const talks = firstTalks();
    // Playwright switches the browser's cache of pages off; here it is what is looked at.
    const device = { ...phone, locale: 'en-US', ignoreDefaultArgs: ['--disable-back-forward-cache'] };
    let context = await startBrowserOnProfile(profile, device);
    const troubles: string[] = [];
    let page = await watchedPage(context, troubles);
    await page.goto(`${app.address}#/plans`);
    await settled(page);
    await atTheTable(page, talks);
    // Left for another page, as it was; turned meanwhile in another tab.
    await page.goto(`${app.address}robots.txt`);
    const second = await watchedPage(context, troubles);
    await second.goto(`${app.address}#/p/${talks.plan.id}/table`);
    await settled(second);
    await turn(second);
    await page.bringToFront();
    await page.evaluate(() => history.back());
    await onTheirSide(page);

    const devtools = await context.newCDPSession(page);
    await devtools.send('Browser.crash').catch(() => null);
    await context.close().catch(() => null);
    context = await startBrowserOnProfile(profile, device);
    page = await watchedPage(context, troubles);
    await page.goto(app.address).catch(() => null);
    await onTheirSide(page);
    expect(await page.locator('h1').innerText()).toBe(recordOf(talks).record.item);
    // robots.txt is no page of ours: the browser asks for an icon beside it, which is not there.
    expect(troubles.filter((trouble) => !/404/.test(trouble))).toEqual([]);
    await context.close();
    rmSync(profile, { recursive: true, force: true });
  });

  test('is turned by the database alone where the browser refuses the flag', async () => {
    const refuse = (): void => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('refused', 'SecurityError');
        },
      });
    };
    const talks = firstTalks();
    const { page, address, troubles } = await openApp(browser, {
      address: app.address,
      hash: '#/plans',
      before: refuse,
    });
    await turnedAt(page, talks);
    await page.goto(address).catch(() => null);
    await onTheirSide(page);
    await holdReturn(page);
    await atOurTable(page, talks);
    expect(troubles).toEqual([]);
  });
});

describe('leaving their side', () => {
  test('takes 1.2 s on the corner key: less does nothing but say so', async () => {
    const talks = firstTalks();
    const { page } = await openTurned(talks);
    await pressReturn(page);
    await page.waitForTimeout(700);
    await page.mouse.up();
    await page.getByText('Keep it pressed until the ring is full, or press it 6 times.').waitFor();
    await page.waitForTimeout(600);
    await onTheirSide(page);
    await holdReturn(page);
    await atOurTable(page, talks);
    // Nothing is left behind, and the next start is ours.
    await page.reload();
    await settled(page);
    expect(await page.evaluate(() => localStorage.getItem('firstfill-their-side'))).toBeNull();
    await page.goto(`${app.address}their-side.html`).catch(() => null);
    await page.waitForURL((url) => url.pathname === '/');
  });

  test('goes by keyboard: Enter held, from the key or from nowhere, not from another key', async () => {
    const talks = firstTalks();
    const { page } = await openTurned(talks);
    const hold = async (ms: number): Promise<void> => {
      await page.keyboard.down('Enter');
      await page.waitForTimeout(ms);
      await page.keyboard.up('Enter');
    };
    await page.getByRole('button', { name: 'Upside down' }).focus();
    await hold(1500);
    await onTheirSide(page);
    await page.getByRole('button', { name: 'Return' }).focus();
    await hold(500);
    await page.getByText('Keep it pressed until the ring is full, or press it 6 times.').waitFor();
    await page.keyboard.down('Enter');
    await atOurTable(page, talks);
    await page.keyboard.up('Enter');

    await turn(page);
    await page.keyboard.down('Enter');
    await atOurTable(page, talks);
    await page.keyboard.up('Enter');
  });

  test('goes by six short presses for those who can’t hold; five do nothing', async () => {
    const talks = firstTalks();
    const { page } = await openTurned(talks);
    const key = page.getByRole('button', { name: 'Return' });
    for (let press = 0; press < 5; press++) await key.click();
    await page.waitForTimeout(300);
    await onTheirSide(page);
    await key.click();
    await atOurTable(page, talks);
  });

  test('goes by the code for those who can’t hold, and a wrong one starts again', async () => {
    const talks = firstTalks();
    const { page } = await openTurned(talks);
    await keepCode(page, '4711');
    await page.reload();
    await onTheirSide(page);
    await page.getByRole('button', { name: 'Return' }).tap();
    const pad = page.getByRole('dialog', { name: 'Code' });
    for (const digit of '4712') await pad.getByRole('button', { name: digit, exact: true }).tap();
    await pad.getByText('Not the code.').waitFor();
    expect(await page.locator('html').innerHTML()).not.toContain('4711');
    for (const digit of '47') await pad.getByRole('button', { name: digit, exact: true }).tap();
    await page.keyboard.type('11');
    await atOurTable(page, talks);
  });
});

test('our side covers itself with plain paper while it is hidden', async () => {
  const talks = firstTalks();
  const { context, page } = await openApp(browser, { address: app.address, hash: '#/plans' });
  await atTheTable(page, talks);
  const title = await page.title();
  const seen = () => page.locator('h1').evaluate((each) => each.checkVisibility());
  expect(await seen()).toBe(true);
  const become = (state: string) =>
    page.evaluate((now) => {
      Object.defineProperty(document, 'visibilityState', { value: now, configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
  await become('hidden');
  expect(await seen()).toBe(false);
  const devtools = await context.newCDPSession(page);
  const { nodes } = await devtools.send('Accessibility.getFullAXTree');
  expect(nodes.filter(({ ignored }) => !ignored).map(({ role }) => role?.value)).toEqual(['RootWebArea']);
  expect(await page.title()).toBe('Firstfill');
  await become('visible');
  expect(await seen()).toBe(true);
  expect(await page.title()).toBe(title);
  await context.close();
});

test('all of it stands at 360 x 560 without scrolling, upside down too, in one face of ink', async () => {
  const { context, page } = await openTurned(firstTalks());
  await page.setViewportSize({ width: 360, height: 560 });
  const fits = () =>
    page.evaluate(() => {
      const { scrollHeight, scrollWidth } = document.documentElement;
      return scrollHeight <= innerHeight && scrollWidth <= innerWidth;
    });
  expect(await fits()).toBe(true);
  await page.getByRole('button', { name: 'Sold a store a week: more' }).tap();
  await page.getByRole('button', { name: 'Upside down' }).tap();
  expect(await fits()).toBe(true);
  expect(await page.locator('.ts-page').evaluate((each) => getComputedStyle(each).rotate)).toBe('180deg');
  await page.getByRole('button', { name: 'Back to the offer' }).tap();
  expect(await page.getByText('As offered').isVisible()).toBe(true);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('button:visible').count()).toBe(0);
  expect(await page.locator('.ts-page').evaluate((each) => getComputedStyle(each).rotate)).toBe('none');
  await context.close();
});

async function atOurTable(page: Page, { plan }: InTalks): Promise<void> {
  await page.waitForURL(`**/#/p/${plan.id}/table/**`);
  await page.locator('h1', { hasText: 'Across the table' }).waitFor({ state: 'attached' });
  await settled(page);
}

async function pressReturn(page: Page): Promise<void> {
  const box = await page.getByRole('button', { name: 'Return' }).boundingBox();
  if (!box) throw new Error('the key in the corner is not there');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
}

/** Keeps it pressed for as long as it takes, as it says there. */
async function holdReturn(page: Page): Promise<void> {
  await pressReturn(page);
  await backWithUs(page);
  await page.mouse.up();
}

async function backWithUs(page: Page): Promise<void> {
  await page.waitForURL((url) => !url.pathname.includes('their-side'));
}

/** As the app's own setting of a code leaves it. */
async function keepCode(page: Page, code: string): Promise<void> {
  await page.evaluate(
    (typed) =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('firstfill-their-side');
        opening.onsuccess = () => {
          const turns = opening.result.transaction('turns', 'readwrite').objectStore('turns');
          const reading = turns.get('now');
          reading.onsuccess = () => {
            turns.put({ ...reading.result, code: typed }, 'now').onsuccess = () => {
              opening.result.close();
              done();
            };
          };
        };
      }),
    code,
  );
}

async function watchedPage(context: BrowserContext, troubles: string[]): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript(watchDrawing);
  page.on('console', (message) => message.type() === 'error' && troubles.push(message.text()));
  page.on('pageerror', ({ message }) => troubles.push(message));
  return page;
}

/** The scripts a page waits for, by path, with all they import at once. */
function scriptsOf(folder: string, page: string): Map<string, string> {
  const html = readFileSync(join(folder, page), 'utf8');
  const found = new Map<string, string>();
  const take = (path: string): void => {
    if (found.has(path)) return;
    const text = readFileSync(join(folder, path), 'utf8');
    found.set(path, text);
    expect(text.match(/\bimport\(/g)?.length ?? 0).toBeLessThan(page === 'their-side.html' ? 1 : 1000);
    for (const written of importsAtStart(path, text)) take(posix.join(posix.dirname(path), written));
  };
  for (const match of html.matchAll(/<script[^>]*\ssrc="\/([^"]+)"/g)) take(match[1] ?? '');
  return found;
}
