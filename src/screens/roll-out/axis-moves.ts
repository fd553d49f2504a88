// Moving what stands on the time axis: a drag or a key puts another week into the plan at once, and the cash beside it
// follows. A week the plan can't have is refused in a sentence, and the last good one stays. One drag, or one hold of a
// key, is one undo. What the moves did to the cash is counted from before the first of them.
// Worked example: an opening moved from week 10 to week 14 says "4 weeks later: lowest cash 2,150 higher".
import { useRef, useState } from 'preact/hooks';
import { getAt } from '../../domain/plan/path.ts';
import type { Problem } from '../../domain/problems.ts';
import type { ShiftPhase } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';

/** Where things stood before the first move. */
export interface Before {
  week: number;
  lowestCash: number;
  lostUnits: number;
}

export interface WeekMoves {
  /** The path of the week that is moved, null while none is chosen. */
  chosen: string | null;
  choose: (path: string) => void;
  refusal: Problem | null;
  /** Null while nothing was moved, or something else was edited since. */
  before: Before | null;
  onShift: (path: string, delta: number, phase: ShiftPhase) => void;
  onStep: (path: string, delta: number, repeat: boolean) => void;
  done: () => void;
}

export function useWeekMoves(weeks: number): WeekMoves {
  const session = useSession();
  const [chosen, setChosen] = useState<string | null>(null);
  const [refused, setRefused] = useState<{ path: string; problem: Problem } | null>(null);
  const [since, setSince] = useState<{ path: string; revision: number; before: Before } | null>(null);
  const sinceNow = useRef(since);
  const drag = useRef<{ from: number; moved: boolean } | null>(null);

  const weekAt = (path: string): number => Number(getAt(session.plan.value, path) ?? 0);
  const stands = sinceNow.current !== null && sinceNow.current.revision === session.revision.value;

  const put = (path: string, wanted: number): void => {
    const week = Math.max(0, Math.min(weeks - 1, wanted));
    const from = weekAt(path);
    const now = sinceNow.current;
    const reading = session.results.value?.results.reading;
    const before =
      now?.path === path && now.revision === session.revision.value
        ? now.before
        : { week: from, lowestCash: reading?.lowestCash ?? 0, lostUnits: reading?.lostUnits ?? 0 };
    const accepted = week === from || session.setField(path, week);
    const [problem] = accepted ? [] : (session.problems.value.get(path) ?? []);
    if (!accepted) session.forget(path); // the sentence is kept here, so that one undo undoes the move
    setRefused(problem ? { path, problem } : null);
    if (!accepted || week === from) return;
    sinceNow.current = { path, revision: session.revision.value, before };
    setSince(sinceNow.current);
  };

  const onShift: WeekMoves['onShift'] = (path, delta, phase) => {
    if (phase === 'start') {
      session.endStep();
      setRefused(null);
      drag.current = { from: weekAt(path), moved: false };
      return;
    }
    const now = drag.current;
    if (now === null) return;
    if (phase === 'move') {
      put(path, now.from + delta);
      now.moved ||= weekAt(path) !== now.from;
      return;
    }
    drag.current = null;
    // Broken off, or back where it began: as if it had not been.
    if (now.moved && (phase === 'cancel' || weekAt(path) === now.from)) session.undo();
    session.endStep();
  };

  const onStep: WeekMoves['onStep'] = (path, delta, repeat) => {
    if (!repeat) session.endStep();
    setChosen(path);
    put(path, weekAt(path) + delta);
  };

  return {
    chosen: chosen !== null && getAt(session.plan.value, chosen) === undefined ? null : chosen,
    choose: (path) => {
      setChosen(path);
      if (refused !== null && refused.path !== path) setRefused(null);
    },
    refusal: refused !== null && refused.path === chosen ? refused.problem : null,
    before: stands && since !== null && since.path === chosen ? since.before : null,
    onShift,
    onStep,
    done: () => session.endStep(),
  };
}
