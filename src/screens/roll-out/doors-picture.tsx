// Doors open over the weeks: all of them, and each chain's where there are several. Its table is one tap away.
// Worked figure: 180 doors opening 45 a week from week 10 stand at 180 from week 13.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import type { PassResult } from '../../domain/rollout/types.ts';
import type { ScrubberProps } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekPicture, type WeekSeries } from './week-picture.tsx';

export interface PictureProps {
  plan: Plan;
  pass: PassResult;
  /** Places of the chains that count. */
  accounts: readonly number[];
  /** The week looked at. */
  week: number;
  heightRem: number;
  onWeek: ScrubberProps['onScrub'] | undefined;
}

/** Lines of single chains are drawn up to this many; more would not be told apart. */
const LINES_MOST = 4;
const STYLES = ['dashed', 'dotted', 'thin', 'dashDot'] as const;

export function DoorsPicture({ plan, pass, accounts, week, heightRem, onWeek }: PictureProps): VNode {
  const say = useSay();
  const all = doorsOf(pass, accounts);
  const only = accounts.length === 1 ? plan.accounts[accounts[0] ?? 0]?.name : undefined;
  const single = accounts.length > 1 && accounts.length <= LINES_MOST ? accounts : [];
  const series: WeekSeries[] = [
    {
      id: 'all',
      label: only ?? 'All doors',
      column: only ?? 'All doors',
      values: all,
      style: 'step',
      colour: 'ink',
    },
    ...single.map((account, index): WeekSeries => {
      const name = plan.accounts[account]?.name ?? '';
      const values = doorsOf(pass, [account]);
      return {
        id: String(account),
        label: name,
        column: name,
        values,
        style: STYLES[index] ?? 'thin',
        colour: 'ink2',
      };
    }),
  ];
  return (
    <WeekPicture
      title={only === undefined ? 'Doors open, by week' : `${only}: doors open, by week`}
      alt={`Doors open by week: ${say.count(all[0] ?? 0)} in the first week, at most ${say.count(Math.max(0, ...all))}, ${say.count(all.at(-1) ?? 0)} in the last.`}
      series={series}
      week={week}
      heightRem={heightRem}
      tableLabel="Doors as a table"
      scrubber={onWeek && { onScrub: onWeek, valueText: `${say.count(all[week] ?? 0)} doors` }}
    />
  );
}

/** Doors of some chains together, by week. */
export function doorsOf(pass: PassResult, accounts: readonly number[]): number[] {
  return Array.from({ length: pass.weeks }, (_, week) =>
    accounts.reduce((sum, account) => sum + (pass.accounts[account]?.doors[week] ?? 0), 0),
  );
}
