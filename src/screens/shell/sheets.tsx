// The sheets that open over any view: where a figure comes from, one section of the inputs, and what this app is. A view's
// own sheets are its own. Worked example: ?sheet=inputs:terms:corner opens Corner's payment terms over the cash picture.
import type { VNode } from 'preact';
import { placeOfSheet } from '../shared/input-places.ts';
import { LazyScreen, type Load } from '../shared/lazy-screen.tsx';
import { useSession } from '../shared/session-context.ts';

const WHERE_FROM: Load = () => import('../shared/where-from.tsx').then((room) => room.WhereFromSheet);
const INPUTS: Load = () => import('../inputs/sheet.tsx').then((room) => room.InputsSheet);
const ABOUT: Load = () => import('../about/index.tsx').then((room) => room.AboutSheet);

export function Sheets(): VNode | null {
  const { sheet } = useSession().route.value;
  if (sheet === null) return null;
  const load = loadOf(sheet);
  return load === null ? null : <LazyScreen key={sheet.slice(0, 4)} load={load} />;
}

function loadOf(sheet: string): Load | null {
  if (sheet.startsWith('why:')) return WHERE_FROM;
  if (placeOfSheet(sheet) !== null) return INPUTS;
  return sheet === 'about' ? ABOUT : null;
}
