// Where it comes from how often an offer wins, and what it leaves us in one of the draws: the count of all draws by whose they
// are, and the sale of the company in that draw, line by line.
// Worked example: "172 of 200 draws" over 172 of Alder, 25 of Birch and 3 in which the best come out equal.
import type { VNode } from 'preact';
import type { FoundFutures, FutureName } from '../../app/offer-draws.ts';
import { keptIn } from '../../domain/explain/offer.ts';
import { line } from '../../domain/explain/write.ts';
import type { Futures } from '../../domain/offers/types.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { type Worked, WorkedSheet } from '../shared/working.tsx';
import { futureName, limitsWords, wonWords } from './future-words.ts';
import type { MoneyModel } from './model.ts';
import { nameOf } from './words.ts';

type Model = Pick<MoneyModel, 'plan' | 'results'>;

const WINS = 'wins:';
const KEPT = 'kept:';

export const winsAddress = (offerId: string): string => `${WINS}${offerId}`;
export const keptAddress = (name: FutureName, offerId: string): string => `${KEPT}${name}:${offerId}`;

/** Null at any address that is not of these figures. */
export function WinsSheet({ model, found }: { model: Model; found: FoundFutures }): VNode | null {
  const session = useSession();
  const say = useSay();
  const sheet = session.route.value.sheet ?? '';
  const answer = sheet.startsWith(WINS)
    ? winsWorked(model, found.futures, sheet.slice(WINS.length), say)
    : sheet.startsWith(KEPT)
      ? keptWorked(model, found, sheet.slice(KEPT.length), say)
      : null;
  return answer === null ? null : <WorkedSheet answer={answer} />;
}

/** Null for an id that is no drawn offer's. */
export function winsWorked(
  { plan }: Model,
  futures: Futures,
  offerId: string,
  say: ScreenSay,
): Worked | null {
  const odds = futures.offers.find((each) => each.offerId === offerId);
  if (odds === undefined) return null;
  const count = (label: string, draws: number, reason = '') =>
    line({ label, value: say.count(draws), reason, adds: String(draws) });
  const nobody = [
    count('Nobody’s: cash runs out under every offer', futures.noneLasts),
    count('Nobody’s: the best come out equal', futures.ties),
  ].filter(({ adds }) => adds !== '0');
  const share = say.percent(Math.round(odds.share * 1000) / 1000);
  return {
    title: `How often ${nameOf(plan, offerId)} wins`,
    value: `${wonWords(odds.wins, futures.draws, say)} draws`,
    meaning:
      'A draw is won by the offer that leaves us most of those under which cash lasts. Each is the whole plan run week by week in another future, without new money, with every offer laid over it.',
    formula: `${say.count(odds.wins)} ÷ ${say.count(futures.draws)} = ${share}; as many other draws might say ${limitsWords(odds, say)} (Wilson’s 95 % limits)`,
    lines: [
      ...futures.offers.map((each) =>
        count(
          `Won by ${nameOf(plan, each.offerId)}`,
          each.wins,
          `Cash lasts under it in ${say.count(each.lasts)}`,
        ),
      ),
      ...nobody,
    ],
    caution:
      futures.uncomputed === 0
        ? null
        : `${say.count(futures.uncomputed)} more draws can’t be computed, and count nowhere.`,
  };
}

/** `key` as keptAddress() writes it after its first word; null where there is no such draw or offer. */
export function keptWorked(
  { plan, results }: Model,
  { bases, futures }: FoundFutures,
  key: string,
  say: ScreenSay,
): Worked | null {
  const [name, ...rest] = key.split(':');
  const offer = plan.offers.find(({ id }) => id === rest.join(':'));
  const future = bases.find((each) => each.name === name);
  if (offer === undefined || future === undefined) return null;
  const outcome = futures.outcomes.find((each) => each.name === name);
  const found = outcome?.founder.find(({ offerId }) => offerId === offer.id);
  const { title, value, formula, lines } = keptIn({ plan, results, say }, offer, future.basis);
  return {
    title: `${title}, at ${futureName(future.name)}`,
    value,
    meaning: `The founder’s part of the company’s sale at the end of this draw, after whoever comes first. It sells ${say.money(outcome?.netSales ?? 0)} in the plan’s weeks.`,
    formula,
    lines,
    caution:
      found !== undefined && found.lowestCash < 0
        ? `Cash runs out under this offer in this draw: ${say.money(found.lowestCash)} at the lowest. Nobody would be there to sell.`
        : null,
  };
}
