// What stands beside or below the verdicts and is fetched after them: the worst verdict's picture, the reasons, the
// caution. Worked example: with Cash failing, the picture is the cash hole.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { Button, ButtonRow, LinkButton } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { LazyScreen } from '../shared/lazy-screen.tsx';
import { useIsExample, usePlan, useSession } from '../shared/session-context.ts';

export function FrontSide(): VNode {
  return (
    <>
      <LazyScreen name="worstPicture" quiet />
      <LazyScreen name="reasons" quiet />
      <FrontFoot />
    </>
  );
}

export function FrontFoot(): VNode {
  const session = useSession();
  const plan = usePlan();
  const isExample = useIsExample();
  return (
    <div class="ff-stack">
      <CautionsFor place="front" accountId={null} />
      <ButtonRow>
        <LinkButton kind="quiet" href={hashOf({ view: 'roll-out', planId: plan.id, sheet: null })}>
          Roll-out
        </LinkButton>
        <LinkButton kind="quiet" href={hashOf({ view: 'readiness', planId: plan.id, sheet: null })}>
          Readiness
        </LinkButton>
        <LinkButton kind="quiet" href={hashOf({ view: 'statements', planId: plan.id, sheet: null })}>
          Statements
        </LinkButton>
        <LinkButton kind="quiet" href={hashOf({ view: 'money', planId: plan.id, sheet: null })}>
          Money: offers side by side
        </LinkButton>
        {isExample && (
          <LinkButton kind="quiet" href={hashOf({ view: 'inputs', planId: plan.id, sheet: null })}>
            All inputs
          </LinkButton>
        )}
        <Button kind="quiet" onPress={() => session.openSheet('about')}>
          What this is, and what it isn’t
        </Button>
      </ButtonRow>
    </div>
  );
}
