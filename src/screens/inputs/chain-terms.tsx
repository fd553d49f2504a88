// Inputs of one chain that are about money moving: terms of payment, how a shipment counts as sold, money down, promotions.
// Worked example: paid in 30 days and 10 days late, an invoice of week 3 comes in about week 9.
import type { VNode } from 'preact';
import { getAt } from '../../domain/plan/path.ts';
import { SelectField } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { Fields, Places } from './fields.tsx';
import { choice, count, type FieldSpec, money, share, text } from './specs.ts';

const TERMS: readonly FieldSpec[] = [
  count('terms/paymentDays', 'Paid in', 'days', { step: 'days' }),
  count('terms/latenessDays', 'Paid late by', 'days', { step: 'days' }),
  count('terms/transitWeeks', 'On the way to the store', 'weeks', { step: 'one' }),
  choice('terms/shortage', 'An order we can’t ship', [
    { value: 'backlog', label: 'waits' },
    { value: 'cancelled', label: 'is cancelled' },
  ]),
  share('terms/badDebtRate', 'Never paid'),
  count('priority', 'Ships in place', 'of all', { hint: '1 ships first when there is not enough for all.' }),
];

const DISCOUNT: readonly FieldSpec[] = [
  share('rate', 'Discount for paying early', { step: 'slowShare' }),
  count('days', 'if paid within', 'days', { step: 'days' }),
  share('takenShare', 'Invoices that take it'),
];

const PER = [
  { value: 'door', label: 'a store' },
  { value: 'item', label: 'a product' },
  { value: 'itemDoor', label: 'a product and store' },
  { value: 'chain', label: 'the chain' },
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

const DEAL: readonly FieldSpec[] = [
  count('deal/termWeeks', 'Term of the deal', 'weeks'),
  money('deal/hurdleAmount', 'To be earned on top', {
    step: 'sum',
    hint: 'What the deal has to bring beside its money down.',
  }),
];

const DISPLAY: readonly FieldSpec[] = [
  money('buildAmountPerDoor', 'Building one'),
  money('freightAmountPerDoor', 'Freight for one'),
  count('buildWeeks', 'Paid before the opening', 'weeks'),
  money('feeAmountPerStoreWeek', 'Fee a store and week'),
  count('weeks', 'Stands for', 'weeks'),
  share('liftRate', 'Sells more by', { hint: 'On top of the rate of sale while it stands.' }),
];

export function MoneyDownSection({ base }: { base: string }): VNode {
  const plan = usePlan();
  return (
    <>
      <PartFor
        path={`${base}/slotting`}
        label="Slotting"
        blank={() => ({ amount: '0', per: 'door', settled: 'atOpening' })}
      />
      {getAt(plan, `${base}/slotting`) !== null && (
        <Fields
          base={`${base}/slotting`}
          specs={[
            money('amount', 'Slotting', { step: 'sum' }),
            choice('per', 'for', PER, { asList: true }),
            choice('settled', 'Paid', [
              { value: 'atOpening', label: 'at the opening' },
              { value: 'offRemittances', label: 'off remittances' },
            ]),
          ]}
        />
      )}
      <Fields
        base={base}
        specs={[
          choice('freeFill/settled', 'Free fill is', [
            { value: 'free', label: 'shipped free' },
            { value: 'billedBack', label: 'billed back' },
          ]),
          count('freeFill/lagWeeks', 'Billed back after', 'weeks'),
        ]}
      />
      <Places
        listPath={`${base}/openingFees`}
        nameOf={(_, index) => `Opening fee ${index + 1}`}
        addLabel="Add an opening fee"
        blank={(id) => ({ id, label: 'Opening fee', amount: '0', per: 'chain' })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              text('label', 'Name'),
              money('amount', 'Amount', { step: 'sum' }),
              choice('per', 'for', PER, { asList: true }),
            ]}
          />
        )}
      </Places>
      <PartFor path={`${base}/display`} label="Display" blank={blankDisplay} />
      {getAt(plan, `${base}/display`) !== null && <Fields base={`${base}/display`} specs={DISPLAY} />}
      <Fields base={base} specs={DEAL} />
    </>
  );
}

