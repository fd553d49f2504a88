// Where the better of two offers changes. On units: the plan's sales times a factor, week by week, and what each funder is paid
// on those units (less is better); what may run on after them isn't counted. On the sale price: the founder's money (more is
// better), this plan's cash and debts as they are. On growth: every rate of sale times a factor, the whole model run again,
// and the founder's money at the plan's own exit.
// Crossings are bracketed on a grid and refined by bisection on the model itself.
// Worked figure: 1.00 a unit for ever against a loan that costs 72,000 in all: 72,000 units.
import type { Plan } from '../plan/index.ts';
import { type Basis, scaledSales, sumOf } from './basis.ts';
import { keptBy } from './kept.ts';
import { datedIn, exitPrice, founderAt, type OfferRun, paymentsOf, runOffer } from './run.ts';
import { between, crossings } from './search.ts';
import type { Axis, AxisSeries, TurningPoint } from './types.ts';

const UNIT_PLACES = 33;
const MOST_UNITS = 4;
const EXIT_PLACES = 65;

/** An axis, and what one offer's line is at a place of it, computed on the model. */
interface Lines {
  on: Axis;
  shows: AxisSeries['shows'];
  here: number;
  places: number[];
  at: (place: number, run: OfferRun) => number;
  /** Units sold in the plan's weeks at a place; null where the axis has nothing to do with them. */
  unitsAt: (place: number) => number | null;
}

export interface Turned {
  series: AxisSeries[];
  points: TurningPoint[];
}

/** Units and sale price: quick. */
export function turningPoints(plan: Plan, runs: readonly OfferRun[]): Turned {
  const [first] = runs;
  if (!first) return { series: [], points: [] };
  return turnedOn([byUnits(plan, runs), byExit(plan, runs, first.basis)], runs);
}

/** Growth: `basisAt` gives the plan's future with every rate of sale times a factor, or null where it can't be computed. */
export function growthPoints(args: {
  plan: Plan;
  runs: readonly OfferRun[];
  basisAt: (factor: number) => Basis | null;
  factors: readonly number[];
}): Turned {
  const { plan, runs, basisAt } = args;
  const basisOf = keptBy(KEPT, basisAt);
  const at = (factor: number, { offer }: OfferRun): number => {
    const basis = basisOf(factor);
    if (basis === null) return Number.NaN;
    return founderAt(runOffer(basis, offer, plan.ownership), exitPrice(plan.ownership, basis));
  };
  const places = args.factors.filter((factor) => basisOf(factor) !== null);
  const unitsAt = (factor: number) => {
    const basis = basisOf(factor);
    return basis && sumOf(basis.unitsSold);
  };
  return turnedOn([{ on: 'growth', shows: 'founder', here: 1, places, at, unitsAt }], runs, GROWTH_TURNS);
}

/** Halvings of a bracket: on growth each runs the whole model. */
const TURNS = 100;
const GROWTH_TURNS = 12;

function byUnits({ ownership }: Plan, runs: readonly OfferRun[]): Lines {
  const planned = sumOf(runs[0]?.basis.unitsSold ?? new Float64Array(0));
  const places = planned === 0 ? [] : grid(0, planned * MOST_UNITS, UNIT_PLACES);
  // Shared by all offers, and by pairs that are looked at on the same grid.
  const basisAt = keptBy(KEPT, (units: number) =>
    runs[0] ? scaledSales(runs[0].basis, units / planned) : null,
  );
  const at = (units: number, { offer }: OfferRun): number => {
    const basis = basisAt(units);
    return basis === null ? 0 : datedIn(paymentsOf(basis, offer, ownership));
  };
  return { on: 'units', shows: 'paid', here: planned, places, at, unitsAt: (units) => units };
}

function byExit({ ownership }: Plan, runs: readonly OfferRun[], basis: Basis): Lines {
  const here = exitPrice(ownership, basis);
  const money = Math.max(0, ...runs.map(({ moneyIn }) => moneyIn));
  const most = Math.max(here * 4, money * 20);
  const at = (price: number, run: OfferRun) => founderAt(run, price);
  const places = most === 0 ? [] : grid(0, most, EXIT_PLACES);
  return { on: 'exit', shows: 'founder', here, places, at, unitsAt: () => null };
}

const KEPT = 64;

function grid(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, at) => from + ((to - from) * at) / (count - 1));
}

function turnedOn(axes: readonly Lines[], runs: readonly OfferRun[], turns = TURNS): Turned {
  const series: AxisSeries[] = [];
  const points: TurningPoint[] = [];
  for (const lines of axes) {
    const values = runs.map((run) => lines.places.map((place) => lines.at(place, run)));
    series.push({
      on: lines.on,
      places: lines.places,
      units: lines.places.map(lines.unitsAt),
      here: lines.here,
      shows: lines.shows,
      lines: runs.map(({ offer }, line) => ({
        offerId: offer.id,
        values: values[line] ?? [],
      })),
    });
    points.push(...pointsOn(lines, values, runs, turns));
  }
  return { series, points };
}

function pointsOn(
  lines: Lines,
  values: number[][],
  runs: readonly OfferRun[],
  turns: number,
): TurningPoint[] {
  const points: TurningPoint[] = [];
  const better = (one: number, other: number) => {
    const ahead = one - other;
    // Less than half a minor unit apart is alike: sums of doubles never agree to the last bit.
    const told = Math.abs(ahead) < 0.5 ? 0 : ahead;
    return lines.shows === 'founder' ? told : -told;
  };
  runs.forEach((first, one) => {
    runs.slice(one + 1).forEach((second, after) => {
      const [ofFirst = [], ofSecond = []] = [values[one], values[one + 1 + after]];
      const ids: [string, string] = [first.offer.id, second.offer.id];
      const gaps = ofFirst.map((value, at) => better(value, ofSecond[at] ?? 0));
      for (const { from, to, below } of crossings(lines.places, gaps)) {
        const gapAt = (place: number) => better(lines.at(place, first), lines.at(place, second));
        const [under, over] = below > 0 ? ids : [ids[1], ids[0]];
        const at = between(from, to, gapAt, turns);
        points.push({ between: ids, on: lines.on, at, units: lines.unitsAt(at), below: under, above: over });
      }
    });
  });
  return points;
}
