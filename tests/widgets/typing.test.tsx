// @vitest-environment happy-dom
/**
 * Typing, stepping and holding, as a person or a screen reader meets them. The keypad is compared with what the
 * HTML standard says a text control does (setRangeText); names and descriptions are computed by testing-library
 * after the W3C accessible name rules. Worked figure: a hold of one second is five steps.
 */
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Segmented, SwitchField } from '../../src/widgets/Choices.tsx';
import { AmountField, StepButton } from '../../src/widgets/Fields.tsx';
import type { StepKind } from '../../src/widgets/hold-repeat.ts';
import { Keypad } from '../../src/widgets/Keypad.tsx';
import { typeKey } from '../../src/widgets/keypad-typing.ts';
import { TextAreaField } from '../../src/widgets/TextArea.tsx';

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

test('a key does what setRangeText of the HTML standard does', () => {
  const input = document.createElement('input');
  fc.assert(
    fc.property(fc.string({ maxLength: 8 }), fc.nat(8), fc.nat(8), (text, one, other) => {
      const start = Math.min(one, other, text.length);
      const end = Math.min(Math.max(one, other), text.length);
      input.value = text;
      input.setRangeText('7', start, end, 'end');
      const after = typeKey({ text, start, end }, '7');
      expect(after).toEqual({ text: input.value, start: start + 1, end: start + 1 });
    }),
  );
});

test('backspace takes the character before the caret, or the selection, or nothing', () => {
  expect(typeKey({ text: '250', start: 2, end: 2 }, 'backspace')).toEqual({ text: '20', start: 1, end: 1 });
  expect(typeKey({ text: '250', start: 0, end: 2 }, 'backspace')).toEqual({ text: '0', start: 0, end: 0 });
  expect(typeKey({ text: '250', start: 0, end: 0 }, 'backspace')).toEqual({ text: '250', start: 0, end: 0 });
});

test('the keypad types at the end when its field has no focus', () => {
  const texts: string[] = [];
  render(
    <Keypad
      label="Keypad"
      value="25"
      onInput={(text) => texts.push(text)}
      separator=","
      onDone={() => undefined}
    />,
  );
  fireEvent.click(screen.getByRole('button', { name: '0' }));
  fireEvent.click(screen.getByRole('button', { name: 'Decimal mark' }));
  fireEvent.click(screen.getByRole('button', { name: 'thousand' }));
  expect(texts).toEqual(['250', '25,', '25k']);
  expect(screen.getByRole('button', { name: 'Next' })).toHaveProperty('disabled', true);
});

test('a wrong amount keeps its text and says why', () => {
  const problem = "Cash: 'lots' is not an amount. Try 36000 or 36k.";
  render(<AmountField label="Cash we have today" value="lots" onInput={() => undefined} problem={problem} />);
  const field = screen.getByRole('textbox', { name: 'Cash we have today', description: problem });
  expect(field).toHaveProperty('value', 'lots');
  expect(field.getAttribute('aria-invalid')).toBe('true');
});

test('every keystroke goes out as it stands, and the arrow keys step', () => {
  const texts: string[] = [];
  const steps: [number, StepKind][] = [];
  render(
    <AmountField
      label="Stores"
      value="42"
      onInput={(text) => texts.push(text)}
      onStep={(direction, kind) => steps.push([direction, kind])}
    />,
  );
  const field = screen.getByRole('textbox', { name: 'Stores' });
  fireEvent.input(field, { target: { value: '42 and more' } });
  fireEvent.keyDown(field, { key: 'ArrowDown', shiftKey: true });
  fireEvent.click(screen.getByRole('button', { name: 'Stores, more' }));
  expect(texts).toEqual(['42 and more']);
  expect(steps).toEqual([
    [-1, { fine: true, repeat: false }],
    [1, { fine: false, repeat: false }],
  ]);
});

test('a text of many lines goes out with its tabs and line ends, and says what is wrong with it', () => {
  const texts: string[] = [];
  const problem = 'Line 2: got nothing.';
  render(
    <TextAreaField
      id="t"
      label="The table"
      value="a"
      rows={3}
      onInput={(text) => texts.push(text)}
      problem={problem}
    />,
  );
  const box = screen.getByRole('textbox', { name: 'The table', description: problem });
  expect(box.getAttribute('aria-invalid')).toBe('true');
  fireEvent.input(box, { target: { value: 'a\tb\n1\t2' } });
  expect(texts).toEqual(['a\tb\n1\t2']);
});

test('a hold repeats after 400 ms, eight times a second, and counts as one', () => {
  const kinds: StepKind[] = [];
  render(<StepButton label="Stores" direction={1} onStep={(_, kind) => kinds.push(kind)} />);
  const button = screen.getByRole('button', { name: 'Stores, more' });
  fireEvent.pointerDown(button, { button: 0 });
  vi.advanceTimersByTime(399);
  expect(kinds).toHaveLength(0);
  vi.advanceTimersByTime(601);
  fireEvent.pointerUp(button);
  fireEvent.click(button);
  vi.advanceTimersByTime(5000);
  expect(kinds.map((kind) => kind.repeat)).toEqual([false, true, true, true, true]);
});

test('a press that becomes a scroll steps nothing', () => {
  const step = vi.fn();
  render(<StepButton label="Stores" direction={-1} onStep={step} />);
  const button = screen.getByRole('button', { name: 'Stores, less' });
  fireEvent.pointerDown(button, { button: 0 });
  vi.advanceTimersByTime(100);
  fireEvent.pointerCancel(button);
  vi.advanceTimersByTime(5000);
  expect(step).not.toHaveBeenCalled();
});

test('choices have a name for the group and for each', () => {
  const chosen: string[] = [];
  render(
    <>
      <Segmented
        label="Who spoke last"
        value="ask"
        choices={[
          { value: 'ask', label: 'They ask' },
          { value: 'offer', label: 'We offer' },
        ]}
        onChoose={(value) => chosen.push(value)}
      />
      <SwitchField label="Free fill" on={false} onChange={(on) => chosen.push(String(on))} />
    </>,
  );
  expect(screen.getByRole('group', { name: 'Who spoke last' })).toBeDefined();
  fireEvent.click(screen.getByRole('radio', { name: 'We offer' }));
  fireEvent.click(screen.getByRole('switch', { name: 'Free fill' }));
  expect(chosen).toEqual(['offer', 'true']);
});
