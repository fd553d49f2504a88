// Which screen an address names. Plans, Front and the seven numbers come with the app; every other screen is fetched
// when first looked at, and ahead of that when nothing else is to be done.
// Worked example: view "lost" shows the address and the way back to the plans.
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { hashOf, type Route } from '../../app/route.ts';
import { EmptyState, LinkButton, ProblemNote } from '../../widgets/index.ts';
import { FrontScreen } from '../front/index.tsx';
import { PlansScreen } from '../plans/index.tsx';
import { SevenScreen } from '../seven/index.tsx';
import { LazyScreen, type Load, prefetch } from '../shared/lazy-screen.tsx';
import { problemSentence } from '../shared/problem-words.ts';
import { useSession } from '../shared/session-context.ts';
import { useTitle } from '../shared/view.tsx';

type LaterView = 'ladder' | 'deal' | 'cash' | 'roll-out' | 'promise' | 'inputs';

const LATER: Record<LaterView, Load> = {
  ladder: () => import('../ladder/index.tsx').then((room) => room.LadderScreen),
  deal: () => import('../deal/index.tsx').then((room) => room.DealScreen),
  cash: () => import('../cash/index.tsx').then((room) => room.CashScreen),
  'roll-out': () => import('../roll-out/index.tsx').then((room) => room.RollOutScreen),
  promise: () => import('../promise/index.tsx').then((room) => room.PromiseScreen),
  inputs: () => import('../inputs/index.tsx').then((room) => room.InputsScreen),
};

export function CurrentScreen(): VNode {
  const route = useSession().route.value;
  usePrefetch();
  if (route.view === 'lost') return <Lost hash={route.hash} />;
  if ('planId' in route) return <OfPlan route={route} />;
  return route.view === 'plans' ? <PlansScreen /> : <SevenScreen />;
}

/** A screen of a plan, once that plan is open and there is something to show. */
function OfPlan({ route }: { route: Extract<Route, { planId: string }> }): VNode {
  const session = useSession();
  const { planId } = route;
  if (session.plan.value?.id !== planId) return <NotOpen key={planId} />;
  if (route.view !== 'inputs' && session.results.value === null) return <NotComputed />;
  if (route.view === 'front') return <FrontScreen />;
  return <LazyScreen key={route.view} load={LATER[route.view]} />;
}

/** Opening takes a moment; when it doesn't happen, the plan isn't here. */
function NotOpen(): VNode {
  const [waited, setWaited] = useState(false);
  useTitle('Opening');
  useEffect(() => {
    const timer = setTimeout(() => setWaited(true), 1500);
    return () => clearTimeout(timer);
  }, []);
  if (!waited) return <p class="ff-starting ff-quiet">Opening …</p>;
  return (
    <EmptyState title="This plan is not on this device. It may have been deleted, or the address comes from another one.">
      <LinkButton kind="primary" href={hashOf({ view: 'plans', sheet: null })}>
        All plans
      </LinkButton>
    </EmptyState>
  );
}

/** A sound plan whose figures can't be worked out says what to mend. */
function NotComputed(): VNode {
  const session = useSession();
  const plan = session.plan.value;
  const problems = [...session.problems.value.values()].flat();
  useTitle(plan?.name ?? 'Plan');
  return (
    <div class="ff-stack">
      <h1>{plan?.name}</h1>
      <ProblemNote>
        <p>This plan can’t be computed yet.</p>
        {problems.map((problem) => (
          <p key={`${problem.path} ${problem.code}`}>{problemSentence(plan, problem)}</p>
        ))}
      </ProblemNote>
      {plan !== null && (
        <LinkButton kind="primary" href={hashOf({ view: 'inputs', planId: plan.id, sheet: null })}>
          Mend it in the inputs
        </LinkButton>
      )}
    </div>
  );
}

function Lost({ hash }: { hash: string }): VNode {
  useTitle('No such page');
  return (
    <EmptyState title={`There is no page at “${hash.slice(0, 80)}”.`}>
      <LinkButton kind="primary" href={hashOf({ view: 'plans', sheet: null })}>
        All plans
      </LinkButton>
    </EmptyState>
  );
}

/** When the page has nothing to do, the other screens are fetched, so that a tap draws them in the same frame. */
function usePrefetch(): void {
  useEffect(() => {
    const timer = setTimeout(() => Object.values(LATER).forEach(prefetch), 1200);
    return () => clearTimeout(timer);
  }, []);
}
