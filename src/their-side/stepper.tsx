// One value between two keys, 48 px high: a tap is a step, a hold repeats. It has ends so far out that they say nothing.
// Worked figure: held for one second it steps five times.
import type { VNode } from 'preact';
import { useHoldRepeat } from '../widgets/hold-repeat.ts';

export interface StepperProps {
  label: string;
  text: string;
  onStep: (direction: 1 | -1) => void;
}

export function Stepper({ label, text, onStep }: StepperProps): VNode {
  const less = useHoldRepeat(() => onStep(-1));
  const more = useHoldRepeat(() => onStep(1));
  return (
    <div class="ts-stepper">
      <span class="ts-stepper-label">{label}</span>
      <button type="button" class="ts-key" aria-label={`${label}: less`} {...less}>
        −
      </button>
      <output class="ts-stepper-value">{text}</output>
      <button type="button" class="ts-key" aria-label={`${label}: more`} {...more}>
        +
      </button>
    </div>
  );
}
