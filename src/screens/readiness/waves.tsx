// Openings with the date planned, the earliest one that today's state allows, what the difference costs, and how likely the
// planned date and the chain's reset are. Worked example: planned 16 Mar, earliest 23 Mar, 1 week later, 35 %.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import type { Chances, Readiness, WaveReading } from '../../domain/readiness/index.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { costWords, weeksLater } from './slip.tsx';
import { useChances, useSlipCosts } from './use-readiness.ts';
import { chanceWords, openingName } from './words.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'opening', label: 'Opening', kind: 'text' },
  { key: 'shelf', label: 'Planned', kind: 'number' },
  { key: 'earliest', label: 'Earliest now', kind: 'number' },
  { key: 'week', label: 'Cost a week', kind: 'number' },
  { key: 'kept', label: 'Date kept', kind: 'number' },
  { key: 'half', label: 'Half of the runs by', kind: 'number' },
  { key: 'most', label: '9 of 10 by', kind: 'number' },
];
const RESET_COLUMNS: readonly TableColumn[] = [
  { key: 'reset', label: 'Reset', kind: 'text' },
  { key: 'opening', label: 'Opening', kind: 'text' },
  { key: 'date', label: 'On', kind: 'number' },
  { key: 'chance', label: 'Made', kind: 'number' },
];

export function Waves({ plan, readiness }: { plan: Plan; readiness: Readiness }): VNode {
  const say = useSay();
  const costs = useSlipCosts(plan);
  const followed = useChances(plan);
  const chances = followed?.answer.ok === true ? followed.answer.value : null;
  const costOf = (wave: WaveReading): string => {
    if (wave.slipWeeks === 0) return 'in time';
    if (costs === null) return '…';
    const found = costs.answer.ok
      ? costs.answer.value.waves.find((each) => isSame(each, wave))?.cost
      : undefined;
    return found?.contributionPerWeek == null ? 'not known' : say.money(found.contributionPerWeek);
  };
  const rows = readiness.waves.map((wave) => rowOf({ plan, wave, chances, cost: costOf(wave), say }));
  const all = costs?.answer.ok === true ? costs.answer.value.all : null;
  return (
    <Part title="Openings">
      {readiness.waves.length === 0 ? (
        <p class="ff-quiet">No opening is planned: there is no date to be ready for.</p>
      ) : (
        <Table caption="Openings and their dates" captionHidden columns={COLUMNS} rows={rows} compact />
      )}
      {all !== null && (
        <p role="status">{`All of them as late as today’s state makes them. ${costWords(all, say)}`}</p>
      )}
      {costs?.answer.ok === false && <p>{costs.answer.trouble}</p>}
      {chances !== null && <ResetTable plan={plan} chances={chances} />}
      <p class="ff-least ff-quiet">
        {chances === null
          ? 'Running the lead times between their ends …'
          : `From ${say.count(chances.runs)} runs with lead times drawn between their ends, as likely as the three figures say; gates independent of each other, to 5\u00a0%.`}
      </p>
    </Part>
  );
}

interface RowArgs {
  plan: Plan;
  wave: WaveReading;
  chances: Chances | null;
  cost: string;
  say: ScreenSay;
}

function rowOf({ plan, wave, chances, cost, say }: RowArgs): TableRow {
  const chance = chances?.waves.find((each) => isSame(each, wave));
  const key = `${wave.accountId}/${wave.waveId}`;
  return {
    id: key,
    strong: wave.slipWeeks > 0,
    cells: [
      <span key="name" class="ff-wave-name">
        {openingName(plan, key)}
      </span>,
      say.date(wave.shelfDate),
      wave.slipWeeks === 0 ? (
        'as planned'
      ) : (
        <>
          {say.date(wave.earliest)}
          <br />
          {weeksLater(wave.slipWeeks, say)}
        </>
      ),
      cost,
      chance === undefined ? '…' : chanceWords(chance.chance),
      chance === undefined ? '…' : say.date(chance.half),
      chance === undefined ? '…' : say.date(chance.nineOfTen),
    ],
  };
}

function ResetTable({ plan, chances }: { plan: Plan; chances: Chances }): VNode | null {
  const say = useSay();
  if (chances.resets.length === 0) return null;
  const rows = chances.resets.map((each) => ({
    id: `${each.resetId} ${each.accountId} ${each.waveId}`,
    cells: [
      each.label,
      openingName(plan, `${each.accountId}/${each.waveId}`),
      say.date(each.date),
      chanceWords(each.chance),
    ],
  }));
  return <Table caption="Resets that can be made" columns={RESET_COLUMNS} rows={rows} compact />;
}

function isSame(
  one: { accountId: string; waveId: string },
  other: { accountId: string; waveId: string },
): boolean {
  return one.accountId === other.accountId && one.waveId === other.waveId;
}
