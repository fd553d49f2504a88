// What each product brings where a chain lists several, a column a product; and the names of one product's figures.
// Worked example: two lemonades at 0.46 and 0.40 a unit, needing 4.41 and 2.57 of the 12 and 7 planned a store a week.
import type { VNode } from 'preact';
import type { DealItem } from '../../domain/deals/types.ts';
import type { DealItemFigure } from '../../domain/explain/types.ts';
import { Table, type TableColumn, WhereFrom } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import type { ShownDeal } from './column.tsx';

interface ItemLine {
  label: string;
  /** null for what was typed: it comes from nowhere else. */
  figure: DealItemFigure | null;
  write: (item: DealItem, say: ScreenSay) => string;
}

const ITEM_LINES: readonly ItemLine[] = [
  {
    label: 'Contribution a unit',
    figure: 'contributionPerUnit',
    write: (item, say) => say.price(item.contributionPerUnit),
  },
  {
    label: 'Contribution a store a week',
    figure: 'contributionPerStoreWeek',
    write: (item, say) => say.price(item.contributionPerStoreWeek),
  },
  { label: 'Planned rate', figure: null, write: (item, say) => say.number(item.unitsPerStoreWeek) },
  {
    label: 'Break-even rate',
    figure: 'breakEvenUnitsPerStoreWeek',
    write: ({ breakEvenUnitsPerStoreWeek: need }, say) => (need === null ? 'none' : say.number(need)),
  },
  {
    label: 'Units, first year',
    figure: 'firstYearUnits',
    write: (item, say) => say.count(item.firstYearUnits.round().toNumber()),
  },
];

/** A column a product, as on their side: two stand beside each other on a phone. */
export function PerItem({ at }: { at: ShownDeal }): VNode {
  const say = useSay();
  const why = useWhy();
  const { deal, plan, account } = at;
  const columns: TableColumn[] = [
    { key: 'figure', label: 'Ours', kind: 'text' },
    ...deal.items.map(({ itemId }) => ({
      key: itemId,
      label: plan.items.find(({ id }) => id === itemId)?.name ?? '',
      kind: 'number' as const,
    })),
  ];
  const rows = ITEM_LINES.map(({ label, figure, write }) => ({
    id: label,
    cells: [
      label,
      ...deal.items.map((item) => {
        const text = write(item, say);
        if (figure === null) return text;
        return (
          <WhereFrom
            key={item.itemId}
            open={why(itemKey(at, item, figure))}
            label={`${label}: ${text}. Where from?`}
          >
            {text}
          </WhereFrom>
        );
      }),
    ],
  }));
  return (
    <div class="ff-steps">
      <Table caption={`Products at ${account.name}`} columns={columns} rows={rows} />
    </div>
  );
}

export function itemKey({ account }: ShownDeal, item: DealItem, figure: DealItemFigure) {
  return { of: 'dealItem', accountId: account.id, itemId: item.itemId, figure } as const;
}
