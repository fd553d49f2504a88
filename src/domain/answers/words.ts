// Answers in sentences, the same on the screen and on the command line; how numbers look is passed in.
// Worked example: "Corner pays 14 days earlier, after 16 instead of 30".
import { minorDigitsOf } from '../money/currency.ts';
import { dec } from '../money/decimal.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import type { Say } from '../verdicts/say.ts';
import type { Change } from './types.ts';

type Words = Pick<Say, 'count' | 'percent' | 'week' | 'money'>;

/** A change to the plan, without a full stop. */
export function changeWords(change: Change, plan: Plan, say: Words): string {
  if (change.kind === 'creditLimit') return creditWords(change, plan, say);
  if ('accountId' in change) return accountWords(change, find(plan.accounts, change.accountId), say);
  if ('lineId' in change) {
    const line = find(plan.business.lines, change.lineId);
    return `${line.name}: ${say.count(change.shifts)} shifts from ${say.week(change.fromWeek)}`;
  }
  return itemWords(change, find(plan.items, change.itemId), say);
}

/** "1 week", "4 weeks". */
function counted(say: Words, value: number, noun: string): string {
  return `${say.count(value)} ${noun}${value === 1 ? '' : 's'}`;
}

function creditWords(change: Extract<Change, { kind: 'creditLimit' }>, plan: Plan, say: Words): string {
  const { name, creditLimitAmount } = find(plan.accounts, change.accountId);
  const minor = 10 ** (minorDigitsOf(plan.currency) ?? 2);
  const money = (amount: string) => say.money(dec(amount).times(minor).round().toNumber());
  return `${name}: a credit limit of ${money(change.amount)} instead of ${money(creditLimitAmount ?? '0')}`;
}

type AccountChange = Exclude<Extract<Change, { accountId: string }>, { kind: 'creditLimit' }>;

function accountWords(change: AccountChange, account: Account, say: Words): string {
  const { name, terms } = account;
  const count = (value: number, noun: string) => counted(say, value, noun);
  switch (change.kind) {
    case 'paidEarlier':
      return `${name} pays ${count(change.days, 'day')} earlier, after ${say.count(terms.paymentDays - change.days)} instead of ${say.count(terms.paymentDays)}`;
    case 'paidOnTime':
      return `${name} pays on time, not ${count(change.days, 'day')} late`;
    case 'earlyDiscount':
      return `${name} takes ${say.percent(Number(change.rate))} off for paying in ${count(change.days, 'day')}, on every invoice`;
    case 'slottingOffRemittances':
      return `${name} takes slotting off its payments instead of at opening`;
    case 'smallerFill':
      return `${name}: a case less of each product in a door’s opening fill`;
    case 'waveLater': {
      const { doors, openWeek } = find(account.waves, change.waveId);
      return `${name}: ${count(doors, 'door')} of week ${openWeek} open ${count(change.weeks, 'week')} later`;
    }
    case 'slowerDoors': {
      const { doors, openWeek, doorsPerWeek } = find(account.waves, change.waveId);
      const before = Math.min(doors, doorsPerWeek);
      return `${name}: ${count(doors, 'door')} of week ${openWeek} open ${say.count(change.doorsPerWeek)} a week instead of ${say.count(before)}`;
    }
  }
}

function itemWords(change: Extract<Change, { itemId: string }>, { name, supply }: Item, say: Words): string {
  switch (change.kind) {
    case 'capacityFrom':
      return `${name}: capacity of ${say.count(change.unitsPerWeek)} a week, twice as much, from ${say.week(change.fromWeek)}`;
    case 'stepEarlier': {
      const step = find(supply.capacitySteps, change.stepId);
      return `${name}: the step to ${say.count(step.unitsPerWeek)} a week from week ${change.fromWeek} instead of ${step.fromWeek}`;
    }
    case 'rushOrders':
      return `${name}: rush orders within ${say.count(change.leadWeeks)} of the ${say.count(supply.leadWeeks)} weeks, where goods would be missing`;
    case 'depositShare':
      return `${name}: a deposit of ${say.percent(dec(change.rate))} instead of ${say.percent(dec(supply.depositRate))}`;
    case 'supplierDays':
      return `${name}: ${counted(say, supply.supplierDays + change.days, 'day')} to pay its supplier instead of ${say.count(supply.supplierDays)}`;
    case 'coverWeeks': {
      return `${name}: ${counted(say, supply.coverWeeks + change.weeks, 'week')} of cover instead of ${say.count(supply.coverWeeks)}`;
    }
    case 'smallerMinimum':
      return `${name}: a minimum order of ${say.count(change.units)} instead of ${say.count(supply.minimumOrderUnits)}`;
  }
}

function find<T extends { id: string }>(list: readonly T[], id: string): T {
  const found = list.find((each) => each.id === id);
  if (!found) throw new Error(`there is no ${id} in this plan`);
  return found;
}
