// What of a meeting belongs to the device and not to the plan: the row that is typed into with its text, the hand the
// phone lies in, the code for coming back, the product that their side shows. Written at every change, so that a killed
// tab comes back with the keypad open and the digits in it.
// Worked example: "25" typed into slotting is there after a reload, with the keypad, before it became 250.
import { useEffect, useState } from 'preact/hooks';
import { usePlan, useSession } from '../shared/session-context.ts';

export interface Kept {
  /** The term that is typed into, or null. */
  active: string | null;
  /** Texts that are not the plan's own writing, by term. */
  texts: Readonly<Record<string, KeptText>>;
}

/** A text under the fingers, and the value that was in force beside it: another value means it is out of date. */
export interface KeptText {
  text: string;
  value: number;
}

export interface MeetingKept {
  typed: Kept;
  keepTyped: (typed: Kept) => void;
  habits: Habits;
  setHabits: (change: Partial<Habits>) => void;
}

/** The same in every meeting of this device. */
export interface Habits {
  leftHand: boolean;
  /** Four digits, or '' for none. */
  code: string;
}

const NO_TYPED: Kept = { active: null, texts: {} };
const NO_HABITS: Habits = { leftHand: false, code: '' };

/** Null until it was read. */
export function useUndoneKept(accountId: string): MeetingKept | null {
  const session = useSession();
  const key = `talks/${usePlan().id}/${accountId}`;
  const [typed, setTyped] = useState<Kept | null>(null);
  const [habits, setHabits] = useState<Habits | null>(null);
  useEffect(() => {
    let gone = false;
    void Promise.all([session.readDraft(key), session.readDraft('talks')]).then(([one, all]) => {
      if (gone) return;
      setTyped(typedOf(one));
      setHabits(habitsOf(all));
    });
    return () => {
      gone = true;
    };
  }, [key, session]);
  if (typed === null || habits === null) return null;
  return {
    typed,
    keepTyped: (next) => {
      setTyped(next);
      const isNone = next.active === null && Object.keys(next.texts).length === 0;
      void session.writeDraft(key, isNone ? null : next);
    },
    habits,
    setHabits: (change) => {
      const next = { ...habits, ...change };
      setHabits(next);
      void session.writeDraft('talks', next);
    },
  };
}

function typedOf(kept: unknown): Kept {
  if (typeof kept !== 'object' || kept === null) return NO_TYPED;
  const { active, texts } = kept as Record<string, unknown>;
  const entries = typeof texts === 'object' && texts !== null ? Object.entries(texts) : [];
  return {
    active: typeof active === 'string' ? active : null,
    texts: Object.fromEntries(
      entries.flatMap(([name, each]) => {
        const { text, value } = (typeof each === 'object' && each !== null ? each : {}) as Record<
          string,
          unknown
        >;
        const isText = typeof text === 'string' && typeof value === 'number';
        return isText ? [[name, { text: text.slice(0, 80), value }]] : [];
      }),
    ),
  };
}

function habitsOf(kept: unknown): Habits {
  if (typeof kept !== 'object' || kept === null) return NO_HABITS;
  const { leftHand, code } = kept as Record<string, unknown>;
  return { leftHand: leftHand === true, code: typeof code === 'string' ? code.slice(0, 8) : '' };
}
