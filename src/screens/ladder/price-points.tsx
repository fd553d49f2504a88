// The endings a chain's tags may have, or the prices it has at all, and who takes the difference when the shelf price moves
// to one. Worked example: with the endings .49 and .99, 4.74 moves up to 4.99.
import type { VNode } from 'preact';
import { Button } from '../../widgets/index.ts';
import { ChoiceFor, FieldFor, PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { Keys } from './parts.tsx';

const LISTED = [
  { value: 'endings', label: 'Endings' },
  { value: 'prices', label: 'Whole prices' },
];
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
        blank={() => ({ endings: ['0.99'], listOfPrices: false, move: 'nearest', absorbedBy: 'lastHand' })}
      />
      {account.pricePoints !== null && (
        <>
          <PointKind path={path} isList={account.pricePoints.listOfPrices} />
          <Points path={path} endings={account.pricePoints.endings} />
          <ChoiceFor path={`${path}/move`} label="The shelf price moves" choices={WAYS} />
          <ChoiceFor path={`${path}/absorbedBy`} label="The difference is taken by" choices={ABSORBERS} />
        </>
      )}
    </div>
  );
}

function PointKind({ path, isList }: { path: string; isList: boolean }): VNode {
  const session = useSession();
  return (
    <Keys>
      {LISTED.map(({ value, label }) => (
        <Button
          key={value}
          pressed={(value === 'prices') === isList}
          onPress={() => {
            if ((value === 'prices') === isList) return;
            session.setField(`${path}/listOfPrices`, value === 'prices');
            session.endStep();
          }}
        >
          {label}
        </Button>
      ))}
    </Keys>
  );
}

/** Each ending or price; the last one can't be taken away. */
function Points({ path, endings }: { path: string; endings: readonly string[] }): VNode {
  const session = useSession();
  const put = (next: readonly string[]): void => {
    session.setField(`${path}/endings`, next);
    session.endStep();
  };
  return (
    <>
      {endings.map((ending, index) => (
        <div class="ff-with-key" key={`${index} of ${endings.length}`}>
          <FieldFor path={`${path}/endings/${index}`} label={`Point ${index + 1}`} kind="amount" />
          {endings.length > 1 && (
            <Button
              kind="quiet"
              label={`Remove the point ${ending}`}
              onPress={() => put(endings.filter((_, each) => each !== index))}
            >
              Remove
            </Button>
          )}
        </div>
      ))}
      <Keys>
        <Button onPress={() => put([...endings, endings.includes('0.49') ? '0.95' : '0.49'])}>Add a point</Button>
      </Keys>
    </>
  );
}
