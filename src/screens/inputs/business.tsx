// Inputs of the plan as a whole: where and when, cash and what else comes in, overhead, and where the verdicts change
// their word. Worked example: rent of 350 a week from week 0 takes 18,200 out in a year.
import type { VNode } from 'preact';
import { CURRENCY_CODES } from '../../domain/money/currency.ts';
import { getAt } from '../../domain/plan/path.ts';
import { PartFor } from '../shared/field-for.tsx';
import { usePlan } from '../shared/session-context.ts';
import { Fields, nameIn, Places } from './fields.tsx';
import { choice, count, type FieldSpec, money, onOff, share, text } from './specs.ts';

const MARKET: readonly FieldSpec[] = [
  text('name', 'Plan'),
  choice(
    'currency',
    'Currency',
    CURRENCY_CODES.map((code) => ({ value: code, label: code })),
    { asList: true },
  ),
  choice(
    'market',
    'Market',
    [
      { value: 'US', label: 'United States' },
      { value: 'CA', label: 'Canada' },
      { value: 'EU', label: 'European Union' },
      { value: 'UK', label: 'United Kingdom' },
      { value: 'other', label: 'elsewhere' },
    ],
    { asList: true },
  ),
  onOff('perishableFood', 'Food, or farm goods', {
    hint: 'Some legal limits on payment days hold for these only.',
  }),
  choice('shelfTax/shown', 'Tax is', [
    { value: 'inPrice', label: 'in the price on the tag' },
    { value: 'atTill', label: 'added at the till' },
  ]),
  share('shelfTax/rate', 'Tax rate'),
  { field: 'startDate', label: 'First day', kind: 'date' },
  count('horizonWeeks', 'Weeks in the plan', ''),
];

export function MarketSection(): VNode {
  const vat = getAt(usePlan(), 'business/vat');
  return (
    <>
      <Fields base="" specs={MARKET} />
      <PartFor
        path="business/vat"
        label="Tax between businesses"
        hint="It is no cost, but it is paid out before it comes back."
        blank={() => ({ salesRate: '0', purchasesRate: '0' })}
      />
      {vat !== null && (
        <Fields
          base="business/vat"
          specs={[share('salesRate', 'On what we invoice'), share('purchasesRate', 'On what we buy')]}
        />
      )}
    </>
  );
}

export function CashSection(): VNode {
  const sales = getAt(usePlan(), 'business/baseSales');
  return (
    <>
      <Fields
        base="business"
        specs={[
          {
            ...money('openingCashAmount', 'Cash we have today', { step: 'sum', least: null }),
            placeholder: 'not known',
          },
        ]}
      />
      <PartFor
        path="business/baseSales"
        label="Other sales that go on"
        blank={() => ({ revenueAmountPerWeek: '0', costRate: '0', collectDays: 30, payDays: 30 })}
      />
      {sales !== null && (
        <Fields
          base="business/baseSales"
          specs={[
            money('revenueAmountPerWeek', 'They bring a week', { step: 'sum' }),
            share('costRate', 'Of that, what they cost'),
            count('collectDays', 'Paid to us in', 'days', { step: 'days' }),
            count('payDays', 'Paid by us in', 'days', { step: 'days' }),
          ]}
        />
      )}
    </>
  );
}

export function OverheadSection(): VNode {
  return (
    <>
      <Places
        listPath="business/overheads"
        nameOf={(place, index) => nameIn(place, 'label') ?? `Overhead ${index + 1}`}
        addLabel="Add rent, wages or the like"
        blank={(id) => ({ id, label: 'Rent', amountPerWeek: '0', fromWeek: 0, untilWeek: null })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              text('label', 'Name'),
              money('amountPerWeek', 'A week', { step: 'sum' }),
              count('fromWeek', 'From week', ''),
              { ...count('untilWeek', 'Until week', ''), placeholder: 'goes on' },
            ]}
          />
        )}
      </Places>
      <Places
        listPath="business/capital"
        nameOf={(place, index) => nameIn(place, 'label') ?? `Bought ${index + 1}`}
        addLabel="Add something bought once"
        blank={(id) => ({ id, label: 'Machine', week: 1, amount: '0', lifeWeeks: 260 })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              text('label', 'Name'),
              count('week', 'In week', ''),
              money('amount', 'Costs', { step: 'sum' }),
              count('lifeWeeks', 'Lasts', 'weeks'),
            ]}
          />
        )}
      </Places>
    </>
  );
}

export const VERDICT_LINES: readonly FieldSpec[] = [
  share('ladderFloorRate', 'Ladder fails below, of net price', { step: 'margin' }),
  share('ladderTightPoints', 'Ladder is tight up to, above that', { step: 'margin' }),
  { field: 'dealTightRatio', label: 'Deal is tight below, times break-even', kind: 'factor', step: 'rate' },
  count('cashBufferWeeks', 'Cash is tight below, weeks of outgoings', 'weeks', { step: 'one' }),
  share('promiseFailsBelowRate', 'Promise fails below a chance of', { step: 'depth' }),
  share('promiseTightBelowRate', 'Promise is tight below a chance of', { step: 'depth' }),
];

export function VerdictLinesSection(): VNode {
  return (
    <>
      <p class="ff-least ff-quiet">Where a verdict changes its word is judgement, and yours.</p>
      <Fields base="thresholds" specs={VERDICT_LINES} />
    </>
  );
}
