// One product on the time axis: each purchase order from the week it is placed to the weeks it lands, and what lands
// under the lid of capacity. The first units ordered count as the first landed, also where several suppliers deliver.
// Worked figure: 9,000 ordered in week 2 under a lid of 6,000 land 6,000 in week 8 and 3,000 in week 9.
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import { mostLanding } from '../../domain/rollout/buying.ts';
import type { Compiled } from '../../domain/rollout/compiled.ts';
import type { AxisGroup, AxisLink } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { LineHours } from './line-hours.ts';

export interface Product {
  plan: Plan;
  results: Results;
  /** Its place in the plan. */
  index: number;
  say: ScreenSay;
}

export function productGroup(product: Product): AxisGroup {
  const { plan, results, index, say } = product;
  const { id = '', name = '', supply } = plan.items[index] ?? {};
  const made = results.pass.units[index]?.made ?? new Float64Array(0);
  const links = ordersOf(product);
  const lid = lidOf(results.compiled, index);
  const hasLid = lid.some((each) => each !== null);
  const steps = supply?.capacitySteps ?? [];
  const ordered = links.reduce((sum, { size }) => sum + size, 0);
  const landed = made.reduce((sum, units) => sum + units, 0);
  return {
    id: `product/${id}`,
    name,
    note: lidNote(mostOf(lid), supply?.line != null, say),
    bars: [],
    graphs: [
      {
        id: 'orders',
        label: 'Orders: placed above, landing below',
        alt: `${name}: ${say.count(links.length)} purchase orders, ${say.count(ordered)} units in all.`,
        heightRem: 2.5,
        shapes: [{ by: 'links', links }],
        notes: [],
      },
      {
        id: 'landed',
        label: hasLid ? 'Landed a week, under the lid of capacity' : 'Landed a week',
        alt: `${name}: ${say.count(landed)} units land in these weeks.`,
        heightRem: 3,
        shapes: [
          { by: 'bars', values: made, colour: 'atRisk' },
          { by: 'lid', values: lid },
        ],
        notes: steps.map(({ fromWeek, unitsPerWeek }) => ({
          index: fromWeek,
          text: `${say.count(unitsPerWeek)} a week`,
        })),
      },
    ],
  };
}

/** A line that products share: its hours used, under those of its shifts, and where shifts are added. */
export function lineGroup({ line, used, lid }: LineHours, say: ScreenSay): AxisGroup {
  return {
    id: `line/${line.id}`,
    name: line.name,
    note: `at most ${say.count(Math.max(0, ...lid))} hours a week`,
    bars: [],
    graphs: [
      {
        id: 'hours',
        label: 'Hours used, under those of its shifts',
        alt: `${line.name}: at most ${say.count(Math.round(Math.max(0, ...used)))} hours used in a week.`,
        heightRem: 3,
        shapes: [
          { by: 'bars', values: used, colour: 'atRisk' },
          { by: 'lid', values: lid },
        ],
        notes: line.steps.map(({ fromWeek, shifts }) => ({
          index: fromWeek,
          text: shifts === 1 ? '1 shift' : `${say.count(shifts)} shifts`,
        })),
      },
    ],
  };
}

/** Each purchase order with its first and last landing; what lands after the plan ends points past its last week. */
export function ordersOf({ plan, results, index }: Product): AxisLink[] {
  const units = results.pass.units[index];
  if (!units) return [];
  const own = new Float64Array(units.made);
  for (const { landsWeek, units: count } of plan.items[index]?.opening.onOrder ?? []) {
    own[landsWeek] = Math.max(0, (own[landsWeek] ?? 0) - count);
  }
  const { weeks } = results.pass;
  const links: AxisLink[] = [];
  let week = 0;
  let left = own[0] ?? 0;
  for (let from = 0; from < weeks; from += 1) {
    const size = units.ordered[from] ?? 0;
    if (size === 0) continue;
    let wanted = size;
    let first: number | null = null;
    while (wanted > 0 && week < weeks) {
      if (left === 0) {
        week += 1;
        left = own[week] ?? 0;
        continue;
      }
      first ??= week;
      const taken = Math.min(wanted, left);
      wanted -= taken;
      left -= taken;
    }
    links.push({ from, first: first ?? weeks, last: wanted > 0 ? weeks : week, size });
  }
  return links;
}

/** What can land at most in each week; null where there is no lid. */
export function lidOf(compiled: Compiled, index: number): (number | null)[] {
  const buying = compiled.items[index]?.buying;
  return Array.from({ length: compiled.weeks }, (_, week) => {
    const most = buying ? mostLanding(compiled, buying, week) : Number.POSITIVE_INFINITY;
    return Number.isFinite(most) ? most : null;
  });
}

/** Of a line that others use too, a product can have no more than all its hours. */
function lidNote(most: number, isOnLine: boolean, say: ScreenSay): string {
  if (most === 0) return 'no lid on capacity';
  return `at most ${say.count(most)} a week${isOnLine ? ', the line to itself' : ''}`;
}

function mostOf(lid: readonly (number | null)[]): number {
  return lid.reduce<number>((most, each) => Math.max(most, each ?? 0), 0);
}
