// How many draws a range is of, and from which seed, where nobody says otherwise: of the app, and of the command line. A
// module of its own, so that who only names them needn't load what draws.
// Worked example: `reckon --range 10000` and the app draw the same plan alike.

export const DRAWS_USUAL = 10_000;
export const SEED_USUAL = 1;
