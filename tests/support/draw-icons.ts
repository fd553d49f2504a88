/**
 * Draws the PNG icons of public/icons from their SVGs, in a browser. Run it by hand after changing an SVG:
 * `npx tsx tests/support/draw-icons.ts`. The PNGs are kept in git, so neither build nor tests need this.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startBrowser } from './browser.ts';

const folder = join(import.meta.dirname, '../../public/icons');
const drawings = [
  { from: 'icon.svg', to: 'icon-192.png', sizePx: 192 },
  { from: 'icon.svg', to: 'icon-512.png', sizePx: 512 },
  { from: 'icon-maskable.svg', to: 'icon-maskable-512.png', sizePx: 512 },
];

const browser = await startBrowser();
const page = await browser.newPage();
for (const { from, to, sizePx } of drawings) {
  await page.setViewportSize({ width: sizePx, height: sizePx });
  await page.setContent(readFileSync(join(folder, from), 'utf8'));
  await page.addStyleTag({ content: 'html, body { margin: 0 } svg { display: block; width: 100vw }' });
  writeFileSync(join(folder, to), await page.screenshot({ omitBackground: true }));
}
await browser.close();
