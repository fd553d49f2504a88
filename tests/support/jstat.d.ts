/** As much of jstat (1.9.6, a general library of statistics) as the checks use: it brings no types of its own. */
declare module 'jstat' {
  export const jStat: {
    gamma: { inv: (share: number, shape: number, scale: number) => number };
    beta: { inv: (share: number, alpha: number, beta: number) => number };
    negbin: { pdf: (failures: number, successes: number, chance: number) => number };
  };
}
