// Gates as rows, the late ones first, then by the day on which they have to begin; what is done is folded away. A row opens
// its gate. Worked example: "start by 9 Mar 2026 · Labels approved · Ana · 2 days late".
import type { VNode } from 'preact';
import type { GateReading, Readiness } from '../../domain/readiness/index.ts';
import { VerdictMark } from '../../widgets/index.ts';
import { Fold, Part } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { byWhen, holdsWords, markOf, ownerWords, roomWords, sortDay } from './words.ts';

export function gateSheet(id: string): string {
  return `gate:${id}`;
}

interface GroupsProps {
  readiness: Readiness;
  /** null: everybody's; '' those that nobody owns. */
  owner: string | null;
}

/** Late, next, then by date; what is done last. */
export function GateGroups({ readiness, owner }: GroupsProps): VNode {
  const own = readiness.gates.filter((gate) => owner === null || gate.owner.trim() === owner);
  const open = byDay(own.filter(({ state }) => state !== 'done'));
  const late = open.filter((gate) => gate.late);
  const next = open.filter((gate) => !gate.late && readiness.next.includes(gate.id));
  const then = open.filter((gate) => !gate.late && !readiness.next.includes(gate.id));
  const done = own.filter(({ state }) => state === 'done');
  return (
    <>
      {late.length > 0 && (
        <Part title="Late">
          <GateRows gates={late} />
        </Part>
      )}
      <Part title="Can begin now">
        {next.length > 0 ? <GateRows gates={next} /> : <p class="ff-quiet">{noneWords(own, late)}</p>}
      </Part>
      {then.length > 0 && (
        <Part title="Then, by date">
          <GateRows gates={then} />
        </Part>
      )}
      {done.length > 0 && (
        <Fold label="Done" value={String(done.length)}>
          <GateRows gates={done} />
        </Fold>
      )}
    </>
  );
}

function noneWords(own: readonly GateReading[], late: readonly GateReading[]): string {
  if (own.length === 0) return 'Nothing is theirs.';
  if (late.length > 0) return 'Nothing else: what is late goes first.';
  return own.every(({ state }) => state === 'done')
    ? 'Everything is done.'
    : 'Nothing: the rest waits for what is not done.';
}

/** By the day they have to begin, or to be done where they have begun; those without a date last. */
export function byDay(gates: readonly GateReading[]): GateReading[] {
  const key = (gate: GateReading): string => sortDay(gate) ?? '9999';
  return [...gates].sort((a, b) => key(a).localeCompare(key(b)) || a.name.localeCompare(b.name, 'en'));
}

function GateRows({ gates }: { gates: readonly GateReading[] }): VNode {
  return (
    <ul class="ff-gates">
      {gates.map((gate) => (
        <li key={gate.id}>
          <GateRow gate={gate} />
        </li>
      ))}
    </ul>
  );
}

/** Whose openings it holds back, where those aren't all: starters of two chains have the same name. */
function useHeld(id: string): string | null {
  const plan = usePlan();
  const gate = plan.readiness.gates.find((each) => each.id === id);
  return gate === undefined || gate.holds.by === 'market' ? null : holdsWords(plan, gate);
}

function GateRow({ gate }: { gate: GateReading }): VNode {
  const session = useSession();
  const say = useSay();
  const mark = markOf(gate);
  const held = useHeld(gate.id);
  return (
    <button type="button" class="ff-gate" onClick={() => session.openSheet(gateSheet(gate.id))}>
      <span class="ff-gate-mark">
        {mark === null ? null : <VerdictMark verdict={mark} label="" size="small" />}
      </span>
      <span class="ff-gate-name">{gate.name}</span>
      <span class="ff-gate-when ff-number">{byWhen(gate, say)}</span>
      <span class="ff-gate-note ff-least">
        {ownerWords(gate.owner)}
        {held !== null && ` · ${held}`}
        {gate.state === 'underWay' && ` · under way, ${gate.daysLeft} to go`}
        {gate.critical && gate.state !== 'done' && ' · on the longest chain'}
      </span>
      <span class={mark === null ? 'ff-gate-room ff-least' : `ff-gate-room ff-least ff-hue-${mark}`}>
        {gate.state === 'done' ? '' : roomWords(gate, say)}
      </span>
    </button>
  );
}
