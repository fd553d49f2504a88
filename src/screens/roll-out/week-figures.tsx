// The figures of the week at hand under the pictures: doors, what was wanted, found and lost, where the stock stands, what
// landed and how much of the capacity that took. Each opens where it comes from.
// Worked figure: 4,800 landed under a lid of 6,000 is 80 % of the capacity.
import type { VNode } from 'preact';
import type { FigureKey } from '../../domain/explain/types.ts';
import type { UnitName } from '../../domain/rollout/types.ts';
import { Figure, WhereFrom } from '../../widgets/index.ts';
import { Figures } from '../shared/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { fullestLine, lineHours } from './line-hours.ts';
import type { PictureOf } from './pictures.tsx';
import { UNIT_WORDS, unitSeries } from './unit-words.ts';
import { lidOfAll, stockNames } from './units-picture.tsx';

export interface WeekFiguresProps {
  shown: Shown;
  looked: PictureOf;
  week: number;
}

export function WeekFigures(props: WeekFiguresProps): VNode {
  const why = useWhy();
  return (
    <>
      <Figures>{props.looked.of === 'account' ? chainFigures(props) : productFigures(props)}</Figures>
      <p>
        <WhereFrom open={why({ of: 'documents', week: props.week })}>Documents of this week</WhereFrom>
      </p>
    </>
  );
}

function chainFigures({ shown, looked, week }: WeekFiguresProps): VNode[] {
  const account = looked.of === 'account' ? looked.index : 0;
  const accountId = shown.plan.accounts[account]?.id ?? '';
  return (['doors', 'sold', 'lost'] as const).map((figure) => (
    <Counted
      key={figure}
      label={figure === 'doors' ? 'Doors' : UNIT_WORDS[figure]}
      count={shown.results.pass.accounts[account]?.[figure][week] ?? 0}
      older={shown.older}
      from={{ of: 'accountWeek', accountId, figure, week }}
    />
  ));
}

function productFigures({ shown, looked, week }: WeekFiguresProps): VNode[] {
  const { plan, results, older } = shown;
  const { pass } = results;
  const item = looked.of === 'item' ? looked.index : null;
  const itemId = plan.items[item ?? -1]?.id ?? null;
  const doors = pass.accounts.reduce((sum, each) => sum + (each.doors[week] ?? 0), 0);
  const names: UnitName[] = ['demand', 'sold', 'lost', ...stockNames(pass), 'onOrder', 'made'];
  const units = names.map((unit) => (
    <Counted
      key={unit}
      label={UNIT_WORDS[unit]}
      count={unitSeries(pass, item, unit)[week] ?? 0}
      older={older}
      from={itemId === null ? { of: 'planUnits', unit, week } : { of: 'itemUnits', itemId, unit, week }}
    />
  ));
  const whole = (
    <Counted key="doors" label="Doors" count={doors} older={older} from={{ of: 'planDoors', week }} />
  );
  return [
    ...(item === null ? [whole] : []),
    ...units,
    <Capacity key="capacity" {...{ shown, item, week }} />,
    ...(item === null ? [<Cash key="cash" shown={shown} week={week} />] : []),
  ];
}

interface CountedProps {
  label: string;
  count: number;
  older: boolean;
  from: FigureKey;
}

function Counted({ label, count, older, from }: CountedProps): VNode {
  const say = useSay();
  const why = useWhy();
  return <Figure label={label} value={say.count(count)} size="row" older={older} whereFrom={why(from)} />;
}

/** Of a lid in units; of a line that products share, in hours. */
function Capacity({ shown, item, week }: { shown: Shown; item: number | null; week: number }): VNode {
  const say = useSay();
  const { plan, results, older } = shown;
  const lid = lidOfAll(results.compiled, item)?.[week];
  const landed = unitSeries(results.pass, item, 'made')[week] ?? 0;
  const ofLine = item === null ? fullestLine(lineHours(plan, results), week) : null;
  const share = lid === undefined ? ofLine : lid === 0 ? null : landed / lid;
  const text = share === null ? (lid === undefined ? 'no lid' : 'none') : say.percent(share);
  return <Figure label="Capacity used" value={text} size="row" older={older} />;
}

function Cash({ shown, week }: { shown: Shown; week: number }): VNode {
  const say = useSay();
  const why = useWhy();
  return (
    <Figure
      label="Cash at its end"
      value={say.money(shown.results.pass.balances.cash[week] ?? 0)}
      size="row"
      older={shown.older}
      whereFrom={why({ of: 'week', run: 'plan', week, figure: 'cash' })}
    />
  );
}
