// The line above every page, 44 px: the plan's name leads to its verdicts; at the right whether it is kept, whether the
// device is offline, undo, and the way to all plans.
// Worked example: after an edit "Saving …" turns to "Saved"; where the device refused it, to "Not saved".
import type { VNode } from 'preact';
import { hashOf, planIdOf } from '../../app/route.ts';
import { Header } from '../../widgets/Rail.tsx';
import { useIsExample, useSession } from '../shared/session-context.ts';
import { useOnline } from './use-online.ts';

const PLANS = hashOf({ view: 'plans', sheet: null });

export function PlanHeader(): VNode {
  const session = useSession();
  const route = session.route.value;
  const planId = planIdOf(route);
  const plan = session.plan.value;
  const ofPlan = planId !== null && plan?.id === planId;
  const online = useOnline();
  return (
    <Header
      name={ofPlan ? plan.name : 'Firstfill'}
      href={ofPlan ? hashOf({ view: 'front', planId, sheet: null }) : PLANS}
    >
      {!online && <span class="ff-state ff-least">Offline</span>}
      {ofPlan && <SavedState />}
      {ofPlan && <Turns />}
      {route.view !== 'plans' && (
        <a class="ff-head-link" href={PLANS}>
          Plans
        </a>
      )}
    </Header>
  );
}

function SavedState(): VNode {
  const session = useSession();
  const words = { saved: useIsExample() ? 'Example' : 'Saved', saving: 'Saving …', unsaved: 'Not saved' };
  return (
    <span class="ff-state ff-least" role="status">
      {words[session.saving.value]}
    </span>
  );
}

function Turns(): VNode {
  const session = useSession();
  return (
    <>
      <button
        type="button"
        class="ff-head-button"
        aria-label="Undo"
        disabled={!session.canUndo.value}
        onClick={() => session.undo()}
      >
        <TurnMark back />
      </button>
      {session.canRedo.value && (
        <button type="button" class="ff-head-button" aria-label="Redo" onClick={() => session.redo()}>
          <TurnMark back={false} />
        </button>
      )}
    </>
  );
}

function TurnMark({ back }: { back: boolean }): VNode {
  return (
    <svg viewBox="0 0 20 20" aria-hidden="true" class={back ? '' : 'ff-mirrored'}>
      <path d="M7 3L3 7l4 4M3 7h8.5a5 5 0 0 1 0 10H7" />
    </svg>
  );
}
