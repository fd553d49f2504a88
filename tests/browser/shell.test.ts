/**
 * The shell around the app, whatever the app shows: what the server sends, what the service worker keeps,
 * that a second start needs no server, and that a phone would offer to install it. W3C "Content Security
 * Policy Level 3", "Service Workers" and "Web Application Manifest" say what each of these must do; the
 * browser is the judge.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { phone, startBrowser, startBrowserOnProfile } from '../support/browser.ts';
import {
  buildApp,
  freePort,
  freshBuild,
  type ServedApp,
  serveApp,
  serveFolder,
} from '../support/served-app.ts';

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  [browser, app] = await Promise.all([startBrowser(), serveApp()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

describe('the policy', () => {
  test('comes as a header and in the page, the same but for frame-ancestors', async () => {
    const page = await browser.newPage(phone);
    const answer = await page.goto(app.address);
    const header = answer?.headers()['content-security-policy'] ?? '';
    const inPage = page.locator('meta[http-equiv="Content-Security-Policy"]');
    expect(header).toBe(`${await inPage.getAttribute('content')}; frame-ancestors 'none'`);
    expect(header).toMatch(/^default-src 'none';/);
    expect(header).not.toMatch(/unsafe|https?:|\*/);
    await page.close();
  });

  test('is kept by the app on its first screen, and nothing outside is asked for', async () => {
    const page = await browser.newPage(phone);
    const outside: string[] = [];
    page.on('request', (request) => {
      const address = request.url();
      if (!address.startsWith(app.address)) outside.push(address);
    });
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', (event) => {
        const seen = `${event.violatedDirective} ${event.blockedURI}`;
        document.documentElement.setAttribute('data-violation', seen);
      });
    });
    await page.goto(app.address, { waitUntil: 'networkidle' });
    expect(await page.locator('html').getAttribute('data-violation')).toBeNull();
    expect(outside).toEqual([]);
    await page.close();
  });
});

describe('the service worker', () => {
  test('keeps every file of the build but itself, and opens any address with the server gone', async () => {
    const context = await browser.newContext(phone);
    const page = await context.newPage();
    await page.goto(app.address);
    await registerWorker(page);
    const kept = await keptFiles(page);
    const built = readdirSync(await freshBuild(), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name !== 'sw.js')
      .map((entry) => entry.name);
    expect(kept.map((path) => path.split('/').at(-1)).sort()).toEqual(built.sort());

    await app.stop();
    await expect(fetch(app.address)).rejects.toThrow();
    for (const path of ['', 'any/address?of=ours']) {
      const answer = await page.goto(app.address + path);
      expect(answer?.ok()).toBe(true);
      expect(answer?.fromServiceWorker()).toBe(true);
      expect(await page.locator('#app').count()).toBe(1);
    }
    await context.close();
    app = await serveApp();
  });

  test('lets a new version wait until it is asked for, then drops the old files', async () => {
    const place = mkdtempSync(join(tmpdir(), 'firstfill-update-'));
    const [older, newer] = [join(place, 'older'), join(place, 'newer')];
    await buildApp({ folder: older, name: 'older' });
    await buildApp({ folder: newer, name: 'newer' });
    const port = await freePort();
    let server = await serveFolder({ folder: older, port });
    const context = await browser.newContext(phone);
    const page = await context.newPage();
    const name = () => page.locator('meta[name="firstfill-build"]').getAttribute('content');

    await page.goto(server.address);
    await registerWorker(page);
    await page.reload(); // now the page is the worker's; with no such page a new version need not wait
    await server.stop();
    server = await serveFolder({ folder: newer, port });
    await page.evaluate(waitForUpdate);
    await page.reload();
    expect(await name()).toBe('older');

    // The app offers it; once the new version is in charge, the app reloads by itself. A browser may hold it back for as long
    // as the old one has something to answer: the app asks again then, and at last opens anew.
    await page.getByText('New version ready').waitFor();
    expect(await name()).toBe('older');
    await page.getByRole('button', { name: 'Use it now' }).click();
    await expect.poll(() => name().catch(() => 'on its way'), { timeout: 30_000 }).toBe('newer');
    const pages = (await keptFiles(page)).filter((path) => path === 'index.html');
    expect(pages).toHaveLength(1);

    await context.close();
    await server.stop();
    rmSync(place, { recursive: true });
  });
});

test('a phone would offer to install it', async () => {
  // On a profile of its own: a plain context counts as incognito, where nothing can be installed.
  const profile = mkdtempSync(join(tmpdir(), 'firstfill-profile-'));
  const device = await startBrowserOnProfile(profile, phone);
  const page = await device.newPage();
  await page.goto(app.address);
  const devtools = await device.newCDPSession(page);
  const manifest = await devtools.send('Page.getAppManifest');
  expect(manifest.errors).toEqual([]);
  expect(manifest.url).toBe(`${app.address}manifest.webmanifest`);
  expect((await devtools.send('Page.getInstallabilityErrors')).installabilityErrors).toEqual([]);
  const { icons } = JSON.parse(manifest.data ?? '{}') as { icons: { src: string }[] };
  expect(icons.length).toBeGreaterThan(0);
  for (const icon of icons) {
    const answer = await fetch(new URL(icon.src, app.address));
    expect(answer.headers.get('content-type')).toMatch(/^image\//);
  }
  await device.close();
  rmSync(profile, { recursive: true, force: true });
});

async function registerWorker(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.register('/sw.js');
    await navigator.serviceWorker.ready;
  });
}

/** Every address in the caches of this origin, as a path without its first slash. */
async function keptFiles(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return requests.flat().map(({ url }) => new URL(url).pathname.slice(1));
  });
}

// Runs in the page, so it can use nothing of this file.

async function waitForUpdate(): Promise<void> {
  const worker = await navigator.serviceWorker.ready;
  await worker.update();
  const installing = worker.installing;
  if (!installing) return;
  await new Promise<void>((done) => {
    installing.addEventListener('statechange', () => installing.state === 'installed' && done());
  });
}
