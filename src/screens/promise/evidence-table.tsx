// Store sales as a reader needs them: what was seen, the rate of sale it speaks for with its ranges.
// Worked example: 8 stores, 52 weeks that count, 6.2 a store a week (5.1 to 7.6 in 8 of 10).
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import { evidenceOf, type ItemEvidence, rangeOfNewStores } from '../../domain/promise/evidence.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { besideWords } from './evidence-words.ts';
import { rateText } from './words.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'item', label: 'A store a week', kind: 'text' },
  { key: 'seen', label: 'Stores, weeks', kind: 'number' },
  { key: 'mean', label: 'Mean', kind: 'number' },
  { key: 'r80', label: '8 of 10', kind: 'number' },
  { key: 'r95', label: '19 of 20', kind: 'number' },
  { key: 'new', label: 'A new store, 8 of 10', kind: 'number' },
];

export function EvidenceTable({ plan }: { plan: Plan }): VNode {
  const say = useSay();
  const found = useMemo(() => evidenceOf(plan), [plan]);
  const rows = useMemo(() => found.map((each) => rowOf(plan, each, say)), [found, say]);
  const beside = besideWords(plan, say);
  return (
    <>
      {found.length === 0 ? (
        <p>No store sales yet: they are store, week and units.</p>
      ) : (
        <Table
          caption="Rates of sale that store sales speak for"
          captionHidden
          columns={COLUMNS}
          rows={rows}
          compact
        />
      )}
      {beside.length > 0 && (
        <ul class="ff-said">
          {beside.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function nameOf(plan: Plan, { itemId }: ItemEvidence): string {
  return plan.items.find(({ id }) => id === itemId)?.name ?? '';
}

function rowOf(plan: Plan, evidence: ItemEvidence, say: ScreenSay): TableRow {
  const { rate } = evidence;
  const span = (low: number, high: number) => `${rateText(low, say)} to ${rateText(high, say)}`;
  const added = rangeOfNewStores(evidence, 1);
  return {
    id: evidence.itemId,
    cells: [
      nameOf(plan, evidence),
      `${say.count(rate.stores)}, ${say.count(Math.round(rate.storeWeeks))}`,
      rateText(rate.mean, say),
      span(rate.ofMean.low80, rate.ofMean.high80),
      span(rate.ofMean.low95, rate.ofMean.high95),
      span(added.low80, added.high80),
    ],
  };
}
