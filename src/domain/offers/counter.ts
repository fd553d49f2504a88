// A counter to an offer: the value of one of its terms at which it comes out equal to another offer for the founder, leaves the
// founder a wanted part, or costs no more than a limit. The figure moves one way with a term, so it is bracketed on a grid and
// bisected; the answer stands on the term's own grid, on the side that is ours, and how far it misses there is said.
// Worked figure: "at 17.4 % of equity this equals the royalty".
import type { Plan } from '../plan/index.ts';
import type { RivalOffer } from '../plan/offer-terms.ts';
import type { Basis } from './basis.ts';
import type { Movable } from './contract.ts';
import { offerKindOf } from './list.ts';
import { exitPrice, founderAt, paidIn, runOffer } from './run.ts';
import { between, crossings } from './search.ts';
import type { Counter, CounterGoal } from './types.ts';

export interface CounterArgs {
  plan: Plan;
  basis: Basis;
  offer: RivalOffer;
  partId: string;
  /** One of the kind's `movable`; the first when not said. */
  key?: string | undefined;
  goal: CounterGoal;
}

const PLACES = 49;

/** Searches from nothing to the most a term may be; the value nearest to what it is now wins where there are several. */
export function counterFor(args: CounterArgs): Counter {
  const { plan, basis, offer, partId, goal } = args;
  const part = offer.parts.find(({ id }) => id === partId);
  const movable = part && offerKindOf(part).movable;
  const term = movable?.find(({ key }) => key === (args.key ?? movable[0]?.key));
  if (!part || !term) return { found: false, partId, key: args.key ?? '', why: 'noPart' };
  const from = (part as unknown as Record<string, string | null>)[term.key] ?? null;
  const figure = (value: number): number => {
    const run = runOffer(basis, withTerm(offer, partId, term, value), plan.ownership);
    if (goal.by === 'founderRate') {
      const { owners } = run.company;
      return (owners[0]?.shares ?? 0) / owners.reduce((sum, { shares }) => sum + shares, 0);
    }
    return goal.by === 'equals' ? founderAt(run, exitPrice(plan.ownership, basis)) : paidIn(run);
  };
  const wanted = wantedOf(args);
  const missed = { found: false, partId, key: term.key, why: 'notReached' } as const;
  if (wanted === null) return { ...missed, reach: null };
  const off = (value: number) => figure(value) - wanted;
  const places = placesOf(term, from === null ? null : Number(from), basis);
  const value = nearest(places, off, from);
  if (value === null) {
    const figures = places.map(figure);
    return { ...missed, reach: { low: Math.min(...figures), high: Math.max(...figures), wanted } };
  }
  const isOurs = (place: number) => (goal.by === 'paidAtMost' ? -1 : 1) * off(place) >= -ALIKE[goal.by];
  const kept = onGrid(value, term, basis, isOurs);
  return { found: true, partId, key: term.key, from, value: shortest(kept, term, basis), miss: off(kept) };
}

/** Less is no difference: half a minor unit, or what sums of doubles miss of a part. */
const ALIKE: Record<CounterGoal['by'], number> = { equals: 0.5, paidAtMost: 0.5, founderRate: 1e-9 };

/** Of the two places of the term's grid beside a value the nearer one that isn't against us; else the nearer. */
function onGrid(value: number, term: Movable, basis: Basis, isOurs: (place: number) => boolean): number {
  const decimals = decimalsOf(term, basis);
  const near = Number(value.toFixed(decimals));
  const far = Number((near + Math.sign(value - near) * 10 ** -decimals).toFixed(decimals));
  const inside = far >= term.least && far <= term.most;
  return isOurs(near) || !inside || !isOurs(far) ? near : far;
}

function wantedOf({ plan, basis, goal }: CounterArgs): number | null {
  if (goal.by === 'founderRate') return goal.rate;
  if (goal.by === 'paidAtMost') return goal.amount;
  const other = plan.offers.find(({ id }) => id === goal.offerId);
  return other ? founderAt(runOffer(basis, other, plan.ownership), exitPrice(plan.ownership, basis)) : null;
}

/** Close together near what the term is now, and out to its ends. */
function placesOf(term: Movable, now: number | null, basis: Basis): number[] {
  const step = 10 ** -decimalsOf(term, basis);
  const centre = now !== null && now > 0 ? now : null;
  const places = new Set([term.least, term.most]);
  for (let at = 0; at < PLACES; at++) {
    places.add(term.least + ((term.most - term.least) * at) / (PLACES - 1));
    if (centre !== null) places.add(centre * 2 ** ((at - (PLACES - 1) / 2) / 4));
    places.add(step * 10 ** at);
  }
  return [...places].filter((place) => place >= term.least && place <= term.most).sort((a, b) => a - b);
}

function nearest(
  places: readonly number[],
  off: (value: number) => number,
  from: string | null,
): number | null {
  const exact = places.filter((place) => off(place) === 0);
  const crossed = crossings(places, places.map(off)).map((each) => between(each.from, each.to, off));
  const now = from === null ? 0 : Number(from);
  const [best] = [...exact, ...crossed].sort((a, b) => Math.abs(a - now) - Math.abs(b - now));
  return best ?? null;
}

/** Sums stand on the currency's own decimals. */
function decimalsOf(term: Movable, basis: Basis): number {
  return term.unit === 'sum' ? Math.min(term.decimals, basis.minorDigits) : term.decimals;
}

function shortest(value: number, term: Movable, basis: Basis): string {
  const text = value.toFixed(decimalsOf(term, basis));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** The offer with one term of one part at a value, on decimals a plan can keep. */
function withTerm(
  offer: RivalOffer,
  partId: string,
  { key }: Pick<Movable, 'key'>,
  value: number,
): RivalOffer {
  const parts = offer.parts.map((part) =>
    part.id === partId ? { ...part, [key]: value.toFixed(10) } : part,
  );
  return { ...offer, parts: parts as RivalOffer['parts'] };
}
