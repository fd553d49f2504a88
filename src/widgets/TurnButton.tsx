/**
 * One step back or on; held, it repeats. Used where what is stepped is written between two of them.
 * Worked figure: held for one second it steps five times, the second to the fifth as repeats.
 */
import type { VNode } from 'preact';
import { useHoldRepeat } from './hold-repeat.ts';

export interface TurnButtonProps {
  readonly label: string;
  readonly way: 'back' | 'on';
  readonly disabled: boolean;
  /** `repeat` from the second step of one hold on. */
  readonly onTurn: (repeat: boolean) => void;
}

export function TurnButton({ label, way, disabled, onTurn }: TurnButtonProps): VNode {
  const hold = useHoldRepeat(({ repeat }) => {
    if (!disabled) onTurn(repeat);
  });
  return (
    <button type="button" class="ff-step" aria-label={label} disabled={disabled} {...hold}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={way === 'back' ? 'M10 2L4 8l6 6' : 'M6 2l6 6-6 6'} />
      </svg>
    </button>
  );
}
