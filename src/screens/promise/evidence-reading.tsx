// What the scans of one product say: the rate of sale with its ranges, a new store's, how much more would halve the range,
// what displays and prices added. Where the scans can't carry it is said beside the claim (warnings.tsx).
// Worked example: "Half the range takes some 19 more stores; more weeks in the same stores can't do it."
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Item } from '../../domain/plan/index.ts';
import { evidenceOfAccount, type ItemEvidence, rangeOfNewStores } from '../../domain/promise/evidence.ts';
import { type Halving, halvingOf } from '../../domain/promise/halving.ts';
import type { Range } from '../../domain/promise/rate-of-sale.ts';
import { Figure, Table, type TableColumn } from '../../widgets/index.ts';
import { Figures, Fold } from '../shared/parts.tsx';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { basisWords, halvingWords, liftWords, plannedWords, trendWords } from './evidence-words.ts';
import { rateText } from './words.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'of', label: 'Units a store a week', kind: 'text' },
  { key: 'low95', label: '95 %, from', kind: 'number' },
  { key: 'low80', label: '80 %, from', kind: 'number' },
  { key: 'high80', label: '80 %, to', kind: 'number' },
  { key: 'high95', label: '95 %, to', kind: 'number' },
];

export function EvidenceReading({ item, evidence }: { item: Item; evidence: ItemEvidence }): VNode {
  const plan = usePlan();
  const say = useSay();
  const why = useWhy();
  const { rate } = evidence;
  const { low80, high80 } = rate.ofMean;
  const planned = plannedWords(plan, item, evidence, say);
  return (
    <section class="ff-evidence" aria-label={`What scans of ${item.name} say`}>
      <Figure
        label={item.name}
        value={rateText(rate.mean, say)}
        unit="a store a week"
        note={`${rateText(low80, say)} to ${rateText(high80, say)} in 8 of 10`}
        whereFrom={why({ of: 'evidence', itemId: item.id })}
      />
      <p class="ff-least ff-quiet">{basisWords(evidence, say)}</p>
      {planned.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <Fold label="Ranges, and what would narrow them">
        <More item={item} evidence={evidence} />
      </Fold>
    </section>
  );
}

/** Worked out when it is opened: it takes longer than a keystroke may. */
function More({ item, evidence }: { item: Item; evidence: ItemEvidence }): VNode {
  const plan = usePlan();
  const why = useWhy();
  const say = useSay();
  const rangesOf = (): { label: string; range: Range }[] => {
    const doors = plan.accounts
      .filter(({ listings }) => listings.some(({ itemId }) => itemId === item.id))
      .reduce((sum, { waves }) => sum + waves.reduce((all, wave) => all + wave.doors, 0), 0);
    const ids = [...new Set(evidence.counted.stores.map(({ accountId }) => accountId))];
    const chains = ids.length < 2 ? [] : ids;
    return [
      { label: 'All stores like these', range: evidence.rate.ofMean },
      ...chains.flatMap((id) => {
        const own = evidenceOfAccount(plan, item.id, id);
        const name = plan.accounts.find((account) => account.id === id)?.name ?? 'Stores of no chain here';
        return own === null ? [] : [{ label: name, range: own.rate.ofMean }];
      }),
      { label: 'One new store', range: rangeOfNewStores(evidence, 1) },
      ...(doors > 1
        ? [{ label: `${say.count(doors)} new stores together`, range: rangeOfNewStores(evidence, doors) }]
        : []),
    ];
  };
  const ranges = useAfterPaint(evidence, rangesOf);
  const halving = useAfterPaint<Halving>(evidence, () => halvingOf(evidence));
  const lines = [
    ...(halving === null ? [] : [halvingWords(halving, say)]),
    ...(evidence.trend === null ? [] : [trendWords(evidence.trend, say)]),
  ];
  return (
    <div class="ff-stack">
      <Table
        caption="What is believable, units a store a week"
        captionHidden
        columns={COLUMNS}
        rows={(ranges ?? []).map(({ label, range }) => ({
          id: label,
          cells: [
            label,
            ...[range.low95, range.low80, range.high80, range.high95].map((each) => rateText(each, say)),
          ],
        }))}
        compact
      />
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {evidence.lifts.length > 0 && (
        <Figures>
          {evidence.lifts.map((lift) => (
            <Figure
              key={lift.on}
              {...liftWords(lift, say)}
              whereFrom={why({ of: 'lift', itemId: item.id, on: lift.on })}
            />
          ))}
        </Figures>
      )}
      <p class="ff-least ff-quiet">
        Stores differ and weeks are counts: weighed on a grid, with next to nothing held before
        {evidence.prior.mean === null ? '' : ` but ${rateText(evidence.prior.mean, say)}, as entered below`}.
      </p>
    </div>
  );
}

/** Null until it has been worked out, right after what stands there is painted. */
function useAfterPaint<T>(evidence: ItemEvidence, work: () => T): T | null {
  const [found, setFound] = useState<{ of: ItemEvidence; value: T } | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setFound({ of: evidence, value: work() }), 0);
    return () => clearTimeout(timer);
  }, [evidence]);
  return found?.of === evidence ? found.value : null;
}
