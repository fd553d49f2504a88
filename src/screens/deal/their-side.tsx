// The deal from the other side of the table: what a unit, a store and a facing earn the chain, how hard its stock works,
// and how that stands against the product it would take out. Worked figure: it buys at 5.57 and sells at 8.99 before tax,
// a penny profit of 3.42.
import type { ComponentChildren, VNode } from 'preact';
import type { DealItem, RetailerSide } from '../../domain/deals/types.ts';
import type { TermId } from '../../domain/explain/meanings.ts';
import type { RetailerFigure } from '../../domain/explain/types.ts';
import type { Decimal } from '../../domain/money/decimal.ts';
import { tenths } from '../../domain/money/format.ts';
import { Table, type TableColumn, WhereFrom } from '../../widgets/index.ts';
import { Fold, Part, Word } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import type { ShownDeal } from './column.tsx';

type Write = (say: ScreenSay, value: Decimal) => string;
interface Line {
  figure: RetailerFigure;
  label: string;
  term?: TermId;
  write: Write;
}

const price: Write = (say, value) => say.price(value);
const percent: Write = (say, value) => say.percent(value);
const tenth: Write = (say, value) => tenths(say.look, value);

const LINES: readonly Line[] = [
  { figure: 'buying', label: 'It buys at', write: price },
  { figure: 'pennyProfit', label: 'Penny profit', term: 'pennyProfit', write: price },
  { figure: 'pennyProfitAllIn', label: 'Penny profit, all in', write: price },
  { figure: 'frontMarginRate', label: 'Front margin', term: 'frontMargin', write: percent },
  { figure: 'allInMarginRate', label: 'All-in margin', term: 'allInMargin', write: percent },
  { figure: 'perStoreWeek', label: 'A store a week', write: price },
  { figure: 'perFacingWeek', label: 'A facing and week', term: 'facing', write: price },
  { figure: 'averageStockPerStore', label: 'Stock in a store', write: tenth },
  { figure: 'turnsPerYear', label: 'Turns a year', term: 'turns', write: tenth },
  { figure: 'gmroi', label: 'GMROI', term: 'gmroi', write: (say, value) => say.number(value) },
  { figure: 'weeksOfSupply', label: 'Weeks of supply', term: 'weeksOfSupply', write: tenth },
  {
    figure: 'againstReplacedPerStoreWeek',
    label: 'Against what it replaces',
    write: (say, value) => say.priceSigned(value),
  },
];

export function TheirSide({ at }: { at: ShownDeal }): VNode {
  const say = useSay();
  const { deal, plan, account } = at;
  const several = deal.items.length > 1;
  const columns: TableColumn[] = [
    { key: 'figure', label: 'Theirs', kind: 'text' },
    ...deal.items.map(({ itemId }) => ({
      key: itemId,
      label: several ? (plan.items.find(({ id }) => id === itemId)?.name ?? '') : 'A unit, or as said',
      kind: 'number' as const,
    })),
  ];
  const rows = LINES.map((line) => ({
    id: line.figure,
    cells: [
      line.term === undefined ? (
        line.label
      ) : (
        <Word key="word" id={line.term}>
          {line.label}
        </Word>
      ),
      ...deal.items.map((item) => <Value key={item.itemId} at={at} item={item} line={line} />),
    ],
  }));
  const [first] = deal.items;
  return (
    <Part title="Their side of it">
      <Fold label={`What ${account.name} earns`} value={first && summary(first.retailer, say)} open>
        <div class="ff-steps">
          <Table caption={`What ${account.name} earns`} captionHidden columns={columns} rows={rows} />
        </div>
      </Fold>
    </Part>
  );
}

function summary({ perStoreWeek }: RetailerSide, say: ScreenSay): string {
  return `${say.price(perStoreWeek)} a store a week`;
}

function Value({ at, item, line }: { at: ShownDeal; item: DealItem; line: Line }): ComponentChildren {
  const say = useSay();
  const why = useWhy();
  const value = item.retailer[line.figure];
  const text = value === null ? unknownWords(line.figure) : line.write(say, value);
  const key = { of: 'retailer', accountId: at.account.id, itemId: item.itemId, figure: line.figure } as const;
  return (
    <WhereFrom open={why(key)} label={`${line.label}: ${text}. Where from?`}>
      {text}
    </WhereFrom>
  );
}

function unknownWords(figure: RetailerFigure): string {
  return figure === 'againstReplacedPerStoreWeek' ? 'not known' : 'no stock';
}
