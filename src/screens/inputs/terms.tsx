// Inputs of one chain: terms of payment and delivery, and how a shipment counts as sold.
// Worked example: paid in 30 days and 10 late, an invoice of week 3 comes in about week 9.
import type { VNode } from 'preact';
import { getAt } from '../../domain/plan/path.ts';
import { SelectField } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { Fields } from './fields.tsx';
import { choice, count, type FieldSpec, money, share } from './specs.ts';

const TERMS: readonly FieldSpec[] = [
  count('terms/paymentDays', 'Paid in', 'days', { step: 'days' }),
  count('terms/latenessDays', 'Paid late by', 'days', { step: 'days' }),
  count('terms/transitWeeks', 'On the way to the store', 'weeks', { step: 'one' }),
  choice('terms/shortage', 'An order we can’t ship', [
    { value: 'backlog', label: 'waits' },
    { value: 'cancelled', label: 'is cancelled' },
  ]),
  share('terms/badDebtRate', 'Never paid'),
  money('creditLimitAmount', 'May owe us at most', {
    step: 'sum',
    placeholder: 'no limit',
    hint: 'What would pass it waits, or is cancelled.',
  }),
  count('priority', 'Turn in a shortage', '', { hint: '1 ships first when there is not enough for all.' }),
];

const DISCOUNT: readonly FieldSpec[] = [
  share('rate', 'Discount for paying early', { step: 'slowShare' }),
  count('days', 'If paid within', 'days', { step: 'days' }),
  share('takenShare', 'Invoices that take it'),
];

export function TermsSection({ base, accountId }: { base: string; accountId: string }): VNode {
  const discount = getAt(usePlan(), `${base}/terms/earlyDiscount`);
  return (
    <>
      <Fields base={base} specs={TERMS} />
      <PartFor
        path={`${base}/terms/earlyDiscount`}
        label="Discount for paying early"
        blank={() => ({ rate: '0.02', days: 10, takenShare: '1' })}
      />
      {discount !== null && <Fields base={`${base}/terms/earlyDiscount`} specs={DISCOUNT} />}
      <SaleFields base={base} />
      <CautionsFor place="terms" accountId={accountId} />
    </>
  );
}

const SALES = {
  shipment: { by: 'shipment' },
  guaranteed: { by: 'guaranteed', expectedReturnRate: '0', reviewWeeks: 26, resaleableShare: '0' },
  scan: { by: 'scan', shrinkRate: '0' },
} as const;

const SALE_FIELDS: Record<keyof typeof SALES, readonly FieldSpec[]> = {
  shipment: [],
  guaranteed: [
    share('expectedReturnRate', 'Unsold and sent back'),
    count('reviewWeeks', 'Looked at after', 'weeks'),
    share('resaleableShare', 'Of these, fit to sell again'),
  ],
  scan: [share('shrinkRate', 'Lost in the store, unpaid')],
};

function SaleFields({ base }: { base: string }): VNode {
  const session = useSession();
  const path = `${base}/sale`;
  const by = getAt(usePlan(), `${path}/by`) as keyof typeof SALES;
  return (
    <>
      <SelectField
        label="Sold when"
        value={by}
        choices={[
          { value: 'shipment', label: 'it is shipped' },
          { value: 'guaranteed', label: 'it is shipped; unsold goods come back' },
          { value: 'scan', label: 'it is scanned at the till' },
        ]}
        onChoose={(value) => session.setField(path, SALES[value as keyof typeof SALES])}
      />
      <Fields base={path} specs={SALE_FIELDS[by]} />
    </>
  );
}
