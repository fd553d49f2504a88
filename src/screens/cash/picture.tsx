// The cash picture: the balance from the first day on, the deepest point named, what happened when above it, and a slider
// that reads any week. Worked figure: −28,115 in week 26 hangs below the water line: need 53,115, have 25,000.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { rangeFor } from '../../app/range.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import { CashPicture } from '../../widgets/index.ts';
import { tick } from '../deal/curve.tsx';
import { cashFanWords } from '../shared/drawn-range.ts';
import { useSession } from '../shared/session-context.ts';
import { captionOf, useSettled } from '../shared/settled.ts';
import { useSay } from '../shared/use-say.ts';
import { altOf, noteOf, tagOf } from './cash-words.ts';
import { lanesOf } from './lanes.ts';
import { useCashFan } from './range.tsx';
import { WEEK_COLUMNS, weekRows } from './week-rows.ts';

export interface CashDrawingProps {
  plan: Plan;
  results: Results;
  week: number;
  onWeek: (week: number) => void;
}

export function CashDrawing({ plan, results, week, onWeek }: CashDrawingProps): VNode {
  const say = useSay();
  const { pass, reading, minorDigits } = results;
  const perMinor = 10 ** minorDigits;
  const hasCash = plan.business.openingCashAmount !== null;
  const values = useMemo(() => Array.from(pass.balances.cash, (cash) => cash / perMinor), [pass, perMinor]);
  const xLabels = useMemo(() => values.map((_, index) => String(index)), [values]);
  const rows = useSettled([pass, say], () => weekRows(pass, reading.lowestWeek, say));
  const lanes = useMemo(() => lanesOf({ plan, results, say }), [plan, results, say]);
  const fan = useCashFan(perMinor);
  const { range } = rangeFor(useSession()).view.value;
  const formatTick = useMemo(() => (value: number) => tick(value, say), [say]);
  return (
    <CashPicture
      alt={`${altOf(results, say)} ${fan.length === 0 || range === null ? '' : cashFanWords(range, say)}`.trim()}
      balanceLabel="Cash at the week’s end"
      values={values}
      range={fan}
      xLabels={xLabels}
      formatTick={formatTick}
      low={{
        index: reading.lowestWeek,
        value: reading.lowestCash / perMinor,
        tagText: tagOf(results, say),
        noteText: noteOf(results, hasCash, say),
      }}
      lanes={lanes}
      heightRem={15}
      tableLabel="The weeks as a table"
      table={{
        caption: captionOf('Cash by week', rows),
        columns: WEEK_COLUMNS,
        rows: rows.value,
        compact: true,
        bounded: true,
      }}
      scrubber={{
        label: 'Week of the cash plan',
        index: week,
        onScrub: onWeek,
        pointText: say.week(week),
        valueText: `${say.money(pass.balances.cash[week] ?? 0)} at its end`,
        previousLabel: 'A week earlier',
        nextLabel: 'A week later',
      }}
    />
  );
}
