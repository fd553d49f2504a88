// The terms in play, 48 px each: name with what was last said of it beneath, the value in a box that takes keys and
// pastes, − and + at the thumb's edge. A tap on the name makes the keys step by a tenth, as holding Shift does. On touch
// the value opens our own keypad, and two rows make room for it.
// Worked example: "Margin / ask 42 % · ours 40 %", 41.5 %, −, +.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { OfferSaid } from '../../domain/plan/index.ts';
import { termsFrom } from '../../domain/talks/index.ts';
import type { Term } from '../../domain/talks/types.ts';
import { classNames, Keypad, StepButton } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { textOf } from '../shared/typed-kinds.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { valueIn } from './moves.ts';
import type { Rows } from './rows-model.ts';
import { KIND_OF, unitText, valueText } from './term-words.ts';

export { useRows } from './rows-model.ts';

/** Rows that stay above the keypad. */
const ROWS_WITH_KEYPAD = 3;

export interface TermRowsProps {
  model: TalksModel;
  rows: Rows;
  keypad: boolean;
  wide: boolean;
}

export function TermRows({ model, rows, keypad, wide }: TermRowsProps): VNode {
  const session = useSession();
  const { inPlay, terms } = model;
  const shown = keypad ? around(inPlay, rows.active) : inPlay;
  const others = terms.length - inPlay.length;
  return (
    <div class="ff-talks-rows">
      {shown.map((term) => (
        <Row key={term.name} model={model} rows={rows} term={term} wide={wide} />
      ))}
      {!keypad && inPlay.length < 5 && others > 0 && (
        <button type="button" class="ff-talks-more ff-label" onClick={() => session.openSheet('terms')}>
          More terms ({others})
        </button>
      )}
    </div>
  );
}

/** Three rows with the active one among them. */
function around(inPlay: readonly Term[], active: string | null): readonly Term[] {
  const at = inPlay.findIndex(({ name }) => name === active);
  const from = Math.min(Math.max(0, at - 1), Math.max(0, inPlay.length - ROWS_WITH_KEYPAD));
  return inPlay.slice(from, from + ROWS_WITH_KEYPAD);
}

interface RowProps {
  model: TalksModel;
  rows: Rows;
  term: Term;
  wide: boolean;
}

function Row({ model, rows, term, wide }: RowProps): VNode {
  const say = useSay();
  const [tenths, setTenths] = useState(false);
  const typing = rows.typings[term.name];
  const wrong = typing !== undefined && typing.problem !== '';
  const said = saidWords(model, term, say);
  const active = rows.active === term.name;
  return (
    <div class={classNames('ff-talks-row', active && 'ff-talks-active', wrong && 'ff-talks-wrong')}>
      <button
        type="button"
        class="ff-talks-name"
        aria-pressed={tenths}
        title="Steps by a tenth"
        onClick={() => setTenths(!tenths)}
      >
        <span class="ff-label">{term.label}</span>
        <span class="ff-talks-said ff-least">
          {tenths ? 'by tenths' : said}
          {tenths && <span class="ff-spoken">; {said}</span>}
        </span>
      </button>
      <ValueBox
        rows={rows}
        term={term}
        text={typing?.text}
        currency={model.plan.currency}
        wide={wide}
        wrong={wrong}
      />
      <span class="ff-talks-steps">
        {([-1, 1] as const).map((direction) => (
          <StepButton
            key={direction}
            label={term.label}
            direction={direction}
            onStep={(_, kind) => rows.step(term, direction, { ...kind, fine: kind.fine || tenths })}
          />
        ))}
      </span>
    </div>
  );
}

interface ValueBoxProps {
  rows: Rows;
  term: Term;
  text: string | undefined;
  currency: string;
  wide: boolean;
  wrong: boolean;
}

function ValueBox({ rows, term, text, currency, wide, wrong }: ValueBoxProps): VNode {
  const say = useSay();
  const shown = text ?? textOf({ value: term.value, kind: KIND_OF[term.unit], currency });
  return (
    <label class="ff-talks-box">
      <input
        id={`talks-${term.name}`}
        class="ff-talks-input ff-number"
        type="text"
        size={Math.max(2, shown.length)}
        inputMode={wide ? 'decimal' : 'none'}
        autocomplete="off"
        enterkeyhint="next"
        aria-label={`${term.label}, ${unitText(term, say)}`}
        aria-invalid={wrong ? 'true' : undefined}
        value={shown}
        onInput={(event) => rows.type(term, event.currentTarget.value)}
        onFocus={(event) => {
          if (rows.active !== term.name) rows.activate(term.name);
          event.currentTarget.select();
        }}
        onBlur={() => rows.leave(term)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
          event.preventDefault();
          const kind = { fine: event.shiftKey, repeat: event.repeat };
          rows.step(term, event.key === 'ArrowUp' ? 1 : -1, kind);
        }}
      />
      <span class="ff-talks-unit ff-least" aria-hidden="true">
        {unitText(term, say)}
      </span>
    </label>
  );
}

const SAID: readonly { said: OfferSaid['said']; word: string }[] = [
  { said: 'ask', word: 'ask' },
  { said: 'ours', word: 'ours' },
  { said: 'agreed', word: 'agreed' },
];

/** What each side last said of a term, where it ever said anything but what the plan has. */
function saidWords({ table, terms }: TalksModel, { name }: Term, say: ScreenSay): string {
  const term = terms.find((each) => each.name === name);
  if (term === undefined) return '';
  const isTouched = table.log.some((offer) => valueIn(term, termsFrom(offer.terms)) !== term.value);
  if (!isTouched) return '';
  return SAID.flatMap(({ said, word }) => {
    const last = table.log.findLast((offer) => offer.said === said);
    return last === undefined
      ? []
      : [`${word} ${valueText(term, valueIn(term, termsFrom(last.terms)), say)}`];
  }).join(' · ');
}

/** Types into the active row; Next goes to the row below. */
export function TalksKeypad({ model, rows }: { model: TalksModel; rows: Rows }): VNode | null {
  const say = useSay();
  const at = model.inPlay.findIndex(({ name }) => name === rows.active);
  const term = model.inPlay[at];
  if (term === undefined) return null;
  const next = model.inPlay[at + 1];
  const text =
    rows.typings[term.name]?.text ??
    textOf({ value: term.value, kind: KIND_OF[term.unit], currency: model.plan.currency });
  return (
    <div class="ff-talks-keypad">
      <Keypad
        label={`Keypad for ${term.label}`}
        value={text}
        separator={say.separator}
        onInput={(typed) => rows.type(term, typed)}
        onNext={next === undefined ? undefined : () => rows.activate(next.name)}
        onDone={() => {
          const focused = document.activeElement;
          if (focused instanceof HTMLElement) focused.blur();
          rows.activate(null);
        }}
      />
    </div>
  );
}
