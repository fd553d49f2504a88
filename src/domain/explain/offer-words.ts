// What the payments of an offer are called, wherever they stand, and where its terms are. Worked example: 'principal' is "Paid back".
import type { FlowKind } from '../offers/contract.ts';

const WORDS: Record<FlowKind, string> = {
  moneyIn: 'Money in',
  fee: 'Fee',
  interest: 'Interest',
  principal: 'Paid back',
  royalty: 'Royalty',
  share: 'Share of sales',
  minimum: 'Up to the least sum',
  advance: 'Advanced',
  advanceRepaid: 'Advance paid back',
  payment: 'Payment',
  payout: 'Paid out',
};

export function offerFlowWord(what: FlowKind): string {
  return WORDS[what];
}

/** Where the terms of a part of an offer stand in the plan, or those of all its parts. */
export function partPath(offerId: string, partId: string | null = null): string {
  return `offers/${offerId}/parts${partId === null ? '' : `/${partId}`}`;
}
