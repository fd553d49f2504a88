// The guesses a claim hangs on that no note of a plan names: the chance of every account whose rung alone says it, and how
// far accounts share one fate. Worked figure: Corner, in talks, counts with 25 %; it may as well be 10 or 45 %.
import type { BasisNote, Plan, Standing } from '../plan/index.ts';
import { RUNG_CHANCES } from '../promise/rungs.ts';
import { RUNG_WORDS } from './promise.ts';

/** Plausible ends of a rung's chance: judgement, no source. */
const ENDS: Record<Standing['rung'], { low: string; high: string }> = {
  orderInHand: { low: '0.85', high: '0.99' },
  signed: { low: '0.75', high: '0.97' },
  saidYes: { low: '0.4', high: '0.8' },
  inTalks: { low: '0.1', high: '0.45' },
  hopedFor: { low: '0', high: '0.15' },
};

/** Empty without a claim. A field that a note of the plan names already is left to that note. */
export function promiseGuesses({ promise, accounts, basis }: Plan): BasisNote[] {
  if (promise.claim === null) return [];
  const chances = accounts.flatMap(({ id, name, standing, waves }): BasisNote[] => {
    if (standing === null || standing.chance !== null || waves.length === 0) return [];
    const { rung } = standing;
    const percent = Math.round(100 * RUNG_CHANCES[rung]);
    const source = `${name}, ${RUNG_WORDS[rung]}, comes with a chance of ${percent} %`;
    return [{ path: `accounts/${id}/standing/chance`, kind: 'guess', source, ...ENDS[rung] }];
  });
  const source = 'Accounts share part of their fate';
  const shared: BasisNote = {
    path: 'promise/spreads/sharedRate',
    kind: 'guess',
    source,
    low: '0',
    high: '0.6',
  };
  return [...chances, shared].filter(({ path }) => basis.every((note) => note.path !== path));
}
