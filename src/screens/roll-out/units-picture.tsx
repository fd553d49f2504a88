// Units over the weeks, in pictures: what shoppers want and find, where the stock stands, what lands under the lid of
// capacity, and the hours of lines. Where wanted and sold part, shelves are empty.
// Worked figure: a lid of 6,000 a week cuts an order of 9,000 in two.
import type { VNode } from 'preact';
import type { Compiled } from '../../domain/rollout/compiled.ts';
import type { PassResult, UnitName } from '../../domain/rollout/types.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { lidOf } from './axis-products.ts';
import type { LineHours } from './line-hours.ts';
import { sumOf, UNIT_WORDS, unitSeries } from './unit-words.ts';
import { WeekPicture, type WeekSeries } from './week-picture.tsx';

interface Looked {
  week: number;
  heightRem: number;
}

export interface SoldPictureProps extends Looked {
  name: string;
  sold: Float64Array;
  lost: Float64Array;
}

/** What shoppers want, what they find, and what is missing. */
export function SoldPicture({ name, sold, lost, week, heightRem }: SoldPictureProps): VNode {
  const say = useSay();
  const wanted = sold.map((count, index) => count + (lost[index] ?? 0));
  const series: WeekSeries[] = [
    { ...named('Lost', 'lost'), values: lost, style: 'bar', colour: 'atRisk' },
    { ...named('Wanted by shoppers', 'demand'), values: wanted, style: 'dashed', colour: 'ink2' },
    { ...named('Sold', 'sold'), values: sold, style: 'line', colour: 'ours' },
  ];
  return (
    <WeekPicture
      title={`${name}: units wanted and sold, by week`}
      alt={`${name}, units by week: ${say.count(sumOf(wanted))} wanted, ${say.count(sumOf(sold))} sold, ${say.count(sumOf(lost))} lost.`}
      series={series}
      week={week}
      heightRem={heightRem}
      tableLabel="Units as a table"
      scrubber={undefined}
    />
  );
}

export interface ItemPictureProps extends Looked {
  name: string;
  pass: PassResult;
  /** Its place in the plan; null for all products together. */
  item: number | null;
}

/** Where units can stand, from us to the shelf, each with its line. */
const STOCK_NAMES = ['ours', 'inTransit', 'atDepot', 'inStores'] as const satisfies readonly UnitName[];
const STOCK_LOOKS = {
  ours: { style: 'line', colour: 'ours' },
  inTransit: { style: 'dotted', colour: 'ink' },
  atDepot: { style: 'dashed', colour: 'between' },
  inStores: { style: 'dashDot', colour: 'theirs' },
} as const satisfies Record<(typeof STOCK_NAMES)[number], Pick<WeekSeries, 'style' | 'colour'>>;

/** Without depots there is no line for them. */
export function stockNames(pass: PassResult): readonly (typeof STOCK_NAMES)[number][] {
  const hasDepot = pass.units.some(({ atDepot }) => atDepot.some((units) => units !== 0));
  return STOCK_NAMES.filter((unit) => unit !== 'atDepot' || hasDepot);
}

export function StockPicture({ name, pass, item, week, heightRem }: ItemPictureProps): VNode {
  const say = useSay();
  const series = stockNames(pass).map(
    (unit): WeekSeries => ({
      ...named(UNIT_WORDS[unit], unit),
      values: unitSeries(pass, item, unit),
      ...STOCK_LOOKS[unit],
    }),
  );
  const last = series.map(({ label, values }) => `${say.count(values[pass.weeks - 1] ?? 0)} ${lower(label)}`);
  return (
    <WeekPicture
      title={`${name}: stock at each week’s end`}
      alt={`${name}, stock by week, in units. At the end ${last.join(', ')}.`}
      series={series}
      week={week}
      heightRem={heightRem}
      tableLabel="Stock as a table"
      scrubber={undefined}
    />
  );
}

/** What lands from the maker, and the most that can. */
export function CapacityPicture(props: ItemPictureProps & { compiled: Compiled }): VNode {
  const { name, pass, item, compiled, week, heightRem } = props;
  const say = useSay();
  const made = unitSeries(pass, item, 'made');
  const lid = lidOfAll(compiled, item);
  const series: WeekSeries[] = [
    { ...named('Landed from the maker', 'made'), values: made, style: 'bar', colour: 'atRisk' },
  ];
  if (lid !== null)
    series.push({
      id: 'lid',
      label: 'Capacity a week',
      column: 'Capacity',
      values: lid,
      style: 'step',
      colour: 'ink',
    });
  return (
    <WeekPicture
      title={`${name}: units landed, by week`}
      alt={`${name}, units landed by week: ${say.count(sumOf(made))} in all${lidWords(lid, item === null && sharesLine(compiled), say)}.`}
      series={series}
      week={week}
      heightRem={heightRem}
      tableLabel="Capacity as a table"
      scrubber={undefined}
    />
  );
}

/** Hours of a line that products share: those used, under those its shifts have. */
export function LinePicture({ hours, week, heightRem }: Looked & { hours: LineHours }): VNode {
  const say = useSay();
  const { line, used, lid } = hours;
  const series: WeekSeries[] = [
    { id: 'used', label: 'Hours used', column: 'Hours used', values: used, style: 'bar', colour: 'atRisk' },
    { id: 'lid', label: 'Hours of its shifts', column: 'Hours', values: lid, style: 'step', colour: 'ink' },
  ];
  return (
    <WeekPicture
      title={`${line.name}: hours by week`}
      alt={`${line.name}, hours by week: at most ${say.count(Math.round(Math.max(0, ...used)))} used of ${say.count(Math.max(0, ...lid))}.`}
      series={series}
      week={week}
      heightRem={heightRem}
      tableLabel={`Hours of ${line.name} as a table`}
      scrubber={undefined}
    />
  );
}

function named(label: string, unit: UnitName): Pick<WeekSeries, 'id' | 'label' | 'column'> {
  return { id: unit, label, column: UNIT_WORDS[unit] };
}

function lidWords(lid: readonly number[] | null, shared: boolean, say: ScreenSay): string {
  if (shared) return ', by products that share the hours of a line';
  return lid === null ? ', no lid on capacity' : `, capacity at most ${say.count(Math.max(...lid))} a week`;
}

/** What can land at most in each week; null where a product has no lid, or several share the hours of one line. */
export function lidOfAll(compiled: Compiled, item: number | null): number[] | null {
  if (item === null && sharesLine(compiled)) return null;
  const lids = compiled.items.flatMap((_, index) =>
    item === null || item === index ? [lidOf(compiled, index)] : [],
  );
  if (lids.some((lid) => lid.includes(null))) return null;
  return Array.from({ length: compiled.weeks }, (_, week) =>
    lids.reduce((sum, lid) => sum + (lid[week] ?? 0), 0),
  );
}

/** Whether products share a line: what one of them makes, the others can't. */
export function sharesLine({ items }: Compiled): boolean {
  const lines = items.flatMap(({ buying }) => (buying.line ? [buying.line.hours] : []));
  return new Set(lines).size < lines.length;
}

function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
