// The range of the plan, computed when it is asked for: progress, a stop, then the result, kept up with edits while it is
// wanted. Worked example: "Draw the range" shows a first fan at once, refined until all draws are in.
import type { VNode } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { RANGE_DRAWS, type RangeView, rangeFor } from '../../app/range.ts';
import { Button, ButtonRow, Progress } from '../../widgets/index.ts';
import { Fold, Part } from '../shared/parts.tsx';
import { type Shown, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { RangeResult, type ShownRange } from './range-result.tsx';
import { SpreadFields } from './spreads.tsx';

/** The range of a session as it stands, with its result ready to be shown. */
export function useRange(): { view: RangeView; shown: ShownRange | null; ask: () => void; stop: () => void } {
  const session = useSession();
  const work = rangeFor(session);
  const view = work.view.value;
  useEffect(work.expect, [work]);
  const { range, exactCheck } = view;
  const shown = useMemo(() => range && { ...range, exactCheck }, [range, exactCheck]);
  return { view, shown, ask: work.ask, stop: work.stop };
}

/** A range with its words, and that it is of before the last change where it is. */
export function DrawnRange(props: { of: Shown; range: ShownRange; isOlder: boolean }): VNode {
  const { plan, results, older } = props.of;
  return (
    <>
      {props.isOlder && <p class="ff-least">Of before the last change.</p>}
      <RangeResult
        plan={plan}
        results={results}
        range={props.range}
        older={older || props.isOlder}
        heightRem={14}
      />
    </>
  );
}

export function RangePart({ shown: of }: { shown: Shown }): VNode {
  const { view, shown, ask, stop } = useRange();
  const say = useSay();
  const isRunning = view.at === 'running';
  return (
    <Part title="How it may come out">
      {shown === null && !isRunning && (
        <p>
          The same weekly plan, {say.count(RANGE_DRAWS)} times over, each time a little otherwise: what sells,
          what opens and how late, who pays when, what goods cost.
        </p>
      )}
      {view.at === 'trouble' && <p role="alert">{view.trouble}</p>}
      {isRunning && (
        <Progress
          label={shown === null ? 'Drawing …' : `Drawing: ${say.count(shown.draws)} draws so far`}
          share={view.progress}
          stopLabel="Stop"
          onStop={stop}
        />
      )}
      {!isRunning && (view.at !== 'whole' || view.older) && (
        <ButtonRow>
          <Button kind="primary" onPress={ask}>
            {shown === null ? 'Draw the range' : 'Draw it again'}
          </Button>
        </ButtonRow>
      )}
      {shown !== null && <DrawnRange of={of} range={shown} isOlder={view.older} />}
      <Fold label="How far things may come out otherwise">
        <SpreadFields />
      </Fold>
    </Part>
  );
}
