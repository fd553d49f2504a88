// The calendar of gates: each a bar from the day it can begin to the day it ends, with a thread to the day by which it has
// to, joints to what needs it first, openings as tags at the foot. It scrolls both ways under its head; its table is below.
// Worked example: artwork 2 to 13 March, then labels 16 to 20 March, due on the 13th: labels reach past their mark.
import type { VNode } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { Readiness } from '../../domain/readiness/index.ts';
import { Disclosure, SelectField } from '../../widgets/index.ts';
import { useKept } from '../ladder/kept.ts';
import { Part } from '../ladder/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { type GateCalendar, gateCalendar, headMarks, weekDayOf } from './calendar-layout.ts';
import { gateSheet } from './gate-rows.tsx';
import { GatesTable } from './gates-table.tsx';
import { openingName, roomWords } from './words.ts';
import './calendar.css';

const COUNTS = [
  { value: 'iso', label: 'ISO weeks' },
  { value: 'retail', label: '4-5-4 periods' },
] as const;
type Count = (typeof COUNTS)[number]['value'];

function isCount(value: unknown): value is Count {
  return COUNTS.some((each) => each.value === value);
}

const DAY_PX = 5;
const ROW_PX = 44;

export function GatesCalendar({ plan, readiness }: { plan: Plan; readiness: Readiness }): VNode | null {
  const [kept, setCount] = useKept('gates-weeks-as', isCount);
  const count = kept ?? 'iso';
  const drawing = gateCalendar({
    readiness,
    gates: plan.readiness.gates,
    weekDay: weekDayOf(count),
  });
  if (drawing === null) return null;
  return (
    <Part title="What waits for what">
      <SelectField
        label="Weeks counted as"
        value={count}
        choices={[...COUNTS]}
        onChoose={(value) => {
          if (isCount(value)) setCount(value);
        }}
      />
      <Drawing plan={plan} readiness={readiness} drawing={drawing} count={count} />
      <p class="ff-least ff-quiet ff-gate-key">
        <span>
          <i class="ff-gate-bar-key" /> the work, as expected from today
        </span>
        <span>
          <i class="ff-gate-bar-key ff-gate-critical" /> on the longest chain to the opening that is worst off
        </span>
        <span>
          <i class="ff-gate-bar-key ff-gate-late" /> ends too late
        </span>
        <span>
          <i class="ff-gate-until-key" /> has to be done by here
        </span>
      </p>
      <Disclosure summary="The same as a table">
        <GatesTable plan={plan} readiness={readiness} />
      </Disclosure>
    </Part>
  );
}

interface DrawingProps {
  plan: Plan;
  readiness: Readiness;
  drawing: GateCalendar;
  count: Count;
}

function Drawing({ plan, readiness, drawing, count }: DrawingProps): VNode {
  const session = useSession();
  const region = useRef<HTMLElement>(null);
  const { bars, days, today, shelves } = drawing;
  const { months, weeks } = headMarks(drawing, count);
  const byId = new Map(readiness.gates.map((gate) => [gate.id, gate]));
  const widthPx = days * DAY_PX;
  useLayoutEffect(() => {
    if (region.current !== null) region.current.scrollLeft = Math.max(0, today * DAY_PX - 2 * ROW_PX);
  }, []);
  return (
    <div class="ff-table-frame">
      <section
        class="ff-gate-calendar"
        ref={region}
        aria-label="Gates on the weeks"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key
        tabIndex={0}
      >
        <div class="ff-gate-sheet" style={{ '--ff-gate-days': `${widthPx}px` }}>
          <div class="ff-gate-head" aria-hidden="true">
            {months.map(({ day, text }) => (
              <span key={day} class="ff-gate-month" style={{ left: `${day * DAY_PX}px` }}>
                {text}
              </span>
            ))}
            {weeks.map(({ day, text }) => (
              <span key={day} class="ff-gate-week" style={{ left: `${day * DAY_PX}px` }}>
                {text}
              </span>
            ))}
          </div>
          <div class="ff-gate-body">
            <Lines drawing={drawing} widthPx={widthPx} />
            {bars.map((bar) => {
              const gate = byId.get(bar.id);
              if (gate === undefined) return null;
              return (
                <button
                  key={bar.id}
                  type="button"
                  class="ff-gate-line"
                  onClick={() => session.openSheet(gateSheet(bar.id))}
                >
                  <GateText gate={gate} />
                  <span class="ff-gate-track" aria-hidden="true">
                    <Bar bar={bar} />
                  </span>
                </button>
              );
            })}
          </div>
          <div class="ff-gate-foot">
            {shelves.map((shelf) => (
              <ShelfLine key={shelf.id} name={openingName(plan, shelf.id)} shelf={shelf} />
            ))}
          </div>
        </div>
      </section>
    </div>
  );
}

