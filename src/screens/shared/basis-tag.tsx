// Where an untouched value comes from: a small tag (practice, published, guess), its source one tap away. A value that
// was typed has none. Worked example: "Paid late" of a quick plan is tagged "guess" and opens to "Paid 10 days late.
// Plausible from 0 to 30."
import type { VNode } from 'preact';
import { useId, useState } from 'preact/hooks';
import { noteAt } from '../../app/commands/field.ts';
import type { BasisNote } from '../../domain/plan/index.ts';
import { OriginTag } from '../../widgets/index.ts';
import { usePlan } from './session-context.ts';
import { type FieldKind, textOf } from './typed-kinds.ts';

export const BASIS_WORDS: Record<BasisNote['kind'], string> = {
  practice: 'practice',
  published: 'published',
  guess: 'guess',
};

/** The note of a default, or null where the value was typed. */
export function useBasis(path: string): BasisNote | null {
  return noteAt(usePlan(), path);
}

/** The tag, and below it the source once it was tapped. */
export function BasisTag({ note, kind }: { note: BasisNote; kind: FieldKind }): VNode {
  const [open, setOpen] = useState(false);
  const { currency } = usePlan();
  const id = useId();
  return (
    <span class="ff-basis" aria-live="polite">
      <OriginTag text={BASIS_WORDS[note.kind]} onPress={() => setOpen(!open)} />
      {open && <span id={id}>{sourceWords(note, kind, currency)}</span>}
    </span>
  );
}

/** The source in a sentence, with a guess's plausible ends. */
export function sourceWords(note: BasisNote, kind: FieldKind, currency: string): string {
  const text = /[.!?]$/.test(note.source) ? note.source : `${note.source}.`;
  if (note.low === null || note.high === null) return text;
  const unit = kind === 'percent' ? ' %' : '';
  const low = textOf({ value: note.low, kind, currency });
  const high = textOf({ value: note.high, kind, currency });
  return `${text} Plausible from ${low} to ${high}${unit}.`;
}
