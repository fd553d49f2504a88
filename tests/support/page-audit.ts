/**
 * Looks a page over for what a person could stumble on: axe's rules, controls without a name, targets smaller than a
 * thumb, things covered by others, text cut off, a page that scrolls sideways, a control the Tab key doesn't reach, a
 * focus nobody sees. Each check answers with sentences, none where all is well.
 * The sizes: 44 px is W3C "Web Content Accessibility Guidelines 2.2", 2.5.5 (AAA); 320 px and 200 % are its 1.4.10 and 1.4.4.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { RunOptions } from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';

const axeText = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Makes axe known to every page of a context opened from now on; the page's own policy forbids adding it later. */
export async function bringAxe(context: BrowserContext): Promise<void> {
  await context.addInitScript({ content: axeText });
}

/**
 * "rule: what it says, where (first of n)", for every rule that is broken: on the whole page, or within the open sheet,
 * for a page that was looked over without it.
 */
export async function axeFaults(
  page: Page,
  only: readonly string[] | null,
  within: 'page' | 'sheet' = 'page',
): Promise<string[]> {
  const options: RunOptions = {
    resultTypes: ['violations'],
    rules: { 'target-size': { enabled: true } },
    ...(only === null ? {} : { runOnly: { type: 'rule', values: [...only] } }),
  };
  return page.evaluate(
    async ({ run, within }) => {
      const { axe } = window as unknown as { axe: typeof import('axe-core') };
      const sheet = within === 'sheet' ? [...document.querySelectorAll('dialog[open]')].at(-1) : document;
      if (!sheet) throw new Error('no sheet is open');
      const { violations } = await axe.run(sheet, run);
      return violations.map(({ id, help, nodes }) => {
        const [first] = nodes;
        return `${id}: ${help}; ${first?.html.slice(0, 160)} (first of ${nodes.length}) ${first?.failureSummary ?? ''}`;
      });
    },
    { run: options, within },
  );
}

/** Opens every fold inside what is shown, and the folds inside those. */
export async function openFolds(page: Page): Promise<void> {
  await page.evaluate(async () => {
    // What was just drawn is ready for a tap a frame later.
    for (let frame = 0; frame < 2; frame += 1) await new Promise(requestAnimationFrame);
    await new Promise((done) => setTimeout(done, 0));
  });
  for (let depth = 0; depth < 4; depth += 1) {
    const opened = await page.evaluate(() => {
      const closed = [...document.querySelectorAll('details:not([open])')];
      for (const fold of closed) (fold as HTMLDetailsElement).open = true;
      return closed.length;
    });
    if (opened === 0) return;
    await page.waitForFunction(() =>
      [...document.querySelectorAll('details[open]')].every((fold) => fold.childElementCount > 1),
    );
  }
}

/** Controls that are too small for a thumb, or lie under something else. */
export async function targetFaults(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const all =
      'a[href], button, input, select, textarea, summary, [role="slider"], [role="button"], [role="tab"]';
    const top = [...document.querySelectorAll('dialog[open]')]
      .filter((each) => each.matches(':modal'))
      .at(-1);
    const faults: string[] = [];
    for (const control of (top ?? document).querySelectorAll<HTMLElement>(all)) {
      if (control.matches(':disabled, .ff-skip') || !control.checkVisibility()) continue;
      const label = control.closest('label') ?? labelOf(control);
      // A control that its label draws is as large as the label; the frame of a box is part of the box.
      const drawn = control.classList.contains('ff-spoken') && label ? label : control;
      const face = drawn.closest<HTMLElement>('.ff-box, .ff-seven-box') ?? drawn;
      face.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
      const box = face.getBoundingClientRect();
      if (box.width < 1 || box.height < 1) continue;
      const x = box.left + box.width / 2;
      const y = box.top + box.height / 2;
      const isOurs = (at: Element | null): boolean =>
        at !== null && (control.contains(at) || face.contains(at) || (label?.contains(at) ?? false));
      const name = `${control.tagName.toLowerCase()} "${(control.getAttribute('aria-label') ?? control.textContent ?? '').trim().slice(0, 50) || control.id}"`;
      const under = document.elementFromPoint(x, y);
      if (!isOurs(under)) {
        faults.push(
          `${name} is covered by ${under === null ? 'nothing on the screen' : `${under.tagName} ${under.className}`}`,
        );
        continue;
      }
      const reach = (stepX: number, stepY: number): number => {
        let px = 0;
        while (px < least && isOurs(document.elementFromPoint(x + stepX * (px + 1), y + stepY * (px + 1))))
          px += 1;
        return px;
      };
      const width = box.width >= least ? box.width : reach(-1, 0) + reach(1, 0) + 1;
      const height = box.height >= least ? box.height : reach(0, -1) + reach(0, 1) + 1;
      if (width < least - 0.5 || height < least - 0.5) {
        faults.push(`${name} is ${Math.round(width)} x ${Math.round(height)} px`);
      }
    }
    return [...new Set(faults)];

    function labelOf(control: HTMLElement): HTMLElement | null {
      return 'labels' in control ? ((control as HTMLInputElement).labels?.[0] ?? null) : null;
    }
  }, 44);
}

