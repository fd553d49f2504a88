// Which days are worked, and when chains set their shelves anew: weekdays, public holidays of the market, times we close,
// reset dates. Worked example: Monday to Friday, holidays of the US, closed from 24 to 31 December.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { HOLIDAY_PLACES } from '../../domain/plan/readiness.ts';
import type { Readiness } from '../../domain/readiness/index.ts';
import { SelectField, SwitchField } from '../../widgets/index.ts';
import { Fields, nameIn, Places, Trouble } from '../inputs/fields.tsx';
import { type FieldSpec, text } from '../inputs/specs.ts';
import { today } from '../shared/moment.ts';
import { usePlan, useSession } from '../shared/session-context.ts';

const AT = 'readiness/calendar';
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const date = (field: string, label: string): FieldSpec => ({ field, label, kind: 'date' });

export function WorkDays({ readiness }: { readiness: Readiness }): VNode {
  const { holidays } = usePlan().readiness.calendar;
  const session = useSession();
  const put = (value: string | null): void => {
    session.endStep();
    session.setField(`${AT}/holidays`, value);
    session.endStep();
  };
  const unknown = readiness.holidaysUnknown;
  return (
    <div class="ff-inputs-section">
      <Weekdays />
      <SelectField
        label="Public holidays of"
        value={holidays ?? ''}
        choices={[{ value: '', label: 'nowhere: none are counted' }, ...PLACES]}
        onChoose={(value) => put(value === '' ? null : value)}
        hint="Those of a part of a country only where it is named; check what your partners keep."
      />
      {unknown.length > 0 && (
        <p class="ff-least">
          Holidays of {unknown.join(', ')} aren’t known here: those days count as worked.
        </p>
      )}
      <Places
        listPath={`${AT}/closed`}
        nameOf={(place, index) => nameIn(place, 'label') ?? `Closed ${index + 1}`}
        addLabel="Add days on which we close"
        blank={(id) => ({ id, label: 'We close', fromDate: today(), untilDate: today() })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[text('label', 'Why'), date('fromDate', 'From'), date('untilDate', 'Up to and with')]}
          />
        )}
      </Places>
    </div>
  );
}

function Weekdays(): VNode {
  const { workDays } = usePlan().readiness.calendar;
  const session = useSession();
  const put = (day: number): void => {
    const next = workDays.includes(day) ? workDays.filter((each) => each !== day) : [...workDays, day].sort();
    session.endStep();
    session.setField(`${AT}/workDays`, next);
    session.endStep();
  };
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">Days worked</legend>
      {WEEKDAYS.map((name, index) => (
        <SwitchField
          key={name}
          label={name}
          on={workDays.includes(index + 1)}
          onChange={() => put(index + 1)}
        />
      ))}
      <Trouble path={`${AT}/workDays`} />
    </fieldset>
  );
}

/** Dates are the chain's to say; the plan knows none of itself. */
export function Resets(): VNode {
  const plan = usePlan();
  return (
    <div class="ff-inputs-section">
      <p class="ff-least ff-quiet">
        A day on which a chain sets its shelves anew. What isn’t ready by then waits for the next one; ask the
        chain for its dates.
      </p>
      <Places
        listPath="readiness/resets"
        nameOf={(place, index) => nameIn(place, 'label') ?? `Reset ${index + 1}`}
        addLabel="Add a reset date"
        blank={(id) => ({ id, label: 'Reset', date: firstShelfDate(plan), accountId: null })}
      >
        {(path, place) => (
          <>
            <Fields base={path} specs={[text('label', 'Called'), date('date', 'Shelves are set on')]} />
            <ResetChain path={path} accountId={(place as Plan['readiness']['resets'][number]).accountId} />
          </>
        )}
      </Places>
    </div>
  );
}

function ResetChain({ path, accountId }: { path: string; accountId: string | null }): VNode {
  const plan = usePlan();
  const session = useSession();
  return (
    <SelectField
      label="Of"
      value={accountId ?? ''}
      choices={[
        { value: '', label: 'every chain' },
        ...plan.accounts.map(({ id, name }) => ({ value: id, label: name })),
      ]}
      onChoose={(value) => {
        session.setField(`${path}/accountId`, value === '' ? null : value);
        session.endStep();
      }}
    />
  );
}

/** The day on which the first opening is planned; today where there is none. */
function firstShelfDate({ accounts, startDate }: Plan): string {
  const weeks = accounts.flatMap(({ waves }) => waves.map(({ openWeek }) => openWeek));
  if (weeks.length === 0) return today();
  const first = Date.parse(`${startDate}T00:00:00Z`) + Math.min(...weeks) * 7 * 86_400_000;
  return new Date(first).toISOString().slice(0, 10);
}

const PARTS: Readonly<Record<string, string>> = {
  'GB-ENG': 'England and Wales',
  'GB-SCT': 'Scotland',
  'GB-NIR': 'Northern Ireland',
};
const names = new Intl.DisplayNames('en', { type: 'region' });
const PLACES = HOLIDAY_PLACES.map((value) => ({
  value,
  label: PARTS[value] ?? names.of(value) ?? value,
})).sort((a, b) => a.label.localeCompare(b.label, 'en'));
