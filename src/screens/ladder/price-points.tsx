// The endings a chain's tags may have, or the prices it has at all, and who takes the difference when the shelf price moves
// to one. Worked example: with the endings .49 and .99, 4.74 moves up to 4.99.
import type { VNode } from 'preact';
import { EndingsField } from '../inputs/endings-field.tsx';
import { ChoiceFor, PartFor } from '../shared/field-for.tsx';
import { usePlan } from '../shared/session-context.ts';

const WAYS = [
  { value: 'nearest', label: 'nearest' },
  { value: 'up', label: 'up' },
  { value: 'down', label: 'down' },
];
const ABSORBERS = [
  { value: 'lastHand', label: 'the chain' },
  { value: 'us', label: 'us' },
];

export function PricePoints({ accountId }: { accountId: string }): VNode | null {
  const account = usePlan().accounts.find(({ id }) => id === accountId);
  if (!account) return null;
  const path = `accounts/${accountId}/pricePoints`;
  return (
    <div>
      <PartFor
        path={path}
        label="The chain has price points"
        blank={() => ({
          endings: ['0.99', '0.49'],
          listOfPrices: false,
          move: 'nearest',
          absorbedBy: 'lastHand',
        })}
      />
      {account.pricePoints !== null && (
        <>
          <EndingsField path={path} />
          <ChoiceFor path={`${path}/move`} label="The shelf price moves" choices={WAYS} />
          <ChoiceFor path={`${path}/absorbedBy`} label="The difference is taken by" choices={ABSORBERS} />
        </>
      )}
    </div>
  );
}
