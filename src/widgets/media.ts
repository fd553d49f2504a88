/**
 * What the screen is like right now, as hooks: wide or not, which scheme, how large type is.
 * Worked figure: 900 px at the usual type size is 56.25rem, where the side column starts.
 */
import { useEffect, useState } from 'preact/hooks';

const wideQuery = '(min-width: 56.25rem)';
const lookQueries = ['(prefers-color-scheme: dark)', '(forced-colors: active)', 'print'];

/** Whether there is room for a side column. */
export function useWide(): boolean {
  const [wide, setWide] = useState(() => matchMedia(wideQuery).matches);
  useEffect(() => {
    const query = matchMedia(wideQuery);
    const update = (): void => setWide(query.matches);
    // A sheet of paper is narrow. Said before it is laid out: redrawn on the way, what was taller leaves empty sheets.
    const narrow = (): void => setWide(false);
    update();
    query.addEventListener('change', update);
    addEventListener('beforeprint', narrow);
    addEventListener('afterprint', update);
    return () => {
      query.removeEventListener('change', update);
      removeEventListener('beforeprint', narrow);
      removeEventListener('afterprint', update);
    };
  }, []);
  return wide;
}

/** Whether movement is unwelcome. */
export function motionReduced(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}

/** Calls back whenever the colours of the page may have changed; returns how to stop. */
export function watchLook(onChange: () => void): () => void {
  const queries = lookQueries.map((text) => matchMedia(text));
  for (const query of queries) query.addEventListener('change', onChange);
  const observer = new MutationObserver(onChange);
  observer.observe(document.documentElement, { attributeFilter: ['data-scheme', 'class'] });
  return () => {
    for (const query of queries) query.removeEventListener('change', onChange);
    observer.disconnect();
  };
}

/** One rem in px, as the reader has set it. */
export function remPx(): number {
  const size = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return Number.isFinite(size) ? size : 16;
}
