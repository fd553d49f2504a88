// The head of every view of a plan: its name for the document and for screen readers, its verdict in a sentence with the
// guess it leans on, and what stands in the way of computing. The frame around it (header, rail, notices) is the shell's.
// Worked example: <View title="Cash" verdict="cash"> ... </View> sets the document's title to "Cash · Granola, Fern".
import type { ComponentChildren, VNode } from 'preact';
import { sheetOfKey } from '../../domain/explain/keys.ts';
import type { FigureKey } from '../../domain/explain/types.ts';
import type { VerdictName } from '../../domain/results.ts';
import { ProblemNote, VerdictLine, WhereFrom } from '../../widgets/index.ts';
import { problemSentence } from './problem-words.ts';
import { useSession, useShown } from './session-context.ts';
import { useTitle } from './title.ts';
import { leansOnWords } from './verdict-words.ts';

export interface ViewProps {
  title: string;
  /** The question this view answers; null for a view with no verdict. */
  verdict: VerdictName | null;
  /** Words of the verdict's sentence that stand on the page anyway: it is said without them. */
  leftOut?: string | undefined;
  children: ComponentChildren;
}

export { useTitle } from './title.ts';

export function View({ title, verdict, leftOut = '', children }: ViewProps): VNode {
  const session = useSession();
  useTitle(`${title} · ${session.plan.value?.name ?? ''}`);
  return (
    <div class="ff-stack">
      <h1 class="ff-spoken">{title}</h1>
      {verdict !== null && <VerdictHead verdict={verdict} leftOut={leftOut} />}
      <PlanTrouble />
      {children}
    </div>
  );
}

/** Opens where a figure comes from, as a sheet over the view. */
export function useWhy(): (key: FigureKey) => () => void {
  const session = useSession();
  return (key) => () => session.openSheet(sheetOfKey(key));
}

/** The verdict in a sentence, what it leans on, and how it is judged. */
export function VerdictHead({
  verdict,
  leftOut = '',
}: {
  verdict: VerdictName;
  leftOut?: string;
}): VNode | null {
  const session = useSession();
  const shown = useShown();
  const why = useWhy();
  if (shown === null) return null;
  const { state, reason } = shown.results.verdicts[verdict];
  const leans = leansOnWords(session.leans.value?.[verdict] ?? null, shown.plan.currency);
  return (
    <div class="ff-view-head">
      <VerdictLine verdict={state} text={reason.replace(leftOut, '')} />
      <p class="ff-least ff-quiet">
        {leans}
        <WhereFrom open={why({ of: 'verdict', verdict })}>How it is judged</WhereFrom>
      </p>
    </div>
  );
}

/** A plan that can't be computed says why, and that what is shown is older; texts not accepted are named at their fields. */
function PlanTrouble(): VNode | null {
  const session = useSession();
  const plan = session.plan.value;
  const typed = session.typed.value;
  const standing = [...session.problems.value]
    .filter(([path]) => !typed.has(path))
    .flatMap(([, each]) => each);
  if (standing.length === 0) return null;
  const hasResults = session.results.value !== null;
  return (
    <ProblemNote>
      {standing.map((problem) => (
        <p key={`${problem.path} ${problem.code}`}>{problemSentence(plan, problem)}</p>
      ))}
      <p>
        {hasResults
          ? 'Figures are those of the last plan that could be computed.'
          : 'Nothing can be computed until this is mended.'}
      </p>
    </ProblemNote>
  );
}
