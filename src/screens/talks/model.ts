// Everything the meeting view shows that follows from the plan and the draft in closed form, worked out anew at every
// step: the plan with the draft in it, its figures, where they stand to target and walk-away, and what weighs most.
// Worked example: margin 42 % asked of a plan at 40 %: tight, 4,210 a year short, "Margin 42 % costs 6,120 a year".
import { inPlayOf, tableOf } from '../../app/commands/talks.ts';
import type { CautionNote } from '../../domain/cautions.ts';
import { cautionsOf } from '../../domain/cautions.ts';
import type { Account, Plan, Table } from '../../domain/plan/index.ts';
import type { Problem } from '../../domain/problems.ts';
import {
  figuresFor,
  standingOf,
  targetsOf,
  termsFrom,
  termsOf,
  withTerms,
} from '../../domain/talks/index.ts';
import type { DealFigures, Standing, Term, Terms } from '../../domain/talks/types.ts';

export interface TalksModel {
  /** As kept: before any offer. */
  plan: Plan;
  account: Account;
  table: Table;
  /** Every term as the plan has it. */
  terms: readonly Term[];
  /** Those on the screen, with the draft in. */
  inPlay: readonly Term[];
  draft: Terms;
  /** With the draft in. */
  drafted: Plan;
  figures: DealFigures;
  standing: Standing;
  cautions: readonly CautionNote[];
}

export type TalksRead =
  | { ok: true; value: TalksModel }
  | { ok: false; problems: readonly Problem[]; isDraft: boolean };

export function talksOf(plan: Plan, account: Account): TalksRead {
  const accountId = account.id;
  const table = tableOf(account);
  const { objective, reviewWeeks } = table;
  const draft = termsFrom(table.draft);
  const targets = targetsOf({ plan, accountId });
  if (!targets.ok) return { ok: false, problems: targets.problems, isDraft: false };
  const drafted = withTerms(plan, accountId, draft);
  if (!drafted.ok) return { ok: false, problems: drafted.problems, isDraft: true };
  const figures = figuresFor({ plan: drafted.value, accountId, objective, reviewWeeks });
  if (!figures.ok) return { ok: false, problems: figures.problems, isDraft: true };
  const now = new Map(termsOf(drafted.value, accountId).map((term) => [term.name, term]));
  const { target, walkAway } = targets.value;
  return {
    ok: true,
    value: {
      plan,
      account,
      table,
      terms: termsOf(plan, accountId),
      inPlay: inPlayOf(plan, account).flatMap((name) => now.get(name) ?? []),
      draft,
      drafted: drafted.value,
      figures: figures.value,
      standing: standingOf({ figures: figures.value, objective, target, walkAway }),
      cautions: cautionsOf(drafted.value).filter(
        (each) => each.place === 'talks' && each.accountId === accountId,
      ),
    },
  };
}
