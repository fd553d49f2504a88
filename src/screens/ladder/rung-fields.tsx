// The fields of the chosen rung, by what kind of rung it is, and the figures it comes to, each with where it comes from.
// Worked example: a hand that buys at 2.89 and sells at 4.99 keeps 2.10: margin 42 %, markup 72.4 %.
import type { VNode } from 'preact';
import type { RungTarget } from '../../domain/ladder/rung-target.ts';
import type { HandResult } from '../../domain/ladder/types.ts';
import type { FigureKey, ListingFigure } from '../../domain/explain/types.ts';
import { Figure, type StepDirection, type StepKind } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { MoveField } from './move-field.tsx';
import type { Moves } from './moves.ts';
import { Figures } from './parts.tsx';
import type { ShownLadder } from './place.ts';

export interface RungFieldsProps {
  shown: ShownLadder;
  rung: string;
  locked: boolean;
  moves: Moves;
}

export function RungFields(props: RungFieldsProps): VNode {
  const { shown, rung } = props;
  if (rung === 'landed') return <LandedFields {...props} />;
  if (rung === 'list') return <ListFields {...props} />;
  if (rung === 'shelf') return <ShelfFields {...props} />;
  const hand = shown.ladder.hands.find(({ id }) => id === rung);
  return hand ? <HandFields {...props} hand={hand} /> : <p>This rung is not in the plan any more.</p>;
}

/** What every kind of rung hands to its field. */
function useRung({ rung, moves }: RungFieldsProps) {
  const say = useSay();
  return {
    say,
    prefix: say.look.money.before.trim() || undefined,
    suffix: say.look.money.after.trim() || undefined,
    move: (to: RungTarget) => moves.moveTo(rung, to),
    onStep: (direction: StepDirection, kind: StepKind) => moves.step(rung, direction, kind),
    onDone: moves.done,
  };
}

function LandedFields(props: RungFieldsProps): VNode {
  const { shown, locked } = props;
  const { say, move, ...field } = useRung(props);
  const { landed } = shown.ladder;
  return (
    <>
      {!locked && (
        <MoveField
          {...field}
          label="Landed cost"
          kind="amount"
          value={landed.unit.toFixed()}
          onMove={(amount) => move({ by: 'price', amount })}
          hint="Moves the goods line; the other cost lines stay."
        />
      )}
      <Figures>
        <ListingFig shown={shown} label="Landed" value={say.priceExact(landed.unit)} figure="landed" />
        <Figure size="row" label="Goods" value={say.priceExact(landed.goods)} />
        <Figure size="row" label="Freight and duty" value={say.priceExact(landed.freightAndDuty)} />
      </Figures>
    </>
  );
}

function ListFields(props: RungFieldsProps): VNode {
  const { shown, locked } = props;
  const { say, move, onStep, ...field } = useRung(props);
  const { ladder, listing } = shown;
  const byMargin = listing.list.by === 'margin';
  const margin = listing.list.by === 'margin' ? listing.list.rate : ladder.ladderMarginRate.toDecimalPlaces(4).toFixed();
  return (
    <>
      {!locked && (
        <>
          <MoveField
            {...field}
            label="List price"
            kind="amount"
            value={ladder.list.toFixed()}
            onStep={byMargin ? undefined : onStep}
            onMove={(amount) => move({ by: 'price', amount })}
          />
          <MoveField
            label="Our margin on it"
            kind="percent"
            value={margin}
            onStep={byMargin ? onStep : undefined}
            onMove={(rate) => move({ by: 'margin', rate })}
            onDone={field.onDone}
            hint="Ladder margin: list price less landed cost, before what we give back."
          />
        </>
      )}
      <Figures>
        <ListingFig shown={shown} label="We keep" value={say.priceExact(ladder.contribution)} figure="contribution" />
        <ListingFig
          shown={shown}
          label="of the net price"
          value={ladder.contributionRate === null ? 'not known' : say.percent(ladder.contributionRate)}
          figure="contributionRate"
        />
        <ListingFig shown={shown} label="Trade rate" value={say.percent(ladder.tradeRate)} figure="tradeRate" />
      </Figures>
    </>
  );
}

function ShelfFields(props: RungFieldsProps): VNode {
  const { shown, locked } = props;
  const { say, move, ...field } = useRung(props);
  const { ladder, listing, account, plan } = shown;
  const value = listing.shelf.by === 'price' ? listing.shelf.amount : ladder.shelf.toFixed();
  const points = account.pricePoints;
  const moved = !ladder.shelf.eq(value);
  const inPrice = plan.shelfTax.shown === 'inPrice';
  return (
    <>
      {!locked && (
        <MoveField
          {...field}
          label="Shelf price"
          kind="amount"
          value={value}
          onMove={(amount) => move({ by: 'price', amount })}
          hint={
            moved
              ? `On the tag: ${say.price(ladder.shelf)}, the chain’s price point.`
              : points === null
                ? undefined
                : 'Steps go from one of the chain’s price points to the next.'
          }
        />
      )}
      <Figures>
        <ListingFig shown={shown} label="On the tag" value={say.priceExact(ladder.shelf)} figure="shelf" />
        <ListingFig
          shown={shown}
          label={inPrice ? 'Before tax' : 'Before tax at the till'}
          value={say.priceExact(ladder.shelfBeforeTax)}
          figure="shelfBeforeTax"
        />
        {inPrice && <ListingFig shown={shown} label="Tax in it" value={say.priceExact(ladder.tax)} figure="tax" />}
      </Figures>
    </>
  );
}

function HandFields(props: RungFieldsProps & { hand: HandResult }): VNode {
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

interface ListingFigProps {
  shown: ShownLadder;
  label: string;
  value: string;
  figure: ListingFigure;
}

/** A figure of this listing, at row size. */
function ListingFig({ shown, label, value, figure }: ListingFigProps): VNode {
  const why = useWhy();
  const key: FigureKey = { of: 'listing', accountId: shown.account.id, itemId: shown.item.id, figure };
  return <Figure size="row" label={label} value={value} whereFrom={why(key)} older={shown.older} />;
}
