// Which offer costs us least, in a sentence or two before anything else: what each leaves us at the end of the plan, all it
// takes counted in. One under which cash runs out is no choice while another lasts. Worked example: "On this plan Alder
// leaves us most at the end, 238,283; then Birch, 4,937 less; then Cedar, 18,530 less."
import type { Futures } from '../../domain/offers/types.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { type MoneyModel, type ShownOffer, shownOffers } from './model.ts';
import { nameOf } from './words.ts';

/** Named one after the other; of more, only the first is. */
const NAMED = 3;

/** Of two offers and more. */
export function bestWords(model: MoneyModel, say: ScreenSay): string[] {
  const offers = shownOffers(model);
  const lasting = offers.filter(({ result }) => result.lowestCash >= 0);
  const words = lasting.length === 0 ? [noneWords(offers, say)] : [rankWords(lasting, say)];
  if (lasting.length > 0 && lasting.length < offers.length) {
    const dry = offers.filter(({ result }) => result.lowestCash < 0);
    const names = dry.map(({ offer }) => offer.name);
    words.push(
      `Cash runs out under ${dry.length > NAMED ? `${say.count(dry.length)} of them` : listed(names)}.`,
    );
  }
  const free = offers.filter(
    ({ result }) => result.moneyIn > 0 && result.totalPaid === 0 && result.perUnit !== null,
  );
  if (free.length > 0) {
    const names = free.map(({ offer }) => offer.name);
    // or what is still being typed would win everywhere without a word
    words.push(
      `As typed, ${listed(names)} ${free.length === 1 ? 'costs' : 'cost'} nothing: are terms missing?`,
    );
  }
  if (model.futures !== null) words.push(drawnWords(model.plan, model.futures, say));
  // In its place already while it is worked out, so that nothing below moves.
  else if (model.isWaiting) words.push('Other futures are being drawn …');
  return words.filter((each) => each !== '');
}

function rankWords(lasting: readonly ShownOffer[], say: ScreenSay): string {
  const kept = ({ result }: ShownOffer) => result.founder.amount;
  const ranked = [...lasting].sort((a, b) => kept(b) - kept(a));
  const most = ranked[0] ? kept(ranked[0]) : 0;
  const first = ranked.filter((each) => kept(each) === most).map(({ offer }) => offer.name);
  if (first.length > NAMED) {
    return `On this plan ${say.count(first.length)} offers leave us most at the end, ${say.money(most)} each.`;
  }
  const leave = first.length === 1 ? 'leaves' : 'leave';
  const alike = first.length === 1 ? '' : ' each';
  const then = ranked.length > NAMED ? [] : ranked.slice(first.length);
  return [
    `On this plan ${listed(first)} ${leave} us most at the end, ${say.money(most)}${alike}`,
    ...then.map((each) => `then ${each.offer.name}, ${say.money(most - kept(each))} less`),
  ]
    .join('; ')
    .concat('.');
}

/** Every one runs dry: which holds out longest, and which is short by the least. */
function noneWords(offers: readonly ShownOffer[], say: ScreenSay): string {
  const [least] = [...offers].sort((a, b) => b.result.lowestCash - a.result.lowestCash);
  if (least === undefined) return '';
  const { offer, result } = least;
  return `Cash runs out under every offer on this plan; ${offer.name} is short by least, ${say.money(-result.lowestCash)} in ${say.week(result.lowestWeek)}.`;
}

/** Who wins in other futures, shortest; and what nobody does, or 18 wins of 200 would read as the whole answer. */
function drawnWords(plan: Plan, { draws, offers, ties, noneLasts }: Futures, say: ScreenSay): string {
  const won = offers.filter(({ wins }) => wins > 0).sort((a, b) => b.wins - a.wins);
  if (draws === 0) return '';
  const [first] = won;
  if (first?.wins === draws)
    return `In all of ${say.count(draws)} other futures ${nameOf(plan, first.offerId)} wins.`;
  // "wins" each time: "Offer 1 2" would be no count
  const each = won
    .slice(0, NAMED)
    .map(({ offerId, wins }) => `${nameOf(plan, offerId)} wins ${say.count(wins)}`);
  if (noneLasts === draws)
    return `In all of ${say.count(draws)} other futures cash runs out under every offer.`;
  if (ties > 0) each.push(`the best come out equal in ${say.count(ties)}`);
  if (noneLasts > 0) each.push(`cash runs out under every offer in ${say.count(noneLasts)}`);
  return `Of ${say.count(draws)} other futures ${each.join(', ')}.`;
}

function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
