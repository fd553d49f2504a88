// One gate as a sheet over the view: how it stands, its lead time with both ends, who owns it, what it needs first and
// holds back, what shows that it is done, and what it costs when it slips.
// Worked example: ?sheet=gate:labels opens "Labels approved"; 2, 5, 9 working days make 5.2, so 6 are planned.
import type { VNode } from 'preact';
import { removeGate } from '../../app/commands/readiness.ts';
import type { Gate } from '../../domain/plan/index.ts';
import type { Readiness } from '../../domain/readiness/index.ts';
import { Button, ButtonRow, Disclosure, Sheet, TextAreaField } from '../../widgets/index.ts';
import { Fields } from '../inputs/fields.tsx';
import { choice, count, text } from '../inputs/specs.ts';
import { BasisTag, useBasis } from '../shared/basis-tag.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useField } from '../shared/use-field.ts';
import { useSay } from '../shared/use-say.ts';
import { DatesFrom } from './dates-from.tsx';
import { HoldsBack, NeedsFirst, StateFields } from './gate-fields.tsx';
import { Slip } from './slip.tsx';
import { BEFORE, byWhen, openingName, roomWords } from './words.ts';

const WHAT = [text('name', 'What has to be ready'), text('owner', 'Whose it is')];
const LEAD = [
  count('leadDays/optimistic', 'When all goes well', 'days', { step: 'one' }),
  count('leadDays/likely', 'Most likely', 'days', { step: 'one' }),
  count('leadDays/pessimistic', 'When it goes badly', 'days', { step: 'one' }),
];

export function GateSheet({ id, readiness }: { id: string; readiness: Readiness | null }): VNode | null {
  const session = useSession();
  const gate = usePlan().readiness.gates.find((each) => each.id === id);
  const close = (): void => session.closeSheet();
  if (gate === undefined) return null;
  return (
    <Sheet title={gate.name} onClose={close}>
      <OneGate key={id} gate={gate} readiness={readiness} onGone={close} />
    </Sheet>
  );
}

interface OneGateProps {
  gate: Gate;
  readiness: Readiness | null;
  onGone: () => void;
}

function OneGate({ gate, readiness, onGone }: OneGateProps): VNode {
  const session = useSession();
  const path = `readiness/gates/${gate.id}`;
  const remove = (): void => {
    session.endStep();
    const isGone = session.run(removeGate, { gateId: gate.id }, path);
    session.endStep();
    if (isGone) onGone();
  };
  return (
    <div class="ff-inputs-section">
      <Standing gate={gate} readiness={readiness} />
      {readiness !== null && gate.state.is !== 'done' && (
        <Disclosure summary="Where these dates come from">
          <DatesFrom gate={gate} readiness={readiness} />
        </Disclosure>
      )}
      <StateFields gate={gate} path={path} />
      <Fields base={path} specs={WHAT} />
      <fieldset class="ff-place">
        <legend class="ff-label">Working days it takes</legend>
        <Fields base={path} specs={LEAD} />
        <LeadNote gate={gate} path={path} />
      </fieldset>
      <Fields base={path} specs={[choice('before', 'To be done before', [...BEFORE], { asList: true })]} />
      <NeedsFirst gate={gate} path={path} />
      <HoldsBack gate={gate} path={path} />
      <Evidence path={`${path}/evidence`} id={`evidence-${gate.id}`} />
      {gate.state.is !== 'done' && readiness !== null && <Slip gateId={gate.id} />}
      <ButtonRow>
        <Button kind="quiet" label={`Take out ${gate.name}`} onPress={remove}>
          Take out
        </Button>
      </ButtonRow>
    </div>
  );
}

/** Its dates in one sentence. */
function Standing({ gate, readiness }: { gate: Gate; readiness: Readiness | null }): VNode | null {
  const plan = usePlan();
  const say = useSay();
  const reading = readiness?.gates.find(({ id }) => id === gate.id);
  if (reading === undefined || reading.state === 'done') return null;
  const openings = reading.holds.map((key) => openingName(plan, key)).filter((name) => name !== '');
  const expected =
    reading.start === null || reading.finish === null
      ? ''
      : ` From today on it goes from ${say.date(reading.start)} to ${say.date(reading.finish)}.`;
  const most = 4;
  const more = openings.length > most ? ` and ${openings.length - most} more` : '';
  return (
    <p role="status">
      <strong>
        {capital(byWhen(reading, say))}: {roomWords(reading, say)}.
      </strong>
      {expected}
      {openings.length > 0 && ` It holds back ${openings.slice(0, most).join('; ')}${more}.`}
    </p>
  );
}

function LeadNote({ gate: { leadDays }, path }: { gate: Gate; path: string }): VNode {
  const say = useSay();
  const note = useBasis(`${path}/leadDays`);
  const mean = (leadDays.optimistic + 4 * leadDays.likely + leadDays.pessimistic) / 6;
  return (
    <p class="ff-least ff-quiet">
      {note !== null && <BasisTag note={note} kind="text" />} Planned with{' '}
      {say.number(Math.ceil(mean - 1e-9))}: (well + 4 × likely + badly) ÷ 6 = {say.number(mean)}, rounded up.
    </p>
  );
}

function Evidence({ path, id }: { path: string; id: string }): VNode {
  const field = useField({ path, label: 'What shows it', kind: 'text' });
  return (
    <div onFocusOut={field.onCommit}>
      <TextAreaField
        id={id}
        label="What shows that it is done, or where that lies"
        value={field.text}
        rows={3}
        problem={field.problem}
        onInput={field.onInput}
      />
    </div>
  );
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
