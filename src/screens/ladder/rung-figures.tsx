// What the chosen rung comes to, each figure with where it comes from.
// Worked example: a shelf price of 4.99 with 20 % tax in it is 4.1583 before tax.
import type { VNode } from 'preact';
import type { FigureKey, ListingFigure } from '../../domain/explain/types.ts';
import type { HandResult } from '../../domain/ladder/types.ts';
import { Figure } from '../../widgets/index.ts';
import { Figures } from '../shared/parts.tsx';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import type { ShownLadder } from './place.ts';

export function RungFigures({ shown, rung }: { shown: ShownLadder; rung: string }): VNode | null {
  if (rung === 'landed') return <LandedFigures shown={shown} />;
  if (rung === 'list') return <ListFigures shown={shown} />;
  if (rung === 'shelf') return <ShelfFigures shown={shown} />;
  const hand = shown.ladder.hands.find(({ id }) => id === rung);
  return hand ? <HandFigures shown={shown} hand={hand} /> : null;
}

function LandedFigures({ shown }: { shown: ShownLadder }): VNode {
  const say = useSay();
  const { unit, goods, freightAndDuty } = shown.ladder.landed;
  return (
    <Figures>
      <ListingFig shown={shown} label="Landed" value={say.price(unit)} figure="landed" />
      <ListingFig shown={shown} label="Of it, goods" value={say.price(goods)} figure="landed" />
      <ListingFig shown={shown} label="Freight and duty" value={say.price(freightAndDuty)} figure="landed" />
    </Figures>
  );
}

function ListFigures({ shown }: { shown: ShownLadder }): VNode {
  const say = useSay();
  const { contribution, contributionRate, tradeRate } = shown.ladder;
  const rate = contributionRate === null ? 'not known' : say.percent(contributionRate);
  return (
    <Figures>
      <ListingFig shown={shown} label="We keep" value={say.price(contribution)} figure="contribution" />
      <ListingFig shown={shown} label="Of net price" value={rate} figure="contributionRate" />
      <ListingFig shown={shown} label="Trade rate" value={say.percent(tradeRate)} figure="tradeRate" />
    </Figures>
  );
}

function ShelfFigures({ shown }: { shown: ShownLadder }): VNode {
  const say = useSay();
  const { shelf, shelfBeforeTax, tax } = shown.ladder;
  const inPrice = shown.plan.shelfTax.shown === 'inPrice';
  return (
    <Figures>
      <ListingFig shown={shown} label="On the tag" value={say.price(shelf)} figure="shelf" />
      <ListingFig
        shown={shown}
        label={inPrice ? 'Before tax' : 'Before tax at the till'}
        value={say.price(shelfBeforeTax)}
        figure="shelfBeforeTax"
      />
      {inPrice && <ListingFig shown={shown} label="Tax in it" value={say.price(tax)} figure="tax" />}
    </Figures>
  );
}

function HandFigures({ shown, hand }: { shown: ShownLadder; hand: HandResult }): VNode {
  const say = useSay();
  const why = useWhy();
  const open = why({ of: 'hand', accountId: shown.account.id, itemId: shown.item.id, handId: hand.id });
  const fig = (label: string, value: string) => (
    <Figure size="row" label={label} value={value} whereFrom={open} older={shown.older} />
  );
  const needs = hand.requiredMarginRate;
  const others = shown.account.listings.length - 1;
  return (
    <>
      <Figures>
        {fig('Keeps a unit', say.price(hand.keeps))}
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
