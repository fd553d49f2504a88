// Readiness on the first view, under the four verdicts: what is next, what is late, what that costs a week.
// Worked example: "Next: Artwork (Ana). 2 late; Corner comes 3 weeks later, at 1,200 a week."
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { readinessLine } from '../../domain/readiness/index.ts';
import { VerdictRow } from '../../widgets/index.ts';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { weeksLater } from './slip.tsx';
import { useReadiness, useSlipCosts } from './use-readiness.ts';
import { markOfWhole } from './words.ts';

const WORDS = { none: 'Not known yet', ready: 'Ready', inTime: 'In time', late: 'Late' } as const;

/** A plan with nothing to get ready has no line: the way to the view stands below. */
export function ReadinessLine(): VNode | null {
  const shown = useShown();
  if (shown === null || shown.plan.readiness.gates.length === 0) return null;
  return <Line shown={shown} />;
}

function Line({ shown: { plan, older } }: { shown: Shown }): VNode {
  const say = useSay();
  const readiness = useReadiness(plan);
  const costs = useSlipCosts(plan);
  const cost = costs?.answer.ok === true ? costs.answer.value.all : null;
  const line = readinessLine({ plan, readiness, cost, say });
  return (
    <section aria-label="Readiness">
      <VerdictRow
        verdict={markOfWhole(readiness, line)}
        name="Readiness"
        word={WORDS[line.state]}
        figure={line.slipWeeks === 0 ? '' : weeksLater(line.slipWeeks, say)}
        reason={line.sentence}
        older={older}
        href={hashOf({ view: 'readiness', planId: plan.id, sheet: null })}
      />
    </section>
  );
}
