/**
 * A linear symbol of a number, drawn in its nominal size from bars that a library works out: 8, 12 and 13 digits as on a
 * unit, 14 as on a case (frame around it), 18 as on a pallet. Fetched when first drawn. Sizes and quiet zones are those of
 * the GS1 General Specifications, from memory. Worked figure: 13 digits are 95 modules and 18 of quiet zone, 37.29 mm.
 */
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { words } from './words.ts';

export interface CodeProps {
  /** With a check digit that is right. */
  readonly digits: string;
  /** What it is the number of. */
  readonly label: string;
}

interface Kind {
  readonly format: string;
  /** Of one module, mm. */
  readonly moduleMm: number;
  readonly heightMm: number;
  /** Quiet zones, modules. */
  readonly before: number;
  readonly after: number;
  readonly framed: boolean;
}

const UNIT = { moduleMm: 0.33, heightMm: 22.85, framed: false };
/** By the number of digits. */
const KINDS: Readonly<Record<number, Kind>> = {
  8: { ...UNIT, format: 'EAN8', heightMm: 18.23, before: 7, after: 7 },
  12: { ...UNIT, format: 'UPC', before: 9, after: 9 },
  13: { ...UNIT, format: 'EAN13', before: 11, after: 7 },
  14: { format: 'ITF14', moduleMm: 0.5, heightMm: 32, before: 10, after: 10, framed: true },
  18: { format: 'CODE128C', moduleMm: 0.5, heightMm: 32, before: 10, after: 10, framed: false },
};
const SSCC_DIGITS = 18;
const FRAME_MODULES = 5;
const TEXT_MM = 4;

/** The symbol with its digits below; a sentence where it can't be drawn. */
export function Code({ digits, label }: CodeProps): VNode {
  const bars = useBars(digits);
  const kind = KINDS[digits.length];
  if (bars === 'failed' || kind === undefined) return <p class="ff-code">{words.noSymbol}</p>;
  if (bars === null) return <p class="ff-code ff-quiet">…</p>;
  const { moduleMm, heightMm, before, after, framed } = kind;
  const frame = framed ? FRAME_MODULES : 0;
  const width = frame * 2 + before + bars.length + after;
  const height = heightMm / moduleMm + frame * 2;
  const text = TEXT_MM / moduleMm;
  const shown = digits.length === SSCC_DIGITS ? `(00) ${digits}` : digits;
  return (
    <figure class="ff-code">
      <svg
        class="ff-code-face"
        role="img"
        aria-label={`${label}: ${shown}`}
        viewBox={`0 0 ${width} ${height + text}`}
        style={{ width: `${width * moduleMm}mm` }}
      >
        <path class="ff-code-paper" d={`M0 0H${width}V${height + text}H0z`} />
        {framed && <path d={framePath(width, height, frame)} />}
        <path d={barsPath(bars, { x: frame + before, y: frame, height: height - frame * 2 })} />
        <text x={width / 2} y={height + text * 0.82} font-size={text * 0.85} text-anchor="middle">
          {shown}
        </text>
      </svg>
      <figcaption class="ff-least">
        {label}, {(width * moduleMm).toFixed(1)} mm
      </figcaption>
    </figure>
  );
}

/** One path of every run of bars. */
export function barsPath(
  bars: string,
  { x, y, height }: { readonly x: number; readonly y: number; readonly height: number },
): string {
  return [...bars.matchAll(/1+/g)]
    .map(({ index, 0: run }) => `M${x + index} ${y}h${run.length}v${height}h-${run.length}z`)
    .join('');
}

function framePath(width: number, height: number, frame: number): string {
  const inner = `M${frame} ${frame}V${height - frame}H${width - frame}V${frame}z`;
  return `M0 0H${width}V${height}H0z${inner}`;
}

/** A module a character, "1" for a bar; null while it is worked out. */
function useBars(digits: string): string | 'failed' | null {
  const [found, setFound] = useState<{ digits: string; bars: string | 'failed' } | null>(null);
  useEffect(() => {
    let gone = false;
    barsOf(digits).then(
      (bars) => !gone && setFound({ digits, bars }),
      () => !gone && setFound({ digits, bars: 'failed' }),
    );
    return () => {
      gone = true;
    };
  }, [digits]);
  return found?.digits === digits ? found.bars : null;
}

/** The bars of a number; rejects for one that has no symbol. */
export async function barsOf(digits: string): Promise<string> {
  const kind = KINDS[digits.length];
  if (kind === undefined) throw new Error(`no symbol has ${digits.length} digits`);
  const { default: draw } = await import('jsbarcode');
  const drawn: { encodings?: readonly { readonly data: string }[] } = {};
  const isPallet = digits.length === SSCC_DIGITS;
  const text = isPallet ? `00${digits}` : digits;
  draw(drawn, text, { format: kind.format, flat: true, ean128: isPallet } as Parameters<typeof draw>[2]);
  const bars = (drawn.encodings ?? []).map(({ data }) => data).join('');
  if (bars === '') throw new Error(`${digits} could not be drawn`);
  return bars;
}
