// Which screen an address names. Front comes with the app, since it is what a first start shows; every other screen is
// fetched when first looked at, and ahead of that when nothing else is to be done.
// Worked example: view "lost" shows the address and the way back to the plans.
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { hashOf, type Route } from '../../app/route.ts';
import { LinkButton } from '../../widgets/Buttons.tsx';
import { EmptyState } from '../../widgets/Notices.tsx';
import { FrontScreen } from '../front/index.tsx';
import { fetchAhead, LazyScreen } from '../shared/lazy-screen.tsx';
import { useSession } from '../shared/session-context.ts';
import { useTitle } from '../shared/title.ts';

export function CurrentScreen(): VNode {
  const route = useSession().route.value;
  usePrefetch();
  if (route.view === 'lost') return <Lost hash={route.hash} />;
  if ('planId' in route) return <OfPlan route={route} />;
  return <LazyScreen key={route.view} name={route.view} quiet={false} />;
}

/** A screen of a plan, once that plan is open and there is something to show. */
function OfPlan({ route }: { route: Extract<Route, { planId: string }> }): VNode {
  const session = useSession();
  const { planId } = route;
  if (session.plan.value?.id !== planId) return <NotOpen key={planId} />;
  if (route.view !== 'inputs' && session.results.value === null)
    return <LazyScreen key="trouble" name="trouble" quiet={false} />;
  if (route.view === 'front') return <FrontScreen />;
  return <LazyScreen key={route.view} name={route.view} quiet={false} />;
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
    <>
      <h1 class="ff-spoken">Not on this device</h1>
      <EmptyState title="This plan is not on this device. It may have been deleted, or the address comes from another one.">
        <LinkButton kind="primary" href={hashOf({ view: 'plans', sheet: null })}>
          All plans
        </LinkButton>
      </EmptyState>
    </>
  );
}

function Lost({ hash }: { hash: string }): VNode {
  useTitle('No such page');
  return (
    <>
      <h1 class="ff-spoken">No such page</h1>
      <EmptyState title={`There is no page at “${hash.slice(0, 80)}”.`}>
        <LinkButton kind="primary" href={hashOf({ view: 'plans', sheet: null })}>
          All plans
        </LinkButton>
      </EmptyState>
    </>
  );
}

/** When the page has nothing to do, the other screens are fetched, so that a tap draws them in the same frame. */
function usePrefetch(): void {
  useEffect(() => {
    const timer = setTimeout(fetchAhead, 1200);
    return () => clearTimeout(timer);
  }, []);
}
