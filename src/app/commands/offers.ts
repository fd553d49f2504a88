// Commands about rival offers of money: an offer with its first part, one more part, a whole set of parts at once (a counter
// used, or what was said before), and what was said. None of them changes a result of the plan's own pass.
// Worked example: addOffer(plan, { id, partId, trancheId, kind: 'equity', name: 'Offer 1' }) asks for money in week 0.
import { type OfferPart, offerKindOf } from '../../domain/offers/list.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { RivalOffer } from '../../domain/plan/offer-terms.ts';
import type { Outcome } from '../../domain/problems.ts';
import { append, setField } from './field.ts';

type Said = RivalOffer['log'][number]['said'];

export interface NewPart {
  kind: string;
  partId: string;
  /** Of the first money, where the kind has its money in tranches. */
  trancheId: string;
}

/** A new offer with one part, last in the list. */
export function addOffer(
  plan: Plan,
  { id, name, ...part }: NewPart & { id: string; name: string },
): Outcome<Plan> {
  return append(plan, 'offers', { id, name, from: '', parts: [newPart(part)], log: [] });
}

/** One more part of an offer: part equity, part royalty. */
export function addOfferPart(plan: Plan, { offerId, ...part }: NewPart & { offerId: string }): Outcome<Plan> {
  return append(plan, `offers/${offerId}/parts`, newPart(part));
}

/** One term of one part at a value: what a counter found. */
export function setOfferTerm(
  plan: Plan,
  { offerId, partId, key, value }: { offerId: string; partId: string; key: string; value: string },
): Outcome<Plan> {
  return setField(plan, { path: `offers/${offerId}/parts/${partId}/${key}`, value });
}

/** All parts as they were said before; what stands now is in the log only if it was stamped. */
export function setOfferParts(
  plan: Plan,
  { offerId, parts }: { offerId: string; parts: RivalOffer['parts'] },
): Outcome<Plan> {
  return setField(plan, { path: `offers/${offerId}/parts`, value: parts });
}

/** Keeps an offer as it stands, as said by one side. */
export function stampOffer(
  plan: Plan,
  { offerId, said, id, atSeconds }: { offerId: string; said: Said; id: string; atSeconds: number },
): Outcome<Plan> {
  const parts = plan.offers.find((offer) => offer.id === offerId)?.parts;
  return append(plan, `offers/${offerId}/log`, { id, said, atSeconds, parts });
}

/** The kind's blank terms; money in tranches starts as one sum in week 0, for its amount to be typed. */
function newPart({ kind, partId, trancheId }: NewPart): OfferPart {
  const blank = offerKindOf({ kind }).blank(partId);
  if (!('tranches' in blank)) return blank;
  return { ...blank, tranches: [{ id: trancheId, amount: '0', when: { by: 'week', week: 0 } }] };
}
