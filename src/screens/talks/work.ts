// What follows a step from the workers: the cash need of the plan with the draft in, and the counter-offers. Each answer
// stands for the draft it was asked for; one of an older draft is shown as older until the new one is there.
// Worked example: − on slotting: the gap moves at once, the cash need is dotted for some 20 ms.
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { type CashNeed, makeTalksWork, type TalksWork, type Told } from '../../app/talks-work.ts';
import type { Results } from '../../domain/results.ts';
import { termsFrom, within } from '../../domain/talks/index.ts';
import type { Counters } from '../../domain/talks/types.ts';
import { useSession } from '../shared/session-context.ts';
import type { TalksModel } from './model.ts';

export interface Following<T> {
  /** Of the present draft, or while `older` of an earlier one; null where there is none. */
  value: T | null;
  older: boolean;
  trouble: string;
}

export interface Work {
  /** Names plan, account, aims and draft. */
  key: string;
  cash: Following<CashNeed>;
  counters: Following<Counters>;
  computer: TalksWork['computer'];
}

export function useWork(model: TalksModel): Work {
  const work = useMemo(() => makeTalksWork(), []);
  useEffect(() => () => work.stop(), [work]);
  const key = useKey(model);
  useEffect(() => {
    const { plan, account, table, drafted, draft, standing } = model;
    const limits = termsFrom(table.limits);
    const isWanted = standing.state !== 'holds' || isPastLimit(model);
    work.ask({
      key,
      plan: drafted,
      counters: isWanted
        ? {
            plan,
            accountId: account.id,
            objective: table.objective,
            target: standing.target,
            asked: draft,
            limits,
            order: table.order,
          }
        : null,
    });
  }, [key]);
  return {
    key,
    cash: following(key, work.cash.value),
    counters: following(key, work.counters.value),
    computer: work.computer,
  };
}

/** Whether the draft goes farther than we said we would. */
export function isPastLimit({ table, draft, terms }: TalksModel): boolean {
  return table.limits.some(({ term: name, value }) => {
    const term = terms.find((each) => each.name === name);
    const asked = draft[name];
    return term !== undefined && asked !== undefined && within(asked, term, Number(value)) !== asked;
  });
}

function following<T>(key: string, told: Told<T> | null): Following<T> {
  if (told === null) return { value: null, older: true, trouble: '' };
  return { value: told.value, older: told.key !== key, trouble: told.trouble };
}

/** The results stay the same object while nothing but the talks changes; what was said and what is in play ask nothing. */
function useKey({ account, table }: TalksModel): string {
  const results = useSession().results.value?.results ?? null;
  const seen = useRef<{ results: Results | null; count: number }>({ results: null, count: 0 });
  if (seen.current.results !== results) seen.current = { results, count: seen.current.count + 1 };
  const { draft, objective, targetAmount, limits, order, reviewWeeks } = table;
  return JSON.stringify([
    seen.current.count,
    account.id,
    draft,
    objective,
    targetAmount,
    limits,
    order,
    reviewWeeks,
  ]);
}
