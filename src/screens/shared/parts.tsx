// Pieces that most screens are put together from: a titled part, a grid of figures, a row
// that opens its fields, and the line that offers to undo a removal.
// Worked example: <Fold label="Slotting" value="180 a door"> shows one 44 px row; its fields are drawn once it was opened.
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { TERMS, type TermId } from '../../domain/explain/meanings.ts';
import { Button, Disclosure, Term } from '../../widgets/index.ts';
import { useSession } from './session-context.ts';
import './parts.css';

/** All of a screen under its head. While something typed is not accepted, it says so, and every number is marked. */
export function Whole({ older, children }: { older: boolean; children: ComponentChildren }): VNode {
  return (
    <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
      {older && (
        <p class="ff-least">Something typed was not accepted: figures are those of the plan before it.</p>
      )}
      {children}
    </div>
  );
}

/** A section with its heading. */
export function Part({ title, children }: { title: string; children: ComponentChildren }): VNode {
  return (
    <section class="ff-part">
      <h2 class="ff-part-title">{title}</h2>
      {children}
    </section>
  );
}

/** Figures beside each other, as many as fit. */
export function Figures({ children }: { children: ComponentChildren }): VNode {
  return <div class="ff-figures">{children}</div>;
}

export interface FoldProps {
  label: ComponentChildren;
  /** What the closed row says of what is inside. */
  value?: string | undefined;
  open?: boolean | undefined;
  children: ComponentChildren;
}

/** A row that opens; what is in it is drawn from the first opening on. */
export function Fold({ label, value, open = false, children }: FoldProps): VNode {
  const [seen, setSeen] = useState(open);
  useEffect(() => {
    if (open) setSeen(true);
  }, [open]);
  return (
    <Disclosure
      open={open}
      onToggle={(isOpen) => {
        if (isOpen) setSeen(true);
      }}
      summary={
        <span class="ff-fold">
          <span class="ff-fold-label">{label}</span>
          {value !== undefined && <span class="ff-fold-value ff-number">{value}</span>}
        </span>
      }
    >
      {seen && children}
    </Disclosure>
  );
}

export interface Removal {
  /** Runs a removal; what was removed can be brought back until the next edit. */
  remove: (what: string, run: () => boolean) => void;
  /** The line that says so; null before and after. */
  note: VNode | null;
}

/** Removing with an undo in place, beside the one of the header. */
export function useRemoval(): Removal {
  const session = useSession();
  const [removed, setRemoved] = useState<{ what: string; revision: number } | null>(null);
  const remove = (what: string, run: () => boolean): void => {
    session.endStep();
    if (run()) setRemoved({ what, revision: session.revision.value });
    session.endStep();
  };
  const stands = removed !== null && removed.revision === session.revision.value;
  const note = stands ? (
    <div class="ff-removed">
      <span>{removed.what} is taken out.</span>
      <Button kind="quiet" onPress={() => session.undo()}>
        Undo
      </Button>
    </div>
  ) : null;
  return { remove, note: <div role="status">{note}</div> };
}

/** A list's own key row: what can be added, or done to one of its places. */
export function Keys({ children }: { children: ComponentChildren }): VNode {
  return <div class="ff-button-row ff-keys">{children}</div>;
}

/** A trade word that explains itself where it stands. */
export function Word({ id, children }: { id: TermId; children?: ComponentChildren }): VNode {
  const { word, meaning, formula } = TERMS[id];
  return (
    <Term meaning={formula === null ? meaning : `${meaning} It is ${formula}.`}>
      {children ?? `${word.charAt(0).toUpperCase()}${word.slice(1)}`}
    </Term>
  );
}
