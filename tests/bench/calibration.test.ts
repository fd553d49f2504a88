/**
 * How often ranges of the rate of sale hold the truth, over thousands of invented pilots whose truth is known. The pilots
 * are the same everywhere, so the table has to be the one in src/domain/promise/CALIBRATION.md, which says what to make of
 * it; FIRSTFILL_WRITE=1 writes it there after a change on purpose. Some five minutes.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PRIOR_CV, PRIOR_CV_SPREAD } from '../../src/domain/promise/rate-of-sale.ts';
import { hitOf, normal, type Pilot, randomFrom, type Truth } from './calibration-pilots.ts';

const PILOTS = 2000;
/** A range for a new store takes ten times as long: of the first so many pilots only. */
const STORE_PILOTS = 300;

type Random = () => number;

const fixed = (mean: number, cv: number) => (): Truth => ({ mean, cv });

/** What the ranges take as known before: stores that differ as stated, the mean between 0.5 and 20, each doubling alike. */
function drawn(random: Random): Truth {
  const cv = PRIOR_CV * Math.exp(PRIOR_CV_SPREAD * normal(random));
  // Beyond the grid nothing is believed.
  return cv < 0.03 || cv > 2.5 ? drawn(random) : { mean: 0.5 * 40 ** random(), cv };
}

interface Row {
  truth: string;
  pilot: Pilot;
}

const ROWS: readonly Row[] = [
  ...[2, 3, 5, 10, 20].map((stores) => ({
    truth: 'drawn from what is held before',
    pilot: { stores, weeks: 8, truth: drawn, scatter: 1 },
  })),
  ...[0.2, 0.4, 0.8].flatMap((cv) =>
    [2, 3, 5, 10].map((stores) => ({
      truth: `4 a week, stores differ by ${cv}`,
      pilot: { stores, weeks: 6, truth: fixed(4, cv), scatter: 1 },
    })),
  ),
  ...[2, 3, 5, 10].map((stores) => ({
    truth: '0.5 a week, stores differ by 0.4',
    pilot: { stores, weeks: 6, truth: fixed(0.5, 0.4), scatter: 1 },
  })),
  ...[1.5, 2.5].flatMap((scatter) =>
    [3, 8].map((stores) => ({
      truth: `4, stores differ by 0.4, weeks scatter ${scatter} times as much`,
      pilot: { stores, weeks: 6, truth: fixed(4, 0.4), scatter },
    })),
  ),
  {
    truth: '4, stores differ by 0.6 and lognormally',
    pilot: { stores: 5, weeks: 6, truth: fixed(4, 0.6), scatter: 1, lognormal: true },
  },
];

interface Coverage {
  mean80: number;
  mean95: number;
  store80: number;
  store95: number;
}

function coverageOf({ pilot }: Row, seed: number): Coverage {
  const random = randomFrom(seed);
  const sums: Coverage = { mean80: 0, mean95: 0, store80: 0, store95: 0 };
  for (let at = 0; at < PILOTS; at++) {
    const withStore = at < STORE_PILOTS;
    const hit = hitOf(pilot, random, withStore);
    sums.mean80 += hit.mean80 ? 1 / PILOTS : 0;
    sums.mean95 += hit.mean95 ? 1 / PILOTS : 0;
    if (!withStore) continue;
    sums.store80 += hit.store80 ? 1 / STORE_PILOTS : 0;
    sums.store95 += hit.store95 ? 1 / STORE_PILOTS : 0;
  }
  return sums;
}

test('ranges hold the truth as often as they say, over what is held before; the table is that of the page', () => {
  const found = ROWS.map((row, at) => ({ ...row, coverage: coverageOf(row, 1000 + at) }));
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const table = [
    '| true rate of sale | stores x weeks | mean, 80 % | mean, 95 % | new store, 80 % | new store, 95 % |',
    '| --- | --- | --- | --- | --- | --- |',
    ...found.map(
      ({ truth, pilot, coverage: { mean80, mean95, store80, store95 } }) =>
        `| ${truth} | ${pilot.stores} x ${pilot.weeks} | ${[mean80, mean95, store80, store95].map(percent).join(' | ')} |`,
    ),
  ].join('\n');
  console.log(table);
  const page = new URL('../../src/domain/promise/CALIBRATION.md', import.meta.url);
  const text = readFileSync(page, 'utf8');
  const kept = /(?<=<!-- table -->\n)[\s\S]*?(?=\n<!-- end -->)/;
  if (process.env['FIRSTFILL_WRITE'] === '1') writeFileSync(page, text.replace(kept, table));
  else expect(kept.exec(text)?.[0]).toBe(table);
  // Three standard errors of 2,000 pilots are 2.7 points at 80 %, 1.5 at 95 %.
  for (const { pilot, coverage } of found.filter((row) => row.pilot.truth === drawn)) {
    expect(Math.abs(coverage.mean80 - 0.8), `${pilot.stores} stores`).toBeLessThan(0.03);
    expect(Math.abs(coverage.mean95 - 0.95), `${pilot.stores} stores`).toBeLessThan(0.02);
  }
}, 1_200_000);
