// Inputs of one chain: its promotions.
// Worked example: 20 % off for four weeks, half of it paid by us as scan-back, claimed six weeks later.
import type { VNode } from 'preact';
import { Fields, nameIn, Places } from './fields.tsx';
import { choice, count, type FieldSpec, share, text } from './specs.ts';

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
    itemIds: null,
    sisterShare: '0',
    dipShare: '0',
    dipWeeks: 0,
  };
}
