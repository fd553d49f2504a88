// What speaks for a plan beside scans: how many opening weeks to leave out, what was held before, what was ordered again,
// and what is open and sold today.
// Worked example: 216 units ordered again on 8 Dec 2025 stand as a line of their own; they move no range.
import type { VNode } from 'preact';
import { addPlace, removePlace } from '../../app/commands/field.ts';
import type { Item } from '../../domain/plan/index.ts';
import { Button } from '../../widgets/index.ts';
import { Fields, Part, Places } from '../inputs/fields.tsx';
import { count, type FieldSpec, factor, money, text } from '../inputs/specs.ts';
import { ChoiceFor, FieldFor } from '../shared/field-for.tsx';
import { today } from '../shared/moment.ts';
import { Fold } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

const day = (field: string, label: string): FieldSpec => ({ field, label, kind: 'date' });

export function OtherEvidence(): VNode {
  const { promise, items } = usePlan();
  const say = useSay();
  const { reorders, priors, runRate } = promise;
  return (
    <>
      <FieldFor
        path="promise/openingWeeks"
        label="Opening weeks left out"
        kind="whole"
        unit="weeks"
        step="one"
        hint="Shoppers try what is new. How long that takes is a guess: 4 weeks unless you know better."
      />
      <Fold label="Held before any scan" value={priors.length === 0 ? 'next to nothing' : undefined}>
        {items.map((item) => (
          <PriorOf key={item.id} item={item} />
        ))}
      </Fold>
      <Fold label="Ordered again" value={reorders.length === 0 ? 'nothing yet' : say.count(reorders.length)}>
        <Reorders />
      </Fold>
      <Fold label="Today" value={runRate === null ? 'not said' : say.date(runRate.asOf)}>
        <Part
          path="promise/runRate"
          label="what is open and sold today"
          hint="A claim is set beside it, as so many times today."
          blank={() => ({ asOf: today(), doors: null, unitsPerWeek: null, revenueAmountPerWeek: null })}
        >
          <Fields
            base="promise/runRate"
            specs={[
              day('asOf', 'As of'),
              count('doors', 'Doors open', 'doors', { placeholder: 'not known' }),
              factor('unitsPerWeek', 'Units a week', { placeholder: 'not known' }),
              money('revenueAmountPerWeek', 'Revenue a week', { placeholder: 'not known' }),
            ]}
          />
        </Part>
      </Fold>
    </>
  );
}

/** What stores like these sell of goods like this. */
function PriorOf({ item }: { item: Item }): VNode {
  const session = useSession();
  const { promise } = usePlan();
  const at = promise.priors.findIndex(({ itemId }) => itemId === item.id);
  const listPath = 'promise/priors';
  const path = `${listPath}/${item.id}`;
  if (at < 0) {
    const place = { itemId: item.id, unitsPerStoreWeek: '5', spread: '0.5', source: '' };
    const notes = [
      {
        path: `${path}/unitsPerStoreWeek`,
        kind: 'guess',
        source: 'To be replaced by a figure',
        low: null,
        high: null,
      },
    ] as const;
    return (
      <Button
        onPress={() =>
          session.run(addPlace, { listPath, index: promise.priors.length, place, notes }, listPath)
        }
      >
        Say what is known of goods like {item.name}
      </Button>
    );
  }
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">{item.name}</legend>
      <FieldFor
        path={`${path}/unitsPerStoreWeek`}
        label="Sold of goods like it"
        kind="rateOfSale"
        unit="a store a week"
      />
      <FieldFor
        path={`${path}/spread`}
        label="How sure"
        kind="factor"
        hint="0.5: two thirds of what you would bet lies within 1.65 times of it, either way; less is surer, down to 0.05."
      />
      <Fields base={path} specs={[text('source', 'Where from')]} />
      <Button kind="quiet" onPress={() => session.run(removePlace, { path }, listPath)}>
        Take out
      </Button>
    </fieldset>
  );
}

function Reorders(): VNode {
  const { items } = usePlan();
  return (
    <Places
      listPath="promise/reorders"
      nameOf={(_, index) => `Reorder ${index + 1}`}
      addLabel="Add a reorder"
      blank={(id) => ({ id, itemId: items[0]?.id ?? '', accountId: null, date: today(), units: 1 })}
    >
      {(path) => (
        <>
          {items.length > 1 && (
            <ChoiceFor
              path={`${path}/itemId`}
              label="Product"
              choices={items.map(({ id, name }) => ({ value: id, label: name }))}
              asList
            />
          )}
          <Fields base={path} specs={[day('date', 'Ordered on'), count('units', 'Units', 'units')]} />
        </>
      )}
    </Places>
  );
}
