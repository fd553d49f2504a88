// A computed range: the fan of cash, the chance that it runs out, what is needed, what moves the lowest cash most, and
// how exact all that is. Worked example: 10,000 draws; cash runs out in 35 %; 8 of 10 draws need 61,000 at most.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import type { ExactCheck, Range } from '../../domain/promise/range/index.ts';
import type { Results } from '../../domain/results.ts';
import { Figure, Table, type TableColumn } from '../../widgets/index.ts';
import { cashFanWords, exactWords } from '../shared/drawn-range.ts';
import { Figures, Fold } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { FanPicture } from './fan.tsx';
import { RANGE_SHEET, RangeSheet } from './range-sheet.tsx';
import {
  cashOutFigure,
  cashOutText,
  causeText,
  correlationText,
  needRows,
  type RangeFigure,
} from './range-words.ts';

export type ShownRange = Range & { exactCheck: ExactCheck | null };

export interface RangeResultProps {
  plan: Plan;
  results: Results;
  range: ShownRange;
  older: boolean;
  heightRem: number;
}

export function RangeResult({ plan, results, range, older, heightRem }: RangeResultProps): VNode {
  const say = useSay();
  const session = useSession();
  const why = (figure: RangeFigure) => () => session.openSheet(`${RANGE_SHEET}${figure}`);
  return (
    <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
      <h3 class="ff-label">Cash at the end of each week, in {plan.currency}</h3>
      <FanPicture
        what="Cash"
        fan={range.cash}
        plan={results.pass.balances.cash}
        perShown={10 ** results.minorDigits}
        text={wholeMoney(results, say)}
        heightRem={heightRem}
        alt={cashFanWords(range, say)}
      />
      <Figures>
        <Figure
          label="Chance that cash runs out"
          value={cashOutFigure(range, say)}
          note={cashOutText(range, say)}
          older={older}
          whereFrom={why('cashOut')}
        />
        {needRows(range, say).map(({ id, label, text, error }) => (
          <Figure
            key={id}
            label={label}
            value={text}
            note={`${error} with other draws`}
            older={older}
            whereFrom={why(id)}
          />
        ))}
      </Figures>
      <RangeSheet plan={plan} results={results} range={range} />
      <Drivers plan={plan} range={range} />
      <p>{atTheEnd(range, results, say)}</p>
      <Others results={results} range={range} />
      <HowExact range={range} />
    </div>
  );
}

const DRIVER_COLUMNS: readonly TableColumn[] = [
  { key: 'what', label: 'What moves the lowest cash', kind: 'text' },
  { key: 'how', label: 'Rank correlation (95 % limits)', kind: 'number' },
];
const DRIVERS_SHOWN = 5;

export function Drivers({ plan, range }: Pick<RangeResultProps, 'plan' | 'range'>): VNode | null {
  const say = useSay();
  if (range.drivers.length === 0) return null;
  // The doors of one account alone are that account's opening, said once.
  const told = range.drivers.filter(({ cause }) => plan.accounts.length > 1 || cause !== 'opens');
  const rows = told.slice(0, DRIVERS_SHOWN).map((driver) => ({
    id: `${driver.cause} ${driver.account}`,
    cells: [causeText(plan, driver), correlationText(driver, say)],
  }));
  return (
    <>
      <Table
        caption="What moves the lowest cash most"
        captionHidden
        columns={DRIVER_COLUMNS}
        rows={rows}
        compact
      />
      <p class="ff-least ff-quiet">Above 0: more of it leaves more cash. Below 0: more of it leaves less.</p>
    </>
  );
}

/** "At the end, in 8 of 10 draws: 0 to 172 doors, revenue of 0 to 3,610 a week." */
function atTheEnd({ doors, revenue }: ShownRange, results: Results, say: ScreenSay): string {
  const [count, money] = [wholeText(say), wholeMoney(results, say)];
  return `At the end, in 8 of 10 draws: ${endText(doors, count)} doors, revenue of ${endText(revenue, money)} a week.`;
}

function endText({ p10, p90 }: Range['doors'], text: (value: number) => string): string {
  return `${text(p10.at(-1) ?? 0)} to ${text(p90.at(-1) ?? 0)}`;
}

function Others({ results, range }: Pick<RangeResultProps, 'results' | 'range'>): VNode {
  const say = useSay();
  return (
    <Fold label="Doors and revenue as drawn">
      <div class="ff-stack">
        <h3 class="ff-label">Doors open</h3>
        <FanPicture
          what="Doors open"
          fan={range.doors}
          plan={null}
          perShown={1}
          text={wholeText(say)}
          heightRem={9}
          alt={`Doors open as drawn: ${endText(range.doors, wholeText(say))} at the end in 8 of 10 draws.`}
        />
        <h3 class="ff-label">Revenue a week</h3>
        <FanPicture
          what="Revenue"
          fan={range.revenue}
          plan={null}
          perShown={10 ** results.minorDigits}
          text={wholeMoney(results, say)}
          heightRem={9}
          alt={`Revenue as drawn: ${endText(range.revenue, wholeMoney(results, say))} in the last week in 8 of 10 draws.`}
        />
      </div>
    </Fold>
  );
}

/** Draws know nothing of cents. */
function wholeMoney({ minorDigits }: Results, say: ScreenSay): (minor: number) => string {
  return (minor) => say.count(Math.round(minor / 10 ** minorDigits));
}

function wholeText(say: ScreenSay): (value: number) => string {
  return (value) => say.count(Math.round(value));
}

function HowExact({ range }: Pick<RangeResultProps, 'range'>): VNode {
  const say = useSay();
  const { exactCheck: check } = range;
  return (
    <p class="ff-least ff-quiet">
      {say.count(range.draws)} draws of a quicker weekly pass, beside the plan’s exact one.
      {check !== null && ` ${exactWords(range, check, say)}`}
    </p>
  );
}
