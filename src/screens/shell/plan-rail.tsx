// The rail of one plan: a tag for every view that works, each verdict's mark on its tag. Five on a phone; from 900 px the
// verdicts' own page, the roll-out and the inputs too, which a phone reaches by the plan's name.
// Worked example: the tag Cash carries the snapped shelf and is spoken "Cash, Fails".
import type { VNode } from 'preact';
import { hashOf, type Route } from '../../app/route.ts';
import type { VerdictName } from '../../domain/results.ts';
import { Rail } from '../../widgets/Rail.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { VERDICT_WORDS } from '../shared/verdict-words.ts';

type TagView =
  | 'front'
  | 'ladder'
  | 'deal'
  | 'cash'
  | 'roll-out'
  | 'readiness'
  | 'statements'
  | 'money'
  | 'promise'
  | 'table'
  | 'inputs';

const TAGS: readonly { view: TagView; label: string; verdict: VerdictName | null; onPhone: boolean }[] = [
  { view: 'front', label: 'Verdicts', verdict: null, onPhone: false },
  { view: 'ladder', label: 'Ladder', verdict: 'ladder', onPhone: true },
  { view: 'deal', label: 'Deal', verdict: 'deal', onPhone: true },
  { view: 'cash', label: 'Cash', verdict: 'cash', onPhone: true },
  { view: 'roll-out', label: 'Roll-out', verdict: null, onPhone: false },
  { view: 'readiness', label: 'Readiness', verdict: null, onPhone: false },
  { view: 'statements', label: 'Statements', verdict: null, onPhone: false },
  { view: 'money', label: 'Money', verdict: null, onPhone: false },
  { view: 'promise', label: 'Promise', verdict: 'promise', onPhone: true },
  { view: 'table', label: 'Table', verdict: null, onPhone: true },
  { view: 'inputs', label: 'Inputs', verdict: null, onPhone: false },
];

export function PlanRail(): VNode {
  const session = useSession();
  const plan = usePlan();
  const verdicts = session.results.value?.results.verdicts;
  const tags = TAGS.map(({ view, label, verdict, onPhone }) => {
    const state = verdict === null ? undefined : verdicts?.[verdict].state;
    return {
      id: view,
      label,
      href: hashOf(routeOf(view, plan.id)),
      verdict: state,
      verdictWord: state && VERDICT_WORDS[state],
      onPhone,
    };
  });
  return <Rail label="Views of this plan" tags={tags} currentId={session.route.value.view} />;
}

function routeOf(view: TagView, planId: string): Route {
  if (view === 'ladder') return { view, planId, accountId: null, itemId: null, sheet: null };
  if (view === 'deal' || view === 'table') return { view, planId, accountId: null, sheet: null };
  return { view, planId, sheet: null };
}
