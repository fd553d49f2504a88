// Inputs of one chain: the money put down before anything is sold, and the deal it has to be earned back in.
// Worked example: slotting of 250 a store and 60 stores are 15,000 down.
import type { VNode } from 'preact';
import { getAt } from '../../domain/plan/path.ts';
import { PartFor } from '../shared/field-for.tsx';
import { usePlan } from '../shared/session-context.ts';
import { Fields, Places } from './fields.tsx';
import { choice, count, type FieldSpec, money, PER, share, text } from './specs.ts';

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
  money('feeAmountPerStoreWeek', 'Fee a store a week'),
  count('weeks', 'Stands for', 'weeks'),
  share('liftRate', 'Sells more by', { hint: 'On top of the rate of sale while it stands.' }),
  share('liftEndRate', 'In its last week by', { placeholder: 'as at first' }),
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
            money('amount', 'Slotting, amount', { step: 'sum' }),
            choice('per', 'Slotting is for', PER, { asList: true }),
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
              choice('per', 'It is for', PER, { asList: true }),
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
    liftEndRate: null,
  };
}
