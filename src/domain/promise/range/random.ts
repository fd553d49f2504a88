// Random numbers a draw is made of: a small integer generator, seeded by the range's seed and the number of the draw, so
// that draw n is the same whoever runs it. Generator: sfc32 of PractRand (Doty-Humphrey; 2^128 states, cycles of 2^32 at
// least), 15 rounds before the first number. Worked figure: seed 1, draw 0 begins with 0.9128, whatever came before.

export interface Random {
  /** A whole number from 0 to 2^32 - 1. */
  next: () => number;
}

const WARM_UP = 15;

/** `seed` and `draw` are whole numbers from 0 to 2^32 - 1. */
export function randomOf(seed: number, draw: number): Random {
  let a = seed | 0;
  let b = draw | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  const next = (): number => {
    const out = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + out) | 0;
    return out >>> 0;
  };
  for (let round = 0; round < WARM_UP; round++) next();
  return { next };
}
