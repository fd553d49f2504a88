// Terms of what comes off an invoice and when it is paid: payment days, early-payment discount, spoils allowance.
// Worked figure: 2 % early discount on terms of 30 days is paid in 10 days, by all; on 7 days, in 7.
import type { Account } from '../plan/index.ts';
import { type TermKind, textOf } from './kind.ts';

const SPOILS_ID = 'talks-spoils';
const DISCOUNT_DAYS = 10;

const givenToThem = {
  better: 'lower',
  bothWays: false,
  least: 0,
  mostBecause: '',
  farthest: () => 0,
  isOffered: () => true,
} as const;

export const paymentDays: TermKind = {
  ...givenToThem,
  name: 'paymentDays',
  label: 'Payment days',
  unit: 'days',
  meaning: 'days from invoice to payment, lateness not counted',
  step: 5,
  worthStep: 1,
  grid: () => 1,
  most: () => 365,
  read: ({ account }) => account.terms.paymentDays,
  write: ({ account }, value) => {
    const { earlyDiscount } = account.terms;
    // a discount can't be for paying later than the terms
    const discount = earlyDiscount && { ...earlyDiscount, days: Math.min(earlyDiscount.days, value) };
    return { ...account, terms: { ...account.terms, paymentDays: value, earlyDiscount: discount } };
  },
  assumed: () => null,
};

export const earlyDiscount: TermKind = {
  ...givenToThem,
  name: 'earlyDiscount',
  label: 'Early discount',
  unit: 'share',
  meaning: 'share off an invoice that is paid early',
  step: 0.0025,
  worthStep: 0.01,
  grid: () => 0.0005,
  most: () => 0.99,
  read: ({ account }) => Number(account.terms.earlyDiscount?.rate ?? 0),
  write: ({ account }, value) => {
    const days = Math.min(DISCOUNT_DAYS, account.terms.paymentDays);
    const before = account.terms.earlyDiscount ?? { days, takenShare: '1' };
    return { ...account, terms: { ...account.terms, earlyDiscount: { ...before, rate: textOf(value, 6) } } };
  },
  assumed: ({ account }) =>
    account.terms.earlyDiscount ? null : 'for paying in 10 days, taken on every invoice; guess',
};

export const spoils: TermKind = {
  ...givenToThem,
  name: 'spoils',
  label: 'Spoils',
  unit: 'share',
  meaning: 'standing spoils allowance, a share of invoices',
  step: 0.0025,
  worthStep: 0.01,
  grid: () => 0.0005,
  most: () => 0.99,
  read: ({ account }) => Number(spoilsOf(account)?.rate ?? 0),
  write: ({ account }, value) => {
    const rate = textOf(value, 6);
    const before = spoilsOf(account);
    const allowances = before
      ? account.allowances.map((each) => (each === before ? { ...before, rate } : each))
      : [...account.allowances, { kind: 'spoils' as const, id: SPOILS_ID, rate }];
    return { ...account, allowances };
  },
  assumed: () => null,
};

function spoilsOf({ allowances }: Account) {
  for (const each of allowances) if (each.kind === 'spoils') return each;
  return null;
}
