// The row under the time axis for the bar in hand: where it stands, a step earlier or later, what the moves did to the
// cash, and the sentence of a week that can't be.
// Worked example: "Almersfeld, opening 2", "week 14 (8 Jun)", "4 weeks later: lowest cash −26,000 in week 30, 2,115 higher."
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import { type AxisBar, TurnButton } from '../../widgets/index.ts';
import { sheetOfPath } from '../shared/input-places.ts';
import { problemSentence } from '../shared/problem-words.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { Before, WeekMoves } from './axis-moves.ts';

export interface AxisStripProps {
  plan: Plan;
  results: Results;
  /** The chosen bar; null while none is. */
  bar: AxisBar | null;
  moves: WeekMoves;
}

export function AxisStrip({ plan, results, bar, moves }: AxisStripProps): VNode {
  const say = useSay();
  const session = useSession();
  if (bar === null || bar.move === null) {
    return (
      <p class="ff-axis-strip ff-quiet">
        Drag an opening, a promotion or a closing by its mark, or choose it and step it: the cash follows.
      </p>
    );
  }
  const { label, valueText } = bar.move;
  const sheet = sheetOfPath(bar.id) ?? 'inputs';
  const step = (delta: number) => (repeat: boolean) => moves.onStep(bar.id, delta, repeat);
  return (
    <div class="ff-axis-strip">
      <div class="ff-axis-strip-row">
        <TurnButton
          label={`${label}: a week earlier`}
          way="back"
          onTurn={step(-1)}
          disabled={bar.from === 0}
        />
        <button
          type="button"
          class="ff-axis-strip-text"
          aria-label={`${label}, ${valueText}: all its fields`}
          onClick={() => session.openSheet(sheet)}
        >
          <span class="ff-label">{label}</span>
          <strong class="ff-number">{valueText}</strong>
        </button>
        <TurnButton
          label={`${label}: a week later`}
          way="on"
          onTurn={step(1)}
          disabled={bar.from >= results.pass.weeks - 1}
        />
      </div>
      <p class="ff-number" role="status">
        {moves.refusal === null
          ? movedWords({ bar, before: moves.before, results, say })
          : `${problemSentence(plan, moves.refusal)} It stays in ${say.week(bar.from)}.`}
      </p>
    </div>
  );
}

interface Moved {
  bar: AxisBar;
  before: Before | null;
  results: Results;
  say: ScreenSay;
}

/** The lowest cash as it is, and what the moves did to it. */
export function movedWords({ bar, before, results: { reading }, say }: Moved): string {
  const lowest = `lowest cash ${say.money(reading.lowestCash)} in week ${say.count(reading.lowestWeek)}`;
  const weeks = before === null ? 0 : bar.from - before.week;
  if (before === null || weeks === 0) return capital(`${lowest}.`);
  const many = Math.abs(weeks) === 1 ? '1 week' : `${say.count(Math.abs(weeks))} weeks`;
  const moved = `${many} ${weeks > 0 ? 'later' : 'earlier'}`;
  const cash = reading.lowestCash - before.lowestCash;
  const by = cash === 0 ? 'as before' : `${say.money(Math.abs(cash))} ${cash > 0 ? 'higher' : 'lower'}`;
  const lost = reading.lostUnits - before.lostUnits;
  const units = lost === 0 ? '' : ` ${say.count(Math.abs(lost))} ${lost > 0 ? 'more' : 'fewer'} units lost.`;
  return `${moved}: ${lowest}, ${by}.${units}`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
