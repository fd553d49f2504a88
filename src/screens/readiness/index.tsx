// Readiness: what has to be ready before goods can stand on a shelf. What is late and what comes next at the top, then by
// date; openings with the dates they can keep; the calendar of what waits for what; the days that are worked.
// Worked example: with artwork two days late, the opening it holds back comes a week later, and its cost stands beside it.
import type { VNode } from 'preact';
import { addGate } from '../../app/commands/readiness.ts';
import { hashOf } from '../../app/route.ts';
import type { Gate, Plan } from '../../domain/plan/index.ts';
import { type Readiness, readinessLine } from '../../domain/readiness/index.ts';
import {
  Button,
  ButtonRow,
  EmptyState,
  LinkButton,
  SelectField,
  useWide,
  VerdictLine,
} from '../../widgets/index.ts';
import { isText, useKept } from '../shared/kept.ts';
import { Fold, Keys, Part, Whole } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { GatesCalendar } from './calendar.tsx';
import { GateGroups, gateSheet } from './gate-rows.tsx';
import { GateSheet } from './gate-sheet.tsx';
import { SafetyCaution, STARTERS_SHEET, StartersSheet } from './starters.tsx';
import { useReadiness, useSlipCosts } from './use-readiness.ts';
import { Waves } from './waves.tsx';
import { markOfWhole, ownersOf, ownerWords } from './words.ts';
import { Resets, WorkDays } from './work-days.tsx';
import './readiness.css';

export { ReadinessLine } from './line.tsx';
export { NumbersScreen } from './numbers.tsx';
export { RunSheetScreen } from './run-sheet.tsx';

export function ReadinessScreen(): VNode {
  const session = useSession();
  const plan = usePlan();
  return (
    <View title="Readiness" verdict={null}>
      <Whole older={session.stale.value}>
        {plan.readiness.gates.length === 0 ? <NoGates /> : <Gates plan={plan} />}
      </Whole>
      <OwnSheets plan={plan} />
    </View>
  );
}

function NoGates(): VNode {
  const session = useSession();
  return (
    <>
      <EmptyState title="Nothing to get ready is in this plan yet. Take in what usually has to be, then change it.">
        <ButtonRow>
          <Button kind="primary" onPress={() => session.openSheet(STARTERS_SHEET)}>
            What usually has to be ready
          </Button>
          <AddGate />
        </ButtonRow>
      </EmptyState>
      <OtherPages />
      <SafetyCaution />
    </>
  );
}

function Gates({ plan }: { plan: Plan }): VNode {
  const session = useSession();
  const wide = useWide();
  const readiness = useReadiness(plan);
  const owners = ownersOf(plan);
  const [kept, setOwner] = useKept('readiness-owner', isText);
  const owner = kept !== null && kept !== EVERYBODY && owners.includes(kept) ? kept : null;
  const calendar = <GatesCalendar plan={plan} readiness={readiness} />;
  return (
    <div class="ff-readiness ff-stack">
      <Head plan={plan} readiness={readiness} />
      {wide && calendar}
      <div class="ff-readiness-columns">
        <div class="ff-stack">
          {owners.length > 1 && (
            <SelectField
              label="Whose"
              value={owner ?? EVERYBODY}
              choices={[
                { value: EVERYBODY, label: 'everybody’s' },
                ...owners.map((value) => ({ value, label: ownerWords(value) })),
              ]}
              onChoose={setOwner}
            />
          )}
          <GateGroups readiness={readiness} owner={owner} />
          <Keys>
            <AddGate />
            <Button onPress={() => session.openSheet(STARTERS_SHEET)}>What usually has to be ready</Button>
          </Keys>
        </div>
        <div class="ff-stack">
          <Waves plan={plan} readiness={readiness} />
          {!wide && calendar}
          <Part title="Days">
            <div>
              <Fold label="Days worked and holidays">
                <WorkDays readiness={readiness} />
              </Fold>
              <Fold label="Reset dates" value={String(plan.readiness.resets.length)}>
                <Resets />
              </Fold>
            </div>
          </Part>
        </div>
      </div>
      <OtherPages />
      <SafetyCaution />
    </div>
  );
}

/** No owner can be called so: names are trimmed. */
const EVERYBODY = ' ';

function Head({ plan, readiness }: { plan: Plan; readiness: Readiness }): VNode {
  const say = useSay();
  const costs = useSlipCosts(plan);
  const cost = costs?.answer.ok === true ? costs.answer.value.all : null;
  const line = readinessLine({ plan, readiness, cost, say });
  return <VerdictLine verdict={markOfWhole(readiness, line)} text={line.sentence} />;
}

function OtherPages(): VNode {
  const { id } = usePlan();
  return (
    <ButtonRow>
      <LinkButton kind="quiet" href={hashOf({ view: 'run-sheet', planId: id, sheet: null })}>
        Run-sheet and calendar file
      </LinkButton>
      <LinkButton kind="quiet" href={hashOf({ view: 'numbers', planId: id, sheet: null })}>
        Item and case numbers
      </LinkButton>
    </ButtonRow>
  );
}

function AddGate(): VNode {
  const session = useSession();
  const add = (): void => {
    const id = session.newId();
    session.endStep();
    const isIn = session.run(addGate, { gate: blankGate(id) }, 'readiness/gates');
    session.endStep();
    if (isIn) session.openSheet(gateSheet(id));
  };
  return <Button onPress={add}>Add something to get ready</Button>;
}

function blankGate(id: string): Gate {
  return {
    id,
    name: 'To get ready',
    leadDays: { optimistic: 3, likely: 5, pessimistic: 10 },
    after: [],
    owner: '',
    evidence: '',
    state: { is: 'notStarted' },
    holds: { by: 'market' },
    before: 'shipping',
    starter: null,
  };
}

function OwnSheets({ plan }: { plan: Plan }): VNode | null {
  const { sheet } = useSession().route.value;
  const readiness = useReadiness(plan);
  if (sheet === STARTERS_SHEET) return <StartersSheet />;
  if (sheet?.startsWith('gate:')) return <GateSheet id={sheet.slice(5)} readiness={readiness} />;
  return null;
}
