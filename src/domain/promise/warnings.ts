// Where the scans can't carry what is read off them, in sentences. What is few or much here is judgement, no source.
// Worked figure: three stores of one chain, scanned from their opening for two weeks: three warnings.
import type { Plan } from '../plan/index.ts';
import type { Say } from '../verdicts/say.ts';
import type { ItemEvidence } from './evidence.ts';
import { rateOfSale } from './rate-of-sale.ts';
import { TREND_WEEKS } from './within-stores.ts';

export type WarningCode =
  | 'fewStores'
  | 'oneChain'
  | 'noChainOfPlan'
  | 'dealWeeksOnly'
  | 'openingWeeksOnly'
  | 'falling'
  | 'weeksScatter'
  | 'priorDecides';

export interface EvidenceWarning {
  code: WarningCode;
  sentence: string;
}

export const FEW_STORES = 5;
const MUCH_SCATTER = 2;
/** The range without the prior is so many times as wide, or more. */
const PRIOR_WEIGHS = 1.5;

export function evidenceWarnings(plan: Plan, evidence: ItemEvidence, say: Say): EvidenceWarning[] {
  const { counted, rate, trend } = evidence;
  const found: EvidenceWarning[] = [];
  const warn = (code: WarningCode, sentence: string): void => {
    found.push({ code, sentence });
  };
  if (rate.stores < FEW_STORES) {
    const count = rate.stores === 1 ? 'One store is' : `${say.count(rate.stores)} stores are`;
    warn('fewStores', `${count} too few to tell how stores differ: the range leans on how they usually do.`);
  }
  const chain = onlyChain(plan, evidence);
  if (chain !== null)
    warn('oneChain', `All stores are of ${chain}: shoppers of other chains may buy more, or less.`);
  if (isOfNoChain(plan, evidence))
    warn(
      'noChainOfPlan',
      'None of the stores is of a chain of this plan: its shoppers may buy more, or less, than theirs.',
    );
  if (counted.basis === 'withDeals')
    warn(
      'dealWeeksOnly',
      'Every week after the opening was on a display or at a lower price: without them it sells less.',
    );
  if (counted.basis === 'withOpenings')
    warn(
      'openingWeeksOnly',
      'Only opening weeks were seen, when shoppers try what is new: what they go on buying is still open.',
    );
  if (trend !== null && trend.high80 < 1)
    warn(
      'falling',
      `Sales fall by ${percents(trend.factor)} in ${TREND_WEEKS} weeks (80 % range ${percents(trend.high80)} to ${percents(trend.low80)}): the mean is above where they are heading.`,
    );
  if (rate.weeksScatter > MUCH_SCATTER)
    warn(
      'weeksScatter',
      `Weeks of one store scatter ${say.number(Math.round(rate.weeksScatter * 10) / 10)} times more than counts do: something else moves them (empty shelves, deals not flagged), and all ranges are wider for it.`,
    );
  if (priorDecides(evidence))
    warn(
      'priorDecides',
      'What was held before decides more than the stores do: without it the range is much wider.',
    );
  return found;
}

function percents(factor: number): string {
  return `${Math.round(100 * Math.abs(1 - factor))} %`;
}

/** The name of the chain that all stores are of; null where they are of several, of none, or there is one store alone. */
function onlyChain(plan: Plan, { counted: { stores } }: ItemEvidence): string | null {
  const [first] = stores;
  if (!first || first.accountId === null || stores.length < 2) return null;
  if (stores.some(({ accountId }) => accountId !== first.accountId)) return null;
  return plan.accounts.find(({ id }) => id === first.accountId)?.name ?? null;
}

/** Whether what will be sold in chains is read off other stores alone; nothing is planned without accounts. */
function isOfNoChain({ accounts }: Plan, { itemId, counted: { stores } }: ItemEvidence): boolean {
  const isPlanned = accounts.some(({ listings }) => listings.some((listing) => listing.itemId === itemId));
  return isPlanned && stores.every(({ accountId }) => accountId === null);
}

function priorDecides({ prior, rate, stores }: ItemEvidence): boolean {
  if (prior.mean === null) return false;
  const without = rateOfSale(stores, { ...prior, mean: null }, rate.weeksScatter);
  if (without === null) return false;
  const width = (range: { low80: number; high80: number }) => Math.log(range.high80 / range.low80);
  return width(without.ofMean) > PRIOR_WEIGHS * width(rate.ofMean);
}
