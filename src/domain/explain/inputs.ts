// What figures of doors and sales rest on, as lines that lead to the fields: doors and when they open, rate of sale and
// its ramp, attrition, season, promotions, displays. Only what plays a part is listed.
// Worked figure: a plan without promotions shows no line for them.
import { dec, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import type { Account } from '../plan/index.ts';
import { shapeOf } from '../season-shapes.ts';
import type { Place } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { exactNumber, exactPercent, exactPrice, type Scene, typed } from './write.ts';

/** A whole number at a path. */
export function countLine(scene: Scene, path: string, label: string, count: number): ExplanationLine {
  return typed(scene, path, { label, value: exactNumber(scene, dec(count)) });
}

export function percentLine(scene: Scene, path: string, label: string, rate: string): ExplanationLine {
  return typed(scene, path, { label, value: exactPercent(scene, kept(rate)) });
}

export function rateOfSaleLine(scene: Scene, { listing, item, path }: Place): ExplanationLine {
  return typed(scene, `${path}/unitsPerStoreWeek`, {
    label: `Rate of sale, ${item.name}`,
    value: exactNumber(scene, kept(listing.unitsPerStoreWeek)),
    reason: 'Units per store per week, once the ramp is over',
  });
}

/** Doors by wave; of an account that opens none, the doors already running. */
export function doorLines(scene: Scene, account: Account): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  if (account.waves.length + account.runningDoors.length === 0) {
    return [typed(scene, `${path}/waves`, { label: 'Doors', value: 'none yet' })];
  }
  if (account.waves.length === 0) {
    return account.runningDoors.map(({ id, doors }) =>
      countLine(scene, `${path}/runningDoors/${id}/doors`, 'Doors already open', doors),
    );
  }
  return account.waves.map((wave) => ({
    ...countLine(scene, `${path}/waves/${wave.id}/doors`, 'Doors', wave.doors),
    reason: `From ${scene.say.week(wave.openWeek)}, ${scene.say.count(wave.doorsPerWeek)} a week`,
  }));
}

/** When and how fast doors open and sell: openings, ramp, attrition, voids, closings, a cut. */
export function paceLines(scene: Scene, account: Account): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const lines = account.waves.flatMap((wave) => [
    countLine(scene, `${path}/waves/${wave.id}/openWeek`, 'First doors open in week', wave.openWeek),
    countLine(scene, `${path}/waves/${wave.id}/doorsPerWeek`, 'Doors opened a week', wave.doorsPerWeek),
  ]);
  if (account.ramp.weeks > 0) {
    lines.push(
      percentLine(scene, `${path}/ramp/startRate`, 'Sells at first, of its rate', account.ramp.startRate),
    );
    lines.push(countLine(scene, `${path}/ramp/weeks`, 'Full rate after, weeks', account.ramp.weeks));
  }
  lines.push(
    percentLine(scene, `${path}/attritionYearlyRate`, 'Doors lost in a year', account.attritionYearlyRate),
  );
  if (kept(account.voidRate).gt(ZERO)) {
    const label = 'Doors without it on the shelf';
    lines.push(percentLine(scene, `${path}/voidRate`, label, account.voidRate));
  }
  for (const { id, week, doors } of account.cuts) {
    const label = `Doors that close in ${scene.say.week(week)}`;
    lines.push(countLine(scene, `${path}/cuts/${id}/doors`, label, doors));
  }
  if (account.cutWeek !== null) {
    lines.push(countLine(scene, `${path}/cutWeek`, 'Off its shelves in week', account.cutWeek));
  }
  return lines;
}

/** What lifts or lowers sales beside the rate: season, promotions, the display. */
export function liftLines(scene: Scene, account: Account, places: readonly Place[]): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const seasons = places
    .filter(({ item }) => item.seasonFactors !== null)
    .map(({ item }) =>
      typed(scene, `items/${item.id}/seasonFactors`, {
        label: `Season, ${item.name}`,
        value: shapeOf(item.seasonFactors ?? [])?.label.toLowerCase() ?? '52 factors',
      }),
    );
  const promotions = account.promotions.flatMap(({ id, label, liftRate, itemIds, sisterShare }) => {
    const at = `${path}/promotions/${id}`;
    const lift = percentLine(scene, `${at}/liftRate`, `Lift, ${label}`, liftRate);
    if (itemIds === null || kept(sisterShare).isZero()) return [lift];
    return [
      lift,
      percentLine(scene, `${at}/sisterShare`, `Taken from ours beside it, ${label}`, sisterShare),
    ];
  });
  const { display } = account;
  const lift = display
    ? [percentLine(scene, `${path}/display/liftRate`, 'Lift of the display', display.liftRate)]
    : [];
  if (display !== null && display.liftEndRate !== null) {
    const label = 'Lift in its last week';
    lift.push(percentLine(scene, `${path}/display/liftEndRate`, label, display.liftEndRate));
  }
  return [...seasons, ...promotions, ...lift];
}

/** What deals take off a unit in some weeks: scan-backs, bill-backs, promotions we pay for. */
export function takeLines(scene: Scene, account: Account): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const claims = account.allowances.flatMap((terms) =>
    'fromWeek' in terms
      ? [
          typed(scene, `${path}/allowances/${terms.id}/amountPerUnit`, {
            label: terms.kind === 'scanBack' ? 'Scan-back' : 'Bill-back',
            value: exactPrice(scene, kept(terms.amountPerUnit)),
            owner: 'theirs',
          }),
        ]
      : [],
  );
  const promotions = account.promotions.flatMap(({ id, label, depthRate, fundedShare }) => [
    percentLine(scene, `${path}/promotions/${id}/depthRate`, `Depth, ${label}`, depthRate),
    percentLine(scene, `${path}/promotions/${id}/fundedShare`, `Our share of it, ${label}`, fundedShare),
  ]);
  return [...claims, ...promotions];
}
