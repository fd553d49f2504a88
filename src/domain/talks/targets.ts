// What the talks are measured by: the target and the line below which we walk away, and where an offer stands to them.
// Nothing typed: the target is what the plan comes to before anything is asked, and the walk-away is the deal that just
// pays over its term. Worked figure: target 18,000, walk-away 0: an offer at 12,300 is tight, 5,700 a year short.
import { nearest } from '../deals/curve.ts';
import type { DealResult } from '../deals/types.ts';
import { numberOf } from '../money/decimal.ts';
import type { Plan, Table } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { scoreOf, valueIn } from './figures.ts';
import { oneDeal } from './run.ts';
import type { DealFigures, Objective, Standing } from './types.ts';

/** The table before any talks: first-year contribution, nothing typed, the shelf looked at half a year after opening. */
export function blankTable(): Table {
  return {
    objective: { by: 'firstYear' },
    targetAmount: null,
    walkAwayAmount: null,
    limits: [],
    order: [],
    reviewWeeks: 26,
    inPlay: [],
    draft: [],
    log: [],
  };
}

export interface Targets {
  objective: Objective;
  target: number;
  walkAway: number;
}

/** From the account's table and the plan before anything is asked. Problems as for its ladders. */
export function targetsOf(args: { plan: Plan; accountId: string }): Outcome<Targets> {
  const found = oneDeal(args.plan, args.accountId);
  if (!found.ok) return found;
  const { deal, account } = found.value;
  const table = account.table ?? blankTable();
  return targetsFor({ ...args, objective: table.objective, table, deal });
}

/** The same under an objective that isn't the table's: then nothing is typed for it. */
export function targetsUnder(args: {
  plan: Plan;
  accountId: string;
  objective: Objective;
}): Outcome<Targets> {
  const found = oneDeal(args.plan, args.accountId);
  if (!found.ok) return found;
  return targetsFor({ ...args, table: blankTable(), deal: found.value.deal });
}

function targetsFor(args: {
  plan: Plan;
  accountId: string;
  objective: Objective;
  table: Table;
  deal: DealResult;
}): Outcome<Targets> {
  const { objective, table, deal } = args;
  const isWeeks = objective.by === 'payback';
  let target = table.targetAmount === null ? null : Number(table.targetAmount);
  if (target === null) {
    const score = scoreOf(args.plan, args.accountId, objective);
    if (!score.ok) return score;
    target = score.value.value ?? deal.termWeeks;
  }
  if (table.walkAwayAmount !== null)
    return fine({ objective, target, walkAway: Number(table.walkAwayAmount) });
  const justPays = whereItJustPays(deal, objective);
  const walkAway = isWeeks ? Math.max(justPays, target) : Math.min(justPays, target);
  return fine({ objective, target, walkAway });
}

/** The objective of the same deal selling at its break-even rate; a deal that never breaks even walks at nothing. */
function whereItJustPays(deal: DealResult, objective: Objective): number {
  if (objective.by === 'payback') return deal.termWeeks;
  if (objective.by === 'presentValue' || deal.breakEvenRatio === null) return 0;
  const contribution = numberOf(deal.firstYearContribution);
  const putDown = contribution - numberOf(deal.firstYearAfterFixed);
  return numberOf(nearest(contribution / numberOf(deal.breakEvenRatio) - putDown, 0));
}

/** Where figures stand to a target and a walk-away line. */
export function standingOf(args: {
  figures: DealFigures;
  objective: Objective;
  target: number;
  walkAway: number;
}): Standing {
  const { figures, objective, target, walkAway } = args;
  const value = valueIn(figures, objective);
  const way = objective.by === 'payback' ? -1 : 1;
  if (value === null) return { value, target, walkAway, state: 'fails', gap: Math.min(0, target - walkAway) };
  const gap = way * (value - target) + 0;
  const isPastWalkAway = way * (value - walkAway) >= 0;
  return { value, target, walkAway, state: gap >= 0 ? 'holds' : isPastWalkAway ? 'tight' : 'fails', gap };
}
