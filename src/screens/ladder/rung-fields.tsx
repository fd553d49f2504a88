// The fields of the chosen rung, by what kind of rung it is, and the figures it comes to, each with where it comes from.
// Worked example: our margin on a list price of 2.60 over a landed cost of 1.00 is 61.5 %.
import type { VNode } from 'preact';
import type { FigureKey, ListingFigure } from '../../domain/explain/types.ts';
import { Figure } from '../../widgets/index.ts';
import { useWhy } from '../shared/view.tsx';
import { HandFields } from './hand-fields.tsx';
import { MoveField } from './move-field.tsx';
import { Figures } from './parts.tsx';
import type { ShownLadder } from './place.ts';
import { type RungFieldsProps, useRung } from './use-rung.ts';

export function RungFields(props: RungFieldsProps): VNode {
  const { shown, rung } = props;
  if (rung === 'landed') return <LandedFields {...props} />;
  if (rung === 'list') return <ListFields {...props} />;
  if (rung === 'shelf') return <ShelfFields {...props} />;
  const hand = shown.ladder.hands.find(({ id }) => id === rung);
  return hand ? <HandFields {...props} hand={hand} /> : <p>This rung is not in the plan any more.</p>;
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
  const margin =
    listing.list.by === 'margin' ? listing.list.rate : ladder.ladderMarginRate.toDecimalPlaces(4).toFixed();
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
        <ListingFig
          shown={shown}
          label="We keep"
          value={say.priceExact(ladder.contribution)}
          figure="contribution"
        />
        <ListingFig
          shown={shown}
          label="of the net price"
          value={ladder.contributionRate === null ? 'not known' : say.percent(ladder.contributionRate)}
          figure="contributionRate"
        />
        <ListingFig
          shown={shown}
          label="Trade rate"
          value={say.percent(ladder.tradeRate)}
          figure="tradeRate"
        />
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
        {inPrice && (
          <ListingFig shown={shown} label="Tax in it" value={say.priceExact(ladder.tax)} figure="tax" />
        )}
      </Figures>
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
