// The drawing of the calendar of gates: rows under a head of weeks, scrolled both ways; every row opens its gate.
// Worked figure: at 5 px a day a gate of 10 working days is a bar of 12 days, 60 px.
import type { VNode } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { Readiness } from '../../domain/readiness/index.ts';
import { useWide } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { WeekCount } from './calendar.tsx';
import { type GateCalendar, headMarks } from './calendar-layout.ts';
import { gateSheet } from './gate-rows.tsx';
import { openingName, roomWords } from './words.ts';

const DAY_PX = 5;
/** px before today that are in sight at first. */
const BEFORE_TODAY_PX = 88;
/** Heights in the lines' own units: a row, and the middle of a bar in it, beside its name or below it. */
const ROW = 100;
const MIDDLE = { wide: 50, narrow: 68 };

export interface DrawingProps {
  plan: Plan;
  readiness: Readiness;
  drawing: GateCalendar;
  count: WeekCount;
  /** A gate tried so many working days later, or back. */
  onStep: (gateId: string, by: number) => void;
}

export function CalendarDrawing({ plan, readiness, drawing, count, onStep }: DrawingProps): VNode {
  const session = useSession();
  const region = useRef<HTMLElement>(null);
  const { bars, days, today, shelves } = drawing;
  const { months, weeks } = headMarks(drawing, count);
  const byId = new Map(readiness.gates.map((gate) => [gate.id, gate]));
  const widthPx = days * DAY_PX;
  useLayoutEffect(() => {
    if (region.current !== null) region.current.scrollLeft = Math.max(0, today * DAY_PX - BEFORE_TODAY_PX);
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
                  onKeyDown={(event) => {
                    if (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight') return;
                    event.preventDefault();
                    onStep(bar.id, event.key === 'ArrowRight' ? 1 : -1);
                  }}
                >
                  <GateText gate={gate} />
                  <span class="ff-gate-track" aria-hidden="true">
                    <Bar bar={bar} />
                  </span>
                </button>
              );
            })}
          </div>
          <div class={shelves.length <= 2 ? 'ff-gate-foot ff-gate-foot-stays' : 'ff-gate-foot'}>
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
  const wide = useWide();
  const height = bars.length * ROW;
  const middle = (row: number): number => row * ROW + MIDDLE[wide ? 'wide' : 'narrow'];
  return (
    <svg
      class="ff-gate-lines"
      aria-hidden="true"
      viewBox={`0 0 ${widthPx} ${height}`}
      preserveAspectRatio="none"
      style={{ width: `${widthPx}px`, height: `calc(${bars.length} * var(--ff-gate-row))` }}
    >
      {Array.from({ length: days / 7 }, (_, week) => (
        <path key={week} class="ff-gate-grid" d={`M${week * 7 * DAY_PX} 0V${height}`} />
      ))}
      <path class="ff-gate-today" d={`M${today * DAY_PX} 0V${height}`} />
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
