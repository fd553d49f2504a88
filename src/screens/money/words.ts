// Words of the Money view: kinds, returns, conditions, what covers what. Worked example: "equity + unitRoyalty" is read
// "Equity + Royalty a unit"; a return that three rates fit is "3 rates fit".
import type { When } from '../../domain/offers/contract.ts';
import { type Cover, type OfferPart, type OfferResult, offerKindOf } from '../../domain/offers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { ShownOffer } from './model.ts';

export function kindWords(parts: readonly OfferPart[]): string {
  return parts.length === 0 ? 'no money in it yet' : parts.map((part) => offerKindOf(part).label).join(' + ');
}

/** A yearly rate, or why there is none. */
export function returnWords({ irr }: OfferResult, say: ScreenSay): { value: string; note: string } {
  if (irr.found === 'one') return { value: `${say.percent(irr.rate)} a year`, note: 'return to the funder' };
  if (irr.found === 'several') {
    const rates = irr.rates.map((rate) => say.percent(rate)).join(', ');
    return {
      value: `${say.count(irr.rates.length)} rates fit`,
      note: `${rates}: money goes back and forth, so none of them is the return`,
    };
  }
  const why = {
    noMoneyIn: 'no money comes in',
    nothingBack: 'nothing goes back to the funder',
    noRate: `no yearly rate from ${say.number(-99.99)} to ${say.count(1_000_000)} % fits`,
  };
  return { value: 'none', note: why[irr.why] };
}

/** "in week 0 (2 Mar)", "once 60 doors are open at Corner", "once an order is in hand". */
export function whenWords(when: When, plan: Plan, say: ScreenSay): string {
  if (when.by === 'week') return `in ${say.week(when.week)}`;
  const account = plan.accounts.find(({ id }) => id === when.accountId);
  const where = account === undefined ? '' : ` at ${account.name}`;
  const gone = when.accountId !== null && account === undefined ? ' at a chain that is gone' : where;
  if (when.by === 'order') return `once an order is in hand${gone}`;
  return `once ${say.count(when.doors)} ${when.doors === 1 ? 'door is' : 'doors are'} open${gone}`;
}

/** "Covers the need", or by how much it falls short and when. */
export function coverWords({ lowestCash, lowestWeek, carries }: OfferResult, say: ScreenSay): string {
  if (lowestCash >= 0)
    return `Covers the need: at least ${say.money(lowestCash)} left, ${say.week(lowestWeek)}.`;
  const out = carries.runsOutWeek === null ? '' : ` Runs out in ${say.week(carries.runsOutWeek)}.`;
  return `Short by ${say.money(-lowestCash)} in ${say.week(lowestWeek)}.${out}`;
}

const COVER_NAMES = { plan: 'plan', p50: 'P50', p80: 'P80', p95: 'P95' } as const;

/** "covers P50, not P80, P95" of many draws; where they are still to come, that; '' where there are none. */
export function rangeWords(
  { drawn, isWaiting }: Pick<ShownOffer, 'drawn' | 'isWaiting'>,
  say: ScreenSay,
): string {
  if (drawn === null) return isWaiting ? 'P50, P80, P95: other futures are being drawn …' : '';
  const { covers, odds, draws } = drawn;
  const lasts = odds.lasts === draws ? 'all' : odds.lasts === 0 ? 'none' : say.count(odds.lasts);
  const short = covers.find(({ left }) => left < 0);
  const by = short === undefined ? '' : `, short by ${say.money(-short.left)} at ${COVER_NAMES[short.name]}`;
  return `Of ${say.count(draws)} other futures cash lasts in ${lasts}: covers ${coverNames(covers)}${by}.`;
}

/** "plan, P50; not P80, P95", for a column. */
export function coverShort({ result: { cover }, drawn, isWaiting }: ShownOffer): string {
  return `${coverNames([cover, ...(drawn?.covers ?? [])])}${isWaiting ? ', …' : ''}`;
}

function coverNames(covers: readonly Cover[]): string {
  const of = (does: boolean) =>
    covers.filter((each) => each.covers === does).map(({ name }) => COVER_NAMES[name]);
  const [yes, no] = [of(true).join(', '), of(false).join(', ')];
  if (no === '') return yes;
  return yes === '' ? `none of ${no}` : `${yes}; not ${no}`;
}

/** Asked money against what is needed. */
export function carriesWords({ carries }: OfferResult, say: ScreenSay): string {
  const { moneyIn, cashNeed, cashNeedWeek, runsOutWeek, weeks } = carries;
  const needed =
    cashNeedWeek === null
      ? 'the plan needs no new cash'
      : `the plan needs ${say.money(cashNeed)} by ${say.week(cashNeedWeek)}`;
  const lasts =
    runsOutWeek === null
      ? `lasts all ${say.count(weeks)} weeks`
      : weeks === 0
        ? 'is short from the first week'
        : `carries ${say.count(weeks)} ${weeks === 1 ? 'week' : 'weeks'}`;
  return `${say.money(moneyIn)} comes in; ${needed}: it ${lasts}.`;
}

/** Minor units to as many decimals as a cost per unit needs. */
export function perUnitWords({ perUnit }: OfferResult, minorDigits: number, say: ScreenSay): string {
  if (perUnit === 0) return 'nothing';
  return perUnit === null ? 'none sold' : say.priceExact((perUnit / 10 ** minorDigits).toFixed(4));
}

export function nameOf(plan: Plan, offerId: string): string {
  return plan.offers.find(({ id }) => id === offerId)?.name ?? 'an offer that is gone';
}

/** "1.42 times". */
export function timesWords(times: number | null, say: ScreenSay): string {
  if (times === null) return '–';
  const shown = Number(times.toFixed(2));
  return shown === 1 ? 'once' : `${say.number(shown)} times`;
}
