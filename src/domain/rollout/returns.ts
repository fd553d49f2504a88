// Ordinary returns: a share of what a store received comes back some weeks later, off its shelf. Fractions carry, so no
// unit is lost to rounding; a store can't return what it no longer has. Worked figure: 3 % of a delivery of 120 units
// is 3.6: three go back now, 0.6 waits for the next delivery.
import type { CompiledListing } from './compiled.ts';
import type { CellState } from './state.ts';

type Returns = NonNullable<CompiledListing['returns']>;

/** Takes the week's returned units off the shelf; `resaleable` of them can be sold again. */
export function takeReturns(args: { state: CellState; returns: Returns; week: number }): {
  units: number;
  resaleable: number;
} {
  const { state, returns, week } = args;
  const delivered = week - returns.lagWeeks >= 0 ? (state.arriving[week - returns.lagWeeks] ?? 0) : 0;
  if (delivered > 0) state.returnCarry += delivered * returns.rateMillionths;
  const due = Math.floor(state.returnCarry / 1_000_000);
  const units = Math.min(due, state.stock);
  if (units === 0) return { units: 0, resaleable: 0 };
  state.returnCarry -= units * 1_000_000;
  state.stock -= units;
  state.resaleCarry += units * returns.resaleableMillionths;
  const resaleable = Math.floor(state.resaleCarry / 1_000_000);
  state.resaleCarry -= resaleable * 1_000_000;
  return { units, resaleable };
}
