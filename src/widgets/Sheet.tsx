/**
 * A sheet over the page: from the bottom on a phone (nothing behind it can be reached), a column at the right from
 * 900 px (the page stays usable). Escape, the device's back, the close button and a tap beside it all call onClose;
 * the caller takes it off the page. Worked figure: on a phone it grows to 85 % of the height, then scrolls.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { Button, ButtonRow } from './Buttons.tsx';
import { useWide } from './media.ts';
import { words } from './words.ts';

export interface SheetProps {
  readonly title: string;
  readonly children: ComponentChildren;
  readonly onClose: () => void;
  /** Stays at the foot while the rest scrolls. */
  readonly footer?: ComponentChildren | undefined;
}

/** Render it to open it. */
export function Sheet({ title, children, onClose, footer }: SheetProps): VNode {
  const wide = useWide();
  const box = useOpenDialog(!wide, onClose);
  const titleId = useId();
  return (
    <dialog class="ff-sheet" ref={box} aria-labelledby={titleId}>
      <div class="ff-sheet-head">
        <h2 id={titleId} tabIndex={-1}>
          {title}
        </h2>
        <CloseButton onClose={onClose} />
      </div>
      <div class="ff-sheet-body">{children}</div>
      {footer !== undefined && <div class="ff-sheet-foot">{footer}</div>}
    </dialog>
  );
}

export interface ConfirmDialogProps {
  readonly title: string;
  readonly message: ComponentChildren;
  readonly confirmLabel: string;
  readonly cancelLabel: string;
  readonly onConfirm: () => void;
  readonly onCancel: () => void;
}

/** One question, two answers; the safe one has the focus. */
export function ConfirmDialog(props: ConfirmDialogProps): VNode {
  const box = useOpenDialog(true, props.onCancel);
  const id = useId();
  return (
    <dialog
      class="ff-dialog"
      ref={box}
      role="alertdialog"
      aria-labelledby={id}
      aria-describedby={`${id}-text`}
    >
      <h2 id={id}>{props.title}</h2>
      <div id={`${id}-text`}>{props.message}</div>
      <ButtonRow>
        <Button onPress={props.onCancel}>{props.cancelLabel}</Button>
        <Button kind="primary" onPress={props.onConfirm}>
          {props.confirmLabel}
        </Button>
      </ButtonRow>
    </dialog>
  );
}

function CloseButton({ onClose }: { readonly onClose: () => void }): VNode {
  return (
    <button type="button" class="ff-close" aria-label={words.close} onClick={onClose}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d="M2 2l12 12M14 2L2 14" />
      </svg>
    </button>
  );
}

/** Opens the dialog element for as long as it is on the page, and gives the focus back where it came from. */
function useOpenDialog(modal: boolean, onClose: () => void): { current: HTMLDialogElement | null } {
  const box = useRef<HTMLDialogElement>(null);
  const latest = useRef(onClose);
  latest.current = onClose;
  useLayoutEffect(() => {
    const dialog = box.current;
    if (dialog === null) return;
    const before = document.activeElement;
    if (modal) dialog.showModal();
    else dialog.show();
    const closing = (event: Event): void => {
      event.preventDefault();
      latest.current();
    };
    const tapped = (event: MouseEvent): void => {
      if (modal && event.target === dialog && isOutside(dialog, event)) latest.current();
    };
    const typed = (event: KeyboardEvent): void => {
      if (!modal && event.key === 'Escape') latest.current();
    };
    dialog.addEventListener('cancel', closing);
    dialog.addEventListener('click', tapped);
    document.addEventListener('keydown', typed);
    return () => {
      dialog.removeEventListener('cancel', closing);
      dialog.removeEventListener('click', tapped);
      document.removeEventListener('keydown', typed);
      dialog.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, [modal]);
  return box;
}

/** A tap on the backdrop reports the dialog as its target, but lies outside its box. */
function isOutside(dialog: HTMLDialogElement, { clientX, clientY }: MouseEvent): boolean {
  const { left, right, top, bottom } = dialog.getBoundingClientRect();
  return clientX < left || clientX > right || clientY < top || clientY > bottom;
}
