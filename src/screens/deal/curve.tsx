// The payback curve: contribution less the money put down, week by week from the first opening, with the water line at zero
// and the week it is back for good. Worked figure: 63,000 down as 180 doors open, back in week 28 of 52.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { dec } from '../../domain/money/decimal.ts';
import {
  ChartFrame,
  type ChartGeometry,
  type ChartSeries,
  type TableColumn,
  type TableRow,
  xOf,
  yOf,
} from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { captionOf, useForKey, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import type { ShownDeal } from './column.tsx';

const COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'After week', kind: 'text' },
  { key: 'begins', label: 'It begins', kind: 'text' },
  { key: 'level', label: 'Cumulated', kind: 'number' },
];

export function PaybackCurve({ at }: { at: ShownDeal }): VNode {
  const { account, deal, results } = at;
  const say = useSay();
  const first = firstWeekOf(at);
  const perMinor = 10 ** results.minorDigits;
  const payback = deal.paybackWeeks?.toNumber() ?? null;
  const last = deal.cumulated.length - 1;
  const [chosen, setChosen] = useState<number | null>(null);
  const start =
    payback === null || deal.nothingDown ? last : Math.min(last, Math.max(0, Math.ceil(payback) - 1));
  const index = Math.min(chosen ?? start, last);
  const key = `${perMinor} ${first} ${deal.cumulated.join(' ')}`;
  const { series, xLabels } = useForKey(key, () => drawn(deal.cumulated, perMinor));
  const rows = useSettled([key, say], () => rowsOf(deal.cumulated, first, say));
  const formatTick = useMemo(() => (value: number) => tick(value, say), [say]);
  const level = (week: number): string => say.money(deal.cumulated[week] ?? 0);
  return (
    <ChartFrame
      alt={altText(at, say)}
      series={series}
      xLabels={xLabels}
      formatTick={formatTick}
      heightRem={13}
      showKey={false}
      tableLabel="The curve as a table"
      table={{
        caption: captionOf(`${account.name}: contribution less money down, cumulated`, rows),
        columns: COLUMNS,
        rows: rows.value,
        compact: true,
        bounded: true,
      }}
      scrubber={{
        label: `Week of the deal with ${account.name}`,
        index,
        onScrub: setChosen,
        pointText: `after week ${index + 1} (${say.weekDay(first + index)})`,
        valueText: level(index),
        previousLabel: 'A week earlier',
        nextLabel: 'A week later',
      }}
      overlay={(geometry) => (
        <Overlay
          geometry={geometry}
          payback={deal.nothingDown ? null : payback}
          text={backText(payback, say)}
        />
      )}
    />
  );
}

/** The week of the plan in which the first doors of the deal open. */
export function firstWeekOf({ account }: Pick<ShownDeal, 'account'>): number {
  const weeks = account.waves.map(({ openWeek }) => openWeek);
  return weeks.length === 0 ? 0 : Math.min(...weeks);
}

function drawn(cumulated: readonly number[], perMinor: number) {
  const line: ChartSeries = {
    id: 'cumulated',
    label: 'Contribution less money down',
    values: cumulated.map((level) => level / perMinor),
    style: 'line',
    colour: 'ours',
    fill: 'zero',
  };
  return { series: [line], xLabels: cumulated.map((_, week) => String(week + 1)) };
}

function rowsOf(cumulated: readonly number[], first: number, say: ScreenSay): TableRow[] {
  return cumulated.map((level, week) => ({
    id: String(week),
    cells: [`week ${week + 1}`, say.weekDay(first + week), say.moneyExact(level)],
  }));
}

/** Whole amounts on an axis, unless it is about small change. */
export function tick(value: number, say: ScreenSay): string {
  return value === 0 || Math.abs(value) >= 5 ? say.count(Math.round(value)) : say.sum(dec(value.toFixed(4)));
}

interface OverlayProps {
  geometry: ChartGeometry;
  payback: number | null;
  text: string;
}

/** The water line, and a tag where the curve comes up through it for good. */
function Overlay({ geometry, payback, text }: OverlayProps): VNode {
  const { leftPx, rightPx, topPx } = geometry;
  const zero = yOf(geometry, 0);
  const x = payback === null ? null : Math.max(leftPx, xOf(geometry, payback - 1));
  const share = x === null || rightPx === leftPx ? 0 : (x - leftPx) / (rightPx - leftPx);
  return (
    <>
      <svg class="ff-chart-svg" aria-hidden="true">
        <path class="ff-water" d={`M${leftPx} ${zero}H${rightPx}`} />
        {x !== null && (
          <>
            <path class="ff-plumb-line" d={`M${x} ${zero}V${topPx + 24}`} />
            <circle class="ff-plumb-bob" cx={x} cy={zero} r="4.5" />
          </>
        )}
      </svg>
      {x !== null && (
        <div
          class="ff-plumb-tag"
          style={{ left: `${x}px`, top: `${topPx}px`, transform: `translateX(${-100 * share}%)` }}
        >
          <span class="ff-curve-tag ff-number">{text}</span>
        </div>
      )}
    </>
  );
}

function backText(payback: number | null, say: ScreenSay): string {
  return payback === null ? '' : `back in week ${say.count(Math.max(1, Math.ceil(payback)))}`;
}

function altText({ account, deal }: ShownDeal, say: ScreenSay): string {
  const lowest = Math.min(0, ...deal.cumulated);
  const end = deal.cumulated.at(-1) ?? 0;
  const back =
    deal.paybackWeeks === null
      ? `not back within ${deal.termWeeks} weeks`
      : `back after ${say.number(deal.paybackWeeks)} weeks`;
  return (
    `${account.name}, contribution less money down over ${deal.termWeeks} weeks: ` +
    `lowest ${say.money(lowest)}, ${back}, ${say.money(end)} at the end.`
  );
}