/** What doesn't fit: a page that scrolls sideways, things past its edge, words cut off. */
export async function fitFaults(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    // Pictures follow a change of size a frame or two later.
    for (let frame = 0; frame < 4; frame += 1) await new Promise(requestAnimationFrame);
    const top = [...document.querySelectorAll('dialog[open]')]
      .filter((each) => each.matches(':modal'))
      .at(-1);
    const faults: string[] = [];
    const { clientWidth, scrollWidth } = document.documentElement;
    if (scrollWidth > clientWidth)
      faults.push(`the page is ${scrollWidth} px wide on a screen of ${clientWidth}`);
    const scrolls = (element: Element): boolean => {
      const { overflowX } = getComputedStyle(element);
      return overflowX === 'auto' || overflowX === 'scroll';
    };
    const inScroller = (element: Element): boolean => {
      for (let up = element.parentElement; up !== null && up !== document.body; up = up.parentElement) {
        if (scrolls(up)) return up.scrollWidth > up.clientWidth && up.closest('.ff-table-frame') !== null;
      }
      return false;
    };
    const name = (element: Element): string =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${(element.textContent ?? '').trim().slice(0, 50)}"`;
    for (const element of (top ?? document.body).querySelectorAll('*')) {
      if (!(element instanceof HTMLElement) || !element.checkVisibility()) continue;
      if (element.closest('.ff-spoken, .ff-skip, svg, dialog:not([open])')) continue;
      const box = element.getBoundingClientRect();
      if (box.width < 1 || box.height < 1) continue;
      if ((box.right > clientWidth + 1 || box.left < -1) && !inScroller(element)) {
        faults.push(`${name(element)} reaches from ${Math.round(box.left)} to ${Math.round(box.right)} px`);
      }
      const { overflowX, overflowY, textOverflow } = getComputedStyle(element);
      const ownText = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
      if (!ownText) continue;
      const isCut =
        (overflowX === 'hidden' || overflowX === 'clip') && element.scrollWidth > element.clientWidth + 1;
      const isLow =
        (overflowY === 'hidden' || overflowY === 'clip') && element.scrollHeight > element.clientHeight + 2;
      if ((isCut && textOverflow !== 'ellipsis') || isLow) faults.push(`${name(element)} is cut off`);
    }
    return [...new Set(faults)];
  });
}

/** Presses Tab through the page: what it never reaches, and where the focus can't be seen. */
export async function tabFaults(page: Page): Promise<string[]> {
  const { expected, presses } = await page.evaluate(() => {
    const all = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
    const top = [...document.querySelectorAll('dialog[open]')]
      .filter((each) => each.matches(':modal'))
      .at(-1);
    let number = 0;
    const radios = new Set<string>();
    for (const control of (top ?? document).querySelectorAll<HTMLInputElement>(all)) {
      if (control.matches(':disabled') || !control.checkVisibility({ visibilityProperty: true })) continue;
      if (control.type === 'radio') {
        // Of one group Tab reaches the chosen one, arrows the others.
        if (!control.checked || radios.has(control.name)) continue;
        radios.add(control.name);
      }
      control.setAttribute('data-tab', String(number));
      number += 1;
    }
    (document.activeElement as HTMLElement | null)?.blur();
    // A date box takes a press for each of its parts; and what a worker brings while Tab is pressed is passed as well: a
    // second round through the page is enough for that.
    const dates = document.querySelectorAll('input[type="date"]').length;
    return { expected: number, presses: 2 * number + 4 * dates + 40 };
  });
  const reached = new Set<number>();
  const unseen: string[] = [];
  for (let press = 0; press < presses && reached.size < expected; press += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(lookAtFocus);
    if (at === null || reached.has(at.number)) continue;
    reached.add(at.number);
    if (!at.seen) unseen.push(`the focus can't be seen on ${at.name}`);
  }
  const missed = await page.evaluate(
    (numbers) =>
      [...document.querySelectorAll('[data-tab]')]
        .filter(
          (each) => !each.matches(':disabled') && !numbers.includes(Number(each.getAttribute('data-tab'))),
        )
        .map((each) => `Tab never reaches ${each.outerHTML.slice(0, 120)}`),
    [...reached],
  );
  await page.evaluate(() => {
    for (const each of document.querySelectorAll('[data-tab]')) each.removeAttribute('data-tab');
    (document.activeElement as HTMLElement | null)?.blur();
  });
  return [...missed, ...unseen];
}

/** Runs in the page: what has the focus, and whether it looks otherwise than without. */
function lookAtFocus(): { number: number; name: string; seen: boolean } | null {
  const focused = document.activeElement;
  if (!(focused instanceof HTMLElement) || focused === document.body) return null;
  const number = focused.getAttribute('data-tab');
  if (number === null) return null;
  const around = [
    focused,
    focused.nextElementSibling,
    focused.parentElement,
    focused.parentElement?.parentElement,
  ];
  const look = (): string =>
    around
      .map((each) => {
        if (!each) return '';
        const { outlineStyle, outlineWidth, outlineColor, boxShadow, borderColor, stroke } =
          getComputedStyle(each);
        return [
          outlineStyle === 'none' ? '' : `${outlineWidth} ${outlineColor}`,
          boxShadow,
          borderColor,
          stroke,
        ].join();
      })
      .join(';');
  const withFocus = look();
  // Of a date box the focus is on a part, which a second focus() would lose again: its frame is looked at elsewhere.
  if (focused.matches('[type="date"]')) return { number: Number(number), name: 'a date', seen: true };
  focused.blur();
  const without = look();
  focused.focus();
  return { number: Number(number), name: focused.outerHTML.slice(0, 120), seen: withFocus !== without };
}
