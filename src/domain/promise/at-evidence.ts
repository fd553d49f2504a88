// The plan as the evidence has it, as one plan that can be run: rates of sale as the scans say, of every account the doors
// that may be expected, as late as may be expected. It is a middle, no forecast: what is sure to come whole or not at all
// stands in it in part. Worked figure: 200 doors at a chance of 0.6, most likely 2 weeks late and at most 8: 120 doors, 3 weeks late.
import { dec } from '../money/decimal.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import { doorsOpen, later } from './doors.ts';
import { evidenceFor } from './evidence.ts';
import { chanceOf, slipShares } from './rungs.ts';

export function atEvidence(plan: Plan): Plan {
  return { ...plan, accounts: plan.accounts.map((account) => expectedAccount(atSeenRates(plan, account))) };
}

/** Rates as scans say, where nobody typed that they don't count. */
function atSeenRates(plan: Plan, account: Account): Account {
  if (plan.promise.spreads.rateOfSaleRate !== null) return account;
  const listings = account.listings.map((listing) => {
    const seen = evidenceFor(plan, listing.itemId);
    return seen === null ? listing : { ...listing, unitsPerStoreWeek: rateText(seen.rate.mean) };
  });
  return { ...account, listings };
}

function rateText(rate: number): string {
  return dec(Math.max(0.000001, rate)).toDecimalPlaces(6).toFixed();
}

function expectedAccount(account: Account): Account {
  const slip = slipShares(account).reduce((sum, share, weeks) => sum + share * weeks, 0);
  return later(timesDoors(account, chanceOf(account)), Math.round(slip));
}

/** Waves with so many times the doors, at so many times the pace, rounded up; those left without a door fall away. */
function timesDoors(account: Account, times: number): Account {
  if (times === 1) return account;
  const waves = account.waves.flatMap((wave) => {
    const doors = Math.round(wave.doors * times);
    return doors === 0 ? [] : [{ ...wave, doors, doorsPerWeek: Math.ceil(wave.doorsPerWeek * times) }];
  });
  return { ...account, waves };
}

export function withDoors(plan: Plan, times: number): Plan {
  return { ...plan, accounts: plan.accounts.map((account) => timesDoors(account, times)) };
}

/** Doors of a plan in a week, taken as it stands. */
export function doorsIn(plan: Plan, week: number): number {
  return plan.accounts.reduce((sum, account) => sum + doorsOpen(account, week), 0);
}

/** Every supplier's lid and every line's pace so many times as high; infinity: none at all. */
export function withCapacity(plan: Plan, times: number): Plan {
  return { ...plan, items: plan.items.map((item) => ({ ...item, supply: supplyTimes(item.supply, times) })) };
}

function supplyTimes(supply: Item['supply'], times: number): Item['supply'] {
  const isLifted = times === Number.POSITIVE_INFINITY;
  const grown = (units: number) => Math.max(1, Math.round(units * times));
  const lid = (units: number | null) => (units === null || isLifted ? null : grown(units));
  const { line, sources, capacitySteps, capacityUnitsPerWeek } = supply;
  return {
    ...supply,
    capacityUnitsPerWeek: lid(capacityUnitsPerWeek),
    capacitySteps: isLifted
      ? []
      : capacitySteps.map((step) => ({ ...step, unitsPerWeek: grown(step.unitsPerWeek) })),
    sources: sources.map((source) => ({ ...source, capacityUnitsPerWeek: lid(source.capacityUnitsPerWeek) })),
    line: line === null || isLifted ? null : { ...line, unitsPerHour: grown(line.unitsPerHour) },
  };
}
