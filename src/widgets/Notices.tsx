/**
 * Short words of the app about itself: toasts (done, with an undo), banners (offline, update, storage), the
 * empty states of a view, a problem, a caution, and progress of long work. All plain text in, callbacks out.
 * Worked figure: a toast stays eight seconds, longer while it is touched or focused.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button, ButtonRow } from './Buttons.tsx';
import { classNames } from './class-names.ts';
import { words } from './words.ts';

export interface ToastMessage {
  readonly id: string;
  readonly text: string;
  readonly actionLabel?: string | undefined;
  readonly onAction?: (() => void) | undefined;
}

export interface ToastAreaProps {
  readonly toasts: readonly ToastMessage[];
  readonly onDismiss: (id: string) => void;
  readonly seconds: number;
}

/** Keep it on the page even when empty: a screen reader only hears what appears in an area it knows. */
export function ToastArea({ toasts, onDismiss, seconds }: ToastAreaProps): VNode {
  return (
    <div class="ff-toasts" role="status">
      {toasts.map((toast) => (
        <Toast key={toast.id} toast={toast} seconds={seconds} onDismiss={() => onDismiss(toast.id)} />
      ))}
    </div>
  );
}

interface ToastProps {
  readonly toast: ToastMessage;
  readonly seconds: number;
  readonly onDismiss: () => void;
}

function Toast({ toast, seconds, onDismiss }: ToastProps): VNode {
  const [kept, setKept] = useState(false);
  useEffect(() => {
    if (kept) return undefined;
    const timer = setTimeout(onDismiss, seconds * 1000);
    return () => clearTimeout(timer);
  }, [kept, seconds, toast.id]);
  const { actionLabel, onAction } = toast;
  return (
    <div
      class="ff-toast"
      onPointerEnter={() => setKept(true)}
      onPointerLeave={() => setKept(false)}
      onFocusIn={() => setKept(true)}
      onFocusOut={() => setKept(false)}
    >
      <span class="ff-toast-text">{toast.text}</span>
      {actionLabel !== undefined && onAction !== undefined && (
        <button
          type="button"
          class="ff-toast-action"
          onClick={() => {
            onAction();
            onDismiss();
          }}
        >
          {actionLabel}
        </button>
      )}
      <button type="button" class="ff-toast-action" aria-label={words.close} onClick={onDismiss}>
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M3 3l10 10M13 3L3 13" />
        </svg>
      </button>
    </div>
  );
}

export interface BannerAction {
  readonly label: string;
  readonly onPress: () => void;
}

export interface BannerProps {
  readonly text: string;
  /** calm: good to know (offline); ask: a choice (update); warn: something may be lost (storage). */
  readonly tone: 'calm' | 'ask' | 'warn';
  readonly actions: readonly BannerAction[];
}

/** One line across the page, above its content. */
export function Banner({ text, tone, actions }: BannerProps): VNode {
  return (
    <div class={`ff-banner ff-banner-${tone}`} role={tone === 'warn' ? 'alert' : 'status'}>
      <span class="ff-banner-text">{text}</span>
      {actions.length > 0 && (
        <ButtonRow>
          {actions.map((action) => (
            <Button key={action.label} onPress={action.onPress}>
              {action.label}
            </Button>
          ))}
        </ButtonRow>
      )}
    </div>
  );
}

export interface EmptyStateProps {
  readonly title: string;
  readonly children?: ComponentChildren | undefined;
}

/** Nothing here yet: what would be here, and the way to it (buttons as children). */
export function EmptyState({ title, children }: EmptyStateProps): VNode {
  return (
    <div class="ff-empty">
      <svg class="ff-empty-shelf" viewBox="0 0 120 40" aria-hidden="true">
        <path d="M2 28H118M14 28v10M106 28v10" />
        <path d="M22 10h16v18M22 10v18M52 16h14v12M52 16v12" stroke-dasharray="3 4" />
      </svg>
      <p class="ff-empty-title">{title}</p>
      {children}
    </div>
  );
}

export interface NoteProps {
  readonly children: ComponentChildren;
}

/** What is wrong and what was expected, near where it happened. */
export function ProblemNote({ children }: NoteProps): VNode {
  return (
    <div class="ff-note ff-note-problem" role="alert">
      <NoteMark kind="problem" />
      <div>{children}</div>
    </div>
  );
}

/** A short caution, in place. */
export function Caution({ children }: NoteProps): VNode {
  return (
    <div class="ff-note ff-note-caution ff-least" role="note">
      <NoteMark kind="caution" />
      <div>{children}</div>
    </div>
  );
}

function NoteMark({ kind }: { readonly kind: 'problem' | 'caution' }): VNode {
  return (
    <svg class={classNames('ff-note-mark')} viewBox="0 0 16 16" aria-hidden="true">
      {kind === 'problem' ? (
        <path d="M2 2h12v12H2zM5 5l6 6M11 5l-6 6" />
      ) : (
        <path d="M1.5 3.5h10l3 3v6h-13zM8 5.5v3M8 10v1.2" />
      )}
    </svg>
  );
}

export interface ProgressProps {
  readonly label: string;
  /** Done so far, 0 to 1. */
  readonly share: number;
  readonly stopLabel: string;
  readonly onStop: () => void;
}

/** Long work: how far it is, and the way to stop it. */
export function Progress({ label, share, stopLabel, onStop }: ProgressProps): VNode {
  return (
    <div class="ff-progress">
      <label class="ff-progress-label ff-label">
        {label}
        <progress value={share} max={1} />
      </label>
      <Button onPress={onStop}>{stopLabel}</Button>
    </div>
  );
}
