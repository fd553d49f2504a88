// What must be true of the books at every close: no sum beyond what doubles hold exactly, and both sides equal. A sum too
// large is the plan's fault and said in words; sides that differ are a fault of the program and stop it.
// Worked figure: 2^52 cents are some 45 million million.
import { type Books, FIRST_CLAIM_INDEX } from './books.ts';

/** Money past this can't be kept exact to the minor unit with room for sums. */
export const LARGEST_EXACT = 2 ** 52;

/** Thrown when amounts outgrow exact arithmetic; evaluate() turns it into a Problem. */
const TOO_LARGE = 'amounts too large to keep exact';

/** Whether a run was given up because its amounts outgrew exact arithmetic. */
export function isTooLarge(error: unknown): boolean {
  return error instanceof RangeError && error.message === TOO_LARGE;
}

/** Past the largest exact sum nothing adds up: said before anything is added up. */
export function assertExact(amounts: Float64Array): void {
  for (let i = 0; i < amounts.length; i++) {
    if (!(Math.abs(amounts[i] ?? 0) < LARGEST_EXACT)) throw new RangeError(TOO_LARGE);
  }
}

/** Throws when assets and claims differ: a bug. */
export function assertBalance({ balances }: Books, week: number): void {
  let difference = 0;
  for (let b = 0; b < balances.length; b++) {
    const amount = balances[b] ?? 0;
    difference += b < FIRST_CLAIM_INDEX ? amount : -amount;
  }
  if (difference !== 0) throw new Error(`books differ by ${difference} in week ${week}`);
}
