/** Builds a page's script and runs what it puts on the page, in one fresh tab of a real browser. */
import { build } from 'vite';
import { startBrowser } from '../support/browser.ts';

/** `name` is the function the script leaves on globalThis; its result must survive JSON. */
export async function inBrowser<T>(entry: string, name: string): Promise<T> {
  const content = await scriptOf(entry);
  const browser = await startBrowser();
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content });
    return (await page.evaluate(
      (called) => (globalThis as unknown as Record<string, () => unknown>)[called]?.(),
      name,
    )) as T;
  } finally {
    await browser.close();
  }
}

async function scriptOf(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: false, lib: { entry, formats: ['iife'], name: 'bench' } },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!output || !('output' in output)) throw new Error('vite gave no output');
  return output.output[0].code;
}
