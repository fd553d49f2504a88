// The ladder, drawn and moved: choosing a band opens its strip, the grip drags its rung, arrow keys step it; the table
// below has the same parts to the last decimal. Worked example: dragging the chain's rung up from 4.99 by a cent moves
// its selling price to 5.00, and whatever gives way follows.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import {
  Disclosure,
  LadderPicture,
  OwnerName,
  Table,
  type TableColumn,
  WhereFrom,
} from '../../widgets/index.ts';
import { isText, useKept } from '../shared/kept.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { useMoves } from './moves.ts';
import { givesWayFor, OWNER_NAMES, pictureRungs, rungOfBand, SHELF_ROW } from './picture-rungs.ts';
import type { ShownLadder } from './place.ts';
import { StripBar, StripMore, type StripProps } from './strip.tsx';

export function LadderAndStrip({ shown }: { shown: ShownLadder }): VNode {
  const say = useSay();
  const [kept, setSelected] = useKept('rung', isText);
  const selected = kept ?? SHELF_ROW;
  const [chosen, setChosen] = useState<Readonly<Record<string, string>>>({});
  const givesWayOf = (rung: string): string | null =>
    givesWayFor({ place: shown, ladder: shown.ladder, rung, chosen: chosen[rung] ?? null });
  const moves = useMoves(shown, givesWayOf);
  const band = isThere(shown, selected) ? selected : SHELF_ROW;
  const rung = rungOfBand(band);
  const givesWay = givesWayOf(rung);
  const { ladder } = shown;
  const strip: StripProps = {
    shown,
    rung,
    givesWay,
    moves,
    onGivesWay: (next) => setChosen({ ...chosen, [rung]: next }),
  };
  return (
    <div class="ff-ladder-part">
      <LadderPicture
        label={`Ladder of ${shown.item.name} at ${shown.account.name}: what each hand keeps of ${say.price(ladder.shelf)}`}
        footLabel={say.count(0)}
        topLabel={shown.older ? 'before the last edit' : 'shelf price'}
        topPrice={say.price(ladder.shelf)}
        currency={say.symbol}
        rungs={pictureRungs({ place: shown, ladder, selected: band, givesWay, say })}
        ownerNames={OWNER_NAMES}
        lockedText="locked"
        givesWayText="gives way"
        heightRem={20}
        onSelect={setSelected}
        onStep={(id, direction, kind) => {
          setSelected(id);
          moves.step(rungOfBand(id), direction, kind);
        }}
        onDrag={(id, delta, phase) => moves.drag(rungOfBand(id), delta, phase)}
      />
      <StripBar {...strip} />
      <StripMore {...strip} />
      <Disclosure summary="The ladder as a table">
        <BandTable shown={shown} />
      </Disclosure>
    </div>
  );
}

function isThere({ ladder }: ShownLadder, bandId: string): boolean {
  return bandId === SHELF_ROW || ladder.bands.some(({ id }) => id === bandId);
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'part', label: 'Part', kind: 'text' },
  { key: 'whose', label: 'Whose', kind: 'text' },
  { key: 'amount', label: 'A unit', kind: 'number' },
  { key: 'share', label: 'Of the shelf price', kind: 'number' },
];

/** Parts from the tag down; they add up to the shelf price. */
function BandTable({ shown }: { shown: ShownLadder }): VNode {
  const say = useSay();
  const why = useWhy();
  const { ladder, account, item } = shown;
  const ids = { accountId: account.id, itemId: item.id };
  const figures: Record<string, 'landed' | 'contribution' | 'givenBack' | 'sellingCosts' | 'tax'> = {
    landed: 'landed',
    ours: 'contribution',
    givenBack: 'givenBack',
    sellingCosts: 'sellingCosts',
    tax: 'tax',
  };
  const rows = [...ladder.bands].reverse().map((band) => {
    const figure = figures[band.id];
    const key = figure
      ? ({ of: 'listing', ...ids, figure } as const)
      : ({ of: 'hand', ...ids, handId: band.id } as const);
    return {
      id: band.id,
      cells: [
        band.label,
        <OwnerName key="whose" owner={band.owner} name={OWNER_NAMES[band.owner]} />,
        <WhereFrom
          key="amount"
          open={why(key)}
          label={`${band.label}: ${say.priceExact(band.amount)}. Where from?`}
        >
          {say.priceExact(band.amount)}
        </WhereFrom>,
        say.percent(band.shareOfShelf),
      ],
    };
  });
  const footer = { id: 'shelf', cells: ['Shelf price', '', say.priceExact(ladder.shelf), say.percent(1)] };
  return (
    <Table
      caption={`What each hand keeps of ${item.name} at ${account.name}`}
      columns={COLUMNS}
      rows={rows}
      footer={footer}
    />
  );
}
