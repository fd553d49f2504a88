// What would have to be true for the claim to be kept: each of a few things alone, the rest as the evidence has it, beside
// what the evidence shows; what binds first is marked.
// Worked example: "Rate of sale: 9.4 a store a week, seen 6.2 (5.1 to 7.6)" and "Doors a week: 61, planned 24".
import type { VNode } from 'preact';
import { Part } from '../ladder/parts.tsx';
import { useSay } from '../shared/use-say.ts';
import type { FollowedClaim } from './claim-work.ts';
import { mustRows } from './must-words.ts';

export interface MustRow {
  id: string;
  label: string;
  /** What the claim asks for; a sentence where nothing would do. */
  needed: string;
  /** What evidence or plan show of it. */
  seen: string;
  bindsFirst: boolean;
  /** Whether what is seen is enough. */
  isEnough: boolean;
}

export function MustBeTrue({ rows }: { rows: readonly MustRow[] }): VNode {
  return (
    <ul class="ff-must" aria-label="What would have to be true">
      {rows.map(({ id, label, needed, seen, bindsFirst, isEnough }) => (
        <li key={id} class={bindsFirst ? 'ff-must-first' : undefined}>
          <span class="ff-must-label">
            {label}
            {bindsFirst && <span class="ff-must-binds ff-label">binds first</span>}
            {!bindsFirst && <span class="ff-quiet ff-label">{isEnough ? 'enough' : 'not enough'}</span>}
          </span>
          <span class="ff-must-needed ff-number">{needed}</span>
          <span class="ff-must-seen ff-least ff-quiet">{seen}</span>
        </li>
      ))}
    </ul>
  );
}

/** The part with its heading; nothing where there is no claim to ask it of. */
export function MustPart({ followed }: { followed: FollowedClaim }): VNode | null {
  const say = useSay();
  const { work, plan, older, trouble } = followed;
  if (plan.promise.claim === null) return null;
  if (work !== null && work.having === null) return null;
  return (
    <Part title="What would have to be true">
      {trouble !== '' && <p role="alert">{trouble}</p>}
      {work === null && trouble === '' && <p class="ff-quiet">Running the plan as the claim has it …</p>}
      {work?.having && (
        <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
          <MustBeTrue rows={mustRows(plan, work.having, say)} />
          <p class="ff-least ff-quiet">
            Each alone, with all else as the evidence has it: rates as seen, doors as may be expected.
            {older && ' Of before the last change; being run again …'}
          </p>
        </div>
      )}
    </Part>
  );
}
