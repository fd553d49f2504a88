// Inputs of one chain: its promotions.
// Worked example: 20 % off for four weeks, half of it paid by us as scan-back, claimed six weeks later.
import type { VNode } from 'preact';
import type { Account } from '../../domain/plan/index.ts';
import { SwitchField } from '../../widgets/index.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { Fields, nameIn, Places, Trouble } from './fields.tsx';
import { choice, count, type FieldSpec, share, text, week } from './specs.ts';

const PROMOTION: readonly FieldSpec[] = [
  text('label', 'Name'),
  week('fromWeek', 'From'),
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

type Promotion = Account['promotions'][number];

const SISTERS: readonly FieldSpec[] = [
  share('sisterShare', 'Taken from our others beside it', {
    step: 'depth',
    hint: 'Of the extra units, those that shoppers would have bought as another product of ours.',
  }),
];

export function PromotionsSection({ base, account }: { base: string; account: Account }): VNode {
  const { horizonWeeks } = usePlan();
  return (
    <Places
      listPath={`${base}/promotions`}
      nameOf={(place, index) => nameIn(place, 'label') ?? `Promotion ${index + 1}`}
      addLabel="Add a promotion"
      blank={(id) => blankPromotion(id, Math.min(26, horizonWeeks - 1))}
    >
      {(path, place) => (
        <>
          <Fields base={path} specs={PROMOTION} />
          {account.listings.length > 1 && (
            <PromotedItems path={path} account={account} itemIds={(place as Promotion).itemIds} />
          )}
        </>
      )}
    </Places>
  );
}

/** Which products it is for, and what it takes from the others. */
function PromotedItems({
  path,
  account,
  itemIds,
}: {
  path: string;
  account: Account;
  itemIds: Promotion['itemIds'];
}): VNode {
  const session = useSession();
  const { items } = usePlan();
  const listed = account.listings.map(({ itemId }) => itemId);
  const on = itemIds ?? listed;
  const at = `${path}/itemIds`;
  const change = (itemId: string, isOn: boolean): void => {
    const next = listed.filter((each) => (each === itemId ? isOn : on.includes(each)));
    session.endStep();
    session.setField(at, next.length === listed.length ? null : next);
    session.endStep();
  };
  return (
    <>
      {listed.map((itemId) => (
        <SwitchField
          key={itemId}
          label={`For ${items.find(({ id }) => id === itemId)?.name ?? itemId}`}
          on={on.includes(itemId)}
          onChange={(isOn) => change(itemId, isOn)}
        />
      ))}
      <Trouble path={at} />
      {itemIds !== null && <Fields base={path} specs={SISTERS} />}
    </>
  );
}

function blankPromotion(id: string, fromWeek: number) {
  return {
    id,
    label: 'Promotion',
    fromWeek,
    weeks: 4,
    depthRate: '0.2',
    fundedShare: '0.5',
    fundedBy: 'scanBack',
    buyInWeeks: 0,
    lagWeeks: 6,
    liftRate: '0.5',
    itemIds: null,
    sisterShare: '0',
    dipShare: '0',
    dipWeeks: 0,
  };
}
