// One layer of cases on its pallet, seen from above and to scale; a strip of tape runs along each case, so that turned ones
// are seen. Worked figure: 1200 x 1000 mm are drawn 240 x 200 px where there is room.
import type { VNode } from 'preact';
import type { Placed } from '../../domain/pack/arrange.ts';

export interface LayerDrawingProps {
  /** Millimetres. */
  floor: { length: number; width: number };
  boxes: readonly Placed[];
  /** Said below it, and to a screen reader. */
  words: string;
}

export function LayerDrawing({ floor, boxes, words }: LayerDrawingProps): VNode {
  const { length, width } = floor;
  return (
    <figure class="ff-layer">
      <svg viewBox={`-8 -8 ${length + 16} ${width + 16}`} aria-hidden="true">
        <rect class="ff-layer-pallet" x={0} y={0} width={length} height={width} />
        {boxes.map(({ x, y, along, across }) => (
          <g key={`${x} ${y}`}>
            <rect class="ff-layer-case" x={x} y={y} width={along} height={across} />
            <path
              class="ff-layer-tape"
              d={along >= across ? `M${x} ${y + across / 2}h${along}` : `M${x + along / 2} ${y}v${across}`}
            />
          </g>
        ))}
      </svg>
      <figcaption class="ff-least ff-quiet">{words}</figcaption>
    </figure>
  );
}
