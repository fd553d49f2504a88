// Inputs of the business: production lines that products share, by hours and shifts, with more shifts later on.
// Worked example: two shifts of 40 hours, a third from week 20 for 18,000: 80 hours a week, then 120.
import type { VNode } from 'preact';
import { removeLine } from '../../app/commands/business.ts';
import type { Business } from '../../domain/plan/index.ts';
import { usePlan } from '../shared/session-context.ts';
import { Fields, nameIn, Places } from './fields.tsx';
import { laterThan } from './later-than.ts';
import { count, type FieldSpec, money, text, week } from './specs.ts';

type Line = Business['lines'][number];

const LINE: readonly FieldSpec[] = [
  text('name', 'Name'),
  count('hoursPerShift', 'A shift, each week', 'hours', { step: 'one', least: 1 }),
  count('shifts', 'Shifts', '', { step: 'one', least: 1 }),
];

const STEP: readonly FieldSpec[] = [
  week('fromWeek', 'From'),
  count('shifts', 'Shifts then', '', { step: 'one', least: 1 }),
  money('capitalAmount', 'Costs', { step: 'sum' }),
  count('leadWeeks', 'Set up in', 'weeks'),
  count('lifeWeeks', 'Lasts', 'weeks'),
];

export function LinesSection(): VNode {
  const { horizonWeeks, items, business } = usePlan();
  const isUnused = business.lines.length > 0 && items.every(({ supply }) => supply.line === null);
  return (
    <>
      <Places
        listPath="business/lines"
        nameOf={(place, index) => nameIn(place, 'name') ?? `Line ${index + 1}`}
        addLabel="Add a production line"
        blank={(id) => blankLine(id, business.lines.length)}
        removal={removeLine}
      >
        {(path, place) => (
          <>
            <Fields base={path} specs={LINE} />
            <Places
              listPath={`${path}/steps`}
              nameOf={(_, index) => `Shifts, change ${index + 1}`}
              addLabel="Add shifts later on"
              blank={(id) => ({
                id,
                fromWeek: laterThan((place as Line).steps, Math.min(26, horizonWeeks - 1), horizonWeeks),
                shifts: Math.min(21, (place as Line).shifts + 1),
                capitalAmount: '0',
                leadWeeks: 0,
                lifeWeeks: 260,
              })}
            >
              {(step) => <Fields base={step} specs={STEP} />}
            </Places>
          </>
        )}
      </Places>
      {isUnused && (
        <p class="ff-least ff-quiet">
          Nothing is made on a line yet: choose it under a product’s “Production”.
        </p>
      )}
    </>
  );
}

export function blankLine(id: string, count: number): Line {
  return { id, name: `Line ${count + 1}`, hoursPerShift: 40, shifts: 1, steps: [] };
}
