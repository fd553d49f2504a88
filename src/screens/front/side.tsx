// What stands beside or below the verdicts and is fetched after them: the worst verdict's picture, the reasons, the
// caution. Worked example: with Cash failing, the picture is the cash hole.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { Button, ButtonRow, LinkButton } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { usePlan, useSession, useShown } from '../shared/session-context.ts';
import { Reasons } from './reasons.tsx';
import { WorstPicture } from './worst-picture.tsx';

export function FrontSide(): VNode | null {
  const shown = useShown();
  if (shown === null) return null;
  return (
    <>
      <WorstPicture shown={shown} />
      <Reasons shown={shown} />
      <FrontFoot />
    </>
  );
}

export function FrontFoot(): VNode {
  const session = useSession();
  const plan = usePlan();
  return (
    <div class="ff-stack">
      <CautionsFor place="front" accountId={null} />
      <ButtonRow>
        <LinkButton kind="quiet" href={hashOf({ view: 'inputs', planId: plan.id, sheet: null })}>
          All inputs
        </LinkButton>
        <Button kind="quiet" onPress={() => session.openSheet('about')}>
          What this is, and what it isn’t
        </Button>
      </ButtonRow>
    </div>
  );
}
