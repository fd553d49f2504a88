/**
 * Something one tap away: a summary row that opens what is below it, and a word that explains itself in place.
 * Worked figure: the row is 44 px; closed, its content is not built at all, so a long table costs nothing.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';

export interface DisclosureProps {
  readonly summary: ComponentChildren;
  readonly children: ComponentChildren;
  /** Whether it starts open; a later change opens or closes it. */
  readonly open?: boolean | undefined;
  readonly onToggle?: ((open: boolean) => void) | undefined;
}

/** A row that opens. */
export function Disclosure({ summary, children, open = false, onToggle }: DisclosureProps): VNode {
  const [shown, setShown] = useState(open);
  const before = useRef(open);
  useEffect(() => {
    // Not on the first run: opened before its effects ran, it would stay open and empty.
    if (before.current === open) return;
    before.current = open;
    setShown(open);
  }, [open]);
  return (
    <details
      class="ff-disclosure"
      open={shown}
      onToggle={(event) => {
        const now = event.currentTarget.open;
        if (now !== shown) onToggle?.(now);
        setShown(now);
      }}
    >
      <summary class="ff-disclosure-summary">{summary}</summary>
      {shown && <div class="ff-disclosure-body">{children}</div>}
    </details>
  );
}

export interface TermProps {
  /** The word as it stands in its sentence. */
  readonly children: ComponentChildren;
  /** One sentence and the formula with this plan's numbers. */
  readonly meaning: ComponentChildren;
}

/** A trade word: tap it, and its meaning stands right there. */
export function Term({ children, meaning }: TermProps): VNode {
  const [open, setOpen] = useState(false);
  const id = useId();
  return (
    <>
      <button
        type="button"
        class="ff-term"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        {children}
      </button>
      <span id={id} class="ff-term-meaning" hidden={!open} role="note">
        {meaning}
      </span>
    </>
  );
}
