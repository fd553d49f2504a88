// Two offers against each other: where the better one changes, on units sold, on what the company is sold for, on growth; a
// picture of both with the crossings marked, the same in words; and which of all offers wins how often.
// Worked figure: under 72,000 units the royalty costs less, from there the loan does.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { turningOf } from '../../domain/offers/index.ts';
import type { Turned } from '../../domain/offers/turning.ts';
import { AXES, type Axis } from '../../domain/offers/types.ts';
import { Segmented, SelectField } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { useSay } from '../shared/use-say.ts';
import { AxisPicture } from './axis-picture.tsx';
import {
  AXIS_NAMES,
  type PairProps,
  pointSentence,
  pointsOf,
  sharesSentence,
  standsSentence,
} from './axis-words.ts';
import { Wins } from './futures.tsx';
import { type MoneyModel, useOfferGrowth } from './model.ts';

export function Against({ model }: { model: MoneyModel }): VNode {
  const { plan } = model;
  const [chosen, setChosen] = useState<readonly [string | null, string | null]>([null, null]);
  const [axis, setAxis] = useState<Axis>('exit');
  const ids = plan.offers.map(({ id }) => id);
  const one = ids.find((id) => id === chosen[0]) ?? ids[0] ?? '';
  const other = ids.find((id) => id === chosen[1] && id !== one) ?? ids.find((id) => id !== one) ?? '';
  const followed = useOfferGrowth(plan, one, other);
  const answer = followed?.answer ?? null;
  const choices = plan.offers.map(({ id, name }) => ({ value: id, label: name }));
  const growth = answer?.ok === true ? answer.value : null;
  const waiting = answer === null ? 'being worked out …' : answer.ok ? '' : answer.trouble;
  // Of this pair alone: each step then costs the same, however many offers there are.
  const now = useMemo(() => turningOf(plan, model.money, [one, other]), [plan, model.money, one, other]);
  const turned = useMemo(() => allTurned(now, growth), [now, growth]);
  const pick = (first: string, second: string): void => setChosen([first, first === second ? one : second]);
  return (
    <Part title="Against each other">
      <div class="ff-money-pair">
        <SelectField label="This offer" value={one} choices={choices} onChoose={(id) => pick(id, other)} />
        <SelectField
          label="Against"
          value={other}
          choices={choices.filter(({ value }) => value !== one)}
          onChoose={(id) => setChosen([one, id])}
        />
      </div>
      <Turns
        model={model}
        turned={turned}
        pair={[one, other]}
        waiting={waiting}
        growthIsOlder={followed?.older ?? false}
      />
      <Segmented
        label="Picture by"
        value={axis}
        choices={AXES.map((each) => ({ value: each, label: AXIS_NAMES[each] }))}
        onChoose={(value) => setAxis(AXES.find((each) => each === value) ?? 'exit')}
      />
      <AxisPicture model={model} turned={turned} axis={axis} pair={[one, other]} />
      <Wins model={model} />
    </Part>
  );
}

function allTurned(now: Turned, growth: Turned | null): Turned {
  if (growth === null) return now;
  return { series: [...now.series, ...growth.series], points: [...now.points, ...growth.points] };
}

interface TurnsProps extends PairProps {
  waiting: string;
  growthIsOlder: boolean;
}

/** One line an axis: its crossings, or who is better all along. */
function Turns({ model, turned, pair, waiting, growthIsOlder }: TurnsProps): VNode {
  const say = useSay();
  return (
    <ul class="ff-said" aria-label="Turning points">
      {AXES.map((axis) => {
        const series = turned.series.find(({ on }) => on === axis);
        if (series === undefined || series.places.length < 2) {
          return (
            <li key={axis} class="ff-quiet">
              {AXIS_NAMES[axis]}: {noneWords(axis, waiting)}
            </li>
          );
        }
        const points = pointsOf(turned, pair, axis);
        const words =
          points.length === 0
            ? standsSentence({ model, series, pair, say })
            : points.map((point) => pointSentence({ model, point, say })).join(' ');
        return (
          <li key={axis}>
            <span class="ff-label">{AXIS_NAMES[axis]}.</span> {words}
            {axis === 'units' && ` ${sharesSentence(model, pair)}`}
            {axis === 'growth' && growthIsOlder && (
              <span class="ff-quiet"> Of the plan before the last edit.</span>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function noneWords(axis: Axis, waiting: string): string {
  if (axis === 'units') return 'the plan sells none.';
  return axis === 'growth' && waiting !== '' ? waiting : 'can’t be worked out.';
}
