// The list of terms an account can have, by hand. A new kind is one object in a term-*.ts file and one line here; the
// steps, counter-offers, what it is worth and `reckon --help` follow from the list.
// Worked figure: an account that lists honey alone has "margin", "shelf", "slotting" and so on; with tea, "shelf:honey".
import { nextPoint, type PricePoints } from '../ladder/price-points.ts';
import type { Account, Listing } from '../plan/index.ts';
import { type At, moneyGrid, type TermKind } from './kind.ts';
import { marginOf, shelfOf } from './prices.ts';
import { doors, guarantee } from './term-doors.ts';
import { displayBuild, displayFee, freeFill, slotting } from './term-money.ts';
import { earlyDiscount, paymentDays, spoils } from './term-payment.ts';
import { promoDepth, promoFunded, promoWeeks } from './term-promotion.ts';
import type { Term } from './types.ts';

/** Everything but margin and tags, which prices.ts writes together. The order is that of the terms on a screen. */
export const KINDS: readonly TermKind[] = [
  slotting,
  freeFill,
  displayBuild,
  displayFee,
  promoWeeks,
  promoDepth,
  promoFunded,
  paymentDays,
  earlyDiscount,
  spoils,
  doors,
  guarantee,
];

/** What the kinds of margin and tag say, as far as it does not depend on a listing. */
type Traits = Pick<
  TermKind,
  | 'label'
  | 'unit'
  | 'meaning'
  | 'step'
  | 'worthStep'
  | 'better'
  | 'bothWays'
  | 'least'
  | 'farthest'
  | 'mostBecause'
>;

const PRICE_MOST = 1_000_000;

export const MARGIN: Traits = {
  label: 'Margin',
  unit: 'share',
  meaning: "margin of the shelf's hand on its selling price; our list price gives way",
  step: 0.005,
  worthStep: 0.01,
  better: 'lower',
  bothWays: false,
  least: 0,
  mostBecause: '',
  farthest: () => 0,
};

export const SHELF: Traits = {
  label: 'Shelf price',
  unit: 'price',
  meaning: 'price on the tag; "shelf:ITEM" where the account lists several',
  step: null,
  worthStep: 0.1,
  better: 'higher',
  bothWays: false,
  least: 0.0001,
  mostBecause: '',
  // a dearer tag than that would not sell as many
  farthest: (value, way) => (way > 0 ? value * 1.25 : value / 2),
};

/** Every kind of term by name, what it counts, and in what: for `reckon --help`. */
export const TERM_NOTES: readonly { name: string; unit: TermKind['unit']; meaning: string }[] = [
  { name: 'margin', unit: MARGIN.unit, meaning: MARGIN.meaning },
  { name: 'shelf', unit: SHELF.unit, meaning: SHELF.meaning },
  ...KINDS.map(({ name, unit, meaning }) => ({ name, unit, meaning })),
];

const byName = new Map(KINDS.map((kind) => [kind.name, kind]));

/** The traits of the kind a name belongs to; null for a name that no account can have. */
export function traitsOf(name: string): Traits | null {
  if (name === 'margin') return MARGIN;
  if (name === 'shelf' || name.startsWith('shelf:')) return SHELF;
  return byName.get(name) ?? null;
}

/** What one term of an account needs to be known, checked, stepped and written. */
export type Found = { by: 'margin' } | { by: 'shelf'; listing: Listing } | { by: 'kind'; kind: TermKind };

/** The term an account has under a name; null when it has none. */
export function findTerm({ account }: At, name: string): Found | null {
  if (name === 'margin') return { by: 'margin' };
  if (name === 'shelf' || name.startsWith('shelf:')) {
    const listing = account.listings.find((each) => shelfName(account, each) === name);
    return listing ? { by: 'shelf', listing } : null;
  }
  const kind = byName.get(name);
  return kind ? { by: 'kind', kind } : null;
}

/** The present value of a term; null where it isn't offered, or no ladder stands to read it from. */
export function valueNow(at: At, found: Found): number | null {
  if (found.by === 'margin') return marginOf(at);
  if (found.by === 'shelf') return shelfOf(at, found.listing);
  return found.kind.isOffered(at) ? found.kind.read(at) : null;
}

/** A tag is named by its item where the account lists several. */
function shelfName({ listings }: Account, { itemId }: Listing): string {
  return listings.length === 1 ? 'shelf' : `shelf:${itemId}`;
}

/** Every name an account's terms go by, in order. */
export function namesOf({ account }: At): string[] {
  const shelves = account.listings.map((listing) => shelfName(account, listing));
  return ['margin', ...shelves, ...KINDS.map(({ name }) => name)];
}

/** The term as it stands; null where the account can't have it. */
export function termAt(at: At, name: string): Term | null {
  const found = findTerm(at, name);
  if (!found) return null;
  const value = valueNow(at, found);
  if (value === null) return null;
  if (found.by === 'margin')
    return { name, ...shown(MARGIN), value, most: Math.max(0.99, value), grid: 0.001, assumed: null };
  if (found.by === 'shelf') {
    const item = at.plan.items.find(({ id }) => id === found.listing.itemId);
    const label = name === 'shelf' ? SHELF.label : `${SHELF.label}, ${item?.name ?? found.listing.itemId}`;
    const grid = moneyGrid(0.01, at);
    const assumed = 'sells as many at any shelf price; guess';
    return { name, ...shown(SHELF), label, value, most: PRICE_MOST, grid, assumed };
  }
  const { kind } = found;
  return {
    name,
    ...shown(kind),
    value,
    // what a plan holds already is never past its end
    most: Math.max(kind.most(at), value),
    grid: kind.grid(at),
    assumed: kind.assumed(at),
  };
}

function shown({ label, unit, least, better }: Traits): Pick<Term, 'label' | 'unit' | 'least' | 'better'> {
  return { label, unit, least, better };
}

/** The next value on a term's grid, or the next price point of a tag; null when there is none that way. */
export function nextOnGrid(
  term: Term,
  value: number,
  way: 1 | -1,
  points: Account['pricePoints'],
): number | null {
  if (points && term.unit === 'price') return nextPriceOf(value, points, way);
  const turns = value / term.grid;
  const near = Math.round(turns);
  const isOn = Math.abs(turns - near) < 1e-6;
  const next = (isOn ? near + way : way > 0 ? Math.ceil(turns) : Math.floor(turns)) * term.grid;
  const kept = Number(next.toFixed(6));
  return kept < term.least || kept > term.most ? null : kept;
}

/** The chain's next price point, in the plan's currency. */
export function nextPriceOf(value: number, points: PricePoints, way: 1 | -1): number | null {
  const point = nextPoint(Math.round(value * 10_000), points, way > 0 ? 'up' : 'down');
  return point === null ? null : point / 10_000;
}
