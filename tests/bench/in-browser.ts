/** Builds a page's script and runs what it puts on the page, in one fresh tab of a real browser. */
import { build } from 'vite';
import { startBrowser } from '../support/browser.ts';

/**
 * `name` is the function the script leaves on globalThis; its result must survive JSON. `scripts` are built too, as the
 * app is, and left on globalThis as text: what a worker is started with.
 */
export async function inBrowser<T>(
  entry: string,
  name: string,
  scripts: Readonly<Record<string, string>> = {},
): Promise<T> {
  const content = await scriptOf(entry, false);
  const texts: Record<string, string> = {};
  for (const [text, from] of Object.entries(scripts)) texts[text] = await scriptOf(from, true);
  const browser = await startBrowser();
  try {
    const page = await browser.newPage();
    await page.evaluate((given) => {
      Object.assign(globalThis, given);
    }, texts);
    await page.addScriptTag({ content });
    return (await page.evaluate(
      (called) => (globalThis as unknown as Record<string, () => unknown>)[called]?.(),
      name,
    )) as T;
  } finally {
    await browser.close();
  }
}

async function scriptOf(entry: string, minify: boolean): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify, lib: { entry, formats: ['iife'], name: 'bench' } },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!output || !('output' in output)) throw new Error('vite gave no output');
  return output.output[0].code;
}
