/**
 * The ladder itself as SVG: two uprights 80 px apart, a band in its owner's fill for every hand, a rung on top of
 * each, elbow lines to the labels. Hidden from screen readers, which get the label rows beside it.
 * Worked figure: a band of 40 px takes the rung of 3 px and its two keylines of 1.5 px at its upper edge.
 */
import type { VNode } from 'preact';
import { classNames } from './class-names.ts';
import type { LadderBand, LadderLayout } from './ladder-layout.ts';
import { type Owner, patternFill } from './Marks.tsx';

export const leftPx = 26;
export const rightPx = leftPx + 80;
export const labelsLeftPx = rightPx + 24;

export interface DrawnRung {
  readonly id: string;
  readonly owner: Owner;
  readonly locked: boolean;
  readonly givesWay: boolean;
  readonly selected: boolean;
}

export interface LadderDrawingProps {
  readonly rungs: readonly DrawnRung[];
  readonly layout: LadderLayout;
  readonly rowHeightsPx: readonly number[];
}

/** Bands first, uprights over them, rungs last. */
export function LadderDrawing({ rungs, layout, rowHeightsPx }: LadderDrawingProps): VNode {
  const { heightPx, bands, zeroPx } = layout;
  const pairs = rungs.flatMap((rung, index) => {
    const band = bands[index];
    return band === undefined ? [] : [{ rung, band, index }];
  });
  return (
    <svg class="ff-ladder-svg" width={labelsLeftPx} height={heightPx} aria-hidden="true">
      {pairs.map(({ rung, band }) =>
        band.negative ? (
          <Hanging key={rung.id} rung={rung} band={band} />
        ) : (
          <Band key={rung.id} rung={rung} band={band} />
        ),
      )}
      <path class="ff-ladder-ground" d={`M${leftPx - 14} ${zeroPx}H${rightPx + 8}`} />
      <path class="ff-ladder-upright" d={`M${leftPx} -12V${heightPx}M${rightPx} -12V${heightPx}`} />
      {pairs.map(({ rung, band, index }) => (
        <Leader
          key={rung.id}
          selected={rung.selected}
          fromPx={(band.topPx + band.bottomPx) / 2}
          toPx={(layout.labelTopsPx[index] ?? 0) + (rowHeightsPx[index] ?? 0) / 2}
        />
      ))}
      {pairs.map(({ rung, band }) => (
        <Rung key={rung.id} rung={rung} band={band} />
      ))}
    </svg>
  );
}

interface PartProps {
  readonly rung: DrawnRung;
  readonly band: LadderBand;
}

function Band({ rung, band }: PartProps): VNode {
  return (
    <rect
      class={`ff-ladder-band ff-hue-${rung.owner}`}
      x={leftPx}
      width={rightPx - leftPx}
      y={band.topPx}
      height={band.bottomPx - band.topPx}
      fill={patternFill(rung.owner)}
    />
  );
}

/** A hand that takes away: an open bracket left of the upright, with its minus. */
function Hanging({ rung, band }: PartProps): VNode {
  const { topPx, bottomPx } = band;
  const middle = (topPx + bottomPx) / 2;
  return (
    <g class={`ff-ladder-hanging ff-hue-${rung.owner}`}>
      <rect x={leftPx - 10} width="8" y={topPx} height={bottomPx - topPx} fill={patternFill(rung.owner)} />
      <path d={`M${leftPx - 2} ${topPx}h-8V${bottomPx}h8`} />
      <path class="ff-ladder-minus" d={`M${leftPx - 24} ${middle}h9`} />
    </g>
  );
}

function Leader({ fromPx, toPx, selected }: { fromPx: number; toPx: number; selected: boolean }): VNode {
  const turn = rightPx + 10;
  return (
    <path
      class={classNames('ff-ladder-leader', selected && 'ff-ladder-leader-chosen')}
      d={`M${rightPx + 2} ${fromPx}H${turn}L${turn + 6} ${toPx}H${labelsLeftPx}`}
    />
  );
}

/** Drawn at zero and moved into place, so that the move can take its 120 ms. */
function Rung({ rung, band }: PartProps): VNode {
  const inset = rung.givesWay ? 11 : 1.5; // keylines must not notch the uprights
  const line = `M${leftPx + inset} 0H${rightPx - inset}`;
  return (
    <g
      class={classNames('ff-ladder-rung', rung.selected && 'ff-ladder-rung-chosen')}
      style={{ transform: `translateY(${band.rungPx}px)` }}
    >
      <path class="ff-ladder-keyline" d={line} />
      <path class="ff-ladder-line" d={line} />
      {rung.givesWay && <path class="ff-ladder-line" d={`M${leftPx + inset} -4v8M${rightPx - inset} -4v8`} />}
      {rung.locked && (
        <>
          <circle class="ff-ladder-bolt" cx={leftPx} r="4.5" />
          <circle class="ff-ladder-bolt" cx={rightPx} r="4.5" />
        </>
      )}
    </g>
  );
}
