/**
 * Graphs on a time axis: steps with a water line, bars under a lid, links from where something is placed to where it
 * lands. Plain SVG paths, drawn again in the frame of a change.
 * Worked figure: values from −12,300 to 36,000 over 96 px put the water line 72 px from the top.
 */
import type { VNode } from 'preact';
import {
  type AxisGeometry,
  type AxisGraph,
  type AxisLink,
  type AxisShape,
  axisWidthPx,
  edgePx,
} from './axis-spec.ts';
import type { ChartColour } from './chart-spec.ts';
import { patternFill } from './Marks.tsx';

export interface AxisGraphViewProps {
  readonly graph: AxisGraph;
  readonly geometry: AxisGeometry;
}

const PAD_PX = 4;

/** One graph, its label at its left edge wherever it is scrolled to. */
export function AxisGraphView({ graph, geometry }: AxisGraphViewProps): VNode {
  const heightPx = graph.heightRem * 16 * geometry.typeScale;
  const span = spanOf(graph.shapes);
  const widthPx = axisWidthPx(geometry);
  return (
    <div class="ff-axis-graph" style={{ width: `${widthPx}px` }}>
      <span class="ff-axis-graph-label ff-least">{graph.label}</span>
      <div class="ff-axis-plot">
        <svg class="ff-axis-svg" role="img" aria-label={graph.alt} width={widthPx} height={heightPx}>
          {graph.shapes.map((shape, index) => (
            <Shape
              key={index}
              shape={shape}
              geometry={geometry}
              yOf={(value) =>
                PAD_PX + ((span.high - value) / (span.high - span.low)) * (heightPx - 2 * PAD_PX)
              }
            />
          ))}
        </svg>
        {graph.notes.map(({ index, text }) => (
          <span
            key={`${index} ${text}`}
            class="ff-axis-note ff-least ff-number"
            style={{ left: `${edgePx(geometry, index)}px` }}
          >
            {text}
          </span>
        ))}
      </div>
    </div>
  );
}

export interface Span {
  readonly low: number;
  readonly high: number;
}

/** From the lowest to the highest of all values, zero always in; never empty. */
export function spanOf(shapes: readonly AxisShape[]): Span {
  let low = 0;
  let high = 0;
  for (const shape of shapes) {
    if (shape.by === 'links') continue;
    if (shape.by === 'plumb') {
      low = Math.min(low, shape.value);
      continue;
    }
    for (let index = 0; index < shape.values.length; index += 1) {
      const value = shape.values[index] ?? 0;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low === high ? { low, high: low + 1 } : { low, high };
}

interface ShapeProps {
  readonly shape: AxisShape;
  readonly geometry: AxisGeometry;
  readonly yOf: (value: number) => number;
}

function Shape({ shape, geometry, yOf }: ShapeProps): VNode {
  const zero = yOf(0);
  const end = edgePx(geometry, geometry.count);
  switch (shape.by) {
    case 'step': {
      const line = stepPath(shape.values, geometry, yOf);
      const close = `V${zero}H${edgePx(geometry, 0)}Z`;
      const above = stepPath(shape.values, geometry, (value) => yOf(Math.max(0, value)));
      const below = stepPath(shape.values, geometry, (value) => yOf(Math.min(0, value)));
      return (
        <g class={hueOf(shape.colour)}>
          <path class="ff-axis-area" d={above + close} />
          <path class="ff-axis-below" d={below + close} fill={patternFill('atRisk')} />
          <path class="ff-axis-water" d={`M${edgePx(geometry, 0)} ${zero}H${end}`} />
          <path class="ff-axis-step" d={line} />
        </g>
      );
    }
    case 'bars':
      return (
        <path
          class={`ff-axis-bars ${hueOf(shape.colour)}`}
          fill={shape.colour === 'atRisk' ? patternFill('atRisk') : 'currentcolor'}
          d={barsPath(shape.values, geometry, yOf)}
        />
      );
    case 'lid':
      return <path class="ff-axis-lid" d={lidPath(shape.values, geometry, yOf)} />;
    case 'plumb': {
      const x = edgePx(geometry, shape.index) + geometry.pointPx / 2;
      return <path class="ff-plumb-line" d={`M${x} ${zero}V${round(yOf(shape.value))}m-4 -4h8l-4 7z`} />;
    }
    case 'links':
      return (
        <g class="ff-axis-links">
          <path class="ff-axis-water" d={`M${edgePx(geometry, 0)} ${zero}H${end}`} />
          {shape.links.map((link) => (
            <Link key={link.from} link={link} geometry={geometry} most={mostOf(shape.links)} yOf={yOf} />
          ))}
        </g>
      );
  }
}

function hueOf(colour: ChartColour): string {
  return colour === 'ink2' ? 'ff-hue-unknown' : `ff-hue-${colour}`;
}

/** Level over each point. */
export function stepPath(
  values: ArrayLike<number>,
  geometry: AxisGeometry,
  yOf: (value: number) => number,
): string {
  let path = '';
  for (let index = 0; index < geometry.count; index += 1) {
    const y = round(yOf(values[index] ?? 0));
    path += `${index === 0 ? `M${edgePx(geometry, 0)} ` : 'V'}${y}H${edgePx(geometry, index + 1)}`;
  }
  return path;
}

function barsPath(values: ArrayLike<number>, geometry: AxisGeometry, yOf: (value: number) => number): string {
  let path = '';
  const zero = round(yOf(0));
  for (let index = 0; index < geometry.count; index += 1) {
    const value = values[index] ?? 0;
    if (value === 0) continue;
    const left = edgePx(geometry, index) + 1;
    path += `M${left} ${zero}V${round(yOf(value))}H${left + Math.max(1, geometry.pointPx - 2)}V${zero}Z`;
  }
  return path;
}

function lidPath(
  values: readonly (number | null)[],
  geometry: AxisGeometry,
  yOf: (value: number) => number,
): string {
  let path = '';
  values.forEach((value, index) => {
    if (value === null || index >= geometry.count) return;
    const starts = index === 0 || values[index - 1] === null;
    path += `${starts ? `M${edgePx(geometry, index)} ` : 'V'}${round(yOf(value))}H${edgePx(geometry, index + 1)}`;
  });
  return path;
}

interface LinkProps {
  readonly link: AxisLink;
  readonly geometry: AxisGeometry;
  readonly most: number;
  readonly yOf: (value: number) => number;
}

/** A band from the point at the top to its points at the foot; a carton where it starts. */
function Link({ link, geometry, most, yOf }: LinkProps): VNode {
  const half = geometry.pointPx / 2;
  const top = edgePx(geometry, link.from) + half;
  const first = edgePx(geometry, Math.min(link.first, geometry.count)) + half;
  const last = edgePx(geometry, Math.min(link.last, geometry.count)) + half;
  const width = 0.75 + 1.5 * Math.sqrt(link.size / most);
  const [high, low] = [round(yOf(1)), round(yOf(0))];
  return (
    <path
      class="ff-axis-link"
      stroke-width={round(width)}
      d={`M${top} ${high}L${first} ${low}${last > first ? `H${last}Z` : ''}M${top - 2.5} ${high - 2.5}h5v5h-5z`}
    />
  );
}

function mostOf(links: readonly AxisLink[]): number {
  return Math.max(1, ...links.map(({ size }) => size));
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
