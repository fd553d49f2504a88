// Inputs of one chain: what a delivery costs beside its freight, what a short one is charged, and what is deducted that
// isn't owed. Worked example: below 95 % of a week's orders, 3 % of the value that was short, claimed four weeks later.
import type { VNode } from 'preact';
import { Fields, type Guess, Part } from './fields.tsx';
import { count, type FieldSpec, money, share } from './specs.ts';

const DELIVERY: readonly FieldSpec[] = [
  money('amountPerDrop', 'For each drop', {
    step: 'sum',
    hint: 'A door that gets anything in a week, or the depot.',
  }),
  money('amountPerPallet', 'For each pallet begun', { step: 'sum' }),
];

const SERVICE: readonly FieldSpec[] = [
  share('leastFillRate', 'Delivered in a week, at least', {
    step: 'slowShare',
    hint: 'Of what was ordered.',
  }),
  share('chargeRate', 'Charged below that', { step: 'slowShare', hint: 'Of the value that was short.' }),
  count('lagWeeks', 'Claimed after', 'weeks', { step: 'one' }),
];

const SERVICE_GUESSES: readonly Guess[] = [
  {
    field: 'leastFillRate',
    source: 'Stands in the chain’s own rules for suppliers',
    low: '0.85',
    high: '0.985',
  },
  { field: 'chargeRate', source: 'Stands in the chain’s own rules for suppliers', low: '0.01', high: '0.1' },
];

const DISPUTED: readonly FieldSpec[] = [
  share('wrongRate', 'Deducted and not owed', { step: 'slowShare', hint: 'Of every invoice.' }),
  share('recoveredShare', 'Of that, won back', { step: 'depth' }),
  count('recoveryWeeks', 'Won back after', 'weeks', { step: 'one' }),
];

const DISPUTED_GUESSES: readonly Guess[] = [
  {
    field: 'wrongRate',
    source: 'No remittance of this chain was looked through yet',
    low: '0',
    high: '0.03',
  },
  { field: 'recoveredShare', source: 'No dispute with this chain was closed yet', low: '0.2', high: '0.9' },
];

export function DeductionsSection({ base }: { base: string }): VNode {
  return (
    <>
      <Part
        path={`${base}/delivery`}
        label="a cost of each delivery"
        hint="Beside freight for each unit; nothing where the buyer fetches the goods."
        blank={() => ({ amountPerDrop: '0', amountPerPallet: '0' })}
      >
        <Fields base={`${base}/delivery`} specs={DELIVERY} />
      </Part>
      <Part
        path={`${base}/service`}
        label="a charge for short deliveries"
        blank={() => ({ leastFillRate: '0.95', chargeRate: '0.03', lagWeeks: 4 })}
        guesses={SERVICE_GUESSES}
      >
        <Fields base={`${base}/service`} specs={SERVICE} />
      </Part>
      <Part
        path={`${base}/disputed`}
        label="deductions that aren’t owed"
        blank={() => ({ wrongRate: '0.01', recoveredShare: '0.5', recoveryWeeks: 13 })}
        guesses={DISPUTED_GUESSES}
      >
        <Fields base={`${base}/disputed`} specs={DISPUTED} />
      </Part>
    </>
  );
}
