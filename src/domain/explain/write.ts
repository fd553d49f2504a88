// What every explanation is written with: the plan at hand, figures with all their decimals in the reader's own
// grouping and decimal mark, and the lines. Say rounds for reading; workings don't, or they would not add up.
// Worked figure: with a decimal comma in Say, exactPrice(2.894) is "2,8940" and exactPrice(3) is "3,00".
import { type Decimal, dec, ZERO } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import type { Say } from '../verdicts/say.ts';
import type { Explanation, ExplanationLine } from './types.ts';

/** What an explanation is about and how it writes figures. */
export interface Scene {
  plan: Plan;
  results: Results;
  say: Say;
}

/** An explanation before it is told which key it answers. */
export type Draft = Omit<Explanation, 'key'>;

/** A line of which only what matters is said. */
export function line(
  from: Pick<ExplanationLine, 'label' | 'value'> & Partial<ExplanationLine>,
): ExplanationLine {
  return { reason: '', owner: null, path: null, basis: null, explains: null, adds: null, ...from };
}

/** A line that was typed, or stands at its default: its field, and where a default comes from. */
export function typed(
  { plan }: Scene,
  path: string,
  from: Pick<ExplanationLine, 'label' | 'value'> & Partial<ExplanationLine>,
): ExplanationLine {
  const note = plan.basis.find((each) => each.path === path);
  return line({ ...from, path, basis: note ? { kind: note.kind, source: note.source } : null });
}

/** A part of a sum of money: shown with its sign and all its decimals, and added as shown. */
export function part(
  scene: Scene,
  amount: Decimal,
  from: Pick<ExplanationLine, 'label'> & Partial<ExplanationLine>,
): ExplanationLine {
  return line({ ...from, value: exactPrice(scene, amount), adds: amount.toFixed() });
}

/** The same in whole minor units. */
export function moneyPart(
  scene: Scene,
  minorUnits: number,
  from: Pick<ExplanationLine, 'label'> & Partial<ExplanationLine>,
): ExplanationLine {
  return part(scene, amountOf(scene, minorUnits), from);
}

/** The lines, and what rounding to `total` leaves over as a line of its own where it leaves anything. */
export function comingTo(
  scene: Scene,
  total: Decimal,
  lines: readonly ExplanationLine[],
  reason: string,
): ExplanationLine[] {
  const left = total.minus(sumOf(lines));
  if (left.isZero()) return [...lines];
  // What rounds is the figure itself: the line leads nowhere else.
  return [...lines, part(scene, left, { label: 'Rounding', reason })];
}

export function sumOf(lines: readonly ExplanationLine[]): Decimal {
  return lines.reduce((sum, { adds }) => (adds === null ? sum : sum.plus(adds)), ZERO);
}

/** An amount in minor units as a decimal. */
export function amountOf({ results }: Scene, minorUnits: number): Decimal {
  return dec(minorUnits).div(10 ** results.minorDigits);
}

/** An amount of money as the screens show it. */
export function moneyText({ say, results }: Scene, amount: Decimal): string {
  const minor = amount.times(10 ** results.minorDigits).toDecimalPlaces(0);
  return say.money(minor.toNumber());
}

/** Money in minor units with all its decimals, however large. */
export function exactMoney(scene: Scene, minorUnits: number): string {
  return exactPrice(scene, amountOf(scene, minorUnits));
}

/** An amount with all its decimals: those of the currency where they are enough, else four, or as many as it has. */
export function exactPrice(scene: Scene, amount: Decimal): string {
  const { minorDigits } = scene.results;
  const decimals = amount.decimalPlaces();
  return written(scene.say, amount, decimals <= minorDigits ? minorDigits : Math.max(4, decimals));
}

/** A number with the decimals it has. */
export function exactNumber({ say }: Scene, value: Decimal): string {
  return written(say, value, value.decimalPlaces());
}

/** A share as percent, nothing rounded. */
export function exactPercent({ say }: Scene, share: Decimal): string {
  const points = share.times(100);
  return say.percent(0).replace(say.count(0), () => written(say, points, points.decimalPlaces()));
}

/** The locale's grouping and digits come from count(), its decimal mark from number(). */
function written(say: Say, value: Decimal, decimals: number): string {
  const [whole = '0', part = ''] = value.abs().toFixed(decimals).split('.');
  const minus = value.isNegative() && !value.isZero() ? '−' : '';
  const digits = [...part].map((digit) => say.count(Number(digit))).join('');
  return `${minus}${say.count(Number(whole))}${digits === '' ? '' : `${decimalMark(say)}${digits}`}`;
}

function decimalMark(say: Say): string {
  const half = say.number(0.5);
  return half.slice(say.count(0).length, half.length - say.count(5).length);
}

/** "1.00 + 0.30 − 0.05", from parts that carry their sign. */
export function sumText(scene: Scene, amounts: readonly Decimal[]): string {
  return amounts
    .map((amount, index) => {
      const text = exactPrice(scene, index === 0 ? amount : amount.abs());
      return index === 0 ? text : `${amount.isNegative() && !amount.isZero() ? '−' : '+'} ${text}`;
    })
    .join(' ');
}

/** The parts of a sum as its formula: "2.8942 − 0.2894 = 2.6048". */
export function sumFormula(scene: Scene, lines: readonly ExplanationLine[], total: Decimal): string {
  const amounts = lines.flatMap(({ adds }) => (adds === null ? [] : [dec(adds)]));
  const many =
    amounts.length > 6 ? `sum of ${scene.say.count(amounts.length)} lines` : sumText(scene, amounts);
  return amounts.length < 2 ? exactPrice(scene, total) : `${many} = ${exactPrice(scene, total)}`;
}
