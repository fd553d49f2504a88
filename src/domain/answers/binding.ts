// What limits each week: cash, capacity, stock, doors or demand, one word a week in the order ANSWERS.md gives.
// Worked figure: a lid of 1,000 units a week used up while 400 are unshipped: capacity; the same 400 with half the lid
// used: stock; nothing short, cash at 3,000 under a buffer of 9,000: cash, tight.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { isLidUsed } from './lid.ts';
import { type Binding, LIMITS, type Limit, type LimitStretch, type WeekLimit } from './types.ts';

type Read = Pick<Results, 'pass' | 'reading' | 'compiled'>;

/** What limits every week of the plan, what limits first, and the first week of each word. */
export function bindingOf(plan: Plan, results: Read): Binding {
  const { pass } = results;
  const lastOpening = lastOpeningWeek(results);
  const weeks = Array.from({ length: pass.weeks }, (_, week) =>
    weekLimit({ plan, results, week, lastOpening }),
  );
  const firstOf = (word: Limit) => weeks.find(({ what }) => what === word)?.week ?? null;
  return {
    weeks,
    stretches: stretchesOf(weeks),
    firstWeeks: Object.fromEntries(LIMITS.map((word) => [word, firstOf(word)])) as Record<
      Limit,
      number | null
    >,
    first: weeks.find(({ what }) => what !== 'doors' && what !== 'demand') ?? null,
  };
}

interface WeekArgs {
  plan: Plan;
  results: Read;
  week: number;
  lastOpening: number;
}

function weekLimit({ plan, results, week, lastOpening }: WeekArgs): WeekLimit {
  const { pass, reading } = results;
  const low = pass.low[week] ?? 0;
  const knowsCash = plan.business.openingCashAmount !== null;
  const heldBack = pass.accounts.reduce((sum, account) => sum + (account.heldBack[week] ?? 0), 0);
  const limit = (what: Limit, items: readonly number[] = [], tight = false) => ({
    week,
    what,
    tight,
    items,
    heldBack,
  });
  if (knowsCash && low < 0) return limit('cash');
  const held = itemsWhere(results, (item) => isHeldByLid(results, item, week));
  if (held.length > 0) return limit('capacity', held);
  const short = itemsWhere(results, (item) => isShort(results, item, week));
  if (short.length > 0) return limit('stock', short);
  if (knowsCash && low < reading.bufferAmount) return limit('cash', [], true);
  return limit(week < lastOpening ? 'doors' : 'demand');
}

function itemsWhere({ pass }: Read, holds: (item: number) => boolean): number[] {
  return pass.units.flatMap((_, item) => (holds(item) ? [item] : []));
}

/** The lid is used up, and goods are short now or by the time a delivery of this week would stand on the shelf. */
function isHeldByLid(results: Read, item: number, week: number): boolean {
  if (!isLidUsed(results, item, week)) return false;
  const units = results.pass.units[item];
  if (isShort(results, item, week)) return true;
  for (let w = week + 1; w <= week + 1 + results.compiled.hot.longestTransit; w++) {
    if ((units?.lost[w] ?? 0) > 0) return true;
  }
  return false;
}

/** Demand finds an empty shelf, or orders stand unshipped at the week's end. */
function isShort({ pass }: Read, item: number, week: number): boolean {
  const units = pass.units[item];
  return (units?.lost[week] ?? 0) > 0 || (units?.backlog[week] ?? 0) > 0;
}

/** The last week in which doors open; before it there are doors still to come. */
function lastOpeningWeek({ compiled, pass }: Read): number {
  let last = 0;
  for (const { openWeek, doors } of compiled.cohorts) {
    if (openWeek < pass.weeks && (doors[openWeek] ?? 0) > 0) last = Math.max(last, openWeek);
  }
  return last;
}

/** Weeks in a row that say the same. */
function stretchesOf(weeks: readonly WeekLimit[]): LimitStretch[] {
  const stretches: LimitStretch[] = [];
  for (const { week, what, tight } of weeks) {
    const last = stretches.at(-1);
    if (last && last.what === what && last.tight === tight) last.toWeek = week;
    else stretches.push({ fromWeek: week, toWeek: week, what, tight });
  }
  return stretches;
}
