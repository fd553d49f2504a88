// The claim: what somebody promised, by when, and who said so. One claim a plan; without one nothing is placed.
// Worked example: "1,900 doors by 1 Oct 2027, said by the founder" is three fields and a date.
import type { VNode } from 'preact';
import { addDays } from '../../domain/calendar.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { Fields, Part as Missing } from '../inputs/fields.tsx';
import { choice, type FieldSpec, factor, money, text } from '../inputs/specs.ts';
import { usePlan } from '../shared/session-context.ts';
import { type Claim, plannedDoors } from './words.ts';

const OF = choice('of', 'It counts', [
  { value: 'doors', label: 'doors' },
  { value: 'units', label: 'units' },
  { value: 'revenue', label: 'revenue' },
]);
const AMOUNTS: Record<Claim['of'], FieldSpec> = {
  doors: factor('amount', 'How many doors', { unit: 'doors', step: 'doors' }),
  units: factor('amount', 'How many units', {
    unit: 'units',
    step: 'doors',
    hint: 'Taken off shelves by shoppers, from the plan’s first day on.',
  }),
  revenue: money('amount', 'How much revenue', {
    step: 'sum',
    hint: 'Net of what chains take off invoices, from the plan’s first day on.',
  }),
};

/** Its fields; the key that adds one while there is none. */
export function ClaimFields(): VNode {
  const plan = usePlan();
  const { claim } = plan.promise;
  return (
    <Missing
      path="promise/claim"
      label="the claim"
      hint={claim === null ? 'It begins as what this plan opens, by its last opening.' : undefined}
      blank={() => blankClaim(plan)}
    >
      <Fields
        base="promise/claim"
        specs={[
          OF,
          AMOUNTS[claim?.of ?? 'doors'],
          { field: 'byDate', label: 'By', kind: 'date' },
          text('who', 'Who said so'),
        ]}
      />
    </Missing>
  );
}

/** As the plan has it: all its doors, the day after its last opening week. */
function blankClaim(plan: Plan): Claim {
  const doors = plan.accounts.reduce((sum, account) => sum + plannedDoors(account), 0);
  const lastWeek = Math.max(
    0,
    ...plan.accounts.flatMap(({ waves }) =>
      waves.map((wave) => wave.openWeek + Math.ceil(wave.doors / wave.doorsPerWeek)),
    ),
  );
  return { of: 'doors', amount: String(doors), byDate: addDays(plan.startDate, 7 * lastWeek), who: '' };
}
