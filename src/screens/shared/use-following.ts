// An answer that follows the plan while its screen is open: asked of the worker after a pause, one question at a time, the
// newest next. It keeps the job it belongs to, so that words and figures stay one with it while a newer one is on its way.
// Worked example: five edits within a second ask twice; what is shown is marked as older until the second answer is there.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Job, Running } from '../../app/session.ts';
import { useSession } from './session-context.ts';

type Answer<J extends Job> = NonNullable<Awaited<Running<J['kind']>['answer']>>;

export interface Followed<J extends Job> {
  job: J;
  answer: Answer<J>;
}

const PAUSE_MS = 400;

/** Null until the first answer is there. Keep `job` the same object while it asks the same. */
export function useFollowing<J extends Job>(job: J): Followed<J> | null {
  const session = useSession();
  const [followed, setFollowed] = useState<Followed<J> | null>(null);
  const busy = useRef(false);
  const gone = useRef(false);
  const wanted = useRef(job);
  wanted.current = job;
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
      const answer = await session.compute(asked).answer;
      busy.current = false;
      if (gone.current) return;
      if (answer !== null) setFollowed({ job: asked, answer });
      if (wanted.current !== asked) await ask();
    };
    const timer = setTimeout(() => void ask(), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [job]);
  return followed;
}
