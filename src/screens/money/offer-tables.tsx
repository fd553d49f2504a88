// Tables of one offer: every dated payment, what is paid by year, who owns what after each event, what the company's sale
// leaves everybody. Worked figure: founder 100 % today, 80 % after 100,000 for 20 %.
import type { VNode } from 'preact';
import { offerFlowWord } from '../../domain/explain/offer-words.ts';
import type { DilutionRow, Holding, OfferResult } from '../../domain/offers/index.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { MoneyModel } from './model.ts';

const YEAR_COLUMNS: readonly TableColumn[] = [
  { key: 'year', label: 'Year', kind: 'text' },
  { key: 'amount', label: 'Paid to them', kind: 'number' },
];

/** Years, then what comes at the sale, then the total: the same as the figure above. */
export function ByYear({ result }: { result: OfferResult }): VNode {
  const say = useSay();
  const rows: TableRow[] = result.paidByYear.map(({ year, amount }) => ({
    id: String(year),
    cells: [String(year), say.moneyExact(amount)],
  }));
  if (result.settles !== 0) {
    rows.push({ id: 'settles', cells: ['What is still owed at the sale', say.moneyExact(result.settles)] });
  }
  if (result.payout !== 0) {
    rows.push({ id: 'payout', cells: ['Their part of the sale', say.moneyExact(result.payout)] });
  }
  return (
    <Table
      caption={`Paid under ${result.name}, by year`}
      captionHidden
      compact
      columns={YEAR_COLUMNS}
      rows={rows}
      footer={{ id: 'total', cells: ['In total', say.moneyExact(result.totalPaid)] }}
    />
  );
}

const FLOW_COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'Week', kind: 'text' },
  { key: 'what', label: 'What', kind: 'text' },
  { key: 'amount', label: 'To us', kind: 'number' },
];

export function EveryPayment({ result }: { result: OfferResult }): VNode {
  const say = useSay();
  if (result.flows.length === 0) return <p class="ff-quiet">No payment by date.</p>;
  const rows: TableRow[] = result.flows.map(({ week, what, amount }, at) => ({
    id: String(at),
    cells: [say.week(week), offerFlowWord(what), say.moneySigned(amount)],
  }));
  return (
    <Table
      caption={`Every payment of ${result.name}`}
      captionHidden
      compact
      bounded
      columns={FLOW_COLUMNS}
      rows={rows}
    />
  );
}

const EVENTS: Record<DilutionRow['what'], string> = {
  today: 'Today',
  offer: 'This offer',
  round: 'Round',
  sale: 'At the sale',
};

function holderName({ kind, name }: Pick<Holding, 'kind' | 'name'>): string {
  if (kind === 'founder') return 'We';
  if (kind === 'others') return 'Others now';
  if (kind === 'pool') return 'Option pool';
  return name;
}

/** A row an event, a column an owner; what a price says the company is worth beside it. */
export function Dilution({ result }: { result: OfferResult }): VNode {
  const say = useSay();
  const held = result.holdings.filter(({ rate, kind }) => rate > 0 || kind === 'founder');
  const columns: TableColumn[] = [
    { key: 'event', label: 'After', kind: 'text' },
    ...held.map((each) => ({
      key: `${each.kind} ${each.id}`,
      label: holderName(each),
      kind: 'number' as const,
    })),
    { key: 'worth', label: 'Company worth', kind: 'number' },
  ];
  const rows: TableRow[] = result.dilution.map((row, at) => ({
    id: String(at),
    cells: [
      eventWords(row, say),
      ...held.map(({ id, kind }) => {
        const share = row.shares.find((each) => each.id === id && each.kind === kind);
        return say.percent(share?.rate ?? 0);
      }),
      row.postMoney === null ? '–' : say.money(Math.round(row.postMoney)),
    ],
  }));
  return (
    <Table
      caption={`Who owns what under ${result.name}`}
      captionHidden
      compact
      columns={columns}
      rows={rows}
    />
  );
}

function eventWords({ what, week, name }: DilutionRow, say: ScreenSay): string {
  if (what === 'today') return EVENTS.today;
  const named = what === 'round' && name !== '' ? name : EVENTS[what];
  return `${named}, ${say.week(week)}`;
}

const SALE_COLUMNS: readonly TableColumn[] = [
  { key: 'who', label: 'Who', kind: 'text' },
  { key: 'part', label: 'Part', kind: 'number' },
  { key: 'amount', label: 'Gets', kind: 'number' },
];

/** What is shared at the sale, and how. */
export function SaleShares({ model, result }: { model: MoneyModel; result: OfferResult }): VNode {
  const say = useSay();
  const { sale } = result.founder;
  const held = result.holdings.filter(({ rate, kind }) => rate > 0 || kind === 'founder');
  const rows: TableRow[] = held.map((each) => ({
    id: `${each.kind} ${each.id}`,
    strong: each.kind === 'founder',
    cells: [holderName(each), say.percent(each.rate), say.moneyExact(each.amount)],
  }));
  const less = sale.debt + sale.owed === 0 ? '' : ` less ${say.money(sale.debt + sale.owed)} of debts`;
  return (
    <>
      <p class="ff-least">
        Sold for {say.money(sale.price)} after week {model.money.basis.weeks - 1}, with {say.money(sale.cash)}{' '}
        of cash
        {less}: {say.money(sale.toOwners)} for the owners. Money that has a right to come first does.
      </p>
      <Table
        caption={`The sale under ${result.name}`}
        captionHidden
        compact
        columns={SALE_COLUMNS}
        rows={rows}
      />
    </>
  );
}
