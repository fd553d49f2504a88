// Where a figure of the range comes from: how many of the draws it counts, how far other draws might put it, and what every
// draw was drawn from. Worked example: "8,000 of 10,000 draws need at most 36,704 more" over the spreads and their source.
import type { VNode } from 'preact';
import type { ExplanationLine } from '../../domain/explain/types.ts';
import { line, typed } from '../../domain/explain/write.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { NO_EVIDENCE } from '../../domain/plan/plainly.ts';
import { evidenceOf } from '../../domain/promise/evidence.ts';
import type { Range } from '../../domain/promise/range/index.ts';
import { USUAL_RATE_SPREAD } from '../../domain/promise/range/usual.ts';
import type { Results } from '../../domain/results.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { type Worked, WorkedSheet } from '../shared/working.tsx';
import { cashOutFigure, cashOutText, needRows } from './range-words.ts';
import { rateText } from './words.ts';

export const RANGE_SHEET = 'range:';

interface RangeSheetProps {
  plan: Plan;
  results: Results;
  range: Range;
}

/** Null at any address that is not of its figures. */
export function RangeSheet(props: RangeSheetProps): VNode | null {
  const session = useSession();
  const say = useSay();
  const sheet = session.route.value.sheet ?? '';
  const answer = sheet.startsWith(RANGE_SHEET)
    ? rangeWorked(props, sheet.slice(RANGE_SHEET.length), say)
    : null;
  return answer === null ? null : <WorkedSheet answer={answer} />;
}

const SHARES = { p50: 0.5, p80: 0.8, p95: 0.95 } as const;

/** Null for a name that is none of its figures. */
export function rangeWorked(props: RangeSheetProps, figure: string, say: ScreenSay): Worked | null {
  const { range } = props;
  const lines = [...drawnFrom(props, say), cashLine(props, say)];
  const caution =
    'It says how far chance and these spreads reach, nothing of what is not in the plan. Spreads are judgement.';
  if (figure === 'cashOut')
    return {
      title: 'Chance that cash runs out',
      value: cashOutFigure(range, say),
      meaning:
        'How many of the draws fall below zero in some week, with the funding that the plan counts on.',
      formula: cashOutText(range, say),
      lines,
      caution,
    };
  const row = needRows(range, say).find(({ id }) => id === figure);
  if (row === undefined) return null;
  const enough = say.count(Math.round(SHARES[row.id] * range.draws));
  return {
    title: row.id === 'p50' ? row.label : `More cash needed: ${row.label.toLowerCase()}`,
    value: row.text,
    meaning: 'How much more cash than there is keeps so many of the draws above zero, without new funding.',
    formula: `${enough} of ${say.count(range.draws)} draws need at most ${row.text} more; as many other draws might say ${row.error} (19 of 20)`,
    lines,
    caution,
  };
}

function cashLine({ results }: RangeSheetProps, say: ScreenSay): ExplanationLine {
  return line({
    label: 'Lowest cash of the plan itself',
    value: say.money(results.reading.lowestCash),
    reason: 'Every draw is the plan and a difference to it',
    explains: { of: 'cash', figure: 'lowestCash' },
  });
}

const LABELS = {
  rampRate: 'Time until full sales, by',
  latenessDays: 'Payments, by',
  goodsRate: 'Cost of goods, by',
  deductionsRate: 'Deductions, by',
  voidRate: 'Doors with an empty place, by',
  sharedRate: 'What all accounts share',
} as const;

/** What a draw draws, each with where it was typed, or that it is our own judgement still. */
function drawnFrom({ plan, results }: RangeSheetProps, say: ScreenSay): ExplanationLine[] {
  const scene = { plan, results, say };
  const { spreads } = plan.promise;
  const spread = (field: keyof typeof LABELS): ExplanationLine => {
    const now = spreads[field];
    const value =
      typeof now === 'number' ? `${say.count(now)} ${now === 1 ? 'day' : 'days'}` : say.percent(Number(now));
    const own = typed(scene, `promise/spreads/${field}`, { label: LABELS[field], value });
    const isOurs = own.basis === null && Number(now) === Number(NO_EVIDENCE.spreads[field]);
    return isOurs ? { ...own, basis: { kind: 'guess', source: 'Judgement, no source' } } : own;
  };
  return [
    ...rates(plan, scene),
    ...(Object.keys(LABELS) as (keyof typeof LABELS)[]).map(spread),
    ...plan.accounts.map(({ id, name, standing }) =>
      line({
        label: `Doors of ${name}`,
        value: spreads.doors === 'asPlanned' || standing === null ? 'as planned' : 'as agreed so far',
        explains: plan.promise.claim === null ? null : { of: 'claimDoors', accountId: id },
      }),
    ),
  ];
}

function rates(plan: Plan, scene: { plan: Plan; results: Results; say: ScreenSay }): ExplanationLine[] {
  const { say } = scene;
  const { rateOfSaleRate } = plan.promise.spreads;
  const label = 'Rate of sale, by';
  if (rateOfSaleRate !== null)
    return [
      typed(scene, 'promise/spreads/rateOfSaleRate', { label, value: say.percent(Number(rateOfSaleRate)) }),
    ];
  const seen = evidenceOf(plan);
  const names = new Map(plan.items.map(({ id, name }) => [id, name]));
  return [
    ...seen.map(({ itemId, rate: { ofMean } }) =>
      line({
        label: `Rate of sale, ${names.get(itemId) ?? ''}`,
        value: `${rateText(ofMean.low80, say)} to ${rateText(ofMean.high80, say)}`,
        reason: 'As scans leave it open, in 8 of 10',
        explains: { of: 'evidence', itemId },
      }),
    ),
    ...(seen.length === plan.items.length
      ? []
      : [
          line({
            label,
            value: say.percent(USUAL_RATE_SPREAD),
            reason: 'Where nothing was scanned: judgement, no source',
          }),
        ]),
  ];
}
