// From period to period: one at a time on a phone, a page of them where there is room. The week it leaves off at is the
// week looked at on Cash and Roll-out too. Worked example: "Mar 2026, weeks 0 to 4 ›" steps to April, which begins in week 5.
import type { VNode } from 'preact';
import type { Period } from '../../domain/statements/index.ts';
import { Button } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import { periodWords, weeksWords } from './period-words.ts';

export interface PeriodStepsProps {
  periods: readonly Period[];
  /** Place of the first period in sight, and how many are. */
  first: number;
  across: number;
  onWeek: (week: number) => void;
}

export function PeriodSteps({ periods, first, across, onWeek }: PeriodStepsProps): VNode | null {
  const say = useSay();
  const from = periods[first];
  const to = periods[Math.min(first + across, periods.length) - 1];
  if (from === undefined || to === undefined) return null;
  const before = periods[first - across];
  const after = periods[first + across];
  const words = from === to ? periodWords(from, say) : `${periodWords(from, say)} to ${periodWords(to, say)}`;
  const step = (period: Period | undefined, sign: string, label: string): VNode => (
    <Button label={label} disabled={period === undefined} onPress={() => period && onWeek(period.fromWeek)}>
      {sign}
    </Button>
  );
  return (
    <div class="ff-period-steps ff-no-print">
      {step(before, '‹', 'Earlier')}
      <p class="ff-number" aria-live="polite">
        <strong>{words}</strong>
        {from === to && from.kind !== 'week' && <span class="ff-quiet ff-least"> {weeksWords(from)}</span>}
      </p>
      {step(after, '›', 'Later')}
    </div>
  );
}
