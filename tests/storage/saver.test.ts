/** One save at a time, the newest next: with a write under the test's control the order of writes can be counted. */
import { expect, test } from 'vitest';
import { makeSaver } from '../../src/storage/index.ts';

/** A write that ends when the test says so. */
function slowWrites() {
  const written: number[] = [];
  const ends: (() => void)[] = [];
  const write = (state: number): Promise<void> => {
    written.push(state);
    return new Promise((resolve) => ends.push(resolve));
  };
  const end = async (): Promise<void> => {
    ends.shift()?.();
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { written, write, end };
}

test('seven edits while one save is under way lead to two saves, of the first and the last', async () => {
  const { written, write, end } = slowWrites();
  const saver = makeSaver(write);
  for (const state of [1, 2, 3, 4, 5, 6, 7]) saver.offer(state);
  expect(written).toEqual([1]);
  await end();
  expect(written).toEqual([1, 7]);
  expect(saver.isIdle()).toBe(false);
  await end();
  expect(written).toEqual([1, 7]);
  expect(saver.isIdle()).toBe(true);
});

test('an edit when nothing is under way is written at once', async () => {
  const { written, write, end } = slowWrites();
  const saver = makeSaver(write);
  saver.offer(1);
  await end();
  saver.offer(2);
  expect(written).toEqual([1, 2]);
  await end();
});

test('flush starts what waits without waiting, and resolves when all is written', async () => {
  const { written, write, end } = slowWrites();
  const saver = makeSaver(write);
  saver.offer(1);
  saver.offer(2);
  let flushed = false;
  const flush = saver.flush().then(() => {
    flushed = true;
  });
  expect(written).toEqual([1, 2]);
  await end();
  expect(flushed).toBe(false);
  await end();
  await flush;
  expect(saver.isIdle()).toBe(true);
});

test('an edit made during a flush is written too', async () => {
  const { written, write, end } = slowWrites();
  const saver = makeSaver(write);
  saver.offer(1);
  const flush = saver.flush();
  saver.offer(2);
  await end();
  expect(written).toEqual([1, 2]);
  await end();
  await flush;
});

test('flush with nothing to do resolves', async () => {
  await makeSaver<number>(() => Promise.reject(new Error('never called'))).flush();
});
