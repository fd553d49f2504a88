// One plan in the list: its name leads to its verdicts, four marks tell them, and a button opens what else can be done.
// Worked example: the marks are spoken "Ladder holds, Deal holds, Cash fails, Promise not known yet".
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { VerdictMark } from '../../widgets/index.ts';
import { momentText } from '../shared/moment.ts';
import { useSession } from '../shared/session-context.ts';
import { VERDICT_NAMES, VERDICT_TITLES, VERDICT_WORDS } from '../shared/verdict-words.ts';

export interface PlanRowProps {
  id: string;
  name: string;
  /** Milliseconds; null for an example, which nobody changed. */
  updatedAt: number | null;
  /** An example's lesson, or null. */
  lesson: string | null;
}

export function PlanRowLink({ id, name, updatedAt, lesson }: PlanRowProps): VNode {
  const session = useSession();
  return (
    <li class="ff-plan-row">
      <a class="ff-plan-link" href={hashOf({ view: 'front', planId: id, sheet: null })}>
        <span class="ff-plan-name">{name}</span>
        {lesson !== null && <span class="ff-least ff-quiet">{lesson}</span>}
        <span class="ff-plan-foot">
          <Marks id={id} />
          {updatedAt !== null && <span class="ff-least ff-quiet">changed {momentText(updatedAt)}</span>}
        </span>
      </a>
      <button
        type="button"
        class="ff-head-button"
        aria-label={`More for ${name}`}
        onClick={() => session.openSheet(`plan:${id}`)}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M4 10h.01M10 10h.01M16 10h.01" stroke-width="3.5" stroke-linecap="square" />
        </svg>
      </button>
    </li>
  );
}

function Marks({ id }: { id: string }): VNode {
  const marks = useSession().marks.value.get(id);
  if (marks === 'unreadable') return <span class="ff-least">can’t be read; open it to keep its file</span>;
  const words = VERDICT_NAMES.map((name) => {
    const state = marks?.[name] ?? 'unknown';
    return `${VERDICT_TITLES[name]} ${VERDICT_WORDS[state].toLowerCase()}`;
  });
  return (
    <span class="ff-plan-marks">
      {marks !== undefined && <span class="ff-spoken">, {words.join(', ')}.</span>}
      {VERDICT_NAMES.map((name) => (
        <span key={name} class="ff-plan-mark" aria-hidden="true">
          <VerdictMark verdict={marks?.[name] ?? 'unknown'} label="" size="small" />
          {VERDICT_TITLES[name]}
        </span>
      ))}
    </span>
  );
}
