// What stands around every screen: header, rail, notices, the sheets that open over any view, and the boundary that
// catches a failed assertion. It draws the screen the address names and knows nothing of what is in it.
// Worked example: #/p/spring/cash?sheet=why:cash/lowestCash draws the cash screen with the "Where from?" sheet over it.
import type { VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { planIdOf } from '../../app/route.ts';
import type { Session } from '../../app/session.ts';
import { PatternDefs } from '../../widgets/Marks.tsx';
import { SessionContext, useSession } from '../shared/session-context.ts';
import { Boundary } from './boundary.tsx';
import { CurrentScreen } from './current-screen.tsx';
import { Banners, Toasts } from './notices.tsx';
import { PlanHeader } from './plan-header.tsx';
import { PlanRail } from './plan-rail.tsx';
import { Sheets } from './sheets.tsx';
import { useUndoKeys } from './undo-keys.ts';
import '../shared/shared.css';
import './shell.css';

export function Shell({ session }: { session: Session }): VNode {
  return (
    <SessionContext.Provider value={session}>
      <PatternDefs />
      <Frame />
    </SessionContext.Provider>
  );
}

function Frame(): VNode {
  const session = useSession();
  const main = useMainFocus();
  useUndoKeys();
  if (session.phase.value === 'starting' && session.bug.value === null) return <Starting />;
  const route = session.route.value;
  const ofPlan = planIdOf(route) !== null && session.plan.value !== null && session.bug.value === null;
  const whole = route.view === 'seven' || route.view === 'table';
  return (
    <div class={whole ? `ff-shell ff-shell-whole ff-shell-${route.view}` : 'ff-shell'}>
      {!whole && (
        <button type="button" class="ff-skip" onClick={() => main.current?.focus()}>
          Skip to the figures
        </button>
      )}
      {!whole && <PlanHeader />}
      {ofPlan && !whole && <PlanRail />}
      <Banners />
      <main class={whole ? 'ff-whole' : 'ff-page'} id="main" tabIndex={-1} ref={main}>
        <Boundary quiet={false}>
          <CurrentScreen />
        </Boundary>
      </main>
      <Boundary quiet>
        <Sheets />
      </Boundary>
      <Toasts />
    </div>
  );
}

/** The moment before the store has answered. */
function Starting(): VNode {
  return (
    <main class="ff-page" aria-busy="true">
      <h1 class="ff-spoken">Firstfill</h1>
      <p class="ff-starting ff-quiet">Opening your plans …</p>
    </main>
  );
}

/** After a change of view the focus goes to the new one and the page stands at its top; a sheet moves nothing. */
function useMainFocus(): { current: HTMLElement | null } {
  const main = useRef<HTMLElement>(null);
  const session = useSession();
  const route = session.route.value;
  const place = route.view === 'lost' ? route.hash : `${route.view} ${planIdOf(route) ?? ''}`;
  const before = useRef(place);
  useEffect(() => {
    if (before.current === place) return;
    before.current = place;
    scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [place]);
  return main;
}
