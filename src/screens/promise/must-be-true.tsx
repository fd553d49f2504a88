// What would have to be true for the claim to be kept: each of a few things alone, the rest as the evidence has it, beside
// what the evidence shows; what binds first is marked.
// Worked example: "Rate of sale: 9.4 a store a week, seen 6.2 (5.1 to 7.6)" and "Doors a week: 61, planned 24".
import type { VNode } from 'preact';
import { WhereFrom } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { useSession, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { WorkedSheet } from '../shared/working.tsx';
import type { FollowedClaim } from './claim-work.ts';
import { mustRows } from './must-words.ts';
import { mustWorked } from './must-working.ts';

export interface MustRow {
  id: string;
  label: string;
  /** What the claim asks for; a sentence where nothing would do. */
  needed: string;
  /** What evidence or plan show of it. */
  seen: string;
  bindsFirst: boolean;
  /** Whether what is seen is enough, in words; '' where that isn't known. */
  state: string;
}

export interface MustBeTrueProps {
  rows: readonly MustRow[];
  /** Opens how a row was worked out; null where nothing was. */
  why: (id: string) => (() => void) | null;
}

export function MustBeTrue({ rows, why }: MustBeTrueProps): VNode {
  return (
    <ul class="ff-must" aria-label="What would have to be true">
      {rows.map(({ id, label, needed, seen, bindsFirst, state }) => (
        <li key={id} class={bindsFirst ? 'ff-must-first' : undefined}>
          <span class="ff-must-label">
            {label}
            {bindsFirst && <span class="ff-must-binds ff-label">binds first</span>}
            {!bindsFirst && state !== '' && <span class="ff-quiet ff-label">{state}</span>}
          </span>
          <span class="ff-must-needed ff-number">
            <Needed text={needed} open={why(id)} />
          </span>
          <span class="ff-must-seen ff-least ff-quiet">{seen}</span>
        </li>
      ))}
    </ul>
  );
}

function Needed({ text, open }: { text: string; open: (() => void) | null }): VNode {
  return open === null ? <span>{text}</span> : <WhereFrom open={open}>{text}</WhereFrom>;
}

/** How a row was worked out, over the view; null at any other address. */
function MustSheet({ followed }: { followed: FollowedClaim }): VNode | null {
  const session = useSession();
  const shown = useShown();
  const say = useSay();
  const { plan, work } = followed;
  const sheet = session.route.value.sheet ?? '';
  const row = work?.having?.rows.find(({ what }) => sheet === `${SHEET}${what}`);
  if (shown === null || row === undefined) return null;
  const answer = mustWorked({ plan, results: shown.results, say }, row);
  return answer === null ? null : <WorkedSheet answer={answer} />;
}

const SHEET = 'must:';

/** The part with its heading; nothing where there is no claim to ask it of. */
export function MustPart({ followed }: { followed: FollowedClaim }): VNode | null {
  const say = useSay();
  const session = useSession();
  const { work, plan, older, trouble } = followed;
  const why = (id: string) =>
    work?.having?.rows.some(({ what, from }) => what === id && from !== null)
      ? () => session.openSheet(`${SHEET}${id}`)
      : null;
  if (plan.promise.claim === null) return null;
  if (work !== null && work.having === null) return null;
  if (Number(plan.promise.claim.amount) === 0) {
    return (
      <Part title="What would have to be true">
        <p>Nothing: a claim of 0 asks for nothing.</p>
      </Part>
    );
  }
  return (
    <Part title="What would have to be true">
      {trouble !== '' && <p role="alert">{trouble}</p>}
      {work === null && trouble === '' && <p class="ff-quiet">Running the plan as the claim has it …</p>}
      {work?.having && (
        <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
          <MustBeTrue rows={mustRows(plan, work.having, say)} why={why} />
          <p class="ff-least ff-quiet">
            Each alone, with all else as the evidence has it: rates as seen, doors as may be expected.
            {older && ' Of before the last change; being run again …'}
          </p>
        </div>
      )}
      <MustSheet followed={followed} />
    </Part>
  );
}
