// The seven rows: a label with what it reads back, a real text box, and on money down the switch for free fill. On touch
// no device keyboard comes up: the keypad below types into the box. A key or a paste types too.
// Worked example: "Margin the retailer wants / markup 72.4 %" beside a box with 42.
import type { VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { SevenKey } from '../../domain/quick/index.ts';
import { classNames } from '../../widgets/index.ts';
import { screenSay } from '../shared/screen-say.ts';
import { readNumber, textOf } from '../shared/typed-kinds.ts';
import type { SevenModel } from './model.ts';
import { markupOf, SEVEN_ROWS, type SevenRow } from './rows.ts';

export interface SevenRowsProps {
  model: SevenModel;
  active: SevenKey | null;
  onActive: (key: SevenKey | null) => void;
  /** Real keyboards only: no keypad is shown. */
  wide: boolean;
}

export function SevenRows({ model, active, onActive, wide }: SevenRowsProps): VNode {
  const list = useRef<HTMLDivElement>(null);
  useFirstFocus(list, model);
  return (
    <div class="ff-seven-rows" ref={list}>
      {SEVEN_ROWS.map((row) => (
        <Row
          key={row.key}
          row={row}
          model={model}
          active={active === row.key}
          onActive={onActive}
          wide={wide}
        />
      ))}
    </div>
  );
}

/** The first empty row is ready to be typed into; a screen that has all its numbers stays as it is. */
function useFirstFocus(list: { readonly current: HTMLDivElement | null }, model: SevenModel): void {
  useEffect(() => {
    const empty = SEVEN_ROWS.find(({ key }) => model.texts[key].trim() === '');
    if (empty?.key !== 'shelfPrice') return;
    list.current?.querySelector('input')?.focus();
  }, []);
}

interface RowProps {
  row: SevenRow;
  model: SevenModel;
  active: boolean;
  onActive: (key: SevenKey | null) => void;
  wide: boolean;
}

function Row({ row, model, active, onActive, wide }: RowProps): VNode {
  const isFresh = useRef(false);
  const id = `seven-${row.key}`;
  const problem = model.problems[row.key];
  const below = problem ?? (active && model.texts[row.key].trim() === '' ? row.hint : '');
  const back = readBack(row, model);
  const parts = [back !== '' && `${id}-back`, below !== '' && `${id}-below`].filter((part) => part !== false);
  const describedBy = parts.length === 0 ? undefined : parts.join(' ');
  return (
    <div
      class={classNames(
        'ff-seven-row',
        active && 'ff-seven-active',
        problem !== undefined && 'ff-seven-wrong',
      )}
    >
      <div class="ff-seven-label">
        <label class="ff-seven-name ff-label" for={id}>
          {row.label}
        </label>
        {back !== '' && (
          <span id={`${id}-back`} class="ff-seven-back ff-label ff-least">
            {back}
          </span>
        )}
      </div>
      {row.key === 'moneyDownPerStore' && <FreeFill model={model} />}
      <span class="ff-seven-box">
        <input
          id={id}
          class="ff-seven-input ff-number"
          type="text"
          inputMode={wide ? 'decimal' : 'none'}
          autocomplete="off"
          enterkeyhint="next"
          value={model.texts[row.key]}
          aria-describedby={describedBy}
          aria-invalid={problem === undefined ? undefined : 'true'}
          onInput={(event) => model.type(row.key, event.currentTarget.value)}
          onFocus={(event) => {
            onActive(row.key);
            event.currentTarget.select();
            event.currentTarget.closest('.ff-seven-row')?.scrollIntoView({ block: 'nearest' });
          }}
          onMouseDown={(event) => {
            isFresh.current = document.activeElement !== event.currentTarget;
          }}
          onMouseUp={(event) => {
            if (isFresh.current) event.preventDefault(); // else letting go takes the selection away again
          }}
          onBlur={() => model.leave()}
          onKeyDown={(event) => {
            if (event.key === 'Enter') focusNext(event.currentTarget);
          }}
        />
        <span class="ff-seven-unit ff-least">
          {model.texts[row.key].includes('%') ? '' : unitOf(row, model)}
        </span>
      </span>
      <span id={`${id}-below`} class="ff-seven-below ff-least" aria-live="polite">
        {below}
      </span>
    </div>
  );
}

function FreeFill({ model }: { model: SevenModel }): VNode {
  const { freeFill } = model.seven;
  return (
    <button
      type="button"
      class="ff-seven-switch ff-label"
      aria-pressed={freeFill}
      title="Each store’s first case is free"
      onClick={() => model.set({ freeFill: !freeFill })}
    >
      {freeFill ? '✓' : '+'} free fill
    </button>
  );
}

/** The next row's box, or none after the last. */
export function focusNext(from: HTMLElement): void {
  const boxes = [...document.querySelectorAll<HTMLInputElement>('.ff-seven-input')];
  const next = boxes[boxes.findIndex((box) => box.id === from.id) + 1];
  if (next) next.focus();
  else from.blur();
}

function unitOf({ unit }: SevenRow, model: SevenModel): string {
  return unit === 'currency' ? screenSay({ currency: model.currency, startDay: 0 }).symbol : unit;
}

/** A margin as its markup; and how a text was read that could be read two ways, or has k or m in it. */
function readBack({ key, kind }: SevenRow, model: SevenModel): string {
  const text = model.texts[key];
  const margin = model.seven.retailerMarginRate;
  if (key === 'retailerMarginRate') {
    if (margin === null || model.problems[key] !== undefined) return '';
    return `markup ${screenSay({ currency: model.currency, startDay: 0 }).percent(Number(markupOf(margin)))}`;
  }
  const read = readNumber({ text, kind, currency: model.currency });
  if (read === null || !read.ok || (read.couldBe === null && !/[km]\s*$/i.test(text))) return '';
  const plain = textOf({ value: read.text, kind, currency: model.currency });
  return `reads as ${plain}`;
}
