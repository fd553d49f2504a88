// The roll-out on one time axis: every chain's openings, promotions, displays and closings, every product's orders and
// what lands under its lid, and the cash below, all on the same weeks. What is moved shows in the cash in the same frame.
// Worked example: an opening dragged from week 10 to week 14 moves its fill, its orders and the lowest week with it.
import type { VNode } from 'preact';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { type AxisGroup, AxisKey, Disclosure, SelectField, Table, TimeAxis } from '../../widgets/index.ts';
import { useKept } from '../shared/kept.ts';
import { Part } from '../shared/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { captionOf, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import { cashGraph } from './axis-cash.ts';
import { chainGroup } from './axis-chains.ts';
import { useWeekMoves } from './axis-moves.ts';
import { lineGroup, productGroup } from './axis-products.ts';
import { AxisStrip } from './axis-strip.tsx';
import { CALENDAR_COLUMNS, calendarRows, KINDS } from './axis-table.ts';
import { axisTime, isWeekCount, WEEK_COUNTS } from './axis-weeks.ts';
import { lineHours } from './line-hours.ts';

export interface RollOutAxisProps {
  shown: Shown;
  week: number;
  onWeek: (week: number) => void;
}

export function RollOutAxis({ shown, week, onWeek }: RollOutAxisProps): VNode {
  const { plan, results } = shown;
  const say = useSay();
  const weeks = results.pass.weeks;
  const [kept, setCount] = useKept('weeks-as', isWeekCount);
  const count = kept ?? 'plan';
  const { startDay } = results.compiled;
  const { scales, lines } = useMemo(() => axisTime({ startDay, weeks, count }), [startDay, weeks, count]);
  const chains = plan.accounts.map((account) => chainGroup({ account, weeks, say }));
  const products = useMemo(
    () => [
      ...plan.items.map((_, index) => productGroup({ plan, results, index, say })),
      ...lineHours(plan, results).map((hours) => lineGroup(hours, say)),
    ],
    [results, say],
  );
  const docked = useMemo(() => [cashGraph(results, say)], [results, say]);
  const groups = [...chains, ...products];
  const moves = useWeekMoves(weeks);
  const bar = groups.flatMap(({ bars }) => bars).find(({ id }) => id === moves.chosen) ?? null;
  const whole = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (moves.chosen !== null) whole.current?.scrollIntoView({ block: 'nearest', behavior: 'instant' });
  }, [moves.chosen]);
  const rows = useSettled([results, say], () => calendarRows({ plan, results, groups, say }));
  return (
    <Part title="Week by week">
      <SelectField
        label="Weeks counted as"
        value={count}
        choices={[...WEEK_COUNTS]}
        onChoose={(value) => {
          if (isWeekCount(value)) setCount(value);
        }}
      />
      <div class="ff-axis-whole" ref={whole}>
        <TimeAxis
          label="The roll-out week by week"
          count={weeks}
          scales={scales}
          lines={lines}
          groups={groups}
          docked={docked}
          index={week}
          onIndex={onWeek}
          chosen={moves.chosen}
          onShift={moves.onShift}
          onStep={moves.onStep}
          onChoose={moves.choose}
        />
        <AxisStrip plan={plan} results={results} bar={bar} moves={moves} />
      </div>
      <AxisKey entries={keyOf(groups)} />
      <Disclosure summary="The calendar as a table">
        <Table
          caption={captionOf('What happens when', rows)}
          columns={CALENDAR_COLUMNS}
          rows={rows.value}
          compact
          bounded
        />
      </Disclosure>
    </Part>
  );
}

/** Only what stands on the axis. */
function keyOf(groups: readonly AxisGroup[]) {
  const drawn = new Set(groups.flatMap(({ bars }) => bars.map(({ drawing }) => drawing)));
  return (['truck', 'tag', 'shelf', 'closed'] as const)
    .filter((drawing) => drawn.has(drawing))
    .map((drawing) => ({ drawing, label: KINDS[drawing] }));
}
