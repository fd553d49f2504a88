// Shapes of a year's sales to start from, where nobody has own figures yet: 52 factors by ISO week with a mean of exactly 1,
// so that a shape moves sales between weeks and adds none. All invented, to be typed over: a plan that takes one marks it
// as a guess. Worked figure: "summer" is 1.30 in week 28 and 0.70 in week 2.

export type SeasonName = 'flat' | 'summer' | 'winter' | 'gift';

export interface SeasonShape {
  name: SeasonName;
  label: string;
  /** Where it comes from, as a note beside the default; whole sentences. */
  source: string;
  /** 52, in hundredths exactly, as a plan keeps them. */
  factors: readonly string[];
}

const WEEKS = 52;

export const SEASON_SHAPES: readonly SeasonShape[] = [
  {
    name: 'flat',
    label: 'The same all year',
    source: 'The same in every week, to be typed over.',
    factors: shape(() => 1),
  },
  {
    name: 'summer',
    label: 'Summer peak',
    source: 'Invented: 30 % above the mean in week 28 (July), 30 % below in week 2. Not measured anywhere.',
    factors: shape((week) => 1 + 0.3 * wave(week, 28)),
  },
  {
    name: 'winter',
    label: 'Winter peak',
    source:
      'Invented: 30 % above the mean in week 2 (January), 30 % below in week 28. Not measured anywhere.',
    factors: shape((week) => 1 + 0.3 * wave(week, 2)),
  },
  {
    name: 'gift',
    label: 'Gift season',
    source:
      'Invented: flat until week 44, then up to 2.80 in week 50, and over in week 52. Not measured anywhere.',
    factors: [
      ...Array.from({ length: 44 }, () => '0.83'),
      '1.2',
      '1.5',
      '1.9',
      '2.3',
      '2.6',
      '2.8',
      '2.2',
      '0.98',
    ],
  },
];

/** The shape that a list of factors is, or null for an own one. */
export function shapeOf(factors: readonly string[]): SeasonShape | null {
  return (
    SEASON_SHAPES.find((each) =>
      each.factors.every((factor, week) => Number(factor) === Number(factors[week])),
    ) ?? null
  );
}

/** 1 in the peak week, -1 half a year from it; `week` and `peak` count from 1. */
function wave(week: number, peak: number): number {
  return Math.cos((2 * Math.PI * (week - peak)) / WEEKS);
}

/** Scaled to a mean of 1 and rounded to hundredths, what rounding leaves carried into the next week, so that the mean stays. */
function shape(of: (week: number) => number): string[] {
  const heights = Array.from({ length: WEEKS }, (_, index) => of(index + 1));
  const scale = (100 * WEEKS) / heights.reduce((sum, each) => sum + each, 0);
  let exact = 0;
  let given = 0;
  return heights.map((height) => {
    exact += height * scale;
    const hundredths = Math.round(exact) - given;
    given += hundredths;
    return String(hundredths / 100);
  });
}
