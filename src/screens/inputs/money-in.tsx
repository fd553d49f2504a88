// Inputs about other people's money in the business: the funding a plan counts on, and the books on the first day.
// Worked example: 60,000 at 9 % a year over 36 months pays back 1,666.67 a month.
import type { VNode } from 'preact';
import { addFunding } from '../../app/commands/business.ts';
import type { Funding } from '../../domain/funding/index.ts';
import { SelectField } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { Fields, nameIn, Places } from './fields.tsx';
import { count, type FieldSpec, money, share, text } from './specs.ts';

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
      <p class="ff-least ff-quiet">What a lender would advance, for the page made for one:</p>
      <Fields
        base="business/lender"
        specs={[
          share('receivablesRate', 'On invoices not too old', { step: 'depth' }),
          share('stockRate', 'On finished goods, at cost', { step: 'depth' }),
        ]}
      />
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
