// Where the rate of sale that scans speak for comes from: what every store sold in the weeks that count, how many opening
// weeks are left out, and what was held before.
// Worked figure: 327 units in 97 store-weeks are 3.37 taken plainly; with stores that differ, 3.5 is in the middle.
import { dec } from '../money/decimal.ts';
import { evidenceFor } from '../promise/evidence.ts';
import { type SeenStore, storeKey } from '../promise/scans.ts';
import { countLine } from './inputs.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactNumber, type Scene, typed } from './write.ts';

/** Null where the plan has no such item, or nothing of it was seen. */
export function evidenceFigure(scene: Scene, itemId: string): Draft | null {
  const evidence = evidenceFor(scene.plan, itemId);
  const item = scene.plan.items.find(({ id }) => id === itemId);
  if (evidence === null || item === undefined) return null;
  const { rate, counted, prior } = evidence;
  const number = (value: number, decimals = 2) => exactNumber(scene, dec(value.toFixed(decimals)));
  const { low80, high80, low95, high95 } = rate.ofMean;
  const plainly = `${scene.say.count(rate.units)} units ÷ ${number(rate.storeWeeks)} store-weeks = ${number(rate.units / rate.storeWeeks)}`;
  const priorIndex = scene.plan.promise.priors.findIndex((each) => each.itemId === itemId);
  const before =
    priorIndex < 0
      ? []
      : [
          typed(scene, `promise/priors/${itemId}/unitsPerStoreWeek`, {
            label: 'Held before any scan',
            value: number(prior.mean ?? 0),
            reason: `${number(prior.spread)} unsure, in its logarithm`,
          }),
        ];
  return {
    title: `Rate of sale by scans, ${item.name}`,
    value: number(rate.mean, 1),
    exact: rate.mean.toFixed(12),
    meaning:
      'Units a store sells in a week, over all stores like those scanned: the middle of what is believable after them.',
    formula:
      `${plainly} taken plainly; stores differ by ${scene.say.percent(Math.round(100 * rate.storesDiffer) / 100)}, ` +
      `weeks scatter ${number(rate.weeksScatter)} times as counts do: ${number(rate.mean)}, ` +
      `${number(low80)} to ${number(high80)} in 8 of 10, ${number(low95)} to ${number(high95)} in 19 of 20`,
    lines: [
      ...counted.stores.map((store) => storeLine(scene, itemId, store)),
      countLine(scene, 'promise/openingWeeks', 'Opening weeks left out', scene.plan.promise.openingWeeks),
      ...before,
    ],
    caution: 'Gamma-Poisson, weighed on a grid; how much stores usually differ is judgement.',
  };
}

function storeLine(scene: Scene, itemId: string, { store, accountId, weeks }: SeenStore): ExplanationLine {
  const scan = scene.plan.promise.scans.find(
    (each) =>
      each.itemId === itemId && each.accountId === accountId && storeKey(each.store) === storeKey(store),
  );
  const units = weeks.reduce((sum, week) => sum + week.units, 0);
  const count = `${scene.say.count(weeks.length)} ${weeks.length === 1 ? 'week' : 'weeks'}`;
  return typed(scene, `promise/scans/${scan?.id ?? ''}/units`, {
    label: store,
    value: scene.say.count(units),
    reason: `units in ${count} that count`,
  });
}
