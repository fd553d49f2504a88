// The range as pictures: cash by week with the tenth, the middle and the ninth of ten draws, the plan's own line beside
// them, the water line at zero; doors and revenue the same way. Drawn from a result, wherever it comes from.
// Worked example: in week 26 a tenth of the draws hold less than −61,000, half less than −28,000.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Fan } from '../../domain/promise/range/index.ts';
import { ChartFrame, type ChartSeries, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { tick } from '../deal/curve.tsx';
import { fanSeries } from '../shared/drawn-range.ts';
import { useSay } from '../shared/use-say.ts';

export interface FanPictureProps {
  /** "Cash", "Doors open", "Revenue". */
  what: string;
  fan: Fan;
  /** The plan's own line, week by week, in the fan's units; null where there is none beside it. */
  plan: ArrayLike<number> | null;
  /** What one of a shown unit is in the fan's: 100 where the fan counts cents. */
  perShown: number;
  text: (value: number) => string;
  heightRem: number;
  alt: string;
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'Week', kind: 'text' },
  { key: 'p10', label: 'A tenth below', kind: 'number' },
  { key: 'p50', label: 'Half below', kind: 'number' },
  { key: 'p90', label: 'Nine tenths below', kind: 'number' },
];

export function FanPicture(props: FanPictureProps): VNode {
  const { what, fan, plan, perShown, text, heightRem, alt } = props;
  const say = useSay();
  const series = useMemo(() => seriesOf(fan, plan, perShown), [fan, plan, perShown]);
  const xLabels = useMemo(() => Array.from(fan.p50, (_, week) => String(week)), [fan]);
  const formatTick = useMemo(() => (value: number) => tick(value, say), [say]);
  const rows = useMemo(
    () =>
      Array.from(
        fan.p50,
        (middle, week): TableRow => ({
          id: String(week),
          cells: [say.week(week), text(fan.p10[week] ?? 0), text(middle), text(fan.p90[week] ?? 0)],
        }),
      ),
    [fan, say],
  );
  return (
    <ChartFrame
      alt={alt}
      series={series}
      xLabels={xLabels}
      formatTick={formatTick}
      heightRem={heightRem}
      table={{ caption: `${what} by week, as drawn`, columns: COLUMNS, rows, compact: true, bounded: true }}
      tableLabel="The weeks as a table"
      showKey
    />
  );
}

function seriesOf(fan: Fan, plan: FanPictureProps['plan'], perShown: number): ChartSeries[] {
  const own = plan && Array.from(plan, (value) => value / perShown);
  return [
    ...fanSeries(fan, perShown),
    ...(own === null
      ? []
      : [
          { id: 'plan', label: 'The plan', values: own, style: 'step', colour: 'ink', fill: 'none' } as const,
        ]),
  ];
}
