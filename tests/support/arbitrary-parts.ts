/**
 * What random plans are made of (see arbitrary-plan.ts): decimal texts, whole numbers, lists with ids.
 * Worked figure: decimal(1, 60, 3) gives texts such as "0.042".
 */
import fc from 'fast-check';

/** A whole number of 10^-decimals between two ends, as decimal text. */
export function decimal(least: number, most: number, decimals: number): fc.Arbitrary<string> {
  return fc.integer({ min: least, max: most }).map((whole) => {
    const text = String(whole).padStart(decimals + 1, '0');
    const fraction = text.slice(text.length - decimals).replace(/0+$/, '');
    const start = text.slice(0, text.length - decimals);
    return decimals === 0 || fraction === '' ? start || '0' : `${start}.${fraction}`;
  });
}

/** There half of the time, else null (`freq` 2: null comes once in two). */
export function maybe<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> {
  return fc.option(arbitrary, { freq: 2 });
}

/** Up to `most` places with ids of their own. */
export function listOf<T>(
  arbitrary: fc.Arbitrary<T>,
  most: number,
  name: string,
): fc.Arbitrary<(T & { id: string })[]> {
  return fc
    .array(arbitrary, { maxLength: most })
    .map((places) => places.map((place, at) => ({ ...place, id: `${name}${at + 1}` })));
}

/** The list with only the first place of each kind that may be there once. */
export function withoutSecond<T extends { kind: string }>(list: readonly T[], kind: T['kind']): T[] {
  const first = list.findIndex((each) => each.kind === kind);
  return list.filter((each, at) => each.kind !== kind || at === first);
}

export const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
