// How a screen reaches the running app: the one session, put around all screens by the shell, and the few things most
// screens read of it. Reading a signal's value in a component is enough to be drawn again when it changes.
// Worked example: useShown() is null until the first results are there; from then on it is never a half-computed plan.
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Session } from '../../app/session.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';

export const SessionContext = createContext<Session | null>(null);

/** The session. Throws outside the shell, which is a bug. */
export function useSession(): Session {
  const session = useContext(SessionContext);
  if (session === null) throw new Error('a screen was drawn outside the shell');
  return session;
}

export interface Shown {
  plan: Plan;
  /** The last good results. */
  results: Results;
  /** They belong to an earlier state of the plan, or some typed text is not accepted: mark figures as older. */
  older: boolean;
}

/** The open plan with its results, or null while there are none. */
export function useShown(): Shown | null {
  const session = useSession();
  const plan = session.plan.value;
  const shown = session.results.value;
  if (plan === null || shown === null) return null;
  return { plan, results: shown.results, older: session.stale.value };
}

/** The open plan. Screens of a plan are drawn only while one is open. */
export function usePlan(): Plan {
  const plan = useSession().plan.value;
  if (plan === null) throw new Error('a screen of a plan was drawn without one');
  return plan;
}

/** Whether the open plan is an example that nothing was changed in yet: it is in no list of plans. */
export function useIsExample(): boolean {
  const session = useSession();
  const id = session.plan.value?.id;
  return !session.plans.value.some((row) => row.id === id);
}
