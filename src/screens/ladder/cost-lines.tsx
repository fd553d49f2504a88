// What one good unit costs at our door, line by line: how each is stated, what it comes to, and the loss on the way.
// Order counts where a line takes a share of earlier ones. Worked example: freight of 1,500 a shipment of 6,000 units is
// 0.25 a unit; stated per case of 6 instead, the line is set to 1.50 so that nothing else moves.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { addCostLine, removeCostLine } from '../../app/commands/items.ts';
import { landedOf } from '../../domain/ladder/landed.ts';
import type { Landed } from '../../domain/ladder/types.ts';
import type { Item } from '../../domain/plan/index.ts';
import { Button, Figure } from '../../widgets/index.ts';
import { ChoiceFor, FieldFor } from '../shared/field-for.tsx';
import { Fold, Keys, useRemoval } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { CostRule } from './cost-rule.tsx';
import { PlaceKeys } from './place-keys.tsx';

export type CostLine = Item['costLines'][number];

const FAMILIES = [
  { value: 'goods', label: 'Goods' },
  { value: 'freight', label: 'Freight' },
  { value: 'duty', label: 'Duty' },
];

export function CostLines({ itemId }: { itemId: string }): VNode | null {
  const session = useSession();
  const item = usePlan().items.find(({ id }) => id === itemId);
  const [added, setAdded] = useState<string | null>(null);
  const removal = useRemoval();
  if (!item) return null;
  const outcome = landedOf(item);
  const landed = outcome.ok ? outcome.value : null;
  const add = (): void => {
    const id = session.newId();
    const costLine: CostLine = {
      id,
      label: 'New cost',
      family: 'freight',
      rule: { by: 'unit', amount: '0' },
    };
    session.endStep();
    session.run(addCostLine, { itemId, costLine }, `items/${itemId}/costLines`);
    session.endStep();
    setAdded(id);
  };
  const remove = (line: CostLine): void =>
    removal.remove(line.label, () =>
      session.run(removeCostLine, { itemId, costLineId: line.id }, `items/${itemId}/costLines`),
    );
  return (
    <div>
      {item.costLines.map((line, index) => (
        <OneLine
          key={line.id}
          item={item}
          line={line}
          index={index}
          landed={landed}
          open={line.id === added}
          onRemove={() => remove(line)}
        />
      ))}
      {removal.note}
      <Keys>
        <Button onPress={add}>Add a cost line</Button>
      </Keys>
      <FieldFor
        path={`items/${itemId}/lossRate`}
        label="Lost on the way"
        kind="percent"
        step="slowShare"
        hint="Counted once, in the price of each good unit."
      />
      <LandedTotal item={item} landed={landed} />
    </div>
  );
}

interface OneLineProps {
  item: Item;
  line: CostLine;
  index: number;
  landed: Landed | null;
  open: boolean;
  onRemove: () => void;
}

function OneLine({ item, line, index, landed, open, onRemove }: OneLineProps): VNode {
  const say = useSay();
  const why = useWhy();
  const path = `items/${item.id}/costLines/${line.id}`;
  const own = landed?.lines.find(({ id }) => id === line.id);
  return (
    <Fold label={line.label} value={own ? say.priceExact(own.amount) : 'not known'} open={open}>
      <FieldFor path={`${path}/label`} label="Called" kind="text" />
      <ChoiceFor path={`${path}/family`} label="It is" choices={FAMILIES} />
      <CostRule item={item} line={line} index={index} perUnit={own?.amount ?? null} />
      {own && (
        <Figure
          size="row"
          label="Comes to, a unit"
          value={say.priceExact(own.amount)}
          note={own.reason}
          whereFrom={why({ of: 'costLine', itemId: item.id, lineId: line.id })}
        />
      )}
      <PlaceKeys
        path={path}
        name={line.label}
        order={{ index, count: item.costLines.length }}
        onRemove={onRemove}
        kept={item.costLines.length === 1 ? 'A product has at least one cost line.' : undefined}
      />
    </Fold>
  );
}

function LandedTotal({ item, landed }: { item: Item; landed: Landed | null }): VNode {
  const say = useSay();
  const why = useWhy();
  const plan = usePlan();
  const account = plan.accounts.find(({ listings }) => listings.some(({ itemId }) => itemId === item.id));
  if (landed === null) return <p>The landed cost can’t be worked out yet: see what is said at the lines.</p>;
  return (
    <Figure
      label="Landed at our door, a unit"
      value={say.price(landed.unit)}
      whereFrom={account && why({ of: 'listing', accountId: account.id, itemId: item.id, figure: 'landed' })}
    />
  );
}
