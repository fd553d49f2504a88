/**
 * One time axis for everything that happens: its scales stay at the top, what matters most is docked at the foot, names
 * stay at the left, and the rest scrolls between them both ways. Bars are moved in whole points.
 * Worked figure: 52 points on a page of 1,280 px are some 17 px each; on a phone they are 12 px and scroll sideways.
 */
import type { VNode } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { AxisGraphView } from './AxisGraphs.tsx';
import { AxisHead, AxisLines } from './AxisHead.tsx';
import { AxisTrack } from './AxisTrack.tsx';
import { type AxisDrag, type AxisMoves, useAxisDrag } from './axis-drag.ts';
import {
  AXIS_AFTER_PX,
  AXIS_BEFORE_PX,
  type AxisGeometry,
  type AxisGraph,
  type AxisGroup,
  type AxisScale,
  axisWidthPx,
  edgePx,
} from './axis-spec.ts';
import { PatternDefs } from './Marks.tsx';
import { remPx, useWide } from './media.ts';
import { words } from './words.ts';

export interface TimeAxisProps extends AxisMoves {
  /** Spoken name of the whole. */
  readonly label: string;
  readonly count: number;
  readonly scales: readonly AxisScale[];
  /** Points that begin a stretch of time: a line through all groups. */
  readonly lines: readonly number[];
  /** Keep a group the same object while nothing in it changed. */
  readonly groups: readonly AxisGroup[];
  /** Stays in sight at the foot. */
  readonly docked: readonly AxisGraph[];
  /** The point looked at elsewhere too; a tap on the foot chooses one. */
  readonly index: number;
  readonly onIndex: (index: number) => void;
  /** The chosen bar. */
  readonly chosen: string | null;
}

const NAME_REM = 11;
const LEAST_PX = 8;
const LEAST_NARROW_PX = 12;
const MOST_PX = 28;

export function TimeAxis(props: TimeAxisProps): VNode {
  const { count, onIndex } = props;
  const region = useRef<HTMLElement>(null);
  const { geometry, namePx, viewPx, scrolls } = useGeometry(region, count);
  const [held, setHeld] = useState<string | null>(null);
  useFirstLook(region, viewPx === 0 ? null : edgePx(geometry, props.index), viewPx - namePx);
  const { onShift, onStep, onChoose } = props;
  const drag = useAxisDrag({
    region,
    pointPx: geometry.pointPx,
    onHold: setHeld,
    onShift,
    onStep,
    onChoose,
  });
  const widthPx = namePx + axisWidthPx(geometry);
  const pick = (event: MouseEvent & { readonly currentTarget: HTMLElement }): void => {
    const at = event.clientX - event.currentTarget.getBoundingClientRect().left - namePx - AXIS_BEFORE_PX;
    onIndex(Math.max(0, Math.min(count - 1, Math.floor(at / geometry.pointPx))));
  };
  return (
    <div class="ff-table-frame ff-axis">
      <PatternDefs />
      {scrolls && <p class="ff-table-note ff-least">{words.scrolls}</p>}
      <section
        class="ff-axis-region"
        ref={region}
        aria-label={props.label}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key
        tabIndex={0}
        style={{ '--ff-axis-name': `${namePx}px`, '--ff-axis-view': `${viewPx}px` }}
      >
        <div class="ff-axis-inner" style={{ width: `${widthPx}px` }}>
          <AxisHead scales={props.scales} geometry={geometry} />
          <AxisLines
            lines={props.lines}
            geometry={geometry}
            cursorPx={edgePx(geometry, props.index) + geometry.pointPx / 2}
          />
          {props.groups.map((group) => (
            <Group
              key={group.id}
              group={group}
              geometry={geometry}
              chosen={inGroup(group, props.chosen)}
              held={inGroup(group, held)}
              drag={drag}
            />
          ))}
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the point is stepped by keys elsewhere */}
          {/* biome-ignore lint/a11y/useKeyWithClickEvents: the point is stepped by keys elsewhere */}
          <div class="ff-axis-dock" onClick={pick}>
            {props.docked.map((graph) => (
              <AxisGraphView key={graph.id} graph={graph} geometry={geometry} />
            ))}
          </div>
        </div>
      </section>
    </div>
  );
}

/** Scrolled, when first drawn, to where the point looked at is in sight, a third from the left. */
function useFirstLook(
  region: { readonly current: HTMLElement | null },
  atPx: number | null,
  roomPx: number,
): void {
  const looked = useRef(false);
  useLayoutEffect(() => {
    if (looked.current || atPx === null || region.current === null) return;
    looked.current = true;
    if (atPx > roomPx * 0.75) region.current.scrollLeft = atPx - roomPx / 3;
  }, [atPx, roomPx]);
}

function inGroup(group: AxisGroup, id: string | null): string | null {
  return id !== null && group.bars.some((bar) => bar.id === id) ? id : null;
}

interface Sized {
  readonly geometry: AxisGeometry;
  /** Room for names at the left; none on a phone, where they stand above. */
  readonly namePx: number;
  /** What is seen of it at a time. */
  readonly viewPx: number;
  readonly scrolls: boolean;
}

function useGeometry(region: { readonly current: HTMLElement | null }, count: number): Sized {
  const wide = useWide();
  const [size, setSize] = useState({ viewPx: 0, rem: 16 });
  useLayoutEffect(() => {
    const element = region.current;
    if (element === null) return undefined;
    const measure = (): void =>
      setSize((before) => {
        const now = { viewPx: element.clientWidth, rem: remPx() };
        return before.viewPx === now.viewPx && before.rem === now.rem ? before : now;
      });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const { viewPx, rem } = size;
  return useMemo(() => {
    const typeScale = rem / 16;
    const namePx = wide ? NAME_REM * rem : 0;
    const fit = (viewPx - namePx - AXIS_BEFORE_PX - AXIS_AFTER_PX * typeScale) / count;
    const least = wide ? LEAST_PX : LEAST_NARROW_PX;
    const pointPx = Math.max(least, Math.min(MOST_PX, Math.floor(fit * 2) / 2));
    const laneHeightPx = Math.max(44, Math.min(56, 2.75 * rem));
    const geometry = { count, pointPx, laneHeightPx, typeScale };
    return { geometry, namePx, viewPx, scrolls: namePx + axisWidthPx(geometry) > viewPx + 1 };
  }, [wide, viewPx, rem, count]);
}

interface GroupProps {
  readonly group: AxisGroup;
  readonly geometry: AxisGeometry;
  readonly chosen: string | null;
  readonly held: string | null;
  readonly drag: AxisDrag;
}

/** Built again only when something in it changed: a drag touches one group of many. */
function Group({ group, geometry, chosen, held, drag }: GroupProps): VNode {
  return useMemo(
    () => (
      <div class="ff-axis-group">
        <div class="ff-axis-name">
          <h3>{group.name}</h3>
          {group.note !== '' && <p class="ff-least ff-quiet">{group.note}</p>}
        </div>
        <div class="ff-axis-rows">
          {group.bars.length > 0 && (
            <AxisTrack bars={group.bars} geometry={geometry} chosen={chosen} held={held} drag={drag} />
          )}
          {group.graphs.map((graph) => (
            <AxisGraphView key={graph.id} graph={graph} geometry={geometry} />
          ))}
        </div>
      </div>
    ),
    [group, geometry, chosen, held, drag],
  );
}
