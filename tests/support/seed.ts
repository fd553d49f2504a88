/**
 * One seed for every random test of a run, so that a run can be repeated: the same each time unless FIRSTFILL_SEED says
 * otherwise (a number, or "new" for one from the clock, which is printed).
 */
import fc from 'fast-check';

const EVERY_RUN = 20_261_125;
const asked = process.env['FIRSTFILL_SEED'];
const seed = asked === undefined ? EVERY_RUN : asked === 'new' ? Date.now() % 2_147_483_647 : Number(asked);
if (!Number.isInteger(seed))
  throw new Error(`FIRSTFILL_SEED: got ${asked}; expected a whole number or "new"`);
if (asked === 'new') console.log(`FIRSTFILL_SEED=${seed}`);
fc.configureGlobal({ seed });
