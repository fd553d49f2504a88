// The ladder as it is drawn: a band for each owner's part of the shelf price, and which of the model's rungs each band is
// moved by. What we keep, give back and pay out stand between landed cost and list price, so all three move the list price.
// Worked figure: landed 1.00, ours 1.42, given back 0.05, broker 0.13: the upper edge of "broker" is the list price 2.60.
import { mayGiveWay, type Place, rungName } from '../../domain/ladder/rungs.ts';
import type { Band, LadderResult } from '../../domain/ladder/types.ts';
import type { LadderRung, Owner } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

/** The row on top that stands for the whole shelf price. */
export const SHELF_ROW = 'shelf';

export const OWNER_NAMES: Readonly<Record<Owner, string>> = {
  ours: 'Ours',
  theirs: 'Theirs',
  between: 'Between',
  atRisk: 'At risk',
  tax: 'Tax',
};

/** The rung that a band is moved by: "landed", "list", "shelf" or a hand's id. */
export function rungOfBand(bandId: string): string {
  if (bandId === 'ours' || bandId === 'givenBack' || bandId === 'sellingCosts') return 'list';
  return bandId === 'tax' ? 'shelf' : bandId;
}

/** The band that shows a rung's state: what gives way with the list price is what we keep. */
export function bandOfRung(rung: string): string {
  return rung === 'list' ? 'ours' : rung;
}

export function rungTitle(place: Pick<Place, 'account'>, rung: string): string {
  const name = rungName(place.account, rung);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
}

/** The rung that takes the difference when another moves: the one last chosen, the one the plan lets loose, or the next. */
export function givesWayFor(args: {
  place: Place;
  ladder: LadderResult;
  rung: string;
  chosen: string | null;
}): string | null {
  const { place, ladder, rung, chosen } = args;
  const free = mayGiveWay(place, rung);
  const hands = place.account.hands.map(({ id }) => id).reverse();
  const wanted = [chosen, ladder.solvedRung, 'list', 'shelf', ...hands, 'landed'];
  return wanted.find((each) => each !== null && free.includes(each)) ?? null;
}

export interface PictureArgs {
  place: Place;
  ladder: LadderResult;
  selected: string;
  givesWay: string | null;
  say: ScreenSay;
}

/** Rows of the picture, foot first. */
export function pictureRungs({ place, ladder, selected, givesWay, say }: PictureArgs): LadderRung[] {
  const { lockedRungs } = place.listing;
  const lockedBands = lockedRungs.map(bandOfRung);
  const loose = givesWay === null ? '' : bandOfRung(givesWay);
  const state = (id: string) => ({
    locked: lockedBands.includes(id),
    givesWay: loose === id,
    selected: selected === id,
  });
  const bands = ladder.bands.map((band) => ({
    id: band.id,
    label: labelOf(band),
    valueText: say.price(band.amount),
    shareText: say.percent(band.shareOfShelf),
    height: band.amount.toNumber(),
    owner: band.owner,
    ...state(band.id),
  }));
  const shelf: LadderRung = {
    id: SHELF_ROW,
    label: 'Shelf price',
    valueText: say.price(ladder.shelf),
    shareText: '',
    height: 0,
    owner: 'theirs',
    ...state(SHELF_ROW),
  };
  return [...bands, shelf];
}

function labelOf({ id, label }: Band): string {
  return id === 'sellingCosts' ? 'Freight, broker' : label;
}