function blankDisplay() {
  return {
    buildAmountPerDoor: '0',
    freightAmountPerDoor: '0',
    buildWeeks: 2,
    feeAmountPerStoreWeek: '0',
    weeks: 8,
    liftRate: '0',
  };
}

const PROMOTION: readonly FieldSpec[] = [
  text('label', 'Name'),
  count('fromWeek', 'From week', ''),
  count('weeks', 'Runs for', 'weeks'),
  share('depthRate', 'Off the shelf price', { step: 'depth' }),
  share('fundedShare', 'Of that, paid by us', { step: 'funded' }),
  choice('fundedBy', 'Paid', [
    { value: 'scanBack', label: 'by scan-back' },
    { value: 'offInvoice', label: 'off invoice' },
  ]),
  count('buyInWeeks', 'Bought in ahead', 'weeks'),
  count('lagWeeks', 'Claimed after', 'weeks'),
  share('liftRate', 'Sells more by'),
  share('dipShare', 'Of that, missing afterwards'),
  count('dipWeeks', 'missing over', 'weeks'),
];

export function PromotionsSection({ base }: { base: string }): VNode {
  return (
    <Places
      listPath={`${base}/promotions`}
      nameOf={(place, index) => nameIn(place, 'label') ?? `Promotion ${index + 1}`}
      addLabel="Add a promotion"
      blank={blankPromotion}
    >
      {(path) => <Fields base={path} specs={PROMOTION} />}
    </Places>
  );
}

function blankPromotion(id: string) {
  return {
    id,
    label: 'Promotion',
    fromWeek: 26,
    weeks: 4,
    depthRate: '0.2',
    fundedShare: '0.5',
    fundedBy: 'scanBack',
    buyInWeeks: 0,
    lagWeeks: 6,
    liftRate: '0.5',
    dipShare: '0',
    dipWeeks: 0,
  };
}

/** A place's own name, or null. */
export function nameIn(place: unknown, key: 'label' | 'name'): string | null {
  if (typeof place !== 'object' || place === null) return null;
  const value = (place as Record<string, unknown>)[key];
  return typeof value === 'string' && value.trim() !== '' ? value : null;
}

export const OPENINGS: readonly FieldSpec[] = [
  share('attritionYearlyRate', 'Stores lost in a year'),
  { ...count('cutWeek', 'Taken off the shelves in week', ''), placeholder: 'never' },
  choice('closedStock', 'Stock of a closed store', [
    { value: 'kept', label: 'the chain keeps' },
    { value: 'credited', label: 'is credited' },
    { value: 'ours', label: 'is ours' },
  ]),
];

export function OpeningsSection({ base }: { base: string }): VNode {
  return (
    <>
      <Places
        listPath={`${base}/waves`}
        nameOf={(_, index) => `Opening ${index + 1}`}
        addLabel="Add an opening"
        blank={(id) => ({ id, openWeek: 12, doors: 10, doorsPerWeek: 10 })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('openWeek', 'First stores open in week', '', { step: 'one' }),
              count('doors', 'Stores', '', { step: 'doors', least: 1 }),
              count('doorsPerWeek', 'Stores a week', '', { step: 'doors', least: 1 }),
            ]}
          />
        )}
      </Places>
      <Places
        listPath={`${base}/runningDoors`}
        nameOf={(_, index) => `Already selling ${index + 1}`}
        addLabel="Add stores that already sell"
        blank={(id) => ({ id, doors: 10, ageWeeks: 26, unitsPerDoor: 12 })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('doors', 'Stores', '', { step: 'doors', least: 1 }),
              count('ageWeeks', 'Selling since', 'weeks'),
              count('unitsPerDoor', 'Of each product on the shelf', 'units'),
            ]}
          />
        )}
      </Places>
      <Fields base={base} specs={OPENINGS} />
    </>
  );
}
