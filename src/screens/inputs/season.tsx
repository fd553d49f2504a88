// Inputs of one product: how its sales move through the year, from a shape to start with to 52 factors of its own.
// Worked example: "Summer peak" puts 1.30 into week 28, marked as a guess until a week is typed over.
import type { VNode } from 'preact';
import { addPart } from '../../app/commands/field.ts';
import { dec } from '../../domain/money/decimal.ts';
import type { Item } from '../../domain/plan/index.ts';
import { SEASON_SHAPES, shapeOf } from '../../domain/season-shapes.ts';
import { Disclosure, LinkButton, SelectField } from '../../widgets/index.ts';
import { BasisTag, useBasis } from '../shared/basis-tag.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useField } from '../shared/use-field.ts';
import { useSay } from '../shared/use-say.ts';
import { useBulkHash } from './bulk-hash.ts';
import { Trouble } from './fields.tsx';
import './season.css';

const NONE = '';
const OWN = 'own';

export function SeasonSection({ base, item }: { base: string; item: Item }): VNode {
  const session = useSession();
  const path = `${base}/seasonFactors`;
  const note = useBasis(path);
  const { seasonFactors: factors } = item;
  const bulkHash = useBulkHash();
  const value = factors === null ? NONE : (shapeOf(factors)?.name ?? OWN);
  const choose = (name: string): void => {
    const shape = SEASON_SHAPES.find((each) => each.name === name);
    if (name === OWN) return;
    const notes =
      shape === undefined
        ? []
        : [{ path, kind: 'guess' as const, source: shape.source, low: null, high: null }];
    session.endStep();
    session.run(addPart, { path, value: shape === undefined ? null : [...shape.factors], notes }, path);
    session.endStep();
  };
  return (
    <>
      <SelectField
        label="Sells by season"
        value={value}
        choices={[
          { value: NONE, label: 'no' },
          ...SEASON_SHAPES.map(({ name, label }) => ({ value: name, label })),
          ...(value === OWN ? [{ value: OWN, label: 'Own factors' }] : []),
        ]}
        tag={note === null ? undefined : <BasisTag note={note} kind="text" />}
        onChoose={choose}
      />
      <p>
        <LinkButton kind="quiet" href={bulkHash('season')}>
          Paste a table of factors
        </LinkButton>
      </p>
      <Trouble path={path} />
      {factors !== null && (
        <>
          <YearPicture factors={factors} />
          <Disclosure summary="A factor for each week (1 is usual)">
            <WeekFactors path={path} count={factors.length} />
          </Disclosure>
        </>
      )}
    </>
  );
}

const HEIGHT = 60;
const PITCH = 6;

/** The year as bars, with the mean: other than 1, the season changes how much is sold in all. */
function YearPicture({ factors }: { factors: readonly string[] }): VNode {
  const say = useSay();
  const numbers = factors.map(Number);
  const most = Math.max(...numbers);
  const least = Math.min(...numbers);
  const top = Math.max(most, 1);
  const mean = factors.reduce((sum, factor) => sum.plus(factor), dec(0)).div(factors.length);
  const height = (factor: number) => (factor / top) * HEIGHT;
  const weekOf = (factor: number) => numbers.indexOf(factor) + 1;
  const words =
    most === least
      ? `The same in every week: ${say.number(dec(most))}.`
      : `Highest in week ${weekOf(most)} of the year, ${say.number(dec(most))}; lowest in week ${weekOf(least)}, ${say.number(dec(least))}.`;
  const rounded = mean.toDecimalPlaces(3);
  const meanWords = rounded.eq(1)
    ? 'The mean is 1.'
    : `The mean is ${say.number(rounded)}: in all it changes what a year sells.`;
  return (
    <figure class="ff-season">
      <svg viewBox={`0 0 ${PITCH * factors.length} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
        <path
          class="ff-season-bars"
          d={numbers
            .map(
              (factor, index) =>
                `M${index * PITCH + 1} ${HEIGHT}v${-height(factor)}h${PITCH - 2}v${height(factor)}z`,
            )
            .join('')}
        />
        <path class="ff-season-usual" d={`M0 ${HEIGHT - height(1)}H${PITCH * factors.length}`} />
      </svg>
      <figcaption class="ff-least ff-quiet">
        {words} {meanWords}
      </figcaption>
    </figure>
  );
}

/** A small box for each week by ISO number, four in a row on a phone. */
function WeekFactors({ path, count }: { path: string; count: number }): VNode {
  return (
    <div class="ff-season-weeks">
      {Array.from({ length: count }, (_, index) => (
        <WeekFactor key={index} path={`${path}/${index}`} week={index + 1} />
      ))}
    </div>
  );
}

function WeekFactor({ path, week }: { path: string; week: number }): VNode {
  usePlan();
  const field = useField({ path, label: `Week ${week}`, kind: 'factor' });
  return (
    <label class={field.problem === undefined ? 'ff-season-week' : 'ff-season-week ff-field-wrong'}>
      <span class="ff-least ff-quiet">{week}</span>
      <span class="ff-box">
        <input
          class="ff-input ff-number"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          enterkeyhint="next"
          aria-label={`Week ${week}`}
          aria-invalid={field.problem === undefined ? undefined : 'true'}
          value={field.text}
          onInput={(event) => field.onInput(event.currentTarget.value)}
          onBlur={() => field.onCommit()}
        />
      </span>
      {field.problem !== undefined && (
        <span class="ff-field-problem" role="alert">
          {field.problem}
        </span>
      )}
    </label>
  );
}
