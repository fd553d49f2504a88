// From typed text to an edit: the text is read as its kind ("3,40" as an amount), put into its field and committed. What
// can't be read, or is refused, stays as it was typed, with the reason beside it.
// Worked example: typeInto 'accounts/corner/terms/paymentDays' with "soon" keeps "soon" in the field and says what was
// expected; the plan keeps its 30.
import { computed, effect, type ReadonlySignal } from '@preact/signals';
import { minorDigitsOf } from '../domain/money/currency.ts';
import { type NumberLook, numberLook } from '../domain/money/look.ts';
import { parseTyped, type Typed } from '../domain/money/parse-typed.ts';
import type { Plan } from '../domain/plan/index.ts';
import { shown } from '../domain/plan/shown.ts';
import { fine, type Outcome, trouble } from '../domain/problems.ts';
import type { Gate } from '../plan-format/index.ts';
import { writeMeta } from '../storage/index.ts';
import { type FieldChange, setField } from './commands/field.ts';
import { attempt, dropPending } from './commit.ts';
import type { Core } from './core.ts';

/** As what a text is read: the kinds of number, or as it stands. */
export const TYPING_KINDS = ['amount', 'percent', 'whole', 'rateOfSale', 'factor', 'text', 'date'] as const;
export type TypingKind = (typeof TYPING_KINDS)[number];

export interface Typing {
  path: string;
  text: string;
  kind: TypingKind;
}

export function isTypingKind(kind: unknown): kind is TypingKind {
  return TYPING_KINDS.some((each) => each === kind);
}

/** True when the text was accepted. An emptied field that may be unknown becomes unknown (null). */
export function typeInto(core: Core, { path, text, kind }: Typing): boolean {
  const apply = (plan: Plan, { accepts }: Gate): Outcome<Plan> => {
    const takesNothing = text.trim() === '' && accepts(plan, path, null);
    const value = takesNothing ? fine(null) : fieldValue(core, plan, { path, text, kind });
    return value.ok ? setField(plan, { path, value: value.value }) : value;
  };
  return attempt(core, { at: path, text, kind, apply });
}

/** How a number typed in the open plan is read, and the other number it could mean; null for kinds that are no number. */
export function readTyped(core: Core, text: string, kind: TypingKind): Typed | null {
  const plan = core.state.plan.value;
  return kind === 'text' || kind === 'date' || plan === null
    ? null
    : parseTyped(lookFor(core, plan.currency), kind, text);
}

/** How numbers look here, in the open plan's currency; null while none is open. */
export function lookOf(core: Core): ReadonlySignal<NumberLook | null> {
  return computed(() => {
    const currency = core.state.plan.value?.currency;
    return currency === undefined ? null : lookFor(core, currency);
  });
}

/** How numbers look here, in a currency of ISO 4217. Asking the platform takes longer than a keystroke should. */
export function lookFor(core: Core, currency: string): NumberLook {
  const known = core.looks.get(currency);
  if (known) return known;
  const minorDigits = minorDigitsOf(currency);
  if (minorDigits === null) throw new Error(`"${currency}" is no currency`);
  const look = numberLook({ partsOf: core.deps.partsOf, currency, minorDigits });
  core.looks.set(currency, look);
  return look;
}

function fieldValue(core: Core, plan: Plan, { path, text, kind }: Typing): Outcome<unknown> {
  if (kind === 'text' || kind === 'date') return fine(text.trim());
  const typed = parseTyped(lookFor(core, plan.currency), kind, text);
  if (typed.ok) return fine(kind === 'whole' ? Number(typed.text) : typed.text);
  const got = typed.got === 'nothing' ? typed.got : shown(typed.got);
  return trouble({ code: 'field-invalid', path, got, expected: typed.expected });
}

/** For controls that already hold a value: choices, switches, steppers. */
export function putValue(core: Core, { path, value }: FieldChange): boolean {
  return attempt(core, {
    at: path,
    text: null,
    kind: null,
    apply: (plan) => setField(plan, { path, value }),
  });
}

/** Drops a refused text: the field shows the plan's value again. */
export function forget(core: Core, path: string): void {
  dropPending(core, path);
}

/** Keeps refused texts in the store from now on, so that they are there after a reload. Gives back how to stop. */
export function keepTyped(core: Core): () => void {
  const written = new Map<string, string>();
  return effect(() => {
    const { plan, pending } = core.state;
    const id = plan.value?.id;
    const texts = [...pending.value].flatMap(([path, { text, kind }]) =>
      text === null ? [] : [{ path, text, kind }],
    );
    if (id === undefined || core.store === null) return;
    const now = JSON.stringify(texts);
    if ((written.get(id) ?? '[]') === now) return;
    written.set(id, now);
    void writeMeta(core.store, `typed/${id}`, texts.length === 0 ? null : texts);
  });
}
