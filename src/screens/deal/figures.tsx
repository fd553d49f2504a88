// What one chain's deal comes to for us: payback, the rate of sale it needs beside the planned one, contribution, money
// down with its lines. Every figure says where it is from. Worked figure: needs 5.4 a store and week, the plan says 6.
import type { VNode } from 'preact';
import type { DealFigure } from '../../domain/explain/types.ts';
import { Figure, OwnerMark, Table, type TableColumn, WhereFrom } from '../../widgets/index.ts';
import { OWNER_NAMES } from '../ladder/picture-rungs.ts';
import { Figures, Fold, Part } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import type { ShownDeal } from './column.tsx';
import { itemKey, PerItem } from './per-item.tsx';

export function DealFigures({ at }: { at: ShownDeal }): VNode {
  return (
    <Part title="What it brings us">
      <Figures>
        <Payback at={at} />
        <RateNeeded at={at} />
        <DealFig at={at} label="Money down a door" figure="moneyDownPerDoor" />
        <OneItem at={at} />
        <DealFig at={at} label="Contribution a store a week" figure="contributionPerStoreWeek" />
        <DealFig at={at} label="First year" figure="firstYearContribution" note="contribution" />
        <DealFig at={at} label="First year, money down off" figure="firstYearAfterFixed" />
        <DealFig at={at} label="Fully loaded net, a unit" figure="fullyLoadedNetPerUnit" />
        <DealFig
          at={at}
          label="Margin on the paid fill"
          figure="fillMargin"
          note="on the first stock sold in; not part of the figures above"
        />
      </Figures>
      {at.deal.items.length > 1 && <PerItem at={at} />}
      <MoneyDown at={at} />
    </Part>
  );
}

interface DealFigProps {
  at: ShownDeal;
  label: string;
  figure: Exclude<DealFigure, 'paybackWeeks' | 'breakEvenRatio' | 'fixedAmount'>;
  note?: string;
}

function DealFig({ at, label, figure, note }: DealFigProps): VNode {
  const say = useSay();
  const why = useWhy();
  const value = at.deal[figure];
  const perUnit = figure === 'fullyLoadedNetPerUnit';
  const text = value === null ? 'not known' : perUnit ? say.price(value) : say.sum(value);
  return (
    <Figure
      label={label}
      value={text}
      note={note}
      older={at.older}
      whereFrom={why({ of: 'deal', accountId: at.account.id, figure })}
    />
  );
}

function Payback({ at: { deal, account, older } }: { at: ShownDeal }): VNode {
  const say = useSay();
  const why = useWhy();
  const weeks = deal.paybackWeeks;
  const value = deal.nothingDown
    ? 'nothing down'
    : weeks === null
      ? 'not back'
      : `week ${say.number(weeks.ceil())}`;
  return (
    <Figure
      label="Pays back"
      value={value}
      note={`${weeks === null ? 'within' : 'of'} the ${deal.termWeeks} weeks of the term`}
      older={older}
      whereFrom={why({ of: 'deal', accountId: account.id, figure: 'paybackWeeks' })}
    />
  );
}

/** With one product its rate of sale; with several, the part of all planned rates that is enough. */
function RateNeeded({ at }: { at: ShownDeal }): VNode {
  const say = useSay();
  const why = useWhy();
  const { deal, account, older } = at;
  const [item] = deal.items;
  if (deal.items.length === 1 && item) {
    const need = item.breakEvenUnitsPerStoreWeek;
    return (
      <Figure
        label="Break-even rate of sale"
        value={need === null ? 'none does' : say.number(need)}
        note={`a store a week; planned ${say.number(item.unitsPerStoreWeek)}`}
        older={older}
        whereFrom={why(itemKey(at, item, 'breakEvenUnitsPerStoreWeek'))}
      />
    );
  }
  const ratio = deal.breakEvenRatio;
  return (
    <Figure
      label="Breaks even at"
      value={deal.nothingDown ? say.percent(0) : ratio === null ? 'none does' : say.percent(ratio.pow(-1))}
      note="of the planned rates of sale"
      older={older}
      whereFrom={why({ of: 'deal', accountId: account.id, figure: 'breakEvenRatio' })}
    />
  );
}

/** Of a single product; several have their table. */
function OneItem({ at }: { at: ShownDeal }): VNode | null {
  const say = useSay();
  const why = useWhy();
  const [item] = at.deal.items;
  if (at.deal.items.length !== 1 || !item) return null;
  return (
    <>
      <Figure
        label="Contribution a unit"
        value={say.price(item.contributionPerUnit)}
        older={at.older}
        whereFrom={why(itemKey(at, item, 'contributionPerUnit'))}
      />
      <Figure
        label="Units, first year"
        value={say.count(item.firstYearUnits.round().toNumber())}
        older={at.older}
        whereFrom={why(itemKey(at, item, 'firstYearUnits'))}
      />
    </>
  );
}

const LINE_COLUMNS: readonly TableColumn[] = [
  { key: 'line', label: 'Line', kind: 'text' },
  { key: 'amount', label: 'Amount', kind: 'number' },
];

/** What is put down whatever sells, line by line. */
function MoneyDown({ at }: { at: ShownDeal }): VNode {
  const say = useSay();
  const { deal } = at;
  return (
    <Fold label="Money down, line by line" value={say.sum(deal.fixedAmount)}>
      {deal.fixedLines.length === 0 ? (
        <p class="ff-quiet">Nothing is put down before it sells.</p>
      ) : (
        <FixedLines at={at} say={say} />
      )}
    </Fold>
  );
}

function FixedLines({ at, say }: { at: ShownDeal; say: ScreenSay }): VNode {
  const why = useWhy();
  const { deal, account } = at;
  const footer = {
    id: 'all',
    cells: [
      'All of it',
      <WhereFrom key="all" open={why({ of: 'deal', accountId: account.id, figure: 'fixedAmount' })}>
        {say.sum(deal.fixedAmount)}
      </WhereFrom>,
    ],
  };
  const rows = deal.fixedLines.map((line) => ({
    id: line.id,
    cells: [
      <span key="line" class="ff-step-name">
        <OwnerMark owner={line.owner} label={OWNER_NAMES[line.owner]} />
        <span>
          {line.label}
          <span class="ff-step-reason ff-least">{line.reason}</span>
        </span>
      </span>,
      <WhereFrom
        key="amount"
        open={why({ of: 'fixedLine', accountId: account.id, lineId: line.id })}
        label={`${line.label}: ${say.sum(line.amount)}. Where from?`}
      >
        {say.sum(line.amount)}
      </WhereFrom>,
    ],
  }));
  return (
    <div class="ff-steps">
      <Table caption="Money down" captionHidden columns={LINE_COLUMNS} rows={rows} footer={footer} />
    </div>
  );
}
