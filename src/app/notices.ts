// Short sentences over the page: offline, a new version waiting, a refusal with its file to keep, an undo for a deleted
// plan. One of a kind and key at a time; the newest is last.
// Worked example: a second 'offline' takes the place of the first; two deleted plans have two undo notices.
import type { Signal } from '@preact/signals';
import type { PlanFile, Refusal } from '../plan-format/index.ts';

export interface Notice {
  /** Kind and key: a new notice of the same id takes the old one's place. */
  id: string;
  kind: 'offline' | 'update' | 'refusal' | 'undo' | 'info';
  sentence: string;
  action: { label: string; run: () => void } | null;
  /** A file to offer as a download, so that nothing is lost. */
  file: PlanFile | null;
}

export type Notices = Signal<readonly Notice[]>;

export function notify(notices: Notices, key: string, notice: Omit<Notice, 'id'>): void {
  const id = `${notice.kind} ${key}`;
  notices.value = [...notices.value.filter((each) => each.id !== id), { ...notice, id }];
}

export function dismiss(notices: Notices, id: string): void {
  notices.value = notices.value.filter((each) => each.id !== id);
}

/** Says a refusal; one of the same code takes its place. */
export function notifyRefusal(notices: Notices, { code, sentence, file }: Refusal): void {
  notify(notices, code, { kind: 'refusal', sentence, action: null, file });
}

export function notifyInfo(notices: Notices, key: string, sentence: string): void {
  notify(notices, key, { kind: 'info', sentence, action: null, file: null });
}
