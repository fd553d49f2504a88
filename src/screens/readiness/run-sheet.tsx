// The run-sheet: everything still to be done, in the order of its dates, for all or for one owner, to be printed on A4 or
// taken into a calendar as a file. Reminders live in that calendar; the app sends none.
// Worked example: Ana's three gates on one page, each with a box to tick, and ana.ics with an event for each.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { calendarOf, type Readiness } from '../../domain/readiness/index.ts';
import {
  Button,
  ButtonRow,
  EmptyState,
  LinkButton,
  SelectField,
  Table,
  type TableColumn,
  type TableRow,
} from '../../widgets/index.ts';
import { isText, useKept } from '../shared/kept.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { byDay } from './gate-rows.tsx';
import { SafetyCaution } from './starters.tsx';
import { useReadiness } from './use-readiness.ts';
import { byWhen, holdsWords, openingName, ownersOf, ownerWords, roomWords } from './words.ts';

const ALL = ' ';
const COLUMNS: readonly TableColumn[] = [
  { key: 'what', label: 'What', kind: 'text' },
  { key: 'when', label: 'By when', kind: 'text' },
  { key: 'days', label: 'Days', kind: 'number' },
  { key: 'owner', label: 'Whose', kind: 'text' },
  { key: 'holds', label: 'Holds back', kind: 'text' },
  { key: 'evidence', label: 'Shown by', kind: 'text' },
];
const DATE_COLUMNS: readonly TableColumn[] = [
  { key: 'opening', label: 'Opening', kind: 'text' },
  { key: 'order', label: 'Ordered or made from', kind: 'text' },
  { key: 'ship', label: 'Goods leave us', kind: 'text' },
  { key: 'shelf', label: 'On the shelf', kind: 'text' },
  { key: 'earliest', label: 'Earliest now', kind: 'text' },
];

export function RunSheetScreen(): VNode {
  const plan = usePlan();
  return (
    <View title="Run-sheet" verdict={null}>
      {plan.readiness.gates.length === 0 ? (
        <EmptyState title="Nothing to get ready is in this plan yet: the run-sheet is empty.">
          <BackToReadiness />
        </EmptyState>
      ) : (
        <RunSheet plan={plan} />
      )}
    </View>
  );
}

function RunSheet({ plan }: { plan: Plan }): VNode {
  const say = useSay();
  const readiness = useReadiness(plan);
  const owners = ownersOf(plan);
  const [kept, setOwner] = useKept('run-sheet-owner', isText);
  const owner = kept !== null && kept !== ALL && owners.includes(kept) ? kept : null;
  const rows = rowsOf({ plan, readiness, owner, say });
  const whose = owner === null ? '' : `, ${ownerWords(owner)}`;
  return (
    <div class="ff-run-sheet ff-stack">
      <div class="ff-no-print">
        <SelectField
          label="Whose"
          value={owner ?? ALL}
          choices={[
            { value: ALL, label: 'everybody’s' },
            ...owners.map((value) => ({ value, label: ownerWords(value) })),
          ]}
          onChoose={setOwner}
        />
      </div>
      {rows.length === 0 ? (
        <p>Everything is done.</p>
      ) : (
        <Table
          caption={`${plan.name}${whose}: to be done, as of ${say.date(readiness.today)}`}
          columns={COLUMNS}
          rows={rows}
          compact
        />
      )}
      <Table
        caption="The dates it is done for"
        columns={DATE_COLUMNS}
        rows={dateRows(plan, readiness, say)}
        compact
      />
      <p class="ff-least">
        Days are working days. What is late stands first by its date; {say.date(readiness.today)} is today.
      </p>
      <FileKeys plan={plan} readiness={readiness} owner={owner} />
      <SafetyCaution />
    </div>
  );
}

interface RowsArgs {
  plan: Plan;
  readiness: Readiness;
  owner: string | null;
  say: ScreenSay;
}

function rowsOf({ plan, readiness, owner, say }: RowsArgs): TableRow[] {
  const byId = new Map(plan.readiness.gates.map((gate) => [gate.id, gate]));
  const own = readiness.gates.filter(
    (gate) => gate.state !== 'done' && (owner === null || gate.owner.trim() === owner),
  );
  return byDay(own).flatMap((reading) => {
    const gate = byId.get(reading.id);
    if (gate === undefined) return [];
    return [
      {
        id: gate.id,
        strong: reading.late,
        cells: [
          <span key="what" class="ff-run-what">
            <i class="ff-run-box" aria-hidden="true" />
            {gate.name}
          </span>,
          <span key="when" class="ff-run-text">
            {byWhen(reading, say)}
            <br />
            {roomWords(reading, say)}
          </span>,
          say.count(reading.daysLeft),
          <span key="owner" class="ff-run-text">
            {ownerWords(gate.owner)}
          </span>,
          <span key="holds" class="ff-run-text">
            {holdsWords(plan, gate)}
          </span>,
          <span key="evidence" class="ff-run-text">
            {gate.evidence}
          </span>,
        ],
      },
    ];
  });
}

function dateRows(plan: Plan, { waves }: Readiness, say: ScreenSay): TableRow[] {
  return waves.map((wave) => {
    const key = `${wave.accountId}/${wave.waveId}`;
    return {
      id: key,
      strong: wave.slipWeeks > 0,
      cells: [
        <span key="name" class="ff-run-text">
          {openingName(plan, key)}
        </span>,
        say.date(wave.orderDate),
        say.date(wave.shipDate),
        say.date(wave.shelfDate),
        say.date(wave.earliest),
      ],
    };
  });
}

interface FileArgs {
  plan: Plan;
  readiness: Readiness;
  owner: string | null;
}

/** The way back, for those who came by an address. */
export function BackToReadiness(): VNode {
  const { id } = usePlan();
  return (
    <LinkButton kind="quiet" href={hashOf({ view: 'readiness', planId: id, sheet: null })}>
      Readiness
    </LinkButton>
  );
}

/** A file made later replaces the events of one made before; the calendar that takes it does the reminding. */
function FileKeys({ plan, readiness, owner }: FileArgs): VNode {
  const session = useSession();
  const file = () => ({
    name: `${fileWord(plan.name)}${owner === null ? '' : `-${fileWord(ownerWords(owner))}`}.ics`,
    text: calendarOf({ plan, readiness, stamp: new Date().toISOString(), owner }),
  });
  return (
    <div class="ff-no-print ff-stack">
      <ButtonRow>
        <Button onPress={() => window.print()}>Print</Button>
        <Button onPress={() => session.download(file())}>Save as a calendar file</Button>
        <BackToReadiness />
        {session.canShare && (
          <Button onPress={() => void session.share(file())}>Share the calendar file</Button>
        )}
      </ButtonRow>
      <p class="ff-least ff-quiet">
        The calendar that takes the file does the reminding, a week and a day before. A file made later
        replaces what an earlier one put there; what is done comes as cancelled.
      </p>
    </div>
  );
}

/** Letters and digits of any script, the rest as hyphens. */
function fileWord(text: string): string {
  const word = text
    .trim()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return word === '' ? 'run-sheet' : word.slice(0, 60);
}
