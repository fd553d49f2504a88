// An answer that follows the plan while its screen is open: asked of the worker after a pause, one question at a time, the
// newest next. It keeps the plan it belongs to, so that words and figures stay one with it while a newer one is on its way.
// Worked example: five edits within a second ask twice; what is shown is marked as older until the second answer is there.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Running } from '../../app/session.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { useSession } from './session-context.ts';

/** Jobs that take a plan and nothing else. */
export type FollowedKind = 'lifts' | 'lenderTrials';

type Answer<Kind extends FollowedKind> = NonNullable<Awaited<Running<Kind>['answer']>>;

export interface Followed<Kind extends FollowedKind> {
  plan: Plan;
  answer: Answer<Kind>;
}

const PAUSE_MS = 400;

/** Null until the first answer is there. */
export function useFollowing<Kind extends FollowedKind>(kind: Kind, plan: Plan): Followed<Kind> | null {
  const session = useSession();
  const [followed, setFollowed] = useState<Followed<Kind> | null>(null);
  const busy = useRef(false);
  const wanted = useRef(plan);
  const gone = useRef(false);
  wanted.current = plan;
  useEffect(() => {
    gone.current = false;
    return () => {
      gone.current = true;
    };
  }, []);
  useEffect(() => {
    const ask = async (): Promise<void> => {
      if (busy.current) return;
      busy.current = true;
      const asked = wanted.current;
      // A job's kind decides its answer's type.
      const answer = (await session.compute({ kind, plan: asked }).answer) as Answer<Kind> | null;
      busy.current = false;
      if (gone.current) return;
      if (answer !== null) setFollowed({ plan: asked, answer });
      if (wanted.current !== asked) await ask();
    };
    const timer = setTimeout(() => void ask(), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [plan, kind]);
  return followed;
}
