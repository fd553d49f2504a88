// @vitest-environment happy-dom
/**
 * Whether there is room for a side column: by the width of the window, and on paper never, said before a sheet is laid out.
 */
import { act, cleanup, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { useWide } from '../../src/widgets/index.ts';

const { happyDOM } = window as unknown as {
  happyDOM: { setViewport: (size: { width: number; height: number }) => void };
};

function Room() {
  return <p>{useWide() ? 'wide' : 'narrow'}</p>;
}

beforeEach(() => happyDOM.setViewport({ width: 1280, height: 800 }));
afterEach(cleanup);

test('a sheet of paper is narrow from before it is laid out until it is printed', async () => {
  render(<Room />);
  const tell = (what: string) => act(() => void dispatchEvent(new Event(what)));
  expect(screen.getByText('wide')).toBeDefined();
  await tell('beforeprint');
  expect(screen.getByText('narrow')).toBeDefined();
  await tell('afterprint');
  expect(screen.getByText('wide')).toBeDefined();
});

test('a phone stays narrow after printing', async () => {
  happyDOM.setViewport({ width: 360, height: 640 });
  render(<Room />);
  await act(() => void dispatchEvent(new Event('beforeprint')));
  await act(() => void dispatchEvent(new Event('afterprint')));
  expect(screen.getByText('narrow')).toBeDefined();
});
