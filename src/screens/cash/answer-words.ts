// The answers of the searches in sentences: the value that holds, what it comes to, the next value that doesn't.
// Worked example: "First order of Hot honey: week 2 (16 Mar) at the latest; planned in week 0. A week later 540 units of
// opening fills leave late, and 101 units more are lost."
import type {
  AnswerSolves,
  DoorsAWeek,
  FundsItself,
  LatestOrder,
  NeverCloses,
  WaveSpacing,
} from '../../domain/answers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function answerWords(answer: AnswerSolves, plan: Plan, say: ScreenSay): string[] {
  const { latestOrders, waveSpacing, doorsAWeek, neverCloses, fundsItself } = answer;
  const all = [waveSpacing, doorsAWeek, neverCloses, fundsItself, ...latestOrders];
  const unsteady = [waveSpacing, doorsAWeek, neverCloses, ...latestOrders].some(
    (each) => each?.steady === false,
  );
  return [
    fundsWords(fundsItself, say),
    ...latestOrders.map((each) => orderWords(each, plan, say)),
    ...(waveSpacing ? [spacingWords(waveSpacing, say)] : []),
    ...(doorsAWeek ? [paceWords(doorsAWeek, say)] : []),
    ...(neverCloses ? [closingWords(neverCloses, plan, say)] : []),
    all.every((each) => each === null || each.confirmed)
      ? 'Each value was run through the whole plan, and so was the next.'
      : 'The runs did not confirm every one of these.',
    ...(unsteady
      ? ['Where values further on were seen to turn again, the end of the first stretch is named.']
      : []),
  ];
}

function fundsWords({ week, amount, lowestThere }: FundsItself, say: ScreenSay): string {
  if (week === null)
    return 'From when nothing more has to be put in is not seen: the lowest week is one of the last four.';
  if (week === 0) return 'Cash never stands below its opening: the plan pays for itself from the first week.';
  const put =
    amount === 0 ? 'nothing has to be put in before' : `${say.money(amount)} put in before just lasts`;
  const rest = amount === 0 ? `, lowest ${say.money(lowestThere)}` : '';
  return `From ${say.week(week)} on it pays its own way; ${put}${rest}, without new funding.`;
}

function orderWords(order: LatestOrder, plan: Plan, say: ScreenSay): string {
  const { itemId, plannedWeek, week, lateUnitsNext, lostUnitsNext } = order;
  const name = plan.items.find(({ id }) => id === itemId)?.name ?? '';
  if (lateUnitsNext === null)
    return `${name}: its orders could wait past the last week; what is there suffices.`;
  const late = lateUnitsNext > 0 ? `${say.count(lateUnitsNext)} units of opening fills leave late` : '';
  const lost = lostUnitsNext ? `${say.count(lostUnitsNext)} units more are lost` : '';
  const harm = [late, lost].filter((each) => each !== '').join(', and ');
  return `First order of ${name}: ${say.week(week)} at the latest; planned in week ${plannedWeek}. A week later ${harm}.`;
}

function above(
  { lowestThere, bufferThere }: { lowestThere: number; bufferThere: number },
  say: ScreenSay,
): string {
  return `lowest cash ${say.money(lowestThere)}, buffer ${say.money(bufferThere)}`;
}

function next(found: { lowestNext: number | null; bufferNext: number | null }, say: ScreenSay): string {
  const { lowestNext, bufferNext } = found;
  if (lowestNext === null || bufferNext === null) return '';
  return `: ${above({ lowestThere: lowestNext, bufferThere: bufferNext }, say)}`;
}

function spacingWords(found: WaveSpacing, say: ScreenSay): string {
  const { plannedWeeks, weeks, triedTo } = found;
  if (weeks === plannedWeeks)
    return `Openings over ${plannedWeeks} weeks, as planned, keep cash above the buffer.`;
  if (weeks === null) {
    const far =
      triedTo === plannedWeeks
        ? 'they can’t be spread further within the plan'
        : `nor does any spread tried up to ${triedTo} weeks`;
    return `Openings over ${plannedWeeks} weeks don’t keep cash above the buffer, ${far}: ${above(found, say)}.`;
  }
  return `Spread over ${weeks} weeks instead of ${plannedWeeks}, openings keep cash above the buffer: ${above(found, say)}. Over ${weeks - 1} they don’t${next(found, say)}.`;
}

function paceWords(found: DoorsAWeek, say: ScreenSay): string {
  const { planned, doorsPerWeek } = found;
  if (doorsPerWeek === planned)
    return `Doors opening ${say.count(planned)} a week, as planned, keep cash above the buffer.`;
  if (doorsPerWeek === null)
    return `No slower pace of opening doors keeps cash above the buffer; the slowest that fits the plan: ${above(found, say)}.`;
  return `At most ${say.count(doorsPerWeek)} doors a week in any wave (${say.count(planned)} planned) keep cash above the buffer: ${above(found, say)}. One more doesn’t${next(found, say)}.`;
}

function closingWords(
  { neverAt, closesAt, backWeek, rateNever, rateCloses }: NeverCloses,
  plan: Plan,
  say: ScreenSay,
): string {
  const at = (hundredths: number, rate: string | null) => {
    const account = plan.accounts[0]?.name;
    const example =
      rate === null || account === undefined ? '' : ` (${say.number(Number(rate))} at ${account})`;
    return `${say.percent(hundredths / 100)} of the planned rates of sale${example}`;
  };
  if (closesAt === null)
    return `Even at ${at(neverAt ?? 0, rateNever)} the hole never closes within these weeks.`;
  const closes = `it is back at its opening from ${say.week(backWeek ?? 0)}`;
  if (neverAt === null) return `Even at ${at(closesAt, rateCloses)} the hole closes: ${closes}.`;
  return `At ${at(neverAt, rateNever)} the hole never closes within these weeks; at ${at(closesAt, rateCloses)} ${closes}.`;
}
