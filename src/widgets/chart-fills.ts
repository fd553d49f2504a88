/**
 * The owners' fills for a canvas, and the page's colours as it has them now (they change with the scheme, with
 * forced colours and for print). The same four patterns as in CSS and SVG: solid, level stripes 1.5 in 6 px, hatch
 * 2 in 8 px, dots on open paper. Worked figure: a stripe tile is 6 px high, so 25 % of it is inked.
 */
import type { ChartColour, ChartColours } from './chart-spec.ts';
import { remPx } from './media.ts';

/** Reads every colour token from the root. */
export function readColours(): ChartColours {
  const style = getComputedStyle(document.documentElement);
  const read = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ours: read('--ff-ours'),
    theirs: read('--ff-theirs'),
    between: read('--ff-between'),
    atRisk: read('--ff-at-risk'),
    ink: read('--ff-ink'),
    ink2: read('--ff-ink-2'),
    line: read('--ff-line'),
    hair: read('--ff-hair'),
    paper: read('--ff-paper'),
    face: read('--ff-face'),
    remPx: remPx(),
  };
}

/** A canvas fill for an owner; inks are solid. */
export function ownerFill(colour: ChartColour, colours: ChartColours): string | CanvasPattern {
  const paint = tiles[colour];
  if (paint === undefined) return colours[colour];
  const scale = Math.max(1, Math.ceil(globalThis.devicePixelRatio));
  const tile = document.createElement('canvas');
  tile.width = paint.sizePx * scale;
  tile.height = paint.sizePx * scale;
  const context = tile.getContext('2d');
  if (context === null) return colours[colour];
  context.scale(scale, scale);
  context.fillStyle = colours[colour];
  context.strokeStyle = colours[colour];
  paint.draw(context);
  const pattern = context.createPattern(tile, 'repeat');
  if (pattern === null) return colours[colour];
  pattern.setTransform(new DOMMatrix().scale(1 / scale));
  return pattern;
}

interface Tile {
  readonly sizePx: number;
  readonly draw: (context: CanvasRenderingContext2D) => void;
}

const tiles: Partial<Record<ChartColour, Tile>> = {
  theirs: { sizePx: 6, draw: (context) => context.fillRect(0, 0, 6, 1.5) },
  between: { sizePx: 8, draw: drawHatch },
  atRisk: { sizePx: 6, draw: drawDot },
};

/** One diagonal and the corners it leaves through, so that tiles join. */
function drawHatch(context: CanvasRenderingContext2D): void {
  context.lineWidth = 1.6;
  context.beginPath();
  for (const shift of [-8, 0, 8]) {
    context.moveTo(shift - 1, 9);
    context.lineTo(shift + 9, -1);
  }
  context.stroke();
}

function drawDot(context: CanvasRenderingContext2D): void {
  context.beginPath();
  context.arc(3, 3, 1.4, 0, Math.PI * 2);
  context.fill();
}
