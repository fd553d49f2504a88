// How many draws a range is of, from which seed, and how far the rate of sale varies, where nobody says otherwise: of the app,
// and of the command line. A module of its own, so that who only names them needn't load what draws.
// Worked example: `reckon --range 10000` and the app draw the same plan alike.

export const DRAWS_USUAL = 10_000;
export const SEED_USUAL = 1;

/** Spread of the rate of sale's logarithm where nobody typed one and nothing was scanned (judgement, no source). */
export const USUAL_RATE_SPREAD = 0.3;
