// What a screen keeps of how it is looked at, over a reload: the week chosen on cash and roll-out, the rung chosen on the
// ladder, the chains beside each other. It belongs to the device, not to the plan.
// Worked example: week 26 chosen on Cash is still chosen after a reload, and is the week the roll-out shows.
import { useEffect, useRef, useState } from 'preact/hooks';
import { usePlan, useSession } from './session-context.ts';

/** A slider on its way is kept where it stops. */
const KEEP_MS = 300;

/** The kept value of this plan, null while nothing was chosen; what was kept and is no such value counts as nothing. */
export function useKept<T>(name: string, is: (value: unknown) => value is T): [T | null, (value: T) => void] {
  const session = useSession();
  const key = `look/${usePlan().id}/${name}`;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const [chosen, setChosen] = useState<{ key: string; value: T } | null>(null);
  useEffect(() => {
    let gone = false;
    void session.readDraft(key).then((value) => {
      if (!gone && is(value)) setChosen((now) => (now?.key === key ? now : { key, value }));
    });
    return () => {
      gone = true;
    };
  }, [key]);
  const choose = (value: T): void => {
    setChosen({ key, value });
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void session.writeDraft(key, value), KEEP_MS);
  };
  return [chosen !== null && chosen.key === key ? chosen.value : null, choose];
}

export function isWeek(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0;
}

export function isText(value: unknown): value is string {
  return typeof value === 'string';
}

export function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every(isText);
}
