// The inputs beside the verdicts, from 900 px: fetched then, since a phone shows them on a page of their own.
// Worked example: typing 250 into slotting there moves the deal's verdict beside it in the same frame.
import type { VNode } from 'preact';
import { LazyScreen, type Load } from '../shared/lazy-screen.tsx';

const INPUTS: Load = () => import('../inputs/list.tsx').then((room) => room.InputsList);

export function WideInputs(): VNode {
  return (
    <section class="ff-front-inputs" aria-label="Inputs">
      <LazyScreen load={INPUTS} />
    </section>
  );
}
