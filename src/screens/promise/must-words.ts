// The rows of what would have to be true, in words: what the claim asks for, beside what evidence and plan show of it.
// Worked example: "12.1 new doors a week; expected 6.9 (0 to 12.9 in 8 of 10)".
import type { Plan } from '../../domain/plan/index.ts';
import { evidenceOf } from '../../domain/promise/evidence.ts';
import type { HasToBe, HaveToBe, HavingToBe } from '../../domain/promise/have-to-be-true.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { MustRow } from './must-be-true.tsx';
import { rateText } from './words.ts';

/** Rows that nothing is known of are left out. */
export function mustRows(plan: Plan, { rows, binding }: HavingToBe, say: ScreenSay): MustRow[] {
  return rows
    .filter(({ needed, shown, isEnough }) => needed !== null || shown !== null || !isEnough)
    .map((row) => ({
      id: row.what,
      label: labelOf(row),
      needed: neededOf(row, say),
      seen: seenOf(plan, row, say),
      bindsFirst: row.what === binding,
      state: row.isEnough ? 'enough' : wasTried(row) ? 'not enough' : '',
    }));
}

export function labelOf({ what, because }: HaveToBe): string {
  if (what === 'rateOfSale' && because === 'paysBack') return 'Rate of sale that pays those doors back';
  return LABELS[what];
}

const LABELS: Record<HasToBe, string> = {
  rateOfSale: 'Rate of sale, a store a week',
  doorsAWeek: 'New doors a week',
  capacity: 'Units a week that can be had',
  cash: 'Cash to open with, or to get by then',
};

export function neededOf(row: HaveToBe, say: ScreenSay): string {
  if (row.needed !== null) return figureOf(row.what, row.needed, say);
  if (row.isEnough) return 'no lid';
  return wasTried(row) ? 'nothing tried is enough' : 'not tried';
}

/** What hangs on doors that can't be reached isn't tried. */
function wasTried({ needed, from }: HaveToBe): boolean {
  return needed !== null || from !== null;
}

export function figureOf(what: HasToBe, value: number, say: ScreenSay): string {
  if (what === 'cash') return say.money(Math.round(value));
  if (what === 'capacity') return say.count(Math.ceil(value));
  return rateText(value, say);
}

function seenOf(plan: Plan, { what, shown, low80, high80 }: HaveToBe, say: ScreenSay): string {
  if (shown === null) return NOT_SHOWN[what];
  const value = figureOf(what, shown, say);
  if (low80 === null || high80 === null) {
    const isSeen = what === 'rateOfSale' && plan.promise.spreads.rateOfSaleRate === null;
    if (!isSeen || evidenceOf(plan).length === 0) return `${BARE[what]} ${value}`;
    return `As seen, as planned where nothing was: ${value}`;
  }
  const range = `${figureOf(what, low80, say)} to ${figureOf(what, high80, say)}`;
  return `${RANGED[what]} ${value} (${range} in 8 of 10)`;
}

const BARE: Record<HasToBe, string> = {
  rateOfSale: 'As planned:',
  doorsAWeek: 'Expected:',
  capacity: 'There in that week:',
  cash: 'There by then:',
};

const RANGED: Record<HasToBe, string> = { ...BARE, rateOfSale: 'Seen:' };

const NOT_SHOWN: Record<HasToBe, string> = {
  rateOfSale: 'Nothing was seen of it',
  doorsAWeek: 'Nothing is said of it',
  capacity: 'The plan has no lid',
  cash: 'Cash today is not in the plan',
};
