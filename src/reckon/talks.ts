// What --deal and --ask add to the answer: the deal before and with the asks, counter-offers that keep the target, and what
// the account's terms are worth in each other. Values are decimal texts in the plan's units.
// Worked example: --deal corner --ask margin=0.42 prints counters with { "terms": { "slotting": "97" }, "holds": true }.
import type { Plan, Table } from '../domain/plan/index.ts';
import { shown } from '../domain/plan/shown.ts';
import { fine, type Outcome, sentence } from '../domain/problems.ts';
import {
  blankTable,
  type Counter,
  countersFor,
  figuresFor,
  type Objective,
  standingOf,
  type Targets,
  type Terms,
  targetsOf,
  targetsUnder,
  termsFrom,
  termsOf,
  withTerms,
  worthOf,
} from '../domain/talks/index.ts';
import type { Ask } from './asks.ts';

export interface TalksOptions {
  deal: string;
  asks: readonly Ask[];
  target: Objective | null;
}

export type Talks =
  | { ok: true; value: Record<string, unknown> }
  | { ok: false; sentences: readonly string[] };

/** The keys deal, counters, closest, withoutEffect and worth; or sentences, when the plan can't take what is asked. */
export function talksOf(plan: Plan, options: TalksOptions): Talks {
  const account = plan.accounts.find(({ id }) => id === options.deal);
  if (!account) {
    const ids = plan.accounts.map(({ id }) => id).join(', ');
    const there = ids === '' ? 'the plan has none' : `there are ${ids}`;
    return { ok: false, sentences: [`reckon: ${shown(options.deal)} is no account of the plan; ${there}.`] };
  }
  const found = reckoned(plan, account.table ?? blankTable(), options);
  return found.ok ? found : { ok: false, sentences: [...new Set(found.problems.map(sentence))] };
}

function reckoned(plan: Plan, table: Table, options: TalksOptions): Outcome<Record<string, unknown>> {
  const accountId = options.deal;
  const asked: Terms = Object.fromEntries(options.asks.map(({ term, value }) => [term, value]));
  const targets = targetsFor(plan, table, options);
  if (!targets.ok) return targets;
  const drafted = withTerms(plan, accountId, asked);
  if (!drafted.ok) return drafted;
  const { objective, target } = targets.value;
  const before = standing(plan, options, table, targets.value);
  if (!before.ok) return before;
  const after = standing(drafted.value, options, table, targets.value);
  if (!after.ok) return after;
  const counters = countersFor({
    plan,
    accountId,
    objective,
    target,
    asked,
    limits: termsFrom(table.limits),
    order: table.order,
  });
  if (!counters.ok) return counters;
  const names = termsOf(drafted.value, accountId).map(({ name }) => name);
  const worth = worthOf({ plan: drafted.value, accountId, objective, names });
  if (!worth.ok) return worth;
  const { closest } = counters.value;
  return fine({
    deal: {
      accountId,
      objective,
      target: text(target),
      walkAway: text(targets.value.walkAway),
      before: { terms: presentTerms(plan, accountId), ...before.value },
      asked: { terms: texts(asked), ...after.value },
    },
    counters: counters.value.counters.map(printed),
    closest: closest && printed(closest),
    withoutEffect: counters.value.withoutEffect,
    worth: {
      terms: worth.value.terms,
      steps: texts(worth.value.steps),
      effects: texts(worth.value.effects),
      cells: worth.value.cells.map(({ term, other, amount, holdsFrom, holdsTo }) => ({
        term,
        other,
        amount: text(amount),
        holdsFrom: text(holdsFrom),
        holdsTo: text(holdsTo),
      })),
    },
  });
}

/** As typed on the account's table, unless another target is asked for. */
function targetsFor(plan: Plan, table: Table, { deal, target }: TalksOptions): Outcome<Targets> {
  const isTables = target === null || JSON.stringify(target) === JSON.stringify(table.objective);
  if (isTables) return targetsOf({ plan, accountId: deal });
  return targetsUnder({ plan, accountId: deal, objective: target });
}

function standing(
  plan: Plan,
  { deal }: TalksOptions,
  { reviewWeeks }: Table,
  targets: Targets,
): Outcome<Record<string, unknown>> {
  const { objective } = targets;
  const found = figuresFor({ plan, accountId: deal, objective, reviewWeeks });
  if (!found.ok) return found;
  const figures = found.value;
  const { state, value, gap } = standingOf({ figures, ...targets });
  return fine({
    figures: {
      firstYear: text(figures.firstYear),
      presentValue: text(figures.presentValue),
      paybackWeeks: text(figures.paybackWeeks),
      breakEvenRatio: figures.breakEvenRatio?.toFixed() ?? null,
      breakEvenRate: figures.breakEvenRate?.toFixed() ?? null,
      moneyDownPerDoor: figures.moneyDownPerDoor.toFixed(),
      contributionPerUnit: figures.contributionPerUnit.toFixed(),
      droppedAtReview: text(figures.droppedAtReview),
    },
    standing: { state, value: text(value), gap: text(gap) },
  });
}

function presentTerms(plan: Plan, accountId: string): Record<string, string | null> {
  return texts(Object.fromEntries(termsOf(plan, accountId).map(({ name, value }) => [name, value])));
}

function printed({ kind, terms, target, reached, miss, holds }: Counter): Record<string, unknown> {
  return { kind, terms: texts(terms), target: text(target), reached: text(reached), miss: text(miss), holds };
}

function texts(terms: Terms): Record<string, string | null> {
  return Object.fromEntries(Object.entries(terms).map(([name, value]) => [name, text(value)]));
}

/** At most six decimals, never an exponent. */
function text(value: number | null): string | null {
  if (value === null) return null;
  const fixed = (value + 0).toFixed(6).replace(/\.?0+$/, '');
  return fixed === '-0' ? '0' : fixed;
}
