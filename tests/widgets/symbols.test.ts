/**
 * Symbols of numbers, read back as a scanner reads them, by tables of our own: EAN-13, EAN-8 and UPC-A (ISO/IEC 15420),
 * interleaved 2 of 5 (ISO/IEC 16390), Code 128 (ISO/IEC 15417). The tables are from memory, checked by their own laws: every
 * digit of an EAN is 7 modules, its R set the L set inverted, G the R set from behind; of 2 of 5, two of five are wide.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkDigitOf } from '../../src/domain/readiness/index.ts';
import { barsOf, barsPath } from '../../src/widgets/Code.tsx';

const L = [
  '0001101',
  '0011001',
  '0010011',
  '0111101',
  '0100011',
  '0110001',
  '0101111',
  '0111011',
  '0110111',
  '0001011',
];
const R = L.map((set) => set.replace(/[01]/g, (module) => (module === '0' ? '1' : '0')));
const G = R.map((set) => [...set].reverse().join(''));
/** Which of the six left digits are of set G says the first digit of thirteen. */
const FIRST = [
  'LLLLLL',
  'LLGLGG',
  'LLGGLG',
  'LLGGGL',
  'LGLLGG',
  'LGGLLG',
  'LGGGLL',
  'LGLGLG',
  'LGLGGL',
  'LGGLGL',
];
const WIDE = ['NNWWN', 'WNNNW', 'NWNNW', 'WWNNN', 'NNWNW', 'WNWNN', 'NWWNN', 'NNNWW', 'WNNWN', 'NWNWN'];

/** Guards, the digits of each half, and of which set each left one is. */
function readEan(bars: string, each: number): { digits: string; sets: string } {
  const half = 7 * each;
  expect(bars).toHaveLength(3 + half + 5 + half + 3);
  expect([bars.slice(0, 3), bars.slice(3 + half, 8 + half), bars.slice(-3)]).toEqual(['101', '01010', '101']);
  const left = sevens(bars.slice(3, 3 + half));
  const right = sevens(bars.slice(8 + half, -3));
  const sets = left.map((set) => (L.includes(set) ? 'L' : 'G')).join('');
  const digits = [
    ...left.map((set) => Math.max(L.indexOf(set), G.indexOf(set))),
    ...right.map((set) => R.indexOf(set)),
  ];
  expect(digits).not.toContain(-1);
  return { digits: digits.join(''), sets };
}

function sevens(bars: string): string[] {
  return bars.match(/.{7}/g) ?? [];
}

function readTwoOfFive(bars: string): string {
  const runs = (bars.match(/1+|0+/g) ?? []).map((run) => (run.length === 1 ? 'N' : 'W')).join('');
  expect([runs.slice(0, 4), runs.slice(-3)]).toEqual(['NNNN', 'WNN']);
  const pairs = runs.slice(4, -3).match(/.{10}/g) ?? [];
  return pairs
    .flatMap((pair) =>
      [0, 1].map((from) => WIDE.indexOf([0, 1, 2, 3, 4].map((at) => pair[from + 2 * at]).join(''))),
    )
    .join('');
}

const checked = (digits: string): string => `${digits}${checkDigitOf(digits)}`;
const ofLength = (length: number): fc.Arbitrary<string> =>
  fc
    .string({ unit: fc.constantFrom(...'0123456789'), minLength: length - 1, maxLength: length - 1 })
    .map(checked);

test('13 digits read back: the first by the sets of the next six', async () => {
  await fc.assert(
    fc.asyncProperty(ofLength(13), async (number) => {
      const { digits, sets } = readEan(await barsOf(number), 6);
      expect(`${FIRST.indexOf(sets)}${digits}`).toBe(number);
    }),
    { numRuns: 40 },
  );
});

test('12 digits are 13 with a zero before them, 8 have two halves of four', async () => {
  await fc.assert(
    fc.asyncProperty(ofLength(12), ofLength(8), async (twelve, eight) => {
      expect(readEan(await barsOf(twelve), 6)).toEqual({ digits: twelve, sets: 'LLLLLL' });
      expect(readEan(await barsOf(eight), 4)).toEqual({ digits: eight, sets: 'LLLL' });
    }),
    { numRuns: 40 },
  );
});

test('14 digits of a case read back, wide bars at most three times the narrow ones', async () => {
  await fc.assert(
    fc.asyncProperty(ofLength(14), async (number) => {
      const bars = await barsOf(number);
      expect(readTwoOfFive(bars)).toBe(number);
      expect(new Set((bars.match(/1+|0+/g) ?? []).map((run) => run.length))).toEqual(new Set([1, 3]));
    }),
    { numRuns: 40 },
  );
});

test('18 digits of a pallet: start C, FNC1, "00" and the number in pairs, a check symbol, stop', async () => {
  const bars = await barsOf('106141412345678908');
  // 11 modules a symbol: start C, FNC1, ten pairs, check; a stop of 13.
  expect(bars).toHaveLength(13 * 11 + 13);
  expect([bars.slice(0, 11), bars.slice(11, 22), bars.slice(-13)]).toEqual([
    '11010011100',
    '11110101110',
    '1100011101011',
  ]);
  // "00" is symbol 0 of the table.
  expect(bars.slice(22, 33)).toBe('11011001100');
});

test('a number whose check digit is wrong has no symbol', async () => {
  await expect(barsOf('6291041500214')).rejects.toThrow();
  await expect(barsOf('123')).rejects.toThrow('no symbol has 3 digits');
});

test('bars are drawn where they are, each as wide as its run', () => {
  expect(barsPath('1011', { x: 11, y: 0, height: 70 })).toBe('M11 0h1v70h-1zM13 0h2v70h-2z');
});
