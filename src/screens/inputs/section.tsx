// One section of the inputs by its place: its title, a short summary of what stands in it, and its fields.
// Worked example: the place { of: 'chain', section: 'terms', id: 'corner' } is "Payment and delivery", "30 days, 10 late".
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { AllowancesEditor } from '../ladder/allowances-editor.tsx';
import { CostLines } from '../ladder/cost-lines.tsx';
import { HandsEditor } from '../ladder/hands-editor.tsx';
import { PricePoints } from '../ladder/price-points.tsx';
import { ClaimFields } from '../promise/claim.tsx';
import { SpreadFields } from '../promise/spreads.tsx';
import { StandingEditor } from '../promise/standing.tsx';
import { Openings } from '../roll-out/openings.tsx';
import type { ChainSection, InputPlace, PlanSection, ProductSection } from '../shared/input-places.ts';
import { usePlan } from '../shared/session-context.ts';
import { CashSection, MarketSection, OverheadSection, VerdictLinesSection } from './business.tsx';
import { BuyingSection } from './buying.tsx';
import { DeductionsSection } from './deductions.tsx';
import { LinesSection } from './lines.tsx';
import { ListingsSection } from './listings.tsx';
import { MoneyDownSection } from './money-down.tsx';
import { BooksSection, FundingSection } from './money-in.tsx';
import { OrderingSection } from './ordering.tsx';
import { PackSection } from './pack.tsx';
import { SupplySection } from './production.tsx';
import { PromotionsSection } from './promotions.tsx';
import { SeasonSection } from './season.tsx';
import { StockSection } from './stock.tsx';
import { TermsSection } from './terms.tsx';
import './inputs.css';

export const SECTION_TITLES: Record<ChainSection | ProductSection | PlanSection, string> = {
  hands: 'Hands up to the shelf',
  listings: 'Price and rate of sale',
  openings: 'Stores and openings',
  terms: 'Payment and delivery',
  allowances: 'Allowances and selling costs',
  moneyDown: 'Money down',
  promotions: 'Promotions',
  ordering: 'Orders and depot',
  deductions: 'Deliveries and deductions',
  standing: 'How far it is agreed',
  cost: 'Landed cost',
  pack: 'Name and pack',
  supply: 'Production',
  buying: 'Suppliers, rush orders, currency',
  season: 'Season',
  stock: 'Stock today',
  market: 'Market, tax and dates',
  cash: 'Cash',
  overhead: 'Rent, wages, equipment',
  lines: 'Production lines',
  funding: 'Funding counted on',
  books: 'Books on the first day',
  verdictLines: 'Verdict lines',
  claim: 'What is promised, and how it may come out',
};

/** The section's title with whose it is: "Corner: Payment and delivery". */
export function sectionTitle(plan: Plan, place: InputPlace): string {
  const title = SECTION_TITLES[place.section];
  if (place.of === 'plan') return title;
  const list = place.of === 'chain' ? plan.accounts : plan.items;
  const name = list.find(({ id }) => id === place.id)?.name;
  return name === undefined ? title : `${name}: ${title}`;
}

export function Section({ place }: { place: InputPlace }): VNode {
  const plan = usePlan();
  return <div class="ff-inputs-section">{bodyOf(plan, place)}</div>;
}

function bodyOf(plan: Plan, place: InputPlace): VNode {
  if (place.of === 'plan') return PLAN[place.section]();
  const gone = <p>It is not in the plan any more.</p>;
  if (place.of === 'product') {
    const item = plan.items.find(({ id }) => id === place.id);
    const base = `items/${place.id}`;
    if (!item) return gone;
    switch (place.section) {
      case 'cost':
        return <CostLines itemId={item.id} />;
      case 'pack':
        return <PackSection base={base} item={item} />;
      case 'supply':
        return <SupplySection base={base} item={item} />;
      case 'buying':
        return <BuyingSection base={base} item={item} />;
      case 'season':
        return <SeasonSection base={base} item={item} />;
      case 'stock':
        return <StockSection base={base} />;
    }
  }
  const account = plan.accounts.find(({ id }) => id === place.id);
  const base = `accounts/${place.id}`;
  if (!account) return gone;
  switch (place.section) {
    case 'hands':
      return (
        <>
          <HandsEditor accountId={account.id} />
          <PricePoints accountId={account.id} />
        </>
      );
    case 'listings':
      return <ListingsSection base={base} account={account} />;
    case 'openings':
      return <Openings account={account} />;
    case 'terms':
      return <TermsSection base={base} accountId={account.id} />;
    case 'allowances':
      return <AllowancesEditor accountId={account.id} />;
    case 'moneyDown':
      return <MoneyDownSection base={base} />;
    case 'ordering':
      return <OrderingSection base={base} account={account} />;
    case 'deductions':
      return <DeductionsSection base={base} />;
    case 'standing':
      return <StandingEditor account={account} />;
    case 'promotions':
      return <PromotionsSection base={base} account={account} />;
  }
}

const PLAN: Record<PlanSection, () => VNode> = {
  market: () => <MarketSection />,
  cash: () => <CashSection />,
  overhead: () => <OverheadSection />,
  lines: () => <LinesSection />,
  funding: () => <FundingSection />,
  books: () => <BooksSection />,
  verdictLines: () => <VerdictLinesSection />,
  claim: () => (
    <>
      <ClaimFields />
      <SpreadFields />
    </>
  ),
};
