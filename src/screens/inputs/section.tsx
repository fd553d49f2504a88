// One section of the inputs by its place: its title, a short summary of what stands in it, and its fields.
// Worked example: the place { of: 'chain', section: 'terms', id: 'corner' } is "Payment and delivery", "30 days, 10 late".
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { AllowancesEditor } from '../ladder/allowances-editor.tsx';
import { CostLines } from '../ladder/cost-lines.tsx';
import { HandsEditor } from '../ladder/hands-editor.tsx';
import { PricePoints } from '../ladder/price-points.tsx';
import { Openings } from '../roll-out/openings.tsx';
import type { ChainSection, InputPlace, PlanSection, ProductSection } from '../shared/input-places.ts';
import { usePlan } from '../shared/session-context.ts';
import { CashSection, MarketSection, OverheadSection, VerdictLinesSection } from './business.tsx';
import { ListingsSection } from './listings.tsx';
import { MoneyDownSection } from './money-down.tsx';
import { BooksSection, FundingSection } from './money-in.tsx';
import { PackFigures } from './pack-figures.tsx';
import { PackSection, StockSection, SupplySection } from './production.tsx';
import { PromotionsSection } from './promotions.tsx';
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
  cost: 'Landed cost',
  pack: 'Name and pack',
  supply: 'Production',
  stock: 'Stock today',
  market: 'Market, tax and dates',
  cash: 'Cash',
  overhead: 'Rent, wages, equipment',
  funding: 'Funding counted on',
  books: 'Books on the first day',
  verdictLines: 'Verdict lines',
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
    if (place.section === 'cost') return <CostLines itemId={item.id} />;
    if (place.section === 'pack') {
      return (
        <>
          <PackSection base={base} />
          <PackFigures item={item} />
        </>
      );
    }
    return place.section === 'supply' ? <SupplySection base={base} /> : <StockSection base={base} />;
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
    case 'promotions':
      return <PromotionsSection base={base} />;
  }
}

const PLAN: Record<PlanSection, () => VNode> = {
  market: () => <MarketSection />,
  cash: () => <CashSection />,
  overhead: () => <OverheadSection />,
  funding: () => <FundingSection />,
  books: () => <BooksSection />,
  verdictLines: () => <VerdictLinesSection />,
};
