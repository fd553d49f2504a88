/** The kernel against the oracle. */
import { expect, test } from 'vitest';
import { aPlan } from '../support/builders.ts';
import { differencesOn } from '../support/oracle/compare.ts';

test('one chain, one item', () => {
  expect(differencesOn(aPlan()).slice(0, 12)).toEqual([]);
});
