// Counters about what the chain takes off its payments: a cap on spoils, and proof for every deduction, each in money a
// year. Worked figure: 2 % spoils of an invoice at 2.60 and 3,120 units are 162.24; doubled, a cap keeps 162.24.
import { storeWeeks, unitsByWeek, YEAR_WEEKS } from '../deals/store-weeks.ts';
import { dealTakes } from '../deals/unit-money.ts';
import { withAccount } from '../ladder/rungs.ts';
import { Decimal, numberOf } from '../money/decimal.ts';
import { percentText } from '../money/plain.ts';
import type { Account } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { type BesideArgs, type BesideOffer, moneyOf, unvalued } from './beside-types.ts';
import { type OneDeal, oneDeal } from './run.ts';

/** First year with spoils at a multiple of those planned, against a cap where they are planned. */
export function spoilsCapOffer({ now, guesses }: BesideArgs): Outcome<BesideOffer> {
  const { plan, account } = now;
  const base = { id: 'spoilsCap', label: 'Capped spoils', measure: 'aYear' } as const;
  const rates = account.allowances.flatMap((each) =>
    each.kind === 'spoils' ? [new Decimal(each.rate)] : [],
  );
  const planned = Decimal.sum(0, ...rates);
  if (planned.isZero()) {
    return fine(unvalued({ ...base, what: 'No spoils are planned: there is nothing to cap.' }));
  }
  const uncapped = oneDeal(withAccount(plan, withSpoils(account, guesses.spoilsTimes)), account.id);
  if (!uncapped.ok) return uncapped;
  const year = {
    capped: numberOf(now.deal.firstYearAfterFixed),
    uncapped: numberOf(uncapped.value.deal.firstYearAfterFixed),
  };
  const [cap, without] = [planned, planned.times(guesses.spoilsTimes)].map((rate) =>
    percentText(rate.toFixed()),
  );
  return fine({
    ...base,
    what: `Spoils no higher than ${cap} of invoices, whatever breaks.`,
    value: moneyOf(year.capped - year.uncapped, now),
    lines: [
      { label: `First year, spoils at ${cap}`, amount: moneyOf(year.capped, now) },
      { label: `First year, spoils at ${without}`, amount: moneyOf(year.uncapped, now) },
    ],
    assumed: `Without a cap they come to ${without}; guess`,
  });
}

function withSpoils(account: Account, times: number): Account {
  const allowances = account.allowances.map((each) => {
    if (each.kind !== 'spoils') return each;
    const rate = Decimal.min(new Decimal(each.rate).times(times), '0.999999').toDecimalPlaces(6);
    return { ...each, rate: rate.toFixed() };
  });
  return { ...account, allowances };
}

/**
 * A share of the first year's deductions and claims that would have to be proven, and can't be. Where the plan itself
 * counts on deductions that aren't owed, these: then nothing has to be guessed.
 */
export function proofOffer({ now, guesses }: BesideArgs): BesideOffer {
  const base = { id: 'proof', label: 'Proof for deductions', measure: 'aYear' } as const;
  const { disputed } = now.account;
  if (disputed) {
    const taken = Number(disputed.wrongRate) * invoicedInYear(now);
    const wonBack = Number(disputed.recoveredShare) * taken;
    const [wrong, back] = [disputed.wrongRate, disputed.recoveredShare].map(percentText);
    return {
      ...base,
      what: PROOF,
      value: moneyOf(taken - wonBack, now),
      lines: [
        { label: 'Deductions not owed, first year', amount: moneyOf(-taken, now) },
        { label: 'Of these, won back', amount: moneyOf(wonBack, now) },
      ],
      assumed: `${wrong} of invoices taken without a right to it, ${back} of that won back, as planned`,
    };
  }
  const deductions = deductionsOfYear(now);
  const claims = claimsOfYear(now);
  if (deductions + claims === 0) {
    return unvalued({ ...base, what: 'No deductions are planned: there is nothing to prove.' });
  }
  const share = percentText(new Decimal(guesses.unprovenShare).toFixed());
  return {
    ...base,
    what: PROOF,
    value: moneyOf((deductions + claims) * guesses.unprovenShare, now),
    lines: [
      { label: 'Deductions of the first year', amount: moneyOf(-deductions, now) },
      { label: 'Claims of the first year', amount: moneyOf(-claims, now) },
    ].filter(({ amount }) => amount !== 0),
    assumed: `${share} of them can’t be proven; guess`,
  };
}

const PROOF = 'Nothing is taken off a payment without a document that proves it.';

/** Units scanned in the first year at the invoice price. */
function invoicedInYear({ ladders, deal }: OneDeal): number {
  return ladders.reduce(
    (sum, { invoice }, index) =>
      sum + numberOf(invoice) * numberOf(deal.items[index]?.firstYearUnits ?? new Decimal(0)),
    0,
  );
}

/** Deductions from remittances; an early discount is a price for early money, and needs no proof. */
function deductionsOfYear({ account, ladders, deal }: OneDeal): number {
  const claimed = new Set(account.allowances.map(({ id }) => id));
  return ladders.reduce((sum, { steps }, index) => {
    const perUnit = steps
      .filter(({ id, stage }) => stage === 'deduction' && claimed.has(id))
      .reduce((each, { amount }) => each + numberOf(amount), 0);
    return sum + perUnit * numberOf(deal.items[index]?.firstYearUnits ?? new Decimal(0));
  }, 0);
}

/** Scan-backs, bill-backs and promotions paid back afterwards; what is off the invoice is never claimed. */
function claimsOfYear({ plan, account, ladders }: OneDeal): number {
  const stores = storeWeeks(account);
  const promotions = account.promotions.filter(({ fundedBy }) => fundedBy === 'scanBack');
  let sum = 0;
  account.listings.forEach((listing, index) => {
    const ladder = ladders[index];
    const takes = ladder ? dealTakes({ ...account, promotions }, ladder) : [];
    if (takes.length === 0) return;
    const units = unitsByWeek({ plan, account, listing, stores });
    for (const { amount, fromWeek, untilWeek } of takes) {
      const until = Math.min(YEAR_WEEKS, untilWeek - stores.firstWeek);
      for (let week = Math.max(0, fromWeek - stores.firstWeek); week < until; week++) {
        sum += (units[week] ?? 0) * amount;
      }
    }
  });
  return sum;
}
