// One offer, opened: who makes it, its parts with steppers, what it comes to, and a tap away the cash curve, payments by year,
// who owns what, what the ask implies, a counter, and what was said. Worked example: 250,000 stepped to 260,000 moves every
// figure here in the same frame.
import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { removePlace } from '../../app/commands/field.ts';
import { Button } from '../../widgets/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { Fold, Keys } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { OfferCash } from './cash-curve.tsx';
import { CounterTo } from './counter.tsx';
import { ImpliedWorth, OnLadders } from './implied.tsx';
import type { MoneyModel, ShownOffer } from './model.ts';
import { OfferFigures } from './offer-figures.tsx';
import { ByYear, Dilution, EveryPayment, SaleShares } from './offer-tables.tsx';
import { Parts } from './part-fields.tsx';
import { SaidOf } from './said.tsx';

export interface OfferBodyProps {
  model: MoneyModel;
  at: ShownOffer;
  /** Takes it out, with its undo beside the list. */
  onRemove: (name: string, run: () => boolean) => void;
}

export function OfferBody({ model, at, onRemove }: OfferBodyProps): VNode {
  const session = useSession();
  const say = useSay();
  const { offer, result } = at;
  const path = `offers/${offer.id}`;
  const isFresh = useRef(false);
  return (
    <div
      class="ff-stack ff-money-offer"
      id={bodyId(offer.id)}
      onMouseDownCapture={({ target }) => {
        isFresh.current = target !== document.activeElement;
      }}
      onFocusCapture={({ target }) => isNumber(target) && target.select()}
      onMouseUpCapture={(event) => {
        if (isFresh.current && isNumber(event.target)) event.preventDefault(); // else letting go takes the selection away
      }}
    >
      <Parts offer={offer} />
      <FieldFor path={`${path}/name`} label="Called" kind="text" />
      <FieldFor path={`${path}/from`} label="From" kind="text" placeholder="not said" />
      <OfferFigures at={at} minorDigits={model.money.basis.minorDigits} />
      <div>
        <Fold label="Cash with it">
          <OfferCash model={model} result={result} />
        </Fold>
        <Fold label="A counter">
          <CounterTo model={model} at={at} />
        </Fold>
        <Fold
          label="What was said"
          value={offer.log.length === 0 ? 'nothing kept' : say.count(offer.log.length)}
        >
          <SaidOf offer={offer} />
        </Fold>
        <Fold label="Paid to them by year" value={say.money(result.totalPaid)}>
          <ByYear result={result} />
        </Fold>
        <Fold label="Every payment" value={say.count(result.flows.length)}>
          <EveryPayment result={result} />
        </Fold>
        <Fold label="Who owns what" value={`we ${say.percent(result.founder.rate)}`}>
          <Dilution result={result} />
          <SaleShares model={model} result={result} />
        </Fold>
        <Fold label="What it says we are worth">
          <ImpliedWorth at={at} />
        </Fold>
        <Fold label="On ladders and deals">
          <OnLadders model={model} at={at} />
        </Fold>
      </div>
      <Keys>
        <Button
          label={`Take out this offer: ${offer.name}`}
          onPress={() => onRemove(offer.name, () => session.run(removePlace, { path }, 'offers'))}
        >
          Take out this offer
        </Button>
      </Keys>
    </div>
  );
}

export function bodyId(offerId: string): string {
  return `offer-${offerId}`;
}

/** What is typed takes the place of the number that stands there, or "30" into 36 would read 3036. */
function isNumber(target: EventTarget | null): target is HTMLInputElement {
  return target instanceof HTMLInputElement && /^(decimal|numeric)$/.test(target.inputMode);
}
