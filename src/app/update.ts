// A new version of the app is offered, never forced: it waits until the person lets it in, and every edit is written
// before it takes over.
// Worked example: `waiting` turns true while a plan is being typed; apply() saves what is under way, then lets it in.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Core } from './core.ts';
import { notify } from './notices.ts';
import { flush } from './saving.ts';

export interface Update {
  waiting: ReadonlySignal<boolean>;
  /** Writes what is under way, then lets the new version in; the page reloads by itself. */
  apply: () => Promise<void>;
}

export function makeUpdate(core: Core): Update {
  const waiting = signal(false);
  const apply = async (): Promise<void> => {
    await flush(core);
    core.deps.update.activate();
  };
  core.deps.update.onWaiting(() => {
    waiting.value = true;
    notify(core.state.notices, 'app', {
      kind: 'update',
      sentence: 'New version ready. Your edits are kept.',
      action: { label: 'Use it now', run: () => void apply() },
      file: null,
    });
  });
  return { waiting, apply };
}
