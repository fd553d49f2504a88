/**
 * Drives the app as a person does: opens it on a device of its own, goes from view to view, types into fields by their
 * labels, taps keys, saves and brings in files. Everything waits for what it needs, nothing waits for a time.
 * Each opened app watches for what must never happen: errors on the console, faults nobody caught, a request to another
 * origin, a policy that is not kept. Worked figure: `demos()` holds what the model itself says of every example.
 */
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import type { Results, VerdictName, VerdictState } from '../../src/domain/results.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { phone } from './browser.ts';

export interface OpenedApp {
  readonly context: BrowserContext;
  readonly page: Page;
  /** With its closing slash. */
  readonly address: string;
  /** What must never happen, as it happened. */
  readonly troubles: string[];
}

export interface Opening {
  readonly address: string;
  /** "#/plans"; '' is what a first start shows. */
  readonly hash: string;
  readonly device?: BrowserContextOptions;
  /** Runs in the page before anything else does. */
  readonly before?: () => void;
}

/** Figures look the same on every machine. */
const reader = { locale: 'en-US', timezoneId: 'UTC' } as const;

/** Opens the app on a device that has never seen it. Close its context when done. */
export async function openApp(browser: Browser, opening: Opening): Promise<OpenedApp> {
  const context = await browser.newContext({ ...reader, ...phone, ...opening.device });
  context.setDefaultTimeout(30_000);
  if (opening.before) await context.addInitScript(opening.before);
  return openTab(context, opening);
}

/** Another tab, or the same device after the first one is gone. */
export async function openTab(
  context: BrowserContext,
  { address, hash }: Pick<Opening, 'address' | 'hash'>,
): Promise<OpenedApp> {
  const page = await context.newPage();
  const troubles: string[] = [];
  watch(page, address, troubles);
  await page.goto(address + hash);
  await settled(page);
  return { context, page, address, troubles };
}

