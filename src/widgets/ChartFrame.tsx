/**
 * A chart with all that must stand around it: reserved space while the engine loads, a spoken text, a key, a
 * scrubber, what is laid over it, and its table one tap away. If the engine can't be had, the table opens instead.
 * Worked figure: heightRem 14 keeps 224 px free from the first paint, so nothing jumps.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { ChartScrubber, type ScrubberProps } from './ChartScrubber.tsx';
import { readColours } from './chart-fills.ts';
import {
  type ChartColour,
  type ChartGeometry,
  type ChartHandle,
  type ChartSeries,
  type ChartSpec,
  indexAt,
} from './chart-spec.ts';
import { Disclosure } from './Disclosure.tsx';
import { watchLook } from './media.ts';
import { Table, type TableProps } from './Table.tsx';
import { words } from './words.ts';

export interface ChartFrameProps extends ChartSpec {
  /** What the picture shows, in a sentence: lowest and highest, start and end. */
  readonly alt: string;
  readonly heightRem: number;
  /** The same values as rows. */
  readonly table: TableProps;
  readonly tableLabel: string;
  /** A key to the series; not needed for a single one that a heading names. */
  readonly showKey: boolean;
  readonly scrubber?: ScrubberProps | undefined;
  /** Laid over the plot, in px of the geometry. */
  readonly overlay?: ((geometry: ChartGeometry) => ComponentChildren) | undefined;
  /** Above the plot, sharing its width. */
  readonly lanes?: ((geometry: ChartGeometry | undefined) => ComponentChildren) | undefined;
}

/** The frame; the engine paints into it. */
export function ChartFrame(props: ChartFrameProps): VNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { geometry, state } = useEngine(canvas, props);
  const { scrubber } = props;
  return (
    <figure class="ff-chart">
      {state !== 'failed' && props.lanes?.(geometry)}
      {state === 'failed' ? (
        <p class="ff-chart-failed">{words.pictureFailed}</p>
      ) : (
        <div class="ff-chart-plot" style={{ height: `${props.heightRem}rem` }}>
          <canvas ref={canvas} role="img" aria-label={props.alt} />
          {state === 'loading' && <p class="ff-chart-loading ff-least">{words.pictureLoading}</p>}
          {geometry !== undefined && (
            <div class="ff-chart-overlay" aria-hidden="true">
              {scrubber !== undefined && (
                <ScrubSurface geometry={geometry} count={props.xLabels.length} scrubber={scrubber} />
              )}
              {props.overlay?.(geometry)}
            </div>
          )}
        </div>
      )}
      {scrubber !== undefined && (
        <ChartScrubber {...scrubber} count={props.xLabels.length} geometry={geometry} />
      )}
      {props.showKey && <ChartKey series={props.series} />}
      <Disclosure
        key={state === 'failed' ? 'open' : 'closed'}
        summary={props.tableLabel}
        open={state === 'failed'}
      >
        <Table {...props.table} />
      </Disclosure>
    </figure>
  );
}

type EngineState = 'loading' | 'ready' | 'failed';

/** Loads the engine once, feeds it at every change, and has it repaint when the page's colours change. */
function useEngine(
  canvas: { readonly current: HTMLCanvasElement | null },
  spec: ChartSpec,
): { readonly geometry: ChartGeometry | undefined; readonly state: EngineState } {
  const [geometry, setGeometry] = useState<ChartGeometry | undefined>(undefined);
  const [state, setState] = useState<EngineState>('loading');
  const handle = useRef<ChartHandle | undefined>(undefined);
  const latest = useRef(spec);
  latest.current = spec;

  useEffect(() => {
    let gone = false;
    const mount = async (): Promise<void> => {
      const { mountChart } = await import('./chart-engine.ts');
      if (gone || canvas.current === null) return;
      const options = { canvas: canvas.current, spec: latest.current, colours: readColours() };
      handle.current = mountChart({ ...options, onLayout: setGeometry });
      setState('ready');
    };
    mount().catch(() => setState('failed'));
    const repaint = (): void => {
      // paper is as wide as it is at once, and so is the screen after it: no observer sees it in time
      handle.current?.fit();
      handle.current?.update(latest.current, readColours());
    };
    const stop = watchLook(repaint);
    document.fonts?.ready.then(repaint, () => undefined);
    return () => {
      gone = true;
      stop();
      handle.current?.destroy();
      handle.current = undefined;
    };
  }, []);

  useEffect(() => {
    handle.current?.update(latest.current, readColours());
  }, [spec.series, spec.xLabels, spec.leastY, spec.mostY]);

  return { geometry, state };
}

interface ScrubSurfaceProps {
  readonly geometry: ChartGeometry;
  readonly count: number;
  readonly scrubber: ScrubberProps;
}

/** Drag across the plot to look along it; the page still scrolls up and down under the finger. */
function ScrubSurface({ geometry, count, scrubber }: ScrubSurfaceProps): VNode {
  const follow = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    if (event.type === 'pointermove' && event.buttons === 0) return;
    const xPx = event.clientX - event.currentTarget.getBoundingClientRect().left;
    const index = indexAt(geometry, xPx, count);
    if (index !== scrubber.index) scrubber.onScrub(index);
  };
  const atPx = geometry.firstPx + geometry.stepPx * scrubber.index;
  return (
    <div class="ff-chart-surface" onPointerDown={follow} onPointerMove={follow}>
      <svg class="ff-chart-svg" aria-hidden="true">
        <path class="ff-chart-cursor" d={`M${atPx} ${geometry.topPx}V${geometry.bottomPx + 6}`} />
      </svg>
    </div>
  );
}

/** Which line is which: by dash and width as well as by colour. */
function ChartKey({ series }: { readonly series: readonly ChartSeries[] }): VNode {
  return (
    <ul class="ff-chart-key ff-label">
      {series.map((each) => (
        <li key={each.id}>
          {each.style === 'bar' ? (
            <span class={`ff-swatch ${hues[each.colour]}`} aria-hidden="true" />
          ) : (
            <svg class={`ff-chart-sample ${hues[each.colour]}`} viewBox="0 0 24 14" aria-hidden="true">
              <path
                class={`ff-chart-sample-${each.style}`}
                d={each.style === 'step' ? 'M0 11H8V4H16V8H24' : 'M0 7H24'}
              />
            </svg>
          )}
          {each.label}
        </li>
      ))}
    </ul>
  );
}

const hues: Record<ChartColour, string> = {
  ours: 'ff-hue-ours',
  theirs: 'ff-hue-theirs',
  between: 'ff-hue-between',
  atRisk: 'ff-hue-atRisk',
  ink: 'ff-hue-ink',
  ink2: 'ff-hue-unknown',
};
