/**
 * Hands stacked into a price, as a ladder: zero at the foot, the price tag hung on top, the height between two
 * rungs to scale. Label rows at the right are the targets and carry every value as text; the chosen rung has a
 * grip. Worked figure: of a price of 5.00 a hand that keeps 1.25 is a quarter of the height.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { classNames } from './class-names.ts';
import type { StepDirection } from './Fields.tsx';
import { PriceTag } from './Figure.tsx';
import type { StepKind } from './hold-repeat.ts';
import { LadderDrawing, labelsLeftPx, leftPx, rightPx } from './LadderDrawing.tsx';
import { type DragPhase, LadderGrip, stepByKey } from './LadderGrip.tsx';
import { layOutLadder } from './ladder-layout.ts';
import { type Owner, OwnerMark } from './Marks.tsx';
import { remPx } from './media.ts';

export interface LadderRung {
  readonly id: string;
  readonly label: string;
  readonly valueText: string;
  /** Its part of the whole, e.g. "25.0 %"; may be empty. */
  readonly shareText: string;
  /** What this hand keeps, in one unit for all rungs; negative when it loses. */
  readonly height: number;
  readonly owner: Owner;
  readonly locked: boolean;
  /** This one changes when another is moved. */
  readonly givesWay: boolean;
  readonly selected: boolean;
}

export interface LadderPictureProps {
  /** Spoken name of the picture. */
  readonly label: string;
  /** At the foot, e.g. "0". */
  readonly footLabel: string;
  /** Small print of the tag on top, and its price. */
  readonly topLabel: string;
  readonly topPrice: string;
  readonly currency?: string | undefined;
  /** Foot first. */
  readonly rungs: readonly LadderRung[];
  /** Whose money, in words, for those who can't see the marks. */
  readonly ownerNames: Readonly<Record<Owner, string>>;
  readonly lockedText: string;
  readonly givesWayText: string;
  /** Least height of the ladder in rem; it grows to give every label its row. */
  readonly heightRem: number;
  readonly onSelect: (id: string) => void;
  readonly onStep: (id: string, direction: StepDirection, kind: StepKind) => void;
  /** delta: change since the drag started, in the unit of the heights. */
  readonly onDrag: (id: string, delta: number, phase: DragPhase) => void;
  /** Below the picture: its table, in a Disclosure. */
  readonly children?: ComponentChildren | undefined;
}

/** The whole picture. */
export function LadderPicture(props: LadderPictureProps): VNode {
  const list = useRef<HTMLOListElement>(null);
  const [dragging, setDragging] = useState(false);
  const rowHeightsPx = useRowHeights(list, props.rungs.length);
  const layout = layOutLadder({
    heights: props.rungs.map((rung) => rung.height),
    rowHeightsPx,
    leastHeightPx: props.heightRem * remPx(),
  });
  const chosen = props.rungs.findIndex((rung) => rung.selected);
  const rung = props.rungs[chosen];
  return (
    <figure class={classNames('ff-ladder', dragging && 'ff-ladder-dragging')} aria-label={props.label}>
      <div class="ff-ladder-top" style={{ paddingLeft: `${leftPx - 6}px` }}>
        <PriceTag text={props.topPrice} currency={props.currency} label={props.topLabel} />
      </div>
      <div class="ff-ladder-body" style={{ height: `${layout.heightPx}px` }}>
        <LadderDrawing rungs={props.rungs} layout={layout} rowHeightsPx={rowHeightsPx} />
        <ol class="ff-ladder-labels" ref={list} style={{ left: `${labelsLeftPx}px` }} reversed>
          {props.rungs
            .map((each, index) => (
              <LabelRow key={each.id} rung={each} topPx={layout.labelTopsPx[index] ?? 0} {...props} />
            ))
            .reverse()}
        </ol>
        {rung !== undefined && !rung.locked && (
          <LadderGrip
            label={rung.label}
            valueText={`${rung.valueText} ${rung.shareText}`}
            value={rung.height}
            centrePx={layout.bands[chosen]?.rungPx ?? 0}
            xPx={(leftPx + rightPx) / 2}
            unitsPerPx={layout.unitsPerPx}
            onStep={(direction, kind) => props.onStep(rung.id, direction, kind)}
            onDrag={(delta, phase) => {
              setDragging(phase === 'start' || phase === 'move');
              props.onDrag(rung.id, delta, phase);
            }}
          />
        )}
      </div>
      <p class="ff-ladder-foot ff-number" style={{ width: `${rightPx + leftPx}px` }}>
        {props.footLabel}
      </p>
      {props.children}
    </figure>
  );
}

type LabelRowProps = Pick<
  LadderPictureProps,
  'ownerNames' | 'lockedText' | 'givesWayText' | 'onSelect' | 'onStep'
> & {
  readonly rung: LadderRung;
  readonly topPx: number;
};

/** One hand in words: the row is the target, not the thin band. */
function LabelRow({
  rung,
  topPx,
  ownerNames,
  lockedText,
  givesWayText,
  onSelect,
  onStep,
}: LabelRowProps): VNode {
  const state = [rung.locked && lockedText, rung.givesWay && givesWayText].filter((word) => word !== false);
  return (
    <li class="ff-ladder-item" style={{ transform: `translateY(${topPx}px)` }}>
      <button
        type="button"
        class="ff-ladder-row"
        aria-pressed={rung.selected}
        onClick={() => onSelect(rung.id)}
        onKeyDown={(event) => stepByKey(event, (direction, kind) => onStep(rung.id, direction, kind))}
      >
        <OwnerMark owner={rung.owner} label={ownerNames[rung.owner]} />
        <span class="ff-ladder-name">
          {rung.label}
          {state.length > 0 && <span class="ff-ladder-state"> {state.join(', ')}</span>}
        </span>
        <span class="ff-ladder-value ff-number">
          {rung.valueText}
          <span class="ff-ladder-share"> {rung.shareText}</span>
        </span>
      </button>
    </li>
  );
}

/** Heights of the label rows, foot first, as they come out of the page; 44 px until then. */
function useRowHeights(
  list: { readonly current: HTMLOListElement | null },
  count: number,
): readonly number[] {
  const usual = 2.75 * remPx();
  const [heights, setHeights] = useState<readonly number[]>([]);
  const measure = (): void => {
    const rows = [...(list.current?.children ?? [])]
      .map((row) => row.getBoundingClientRect().height)
      .reverse();
    if (rows.length !== heights.length || rows.some((row, index) => row !== heights[index])) setHeights(rows);
  };
  useLayoutEffect(measure);
  const latest = useRef(measure);
  latest.current = measure;
  useLayoutEffect(() => {
    if (list.current === null) return undefined;
    const observer = new ResizeObserver(() => latest.current());
    observer.observe(list.current);
    return () => observer.disconnect();
  }, []);
  return Array.from({ length: count }, (_, index) => Math.max(usual, heights[index] ?? usual));
}
