// Every default of a plan with its value and its source, guesses first: what the answer rests on besides what was typed.
// Worked example: "Paid late, days: 10. Guess: Paid 10 days late. Plausible from 0 to 30."
import type { VNode } from 'preact';
import type { BasisNote, Plan } from '../../domain/plan/index.ts';
import { getAt } from '../../domain/plan/path.ts';
import { BASIS_WORDS, sourceWords } from './basis-tag.tsx';
import { placeWords } from './path-words.ts';
import { kindAt, valueWords } from './typed-kinds.ts';

const ORDER: readonly BasisNote['kind'][] = ['guess', 'published', 'practice'];

export function DefaultsList({ plan }: { plan: Plan }): VNode {
  const notes = ORDER.flatMap((kind) => plan.basis.filter((note) => note.kind === kind));
  return (
    <dl class="ff-defaults">
      {notes.map((note) => (
        <div key={note.path} class="ff-default">
          <dt class="ff-label">{shortPlace(plan, note.path)}</dt>
          <dd class="ff-default-value ff-number">
            {valueWords({ value: getAt(plan, note.path), path: note.path, currency: plan.currency })}
          </dd>
          <dd class="ff-default-source ff-least ff-quiet">
            <b>{BASIS_WORDS[note.kind]}</b> {sourceWords(note, kindAt(note.path), plan.currency)}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** With one chain and one product their names add nothing. */
function shortPlace(plan: Plan, path: string): string {
  const words = placeWords(plan, path).split(', ');
  const isOnly = plan.accounts.length === 1 && plan.items.length === 1;
  const names = new Set([...plan.accounts, ...plan.items].map(({ name }) => name));
  const kept = isOnly && words.length > 1 ? words.filter((word) => !names.has(word)) : words;
  const text = kept.join(', ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
