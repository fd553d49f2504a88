// The calendar of gates: each a bar from the day it can begin to the day it ends, with a thread to the day by which it has
// to, joints to what needs it first, openings as tags at the foot. One gate can be tried later, by its keys or in the row
// below: bars and openings follow. Worked example: labels 5 days longer end on the 20th, past their mark on the 13th.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { Readiness } from '../../domain/readiness/index.ts';
import { Disclosure, SelectField } from '../../widgets/index.ts';
import { useKept } from '../shared/kept.ts';
import { Part } from '../shared/parts.tsx';
import { CalendarDrawing } from './calendar-drawing.tsx';
import { gateCalendar, weekDayOf } from './calendar-layout.ts';
import { GatesTable } from './gates-table.tsx';
import { SLIP_MOST, SlipFields } from './slip.tsx';
import { useReadiness } from './use-readiness.ts';
import './calendar.css';

const COUNTS = [
  { value: 'iso', label: 'ISO weeks' },
  { value: 'retail', label: '4-5-4 periods' },
] as const;
export type WeekCount = (typeof COUNTS)[number]['value'];

function isCount(value: unknown): value is WeekCount {
  return COUNTS.some((each) => each.value === value);
}

export function GatesCalendar({ plan, readiness }: { plan: Plan; readiness: Readiness }): VNode | null {
  const [kept, setCount] = useKept('gates-weeks-as', isCount);
  const count = kept ?? 'iso';
  const [slip, setSlip] = useState<{ gateId: string; days: number } | null>(null);
  const open = readiness.gates.filter(({ state }) => state !== 'done');
  const tried = slip !== null && open.some(({ id }) => id === slip.gateId) ? slip : null;
  const shown = useReadiness(plan, tried);
  const drawing = gateCalendar({
    readiness: shown,
    gates: plan.readiness.gates,
    weekDay: weekDayOf(count),
  });
  if (drawing === null) return null;
  const step = (gateId: string, by: number): void => {
    const from = tried?.gateId === gateId ? tried.days : 0;
    setSlip({ gateId, days: Math.max(0, Math.min(SLIP_MOST, from + by)) });
  };
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
      <CalendarDrawing plan={plan} readiness={shown} drawing={drawing} count={count} onStep={step} />
      <CalendarKey />
      <div class="ff-gate-strip">
        <SelectField
          label="If it slips"
          value={tried?.gateId ?? ''}
          choices={[
            { value: '', label: 'nothing does' },
            ...open.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          hint="Or step its row by the arrow keys. The plan stays as it is."
          onChoose={(gateId) => setSlip(gateId === '' ? null : { gateId, days: 5 })}
        />
        {tried !== null && (
          <SlipFields
            key={tried.gateId}
            gateId={tried.gateId}
            days={tried.days}
            onDays={(days) => setSlip({ gateId: tried.gateId, days })}
          />
        )}
      </div>
      <Disclosure summary="The same as a table">
        <GatesTable plan={plan} readiness={shown} />
      </Disclosure>
    </Part>
  );
}

function CalendarKey(): VNode {
  return (
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
  );
}