function watch(page: Page, address: string, troubles: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => troubles.push(`fault: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !url.startsWith('blob:') && !url.startsWith('data:')) {
      troubles.push(`request: ${url}`);
    }
  });
}

/** The screen that the address names is drawn, and its parts that come later are there. */
export async function settled(page: Page): Promise<void> {
  await page.locator('main h1').first().waitFor({ state: 'attached' });
  await page.locator('.ff-starting').waitFor({ state: 'detached' });
}

/** Goes to an address of the app as a link would; the heading is the one of the view to wait for. */
export async function goTo(page: Page, hash: string, heading: string): Promise<void> {
  await page.evaluate((next) => {
    location.hash = next;
  }, hash);
  await page.locator('h1', { hasText: exactly(heading) }).waitFor({ state: 'attached' });
  await settled(page);
}

export function exactly(text: string): RegExp {
  return new RegExp(`^\\s*${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*$`);
}

/** The text box, list or switch of that label. */
export function field(page: Page, label: string): Locator {
  return page.getByLabel(label, { exact: true });
}

/** Types over what a field holds, and leaves it. */
export async function typeInto(page: Page, label: string, text: string): Promise<void> {
  await field(page, label).fill(text);
  await field(page, label).blur();
}

/** The sentence under a field; '' where nothing is wrong. */
export async function problemUnder(page: Page, label: string): Promise<string> {
  const ids = (await field(page, label).getAttribute('aria-describedby')) ?? '';
  const texts = await Promise.all(
    ids
      .split(' ')
      .filter((id) => id.endsWith('-problem') || id.endsWith('-below'))
      .map((id) => page.locator(`[id="${id}"]`).innerText()),
  );
  return texts.join(' ').trim();
}

/** The last edit is on the device. */
export async function saved(page: Page): Promise<void> {
  await page
    .getByRole('status')
    .filter({ hasText: exactly('Saved') })
    .waitFor();
}

/** What a screen keeps of how it is looked at, `name` as in its useKept(), is on the device with this text in it. */
export async function looksKept(page: Page, name: string, text: string): Promise<void> {
  const isThere = ([end, wanted]: readonly [string, string]): Promise<boolean> =>
    new Promise((done, failed) => {
      const opening = indexedDB.open('firstfill');
      opening.onerror = () => failed(opening.error);
      opening.onsuccess = () => {
        const meta = opening.result.transaction('meta').objectStore('meta');
        const [keys, values] = [meta.getAllKeys(), meta.getAll()];
        values.onsuccess = () => {
          opening.result.close();
          done(
            keys.result.some(
              (key, at) =>
                String(key).endsWith(`/${end}`) && JSON.stringify(values.result[at]).includes(wanted),
            ),
          );
        };
      };
    });
  await expect.poll(() => page.evaluate(isThere, [name, text] as const)).toBe(true);
}

export interface ShownVerdict {
  readonly word: string;
  readonly figure: string;
}

/** The four verdicts as the plan's first view shows them. */
export async function verdictsOnFront(page: Page): Promise<Record<VerdictName, ShownVerdict>> {
  const read = async (name: string): Promise<ShownVerdict> => {
    const row = page.locator('.ff-verdict-row').filter({
      has: page.locator('.ff-verdict-head > :first-child', { hasText: exactly(name) }),
    });
    const figure = row.locator('.ff-verdict-figure');
    return {
      word: await row.locator('.ff-verdict-word').innerText(),
      figure: spaced(await figure.innerText()),
    };
  };
  return {
    ladder: await read('Ladder'),
    deal: await read('Deal'),
    cash: await read('Cash'),
    promise: await read('Promise'),
  };
}

/** A space that lines don't break at reads as any other. */
const spaced = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');

/** How a person names the states that the model knows. */
export const WORDS: Record<VerdictState, string> = {
  holds: 'Holds',
  tight: 'Tight',
  fails: 'Fails',
  unknown: 'Not known yet',
};

/** What the model says, in the words of the screen. */
export function verdictsOf({ verdicts }: Results): Record<VerdictName, ShownVerdict> {
  const said = (name: VerdictName): ShownVerdict => ({
    word: WORDS[verdicts[name].state],
    figure: spaced(verdicts[name].figure),
  });
  return { ladder: said('ladder'), deal: said('deal'), cash: said('cash'), promise: said('promise') };
}

/** A plan's results by the model alone, as the command line has them. */
export function resultsOf(plan: Plan): Results {
  const results = evaluate(plan, (args) => ({ ...sayFor(args), date: dateInEnglish }));
  if (!results.ok) throw new Error(`The plan "${plan.id}" can't be computed.`);
  return results.value;
}

/** A date as the screens write it for the reader of these tests: "Jun 29, 2026". */
function dateInEnglish(isoDate: string): string {
  const look = { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' } as const;
  return new Intl.DateTimeFormat('en-US', look).format(new Date(isoDate));
}

export interface Demo {
  readonly plan: Plan;
  readonly results: Results;
  readonly lesson: string;
}

/** Every example with its results, the one of a first start first. */
export async function demos(): Promise<Demo[]> {
  return Promise.all(
    DEMOS.map(async ({ lesson, load }) => {
      const plan = planOf(JSON.stringify(await load()));
      return { plan, results: resultsOf(plan), lesson };
    }),
  );
}

/** The plan in a file's text. */
export function planOf(text: string): Plan {
  const read = parsePlanText(text);
  if (!read.ok) throw new Error('The text is no sound plan file.');
  return read.value;
}

/** Saves a plan as a file by its row among the plans; gives the file's text. The page is left on Plans. */
export async function exportedText(page: Page, name: string): Promise<string> {
  await goTo(page, '#/plans', 'Plans');
  await page.getByRole('button', { name: `More for ${name}`, exact: true }).click();
  const text = await downloaded(page, page.getByRole('button', { name: 'Save as a file' }));
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  return text;
}

/** The text of the file that a tap on a button downloads. */
export async function downloaded(page: Page, button: Locator): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return readFileSync(await download.path(), 'utf8');
}

/** Chooses a file for "Open a plan file"; the page must show Plans. */
export async function chooseFile(page: Page, name: string, text: string): Promise<void> {
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Open a plan file').setInputFiles(file);
}
