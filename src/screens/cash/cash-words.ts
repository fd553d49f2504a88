// What is said about the cash of a plan: how deep, when, what ends it. Numbers come ready from the model.
// Worked example: "Above zero again from week 31 (5 Oct). Back above what it opened with from week 44 (4 Jan)."
import type { Results } from '../../domain/results.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

type Read = Pick<Results, 'pass' | 'reading' | 'compiled'>;

/** On the tag at the deepest point. */
export function tagOf({ reading }: Read, say: ScreenSay): string {
  return `${say.money(reading.lowestCash)} · week ${reading.lowestWeek}`;
}

/** Beneath the deepest point: what is needed beside what is there. */
export function noteOf({ reading, pass }: Read, hasCash: boolean, say: ScreenSay): string {
  if (!hasCash) return reading.depthFromZero === 0 ? '' : `needs ${say.money(reading.depthFromZero)}`;
  if (reading.lowestCash >= reading.bufferAmount) return `buffer ${say.money(reading.bufferAmount)}`;
  return `need ${say.money(reading.depthFromZero)}, have ${say.money(pass.openingCash)}`;
}

/** What ends the hole: first payment, back to zero, back to where it began. Without typed cash all counts from zero. */
export function endSentences(read: Read, hasCash: boolean, say: ScreenSay): string[] {
  const { pass, reading } = read;
  const sentences: string[] = [];
  const paid = reading.firstPaymentWeek;
  sentences.push(
    paid === null
      ? `No chain pays within these ${say.count(pass.weeks)} weeks.`
      : `The first chain pays in ${say.week(paid)}.`,
  );
  const above = aboveZeroFrom(pass.low);
  if (above === null)
    sentences.push('Cash is below zero in the last week: these weeks do not show what ends the hole.');
  else if (above > 0)
    sentences.push(`The hole ends in ${say.week(above)}: from then on cash stays above zero.`);
  else if (hasCash) sentences.push('Cash never falls below zero.');
  const back = reading.backAboveOpeningWeek;
  const opened = hasCash ? `the ${say.money(pass.openingCash)} of the first day` : 'where it began';
  sentences.push(
    back === null
      ? `It is not back at ${opened} within these weeks.`
      : back === 0
        ? `At the week-ends it never stands below ${opened}.`
        : `It is back at ${opened} from ${say.week(back)}.`,
  );
  if (reading.floorNotSeen) {
    sentences.push(
      'The floor is not seen: the lowest week is one of the last four. Plan more weeks to see it.',
    );
  }
  return sentences;
}

/** The week after the last one with cash below zero; 0 when there is none, null when the last week has. */
function aboveZeroFrom(low: Float64Array): number | null {
  const last = low.findLastIndex((value) => value < 0);
  return last === low.length - 1 ? null : last + 1;
}

/** The picture in a sentence. */
export function altOf(read: Read, say: ScreenSay): string {
  const { pass, reading } = read;
  return (
    `Cash by week over ${say.count(pass.weeks)} weeks: starts at ${say.money(pass.openingCash)}, ` +
    `lowest ${say.money(reading.lowestCash)} in ${say.week(reading.lowestWeek)}, ` +
    `${say.money(reading.endCash)} at the end.`
  );
}
