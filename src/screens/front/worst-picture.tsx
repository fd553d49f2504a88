// The picture of the worst verdict.
import type { VNode } from 'preact';
import type { Shown } from '../shared/session-context.ts';

export function WorstPicture(_: { shown: Shown }): VNode | null {
  return null;
}
