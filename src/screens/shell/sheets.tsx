// The sheets that open over any view: where a figure comes from, one section of the inputs, and what this app is. A view's
// own sheets are its own. Worked example: ?sheet=inputs:terms:corner opens Corner's payment terms over the cash picture.
import type { VNode } from 'preact';
import { type Later, LazyScreen } from '../shared/lazy-screen.tsx';
import { useSession } from '../shared/session-context.ts';

export function Sheets(): VNode | null {
  const { sheet } = useSession().route.value;
  const name = sheet === null ? null : partOf(sheet);
  return name === null ? null : <LazyScreen key={name} name={name} quiet />;
}

function partOf(sheet: string): Later | null {
  if (sheet.startsWith('why:')) return 'whereFrom';
  if (sheet.startsWith('inputs:')) return 'inputsSheet';
  return sheet === 'about' ? 'about' : null;
}
