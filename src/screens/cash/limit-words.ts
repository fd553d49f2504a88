// What limits a plan and what a change does to it, in sentences. Numbers come ready from the model.
// Worked example: "Cash limits first: below zero from week 13 (1 Jun)." "Lowest cash −31,416 to −12,228."
import type { Binding, Lift, LimitStretch } from '../../domain/answers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function limitSentences(
  read: { plan: Plan; results: Results; binding: Binding },
  say: ScreenSay,
): string[] {
  const { plan, results, binding } = read;
  const sentences = [firstSentence(read, say)];
  const { first, firstWeeks } = binding;
  const { capacity, stock, cash } = firstWeeks;
  if (cash !== null && first?.what !== 'cash') sentences.push(`Cash limits too, from ${say.week(cash)}.`);
  if (capacity !== null && first?.what !== 'capacity')
    sentences.push(`Capacity limits too, from ${say.week(capacity)}.`);
  if (stock !== null && first?.what !== 'stock')
    sentences.push(`Stock runs short too, from ${say.week(stock)}.`);
  if (plan.business.openingCashAmount === null)
    sentences.push('Cash at hand is not known: nobody can say where cash limits.');
  const { lostUnits, fillRate } = results.reading;
  if (lostUnits > 0 && fillRate !== null)
    sentences.push(
      `Shoppers find ${say.count(lostUnits)} units missing: ${say.percent(fillRate)} of demand is served.`,
    );
  return sentences;
}

function firstSentence(
  { plan, results, binding }: { plan: Plan; results: Results; binding: Binding },
  say: ScreenSay,
): string {
  const { first } = binding;
  if (first === null)
    return 'Nothing limits these weeks but doors still to open, and then what shoppers want.';
  const when = say.week(first.week);
  const names = first.items.map((item) => plan.items[item]?.name ?? '').join(', ');
  switch (first.what) {
    case 'cash':
      return first.tight
        ? `Cash limits first: under the buffer of ${say.money(results.reading.bufferAmount)} from ${when}.`
        : `Cash limits first: below zero from ${when}.`;
    case 'capacity':
      return `Capacity limits first: in ${when} all that can land does, and goods are short (${names}).`;
    default:
      return `Stock limits first: in ${when} goods are short, with no capacity in the way (${names})${heldWords(first.heldBack, say)}.`;
  }
}

/** Goods may be there and not leave. */
function heldWords(units: number, say: ScreenSay): string {
  return units === 0 ? '' : `; ${say.count(units)} units wait for a credit limit`;
}

const WORDS: Record<LimitStretch['what'], string> = {
  cash: 'Cash: below zero',
  capacity: 'Capacity: what can land is used up, and goods are short',
  stock: 'Stock: goods are short',
  doors: 'Doors: more are still to open',
  demand: 'Demand: shoppers buy all they want',
};

/** One stretch of weeks in a row: when, and what limits it. */
export function stretchWords(
  { fromWeek, toWeek, what, tight }: LimitStretch,
  say: ScreenSay,
): [when: string, what: string] {
  const when =
    fromWeek === toWeek
      ? say.week(fromWeek)
      : `weeks ${fromWeek} to ${toWeek} (from ${say.weekDay(fromWeek)})`;
  return [when, tight ? 'Cash: under the buffer' : WORDS[what]];
}

/** What a change does, each figure that moves with where it was: the row of one lift. */
export function liftSentences({ before, after, withoutItsCost }: Lift, say: ScreenSay): string[] {
  const sentences: string[] = [];
  if (after.lowestCash !== before.lowestCash)
    sentences.push(
      `lowest cash ${say.money(before.lowestCash)} to ${say.money(after.lowestCash)}, in week ${after.lowestWeek}`,
    );
  if (after.cashNeed !== before.cashNeed)
    sentences.push(`cash needed ${say.money(before.cashNeed)} to ${say.money(after.cashNeed)}`);
  if (after.unitsLost !== before.unitsLost)
    sentences.push(`units lost ${say.count(before.unitsLost)} to ${say.count(after.unitsLost)}`);
  sentences.push(yearWords(after.contribution - before.contribution, say));
  if (withoutItsCost) sentences.push('without its cost, which nobody has typed');
  return sentences;
}

function yearWords(change: number, say: ScreenSay): string {
  if (change === 0) return 'the first year contributes the same';
  return `the first year contributes ${say.money(Math.abs(change))} ${change > 0 ? 'more' : 'less'}`;
}
