// Everything still to get ready as a table: what the calendar of gates draws, in dates and days.
// Worked example: "Artwork · Ana · 12 days left · 2 Mar to 17 Mar · latest start 26 Feb · 2 days late".
import type { VNode } from 'preact';
import { dayNumber } from '../../domain/calendar.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { Readiness } from '../../domain/readiness/index.ts';
import { Table, type TableColumn } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import { ownerWords, roomWords } from './words.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'gate', label: 'What', kind: 'text' },
  { key: 'owner', label: 'Whose', kind: 'text' },
  { key: 'days', label: 'Days left', kind: 'number' },
  { key: 'start', label: 'Can begin', kind: 'number' },
  { key: 'finish', label: 'Ends', kind: 'number' },
  { key: 'latest', label: 'Latest start', kind: 'number' },
  { key: 'room', label: 'Room', kind: 'text' },
  { key: 'after', label: 'Needs first', kind: 'text' },
];

export function GatesTable({ plan, readiness }: { plan: Plan; readiness: Readiness }): VNode {
  const say = useSay();
  const nameOf = new Map(plan.readiness.gates.map(({ id, name }) => [id, name]));
  const afterOf = new Map(plan.readiness.gates.map(({ id, after }) => [id, after]));
  const date = (day: string | null): string => (day === null ? '–' : say.date(day));
  const order = (day: string | null): number => (day === null ? Number.POSITIVE_INFINITY : dayNumber(day));
  const open = readiness.gates.filter(({ state }) => state !== 'done');
  const rows = [...open]
    .sort((a, b) => order(a.start) - order(b.start))
    .map((gate) => ({
      id: gate.id,
      strong: gate.late,
      cells: [
        <span key="name" class="ff-wave-name">
          {gate.name}
        </span>,
        ownerWords(gate.owner),
        say.count(gate.daysLeft),
        date(gate.start),
        date(gate.finish),
        date(gate.latestStart),
        roomWords(gate, say),
        (afterOf.get(gate.id) ?? []).map((id) => nameOf.get(id) ?? '').join(', '),
      ],
    }));
  return (
    <Table
      caption="Everything still to get ready"
      captionHidden
      columns={COLUMNS}
      rows={rows}
      compact
      bounded
    />
  );
}
