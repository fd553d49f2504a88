// The fields of a hand between us and the shelf: margin and markup, each typed and read back as the other, or its fixed
// amount; and what that comes to. Worked example: it buys at 2.89 and sells at 4.99, keeps 2.10: margin 42 %, markup 72.4 %.
import type { VNode } from 'preact';
import type { HandResult } from '../../domain/ladder/types.ts';
import { Figure } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { MoveField } from './move-field.tsx';
import { Figures } from './parts.tsx';
import type { ShownLadder } from './place.ts';
import { type RungFieldsProps, useRung } from './use-rung.ts';

export function HandFields(props: RungFieldsProps & { hand: HandResult }): VNode {
  const { shown, locked, hand, rung } = props;
  const { say, move, onStep, ...field } = useRung(props);
  const rule = shown.account.hands.find(({ id }) => id === rung)?.rule ?? { by: 'solved' as const };
  const margin = rule.by === 'margin' ? rule.rate : hand.marginRate.toDecimalPlaces(4).toFixed();
  const markup = rule.by === 'markup' ? rule.rate : (hand.markupRate?.toDecimalPlaces(4).toFixed() ?? '');
  const stepsBy = rule.by === 'solved' ? 'margin' : rule.by;
  return (
    <>
      {!locked && rule.by === 'fixed' && (
        <MoveField
          {...field}
          label={`Keeps a ${rule.per}`}
          kind="amount"
          value={rule.amount}
          onStep={onStep}
          onMove={(amount) => move({ by: 'fixed', amount, per: rule.per })}
        />
      )}
      {!locked && (
        <>
          <MoveField
            label="Margin"
            kind="percent"
            value={margin}
            onStep={stepsBy === 'margin' ? onStep : undefined}
            onMove={(rate) => move({ by: 'margin', rate })}
            onDone={field.onDone}
            hint={`of the ${say.price(hand.sells)} it sells at`}
          />
          <MoveField
            label="Markup"
            kind="percent"
            value={markup}
            onStep={stepsBy === 'markup' ? onStep : undefined}
            onMove={(rate) => move({ by: 'markup', rate })}
            onDone={field.onDone}
            hint={`on the ${say.price(hand.buys)} it buys at`}
          />
        </>
      )}
      <HandFigures shown={shown} hand={hand} />
    </>
  );
}

function HandFigures({ shown, hand }: { shown: ShownLadder; hand: HandResult }): VNode {
  const say = useSay();
  const why = useWhy();
  const open = why({ of: 'hand', accountId: shown.account.id, itemId: shown.item.id, handId: hand.id });
  const needs = hand.requiredMarginRate;
  const fig = (label: string, value: string) => (
    <Figure size="row" label={label} value={value} whereFrom={open} older={shown.older} />
  );
  const others = shown.account.listings.length - 1;
  return (
    <>
      <Figures>
        {fig('Keeps a unit', say.priceExact(hand.keeps))}
        {fig('Margin', say.percent(hand.marginRate))}
        {fig('Markup', hand.markupRate === null ? 'not known' : say.percent(hand.markupRate))}
      </Figures>
      {needs !== null && (
        <p class={hand.short ? 'ff-strip-short' : 'ff-quiet'}>
          Needs {say.percent(needs)}, gets {say.percent(hand.marginRate)}
          {hand.short ? ': too little.' : '.'}
        </p>
      )}
      {others > 0 && (
        <p class="ff-least ff-quiet">
          Hands are the chain’s: its other {others === 1 ? 'product moves' : 'products move'} too.
        </p>
      )}
    </>
  );
}
