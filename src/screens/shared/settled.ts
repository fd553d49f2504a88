// Work that may come a moment after the frame of an edit: the long tables under the pictures. While values keep changing
// the last one made stands, and says that it is being worked out; the figures and pictures themselves never wait.
// Worked figure: a held stepper makes eight edits a second; the 104 rows below are written once, 150 ms after the last.
import { useEffect, useRef, useState } from 'preact/hooks';

const SETTLE_MS = 150;

export interface Settled<T> {
  value: T;
  /** The value is of an earlier state. */
  settling: boolean;
}

/** `make` of the latest `from` that stood for a moment; the first one at once. */
export function useSettled<T>(from: readonly unknown[], make: () => T): Settled<T> {
  const latest = useRef(make);
  latest.current = make;
  const [made, setMade] = useState(() => ({ value: make(), from }));
  const settling = made.from.some((each, index) => each !== from[index]);
  useEffect(() => {
    if (!settling) return undefined;
    const timer = setTimeout(() => setMade({ value: latest.current(), from }), SETTLE_MS);
    return () => clearTimeout(timer);
  }, from);
  return { value: made.value, settling };
}

/** The caption of a table that is being worked out anew. */
export function captionOf(caption: string, { settling }: Settled<unknown>): string {
  return settling ? `${caption} (the last edit is still being worked in …)` : caption;
}

/** What was made for a key, as long as the key stays the same: a picture whose numbers did not change is not drawn again. */
export function useForKey<T>(key: string, make: () => T): T {
  const kept = useRef<{ key: string; value: T } | null>(null);
  if (kept.current === null || kept.current.key !== key) kept.current = { key, value: make() };
  return kept.current.value;
}
