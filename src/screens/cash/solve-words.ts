// The answers of the two solves in sentences: the result, the step beyond it that fails, and how it was confirmed.
// Worked example: "52 doors at Corner are the most this cash carries (180 planned): lowest cash 312. One more, and it falls
// to −41. Both were run through the whole plan."
import type { LeastOpeningCash, MostDoors } from '../../domain/rollout/solve.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function mostDoorsWords(answer: MostDoors | null, name: string, say: ScreenSay): string[] {
  if (answer === null) return [`${name} opens no doors in this plan: there is nothing to try.`];
  const { planned, doors, lowestThere, lowestNext, atLeast, steady } = answer;
  if (doors === null) {
    return [
      `None: even with no new door at ${name} cash falls to ${say.money(lowestThere)}.`,
      'That was run through the whole plan.',
    ];
  }
  const count = say.count(doors);
  if (atLeast) {
    return [
      `At least ${count} doors at ${name}, ten times the ${say.count(planned)} planned: lowest cash ${say.money(lowestThere)}.`,
      'Every step up to there was run through the whole plan; none beyond was tried.',
    ];
  }
  const next = lowestNext === null ? '' : ` With one more it falls to ${say.money(lowestNext)}.`;
  const sentences = [
    `${count} doors at ${name} are the most this cash carries (${say.count(planned)} planned): lowest cash ${say.money(lowestThere)}.${next}`,
    'Both were run through the whole plan.',
  ];
  if (!steady) {
    sentences.push(
      'Some larger count was seen to hold again: this is the end of the first stretch that holds.',
    );
  }
  return sentences;
}

export function leastCashWords(answer: LeastOpeningCash, minorDigits: number, say: ScreenSay): string[] {
  const { amount, lowestThere, lowestBelow, confirmed } = answer;
  if (amount === 0) {
    return [
      `None is needed: from nothing on the first day the lowest cash is ${say.money(lowestThere)}.`,
      'That was run through the whole plan.',
    ];
  }
  const less = minorDigits === 0 ? 'One less' : `${say.moneyExact(1)} less`;
  const below = lowestBelow === null ? '' : ` ${less}, and it falls to ${say.moneyExact(lowestBelow)}.`;
  return [
    `${say.moneyExact(amount)} on the first day is the least: lowest cash ${say.moneyExact(lowestThere)}.${below}`,
    confirmed
      ? 'Both were run through the whole plan.'
      : 'The runs did not confirm it: cash does not follow the opening amount evenly here.',
  ];
}