function GateText({ gate }: { gate: Readiness['gates'][number] }): VNode {
  const say = useSay();
  return (
    <span class="ff-gate-label">
      <span class="ff-gate-label-name">{gate.name}</span>
      <span class="ff-spoken">
        {gate.start !== null && gate.finish !== null
          ? `, ${say.date(gate.start)} to ${say.date(gate.finish)}`
          : ''}
        , {roomWords(gate, say)}
        {gate.critical ? ', on the longest chain' : ''}
      </span>
    </span>
  );
}

function Bar({ bar }: { bar: GateCalendar['bars'][number] }): VNode {
  const { from, to, until, critical, late } = bar;
  const left = from * DAY_PX;
  const width = Math.max(3, (to + 1 - from) * DAY_PX);
  const edge = until === null ? null : (until + 1) * DAY_PX;
  const end = left + width;
  const names = ['ff-gate-bar', critical && 'ff-gate-critical', late && 'ff-gate-late'];
  return (
    <>
      {edge !== null && edge > end && (
        <span class="ff-gate-thread" style={{ left: `${end}px`, width: `${edge - end}px` }} />
      )}
      <span
        class={names.filter((name) => name !== false).join(' ')}
        style={{ left: `${left}px`, width: `${width}px` }}
      />
      {edge !== null && edge >= 0 && <span class="ff-gate-until" style={{ left: `${edge}px` }} />}
    </>
  );
}

/** Weeks, today, and joints from a gate's end to the start of those that need it. */
function Lines({ drawing, widthPx }: { drawing: GateCalendar; widthPx: number }): VNode {
  const { bars, days, today, joints } = drawing;
  const heightPx = bars.length * ROW_PX;
  const middle = (row: number): number => row * ROW_PX + ROW_PX / 2;
  return (
    <svg
      class="ff-gate-lines"
      aria-hidden="true"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      style={{ width: `${widthPx}px`, height: `${heightPx}px` }}
    >
      {Array.from({ length: days / 7 }, (_, week) => (
        <path key={week} class="ff-gate-grid" d={`M${week * 7 * DAY_PX} 0V${heightPx}`} />
      ))}
      <path class="ff-gate-today" d={`M${today * DAY_PX} 0V${heightPx}`} />
      {joints.map(({ id, fromRow, toRow, fromDay, toDay, critical }) => {
        const x = fromDay * DAY_PX;
        const turn = x + 4;
        const end = Math.max(turn, toDay * DAY_PX);
        return (
          <path
            key={id}
            class={critical ? 'ff-gate-joint ff-gate-joint-critical' : 'ff-gate-joint'}
            d={`M${x} ${middle(fromRow)}H${turn}V${middle(toRow)}H${end}`}
          />
        );
      })}
    </svg>
  );
}

interface ShelfProps {
  name: string;
  shelf: GateCalendar['shelves'][number];
}

/** An opening: its planned day as a tag, the earliest one now where that is later. */
function ShelfLine({ name, shelf: { day, earliest } }: ShelfProps): VNode {
  const slips = earliest > day;
  return (
    <p class="ff-gate-line">
      <span class="ff-gate-label">
        <span class="ff-gate-label-name">{name}</span>
        <span class="ff-spoken">{slips ? ', later than planned' : ', as planned'}</span>
      </span>
      <span class="ff-gate-track" aria-hidden="true">
        {slips && (
          <span
            class="ff-gate-thread ff-gate-thread-late"
            style={{ left: `${day * DAY_PX}px`, width: `${(earliest - day) * DAY_PX}px` }}
          />
        )}
        <span class="ff-gate-shelf" style={{ left: `${day * DAY_PX}px` }} />
        {slips && (
          <span class="ff-gate-shelf ff-gate-shelf-late" style={{ left: `${earliest * DAY_PX}px` }} />
        )}
      </span>
    </p>
  );
}
