// What evidence says, in sentences.
// Worked example: a display's factor of 1.57 is "On display: 57 % more", 17 % more to 107 % more in 8 of 10 (6 weeks of 3 stores).
import type { Item, Plan, Scan } from '../../domain/plan/index.ts';
import { changeWords } from '../../domain/promise/change-words.ts';
import type { ItemEvidence } from '../../domain/promise/evidence.ts';
import type { Halving } from '../../domain/promise/halving.ts';
import { type Effect, type Lift, TREND_WEEKS } from '../../domain/promise/within-stores.ts';
import type { Say as DomainSay } from '../../domain/verdicts/say.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { rateText } from './words.ts';

type Say = DomainSay & Pick<ScreenSay, 'look'>;

/** "8 stores, 97 weeks, 327 units. Left out: 24 opening weeks, 8 on display or at a lower price. 3 weeks were not seen." */
export function basisWords({ counted: seen, rate }: ItemEvidence, say: Say): string {
  const some = (count: number, one: string, more: string) => counted(count, one, more, say);
  const weeks = seen.stores.reduce((sum, store) => sum + store.weeks.length, 0);
  const { openings, deals, gaps } = seen.leftOut;
  const out = [
    ...(openings > 0 ? [some(openings, 'opening week', 'opening weeks')] : []),
    ...(deals > 0 ? [`${say.count(deals)} on display or at a lower price`] : []),
  ];
  return [
    `${some(rate.stores, 'store', 'stores')}, ${some(weeks, 'week', 'weeks')}, ${some(rate.units, 'unit', 'units')}.`,
    ...(out.length > 0 ? [`Left out: ${out.join(', ')}.`] : []),
    ...(gaps > 0 ? [`${some(gaps, 'week was', 'weeks were')} not seen.`] : []),
  ].join(' ');
}

/** "1 store", "2 stores". */
export function counted(count: number, one: string, more: string, say: Pick<Say, 'count'>): string {
  return `${say.count(count)} ${count === 1 ? one : more}`;
}

/** "18 weeks · 52 units", of one store. */
export function scanText({ units }: Pick<Scan, 'units'>, say: Pick<Say, 'count'>): string {
  const sum = units.reduce<number>((all, each) => all + (each ?? 0), 0);
  return `${counted(units.length, 'week', 'weeks', say)} · ${counted(sum, 'unit', 'units', say)}`;
}

/** What accounts of the plan count on beside it, where that is outside the 80 % range: a sentence a side. */
export function plannedWords(plan: Plan, item: Item, { rate }: ItemEvidence, say: Say): string[] {
  const { low80, high80, low95, high95 } = rate.ofMean;
  const beside = new Map<string, { name: string; planned: number }[]>();
  for (const { name, listings } of plan.accounts) {
    const listing = listings.find(({ itemId }) => itemId === item.id);
    const planned = Number(listing?.unitsPerStoreWeek ?? Number.NaN);
    if (!(planned > high80 || planned < low80)) continue;
    const far = planned > high95 || planned < low95 ? 'far ' : '';
    const side = `${far}${planned > high80 ? 'above' : 'below'}`;
    beside.set(side, [...(beside.get(side) ?? []), { name, planned }]);
  }
  const seen = `the ${rateText(low80, say)} to ${rateText(high80, say)} of the stores`;
  return [...beside].map(([side, all]) => {
    const [only] = all;
    if (only && all.length === 1)
      return `${only.name} is planned with ${say.number(only.planned)}, ${side} ${seen}.`;
    const each = all.map(({ name, planned }) => `${name} (${say.number(planned)})`).join(', ');
    return `Planned ${side} ${seen}: ${each}.`;
  });
}

/** What speaks for a plan beside scans: what is open and sold today, what was ordered again, what was held before. */
export function besideWords(
  { promise, items }: Plan,
  say: Pick<ScreenSay, 'date' | 'count' | 'sum' | 'number'>,
): string[] {
  const { runRate, reorders, priors } = promise;
  const nameOf = (itemId: string) => items.find(({ id }) => id === itemId)?.name ?? '';
  const of = (itemId: string) => (items.length > 1 ? ` of ${nameOf(itemId)}` : '');
  const today =
    runRate === null
      ? []
      : [
          ...(runRate.doors === null
            ? []
            : [`${say.count(runRate.doors)} ${runRate.doors === 1 ? 'door' : 'doors'} open`]),
          ...(runRate.unitsPerWeek === null
            ? []
            : [
                `${say.number(Number(runRate.unitsPerWeek))} ${Number(runRate.unitsPerWeek) === 1 ? 'unit' : 'units'} a week`,
              ]),
          ...(runRate.revenueAmountPerWeek === null
            ? []
            : [`revenue of ${say.sum(runRate.revenueAmountPerWeek)} a week`]),
        ];
  const again = reorders.map(
    ({ itemId, units, date }) =>
      `${say.count(units)} ${units === 1 ? 'unit' : 'units'}${of(itemId)} on ${say.date(date)}`,
  );
  return [
    ...(runRate === null || today.length === 0 ? [] : [`On ${say.date(runRate.asOf)}: ${today.join(', ')}.`]),
    ...(again.length === 0 ? [] : [`Ordered again: ${again.join('; ')}.`]),
    ...priors.map(({ itemId, unitsPerStoreWeek, source }) => {
      const from = source === '' ? 'no source given' : source;
      return `Held before any scan of ${nameOf(itemId)}: ${say.number(Number(unitsPerStoreWeek))} a store a week (${from}).`;
    }),
  ];
}

export function halvingWords({ stores, weeks }: Halving, say: Say): string {
  const byStores =
    stores === null
      ? 'Half the range takes more stores than can be counted here'
      : `Half the range takes some ${say.count(stores)} more stores like these`;
  const byWeeks =
    weeks === null
      ? 'more weeks in the same stores can’t do it, since stores differ'
      : `or ${say.count(weeks)} more weeks in each`;
  return `${byStores}; ${byWeeks}.`;
}

const ON_WORDS: Readonly<Record<Lift['on'], string>> = {
  display: 'On display',
  price: 'At a lower price',
  both: 'On display and at a lower price',
};

export interface LiftWords {
  label: string;
  value: string;
  note: string;
}

/** "On display", "57 % more", "17 % more to 107 % more in 8 of 10 (6 weeks of 3 stores)". */
export function liftWords({ on, stores, weeks, factor, low80, high80 }: Lift, say: Say): LiftWords {
  const count = `${say.count(weeks)} ${weeks === 1 ? 'week' : 'weeks'} of ${say.count(stores)} ${stores === 1 ? 'store' : 'stores'}`;
  const change = (of: number) => changeWords(of, say.percent);
  return {
    label: ON_WORDS[on],
    value: change(factor),
    note: `${change(low80)} to ${change(high80)} in 8 of 10 (${count})`,
  };
}

export function trendWords({ factor, low80, high80 }: Effect, say: Say): string {
  const change = (of: number) => changeWords(of, say.percent);
  return `In ${say.count(TREND_WEEKS)} weeks ${change(factor)}, ${change(low80)} to ${change(high80)} in 8 of 10.`;
}
