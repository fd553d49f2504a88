// Inputs of the plan as a whole: where and when, cash and what else comes in, overhead, funding, the books on the first
// day, and where the verdicts change their word.
// Worked example: rent of 350 a week from week 0 takes 18,200 out in a year.
import type { VNode } from 'preact';
import { addFunding } from '../../app/commands/business.ts';
import type { Funding } from '../../domain/funding/index.ts';
import { CURRENCY_CODES } from '../../domain/money/currency.ts';
import { getAt } from '../../domain/plan/path.ts';
import { SelectField } from '../../widgets/index.ts';
import { PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { nameIn } from './chain-terms.tsx';
import { Fields, Places } from './fields.tsx';
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
  onOff('perishableFood', 'Food, or farm goods', { hint: 'Some payment lines of law hold for these only.' }),
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

const FUNDING_NAMES: Record<Funding['kind'], string> = {
  equity: 'Money for a share of the company',
  loan: 'A loan',
  receivablesAdvance: 'An advance on invoices',
};

const FUNDING_FIELDS: Record<Funding['kind'], readonly FieldSpec[]> = {
  equity: [
    text('label', 'Name'),
    count('week', 'Comes in week', ''),
    money('amount', 'Amount', { step: 'sum' }),
  ],
  loan: [
    text('label', 'Name'),
    count('week', 'Comes in week', ''),
    money('amount', 'Amount', { step: 'sum' }),
    money('feeAmount', 'Fee'),
    share('yearlyRate', 'Interest a year', { step: 'margin' }),
    count('interestOnlyMonths', 'Interest only for', 'months'),
    count('principalMonths', 'Then paid back over', 'months'),
  ],
  receivablesAdvance: [
    text('label', 'Name'),
    count('fromWeek', 'From week', ''),
    share('advanceRate', 'Of each invoice, at once', { step: 'depth' }),
    share('yearlyRate', 'Interest a year', { step: 'margin' }),
  ],
};

export function FundingSection(): VNode {
  const session = useSession();
  return (
    <>
      <SelectField
        label="Add funding"
        value=""
        choices={[
          { value: '', label: 'Choose …' },
          ...Object.entries(FUNDING_NAMES).map(([value, label]) => ({ value, label })),
        ]}
        onChoose={(kind) => {
          if (kind !== '')
            session.run(
              addFunding,
              { funding: blankFunding(kind as Funding['kind'], session.newId()) },
              'business/funding',
            );
        }}
      />
      <FundingPlaces />
    </>
  );
}

function FundingPlaces(): VNode {
  return (
    <Places
      listPath="business/funding"
      nameOf={(place, index) => nameIn(place, 'label') ?? `Funding ${index + 1}`}
      addLabel="Add money for a share of the company"
      blank={(id) => blankFunding('equity', id)}
    >
      {(path, place) => <Fields base={path} specs={FUNDING_FIELDS[(place as Funding).kind]} />}
    </Places>
  );
}

function blankFunding(kind: Funding['kind'], id: string): Funding {
  const label = FUNDING_NAMES[kind];
  if (kind === 'equity') return { kind, id, label, week: 1, amount: '0' };
  if (kind === 'receivablesAdvance')
    return { kind, id, label, fromWeek: 0, advanceRate: '0', yearlyRate: '0' };
  return {
    kind,
    id,
    label,
    week: 1,
    amount: '0',
    feeAmount: '0',
    yearlyRate: '0.09',
    interestOnlyMonths: 0,
    principalMonths: 36,
  };
}

const DATED: readonly FieldSpec[] = [
  text('label', 'Name'),
  count('week', 'In week', ''),
  money('amount', 'Amount'),
];

export function BooksSection(): VNode {
  const lists = [
    { list: 'receivables', name: 'Owed to us', add: 'Add what is owed to us' },
    { list: 'payables', name: 'Owed by us', add: 'Add what we owe' },
    { list: 'accrued', name: 'Claims and commissions owed', add: 'Add claims or commissions owed' },
  ];
  return (
    <>
      {lists.map(({ list, name, add }) => (
        <Places
          key={list}
          listPath={`business/openingBooks/${list}`}
          nameOf={(_, index) => `${name} ${index + 1}`}
          addLabel={add}
          blank={(id) => ({ id, label: name, week: 2, amount: '0' })}
        >
          {(path) => <Fields base={path} specs={DATED} />}
        </Places>
      ))}
      <Places
        listPath="business/openingBooks/equipment"
        nameOf={(_, index) => `Equipment ${index + 1}`}
        addLabel="Add equipment"
        blank={(id) => ({ id, label: 'Equipment', amount: '0', lifeWeeks: 260 })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              text('label', 'Name'),
              money('amount', 'Value in the books'),
              count('lifeWeeks', 'Lasts', 'weeks'),
            ]}
          />
        )}
      </Places>
      <Places
        listPath="business/openingBooks/loans"
        nameOf={(_, index) => `Loan ${index + 1}`}
        addLabel="Add a loan that runs"
        blank={(id) => ({
          id,
          label: 'Loan',
          amount: '0',
          yearlyRate: '0.09',
          interestOnlyMonths: 0,
          principalMonths: 36,
        })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              text('label', 'Name'),
              money('amount', 'Still owed'),
              share('yearlyRate', 'Interest a year'),
              count('interestOnlyMonths', 'Interest only for', 'months'),
              count('principalMonths', 'Then paid back over', 'months'),
            ]}
          />
        )}
      </Places>
      <Fields
        base="business/openingBooks"
        specs={[money('paidInAmount', 'Paid in by owners', { step: 'sum' })]}
      />
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
