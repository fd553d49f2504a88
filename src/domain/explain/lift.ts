// Where a lift comes from: of every store that had such weeks what it sold in them, beside its weeks as usual.
// Worked figure: 26 units in 6 weeks on display and 93 in 34 as usual are 4.33 against 2.74 a week; 57 % more store by store.
import { dec } from '../money/decimal.ts';
import { changeWords } from '../promise/change-words.ts';
import { evidenceFor } from '../promise/evidence.ts';
import { storeKey } from '../promise/scans.ts';
import { type LiftPair, liftPairs } from '../promise/within-stores.ts';
import { countLine } from './inputs.ts';
import type { ExplanationLine, LiftKind } from './types.ts';
import { type Draft, exactNumber, line, type Scene, typed } from './write.ts';

const ON: Readonly<Record<LiftKind, string>> = {
  display: 'on display',
  price: 'at a lower price',
  both: 'on display and at a lower price',
};

/** Null where the plan has no such item, or no store with both such weeks and plain ones. */
export function liftFigure(scene: Scene, itemId: string, on: LiftKind): Draft | null {
  const evidence = evidenceFor(scene.plan, itemId);
  const item = scene.plan.items.find(({ id }) => id === itemId);
  const lift = evidence?.lifts.find((each) => each.on === on);
  if (!evidence || item === undefined || lift === undefined) return null;
  const pairs = liftPairs(evidence.counted.seen, on);
  const flagged = totalOf(pairs.flatMap((pair) => pair.flagged));
  const plain = totalOf(pairs.flatMap((pair) => pair.plain));
  const number = (value: number) => exactNumber(scene, dec(value.toFixed(2)));
  const pace = ({ units, weeks }: Total) =>
    `${scene.say.count(units)} ÷ ${number(weeks)} = ${number(units / weeks)}`;
  return {
    title: `What weeks ${ON[on]} added, ${item.name}`,
    value: changeWords(lift.factor, scene.say.percent),
    exact: lift.factor.toFixed(12),
    meaning: `How many times of its usual units a store sells in a week ${ON[on]}: the middle of what is believable.`,
    formula:
      `${ON[on]} ${pace(flagged)} a week, as usual ${pace(plain)} in the same stores; each store beside itself: ` +
      `${number(lift.factor)} times, ${number(lift.low80)} to ${number(lift.high80)} in 8 of 10, ` +
      `${number(lift.low95)} to ${number(lift.high95)} in 19 of 20`,
    lines: [
      ...pairs.map((pair) => pairLine(scene, itemId, on, pair)),
      countLine(scene, 'promise/openingWeeks', 'Opening weeks left out', scene.plan.promise.openingWeeks),
      line({
        label: 'Rate of sale by scans',
        value: exactNumber(scene, dec(evidence.rate.mean.toFixed(1))),
        reason: 'It leaves such weeks out where there are others',
        explains: { of: 'evidence', itemId },
      }),
    ],
    caution: 'Stores chosen for a display, or weeks chosen for a price, may have sold more without it.',
  };
}

interface Total {
  units: number;
  weeks: number;
}

function totalOf(weeks: LiftPair['flagged']): Total {
  return weeks.reduce((sum, { units, weight }) => ({ units: sum.units + units, weeks: sum.weeks + weight }), {
    units: 0,
    weeks: 0,
  });
}

function pairLine(
  scene: Scene,
  itemId: string,
  on: LiftKind,
  { store: { store, accountId }, flagged, plain }: LiftPair,
): ExplanationLine {
  const { say, plan } = scene;
  const scan = plan.promise.scans.find(
    (each) =>
      each.itemId === itemId && each.accountId === accountId && storeKey(each.store) === storeKey(store),
  );
  const [there, usual] = [totalOf(flagged), totalOf(plain)];
  const weeks = (count: number) => `${say.count(count)} ${count === 1 ? 'week' : 'weeks'}`;
  return typed(scene, `promise/scans/${scan?.id ?? ''}/units`, {
    label: store,
    value: say.count(there.units),
    reason: `units in ${weeks(flagged.length)} ${ON[on]}, beside ${say.count(usual.units)} in ${weeks(plain.length)} as usual`,
  });
}
