/**
 * Looking along a chart point by point: a slider as wide as the plot, and ‹ point › below it with the value in words.
 * At three px a week nobody hits a week with a finger; this is how it is read.
 * Worked figure: with 104 points the slider goes from 0 to 103.
 */
import type { VNode } from 'preact';
import type { ChartGeometry } from './chart-spec.ts';
import { TurnButton } from './TurnButton.tsx';

export interface ScrubberProps {
  /** Spoken name of the slider. */
  readonly label: string;
  readonly index: number;
  readonly onScrub: (index: number) => void;
  /** The point, e.g. "week 9 (2 Mar)". */
  readonly pointText: string;
  /** Its value, e.g. "−12,300". */
  readonly valueText: string;
  readonly previousLabel: string;
  readonly nextLabel: string;
}

export interface ChartScrubberProps extends ScrubberProps {
  readonly count: number;
  readonly geometry: ChartGeometry | undefined;
}

/** Slider and steppers. */
export function ChartScrubber(props: ChartScrubberProps): VNode {
  const { index, count, onScrub, geometry, pointText, valueText } = props;
  const last = Math.max(0, count - 1);
  const inset =
    geometry === undefined
      ? {}
      : { marginLeft: `${geometry.firstPx - 10}px`, width: `${geometry.stepPx * last + 20}px` };
  return (
    <div class="ff-scrubber">
      <input
        class="ff-scrubber-slide"
        type="range"
        min={0}
        max={last}
        step={1}
        value={index}
        style={inset}
        aria-label={props.label}
        aria-valuetext={`${pointText}: ${valueText}`}
        onInput={(event) => onScrub(event.currentTarget.valueAsNumber)}
      />
      <div class="ff-scrubber-row">
        <TurnButton
          label={props.previousLabel}
          disabled={index <= 0}
          way="back"
          onTurn={() => onScrub(index - 1)}
        />
        <p class="ff-scrubber-text ff-number" aria-hidden="true">
          <span class="ff-quiet">{pointText}</span> <strong>{valueText}</strong>
        </p>
        <TurnButton
          label={props.nextLabel}
          disabled={index >= last}
          way="on"
          onTurn={() => onScrub(index + 1)}
        />
      </div>
    </div>
  );
}
