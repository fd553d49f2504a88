// In place of any view whose figures can't be worked out: why, and the way to mend it. The plan itself is sound and kept.
// Worked example: "This plan can't be computed yet. Corner, tea: got a list price below zero. ..."
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { LinkButton, ProblemNote } from '../../widgets/index.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { useSession } from '../shared/session-context.ts';
import { useTitle } from '../shared/title.ts';

/** A sound plan whose figures can't be worked out says what to mend. */
export function NotComputed(): VNode {
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
