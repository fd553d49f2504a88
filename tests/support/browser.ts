/**
 * Finds a Chromium-family browser and starts it, for tests that need a real one.
 * The order: $CHROME_PATH; chromium, chromium-browser or google-chrome on the PATH; an installed Chrome or
 * Edge; Playwright's own build. Where there is none, one is installed: by apt-get on Debian as root, elsewhere
 * by Playwright's installer. When all of that fails, one sentence says what to do. Needs tests/support/served-app.ts for something to open.
 */
import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type LaunchOptions } from 'playwright-core';

/** A phone in the hand: the size every view is designed for first. */
export const phone = { viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true } as const;
/** The size where more stands beside each other. */
export const desktop = { viewport: { width: 1280, height: 800 } } as const;

/** Starts a browser; the caller closes it. Throws one clear sentence where none can be started. */
export async function startBrowser(): Promise<Browser> {
  return firstThatStarts((options) => chromium.launch(options));
}

/**
 * Starts a browser whose profile lives in a folder, so that a test can close it, or kill it, and open the same
 * device again. The caller closes the context.
 */
export async function startBrowserOnProfile(
  folder: string,
  context: NonNullable<Parameters<Browser['newContext']>[0]>,
): Promise<BrowserContext> {
  return firstThatStarts((options) => chromium.launchPersistentContext(folder, { ...context, ...options }));
}

/** The full build, not the shell without a window, which knows nothing of installing an app. */
const playwrightsOwn: LaunchOptions = { channel: 'chromium' };

type Start<Started> = (options: LaunchOptions) => Promise<Started>;

async function firstThatStarts<Started>(start: Start<Started>): Promise<Started> {
  const tried: string[] = [];
  for (const candidate of candidates()) {
    const started = await attempt(start, candidate, tried);
    if (started) return started;
  }
  for (const install of installers()) {
    const installed = install();
    const started = installed && (await attempt(start, installed, tried));
    if (started) return started;
  }
  throw new Error(
    'No Chromium-family browser could be started for the browser tests. Install Chromium or Google Chrome, ' +
      'or set CHROME_PATH to the program file of one, or run "npx playwright-core install chromium"; ' +
      `then run the command again. Tried: ${tried.join('; ')}.`,
  );
}

function candidates(): LaunchOptions[] {
  const named = process.env['CHROME_PATH'];
  if (named && !existsSync(named)) {
    throw new Error(
      `CHROME_PATH is "${named}", and there is no such file. Set it to the program file of a ` +
        'Chromium-family browser, or unset it so that one is looked for.',
    );
  }
  if (named) return [{ executablePath: named }];
  const found = ['chromium', 'chromium-browser', 'google-chrome'].map(onPath).filter((path) => path !== null);
  return [
    ...found.map((executablePath) => ({ executablePath })),
    { channel: 'chrome' },
    { channel: 'msedge' },
    playwrightsOwn,
  ];
}

async function attempt<Started>(
  start: Start<Started>,
  candidate: LaunchOptions,
  tried: string[],
): Promise<Started | null> {
  try {
    return await start({ ...candidate, args: launchArguments(), chromiumSandbox: !isRoot() });
  } catch (trouble) {
    const name =
      candidate === playwrightsOwn
        ? "Playwright's own build"
        : (candidate.executablePath ?? candidate.channel);
    const reason = trouble instanceof Error ? trouble.message.split('\n')[0] : String(trouble);
    tried.push(`${name} (${reason})`);
    return null;
  }
}

function launchArguments(): string[] {
  const quiet = [
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    `--disable-features=${[...PLAYWRIGHT_LEAVES_OUT, ...ADDRESS_BAR_PAGES].join(',')}`,
  ];
  return quiet;
}

/** What Playwright itself switches off: of two such lists the browser takes the last alone. */
const PLAYWRIGHT_LEAVES_OUT = [
  'AvoidCorsURLLoaderRestartOnRedirect',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
];

/** Pages that newer browsers load behind their address bar, a second of work for every window a test opens. */
const ADDRESS_BAR_PAGES = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxFullPopup',
  'AimEnabled',
];

/** Each installs a browser and returns how to start it, or null where that did not work. */
function installers(): (() => LaunchOptions | null)[] {
  const debianRoot = isRoot() && existsSync('/etc/debian_version') && onPath('apt-get') !== null;
  return debianRoot ? [installFromDebian, installPlaywrightsOwn] : [installPlaywrightsOwn];
}

function installFromDebian(): LaunchOptions | null {
  console.warn('No browser found: installing chromium with apt-get (about 115 MB).');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const install = ['install', '-y', '--no-install-recommends', 'chromium'];
  if (!runs('apt-get', ['update'], env) || !runs('apt-get', install, env)) return null;
  const executablePath = onPath('chromium');
  return executablePath === null ? null : { executablePath };
}

function installPlaywrightsOwn(): LaunchOptions | null {
  console.warn('No browser found: downloading Chromium with Playwright (about 170 MB).');
  const installer = join(import.meta.dirname, '../../node_modules/playwright-core/cli.js');
  return runs(process.execPath, [installer, 'install', '--no-shell', 'chromium'], {}) ? playwrightsOwn : null;
}

/** False where the command failed or took over three minutes; what it printed has been shown. */
function runs(program: string, words: string[], env: NodeJS.ProcessEnv): boolean {
  try {
    execFileSync(program, words, { stdio: 'inherit', env: { ...process.env, ...env }, timeout: 180_000 });
    return true;
  } catch {
    return false;
  }
}

function isRoot(): boolean {
  return process.getuid?.() === 0;
}

function onPath(name: string): string | null {
  for (const folder of (process.env['PATH'] ?? '').split(delimiter)) {
    const path = join(folder, name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // not in this folder
    }
  }
  return null;
}
