// Under the verdicts of a plan of one's own: the seven numbers, while they say all there is, and all inputs.
// Worked example: once a second chain was added, only "All inputs" is left.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { sevenOf } from '../../domain/quick/index.ts';
import { ButtonRow, LinkButton } from '../../widgets/index.ts';
import { sevenHash } from '../seven/address.ts';
import { usePlan } from '../shared/session-context.ts';

export function OwnKeys(): VNode {
  const plan = usePlan();
  return (
    <ButtonRow>
      {sevenOf(plan) !== null && <LinkButton href={sevenHash(plan.id)}>The seven numbers</LinkButton>}
      <LinkButton href={hashOf({ view: 'inputs', planId: plan.id, sheet: null })}>All inputs</LinkButton>
    </ButtonRow>
  );
}
