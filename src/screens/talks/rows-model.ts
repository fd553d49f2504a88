// What the rows do: step, type, go to the next. A hold is one undo step, a typed word is one; a refused text stays in its
// row, with the value in force beside it. Worked example: + held on slotting at 250 for a second goes to 300; Undo: 250.
import { useEffect, useState } from 'preact/hooks';
import { draftOf, setTerm } from '../../app/commands/talks.ts';
import type { Problem } from '../../domain/problems.ts';
import { stepOf } from '../../domain/talks/index.ts';
import type { Term } from '../../domain/talks/types.ts';
import type { StepKind } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import type { KeptText, MeetingKept } from './kept.ts';
import type { TalksModel } from './model.ts';
import { KIND_OF } from './term-words.ts';
import { type Typing, typedIn } from './use-typed.ts';

export interface Rows {
  /** The row that is typed into. */
  active: string | null;
  typings: Readonly<Record<string, Typing>>;
  activate: (name: string | null) => void;
  type: (term: Term, text: string) => void;
  /** The row is left: an accepted text becomes the plan's own writing, later keystrokes are another undo step. */
  leave: (term: Term) => void;
  step: (term: Term, direction: 1 | -1, kind: StepKind) => void;
}

export function useRows(model: TalksModel, kept: MeetingKept): Rows {
  const session = useSession();
  const [active, setActive] = useState(kept.typed.active);
  const [typings, setTypings] = useState<Readonly<Record<string, Typing>>>({});
  const put = usePut(model);
  const keep = (nextActive: string | null, next: Readonly<Record<string, Typing>>): void => {
    setActive(nextActive);
    setTypings(next);
    kept.keepTyped({ active: nextActive, texts: textsOf(next) });
  };
  const typed = (term: Term, text: string): Typing =>
    typedIn({
      label: term.label,
      kind: KIND_OF[term.unit],
      currency: model.plan.currency,
      read: () => valueNow(session.plan.value, model, term.name),
      put: (value) => (value === null ? [] : put(term, Number(value))),
      mayBeEmpty: false,
      text,
    });
  useEffect(() => {
    const entries = model.inPlay.flatMap((term) => {
      const text = kept.typed.texts[term.name];
      return text?.value === term.value ? [[term.name, typed(term, text.text)] as const] : [];
    });
    setTypings(Object.fromEntries(entries));
  }, []);
  return {
    active: model.inPlay.some(({ name }) => name === active) ? active : null,
    typings: current(typings, model),
    activate: (name) => keep(name, typings),
    type: (term, text) => keep(term.name, { ...typings, [term.name]: typed(term, text) }),
    leave: (term) => {
      session.endStep();
      const { [term.name]: left, ...others } = typings;
      if (left !== undefined && left.problem === '') keep(active, others);
    },
    step: (term, direction, { fine, repeat }) => {
      if (!repeat) session.endStep();
      const { [term.name]: _, ...others } = typings;
      if (typings[term.name] !== undefined) keep(active, others);
      const from = valueNow(session.plan.value, model, term.name);
      put(term, stepOf(term, from, direction, fine ? 'tenth' : 'step', model.account.pricePoints));
    },
  };
}

/** Keeps a value of a term in the draft; gives back what stands against it. */
function usePut({ account }: TalksModel): (term: Term, value: number) => readonly Problem[] {
  const session = useSession();
  return (term, value) => {
    const before = session.plan.value;
    if (before === null) return [];
    const args = { accountId: account.id, term: term.name, value };
    const possible = setTerm(before, args);
    if (!possible.ok) return possible.problems;
    const at = `talks/${account.id}/${term.name}`;
    if (session.run(setTerm, args, at)) return [];
    const problems = session.problems.value.get(at) ?? [];
    session.forget(at);
    return problems;
  };
}

/** The draft's value of a term, else the plan's. */
function valueNow(
  plan: TalksModel['plan'] | null,
  { account, terms, inPlay }: TalksModel,
  name: string,
): number {
  const stands = terms.find((term) => term.name === name) ?? inPlay.find((term) => term.name === name);
  const drafted = plan === null ? undefined : draftOf(plan, account.id)[name];
  return drafted ?? stands?.value ?? 0;
}

/** Texts whose value was moved by something else are out of date. */
function current(typings: Readonly<Record<string, Typing>>, { inPlay }: TalksModel): Record<string, Typing> {
  const entries = Object.entries(typings).filter(([name, { value }]) => {
    const term = inPlay.find((each) => each.name === name);
    return term !== undefined && typeof value === 'number' && Math.abs(term.value - value) < 1e-9;
  });
  return Object.fromEntries(entries);
}

function textsOf(typings: Readonly<Record<string, Typing>>): Record<string, KeptText> {
  return Object.fromEntries(
    Object.entries(typings).flatMap(([name, { text, value }]) =>
      typeof value === 'number' ? [[name, { text, value }]] : [],
    ),
  );
}
