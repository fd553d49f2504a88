// Fields of one gate that are no plain field: where it stands, what it needs first, what it holds back. A gate that waits
// for this one is not offered as one that goes first. Worked example: labels need artwork; artwork isn't offered labels.
import type { VNode } from 'preact';
import type { Gate, Plan } from '../../domain/plan/index.ts';
import { waitsFor } from '../../domain/readiness/waits-for.ts';
import { Button, DateField, Segmented, SelectField, SwitchField } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { FieldFor } from '../shared/field-for.tsx';
import { today } from '../shared/moment.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { STATES } from './words.ts';

interface GateProps {
  gate: Gate;
  /** "readiness/gates/<id>" */
  path: string;
}

/** Sets a whole field at once, as an edit of its own. */
function usePut(): (path: string, value: unknown) => void {
  const session = useSession();
  return (path, value) => {
    session.endStep();
    session.setField(path, value);
    session.endStep();
  };
}

export function StateFields({ gate, path }: GateProps): VNode {
  const session = useSession();
  const put = usePut();
  const { state, leadDays } = gate;
  const at = `${path}/state`;
  const blank = (is: string): Gate['state'] => {
    if (is === 'done') return { is, date: today() };
    return is === 'underWay' ? { is, daysLeft: leadDays.likely } : { is: 'notStarted' };
  };
  const problem = session.problems.value.get(`${at}/date`)?.[0];
  return (
    <>
      <Segmented
        label="How it stands"
        value={state.is}
        choices={[...STATES]}
        onChoose={(is) => {
          if (is !== state.is) put(at, blank(is));
        }}
      />
      {state.is === 'underWay' && (
        <FieldFor
          path={`${at}/daysLeft`}
          label="Working days left"
          kind="whole"
          unit="days"
          step="one"
          hint="Today’s included."
        />
      )}
      {state.is === 'done' && (
        <DateField
          label="Done on"
          value={state.date}
          problem={problem === undefined ? undefined : problemSentence(null, problem)}
          onInput={(date, incomplete) => {
            if (!incomplete && date !== '') put(`${at}/date`, date);
          }}
        />
      )}
    </>
  );
}

/** Gates that have to be done before it can begin. */
export function NeedsFirst({ gate, path }: GateProps): VNode {
  const plan = usePlan();
  const put = usePut();
  const { gates } = plan.readiness;
  const nameOf = (id: string): string => gates.find((each) => each.id === id)?.name ?? '';
  const free = gates.filter(
    ({ id }) => id !== gate.id && !gate.after.includes(id) && !waitsFor(gates, id, gate.id),
  );
  const at = `${path}/after`;
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">Needs first</legend>
      {gate.after.length === 0 && <p class="ff-quiet">Nothing: it can begin at any time.</p>}
      <ul class="ff-needs">
        {gate.after.map((id) => (
          <li key={id}>
            <span>{nameOf(id)}</span>
            <Button
              kind="quiet"
              label={`Doesn’t need ${nameOf(id)}`}
              onPress={() =>
                put(
                  at,
                  gate.after.filter((each) => each !== id),
                )
              }
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
      {free.length > 0 && (
        <SelectField
          label="Add one it needs"
          value=""
          choices={[
            { value: '', label: 'choose' },
            ...free.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChoose={(id) => {
            if (id !== '') put(at, [...gate.after, id]);
          }}
        />
      )}
      <Trouble path={at} />
    </fieldset>
  );
}

const HOLD_BY = [
  { value: 'market', label: 'every opening' },
  { value: 'accounts', label: 'chains' },
  { value: 'waves', label: 'openings' },
];

/** Openings that can't happen before it is done. */
export function HoldsBack({ gate, path }: GateProps): VNode {
  const plan = usePlan();
  const put = usePut();
  const { holds } = gate;
  const at = `${path}/holds`;
  const withWaves = plan.accounts.filter(({ waves }) => waves.length > 0);
  const choices = HOLD_BY.filter(
    ({ value }) =>
      value === 'market' || (value === 'accounts' ? plan.accounts.length > 0 : withWaves.length > 0),
  );
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">Holds back</legend>
      <Segmented
        label="What it holds back"
        value={holds.by}
        choices={choices}
        onChoose={(by) => {
          const next = by === holds.by ? null : blankHolds(plan, by);
          if (next !== null) put(at, next);
        }}
      />
      {holds.by === 'accounts' &&
        plan.accounts.map(({ id, name }) => (
          <SwitchField
            key={id}
            label={name}
            on={holds.accountIds.includes(id)}
            onChange={() => put(`${at}/accountIds`, toggled(holds.accountIds, id))}
          />
        ))}
      {holds.by === 'waves' && <WavesHeld holds={holds} at={at} put={put} />}
      <Trouble path={at} />
      <Trouble path={`${at}/accountIds`} />
      <Trouble path={`${at}/waveIds`} />
    </fieldset>
  );
}

interface WavesHeldProps {
  holds: Extract<Gate['holds'], { by: 'waves' }>;
  at: string;
  put: (path: string, value: unknown) => void;
}

function WavesHeld({ holds, at, put }: WavesHeldProps): VNode {
  const plan = usePlan();
  const withWaves = plan.accounts.filter(({ waves }) => waves.length > 0);
  const account = plan.accounts.find(({ id }) => id === holds.accountId);
  return (
    <>
      <SelectField
        label="Of"
        value={holds.accountId}
        choices={withWaves.map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(accountId) => put(at, wavesOf(plan, accountId))}
      />
      {account?.waves.map(({ id, openWeek }, index) => (
        <SwitchField
          key={id}
          label={`Opening ${index + 1}, week ${openWeek}`}
          on={holds.waveIds.includes(id)}
          onChange={() => put(`${at}/waveIds`, toggled(holds.waveIds, id))}
        />
      ))}
    </>
  );
}

function toggled(ids: readonly string[], id: string): string[] {
  return ids.includes(id) ? ids.filter((each) => each !== id) : [...ids, id];
}

function blankHolds(plan: Plan, by: string): Gate['holds'] | null {
  const [first] = plan.accounts;
  if (by === 'market') return { by };
  if (by === 'accounts' && first !== undefined) return { by, accountIds: [first.id] };
  const withWaves = plan.accounts.find(({ waves }) => waves.length > 0);
  return by === 'waves' && withWaves !== undefined ? wavesOf(plan, withWaves.id) : null;
}

function wavesOf(plan: Plan, accountId: string): Gate['holds'] {
  const waves = plan.accounts.find(({ id }) => id === accountId)?.waves ?? [];
  return { by: 'waves', accountId, waveIds: waves.slice(0, 1).map(({ id }) => id) };
}
