// Commands about scans: a store more, a week more at its end or one less, and what a week was on.
// Worked example: setWeekOn(plan, { scanId: 'hill', week: 5, on: 'both' }) puts week 5 among display and price weeks.
import type { Plan, Scan } from '../../domain/plan/index.ts';
import { fine, type Outcome } from '../../domain/problems.ts';
import type { WeekOn } from '../../domain/promise/scans.ts';
import { append, changed, removePlace } from './field.ts';

export function addScan(plan: Plan, { scan }: { scan: Scan }): Outcome<Plan> {
  return append(plan, 'promise/scans', scan);
}

export function removeScan(plan: Plan, { scanId }: { scanId: string }): Outcome<Plan> {
  return removePlace(plan, { path: `promise/scans/${scanId}` });
}

/** A week not seen yet behind the last one. */
export function addScanWeek(plan: Plan, { scanId }: { scanId: string }): Outcome<Plan> {
  return scanChanged(plan, scanId, (scan) => ({ ...scan, units: [...scan.units, null] }));
}

/** Without its last week, and without what that was on. */
export function dropScanWeek(plan: Plan, { scanId }: { scanId: string }): Outcome<Plan> {
  return scanChanged(plan, scanId, (scan) => {
    const last = scan.units.length - 1;
    const others = (weeks: readonly number[]) => weeks.filter((week) => week !== last);
    return {
      ...scan,
      units: scan.units.slice(0, last),
      displayWeeks: others(scan.displayWeeks),
      priceWeeks: others(scan.priceWeeks),
    };
  });
}

/** `week` is its place in the store's weeks, from 0. */
export function setWeekOn(
  plan: Plan,
  { scanId, week, on }: { scanId: string; week: number; on: WeekOn },
): Outcome<Plan> {
  const put = (weeks: readonly number[], is: boolean): number[] => {
    const others = weeks.filter((each) => each !== week);
    return is ? [...others, week].sort((one, other) => one - other) : others;
  };
  return scanChanged(plan, scanId, (scan) => ({
    ...scan,
    displayWeeks: put(scan.displayWeeks, on === 'display' || on === 'both'),
    priceWeeks: put(scan.priceWeeks, on === 'price' || on === 'both'),
  }));
}

function scanChanged(plan: Plan, scanId: string, change: (scan: Scan) => Scan): Outcome<Plan> {
  const scans = changed(plan.promise.scans, scanId, change);
  return fine({ ...plan, promise: { ...plan.promise, scans } });
}
