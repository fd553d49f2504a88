// The list of kinds of offer, by hand. A new kind is one file in kinds/ and one line here; the stored union
// (plan/offer-terms.ts), picker, form, flows and the tests follow from it. The order is the picker's.
// Worked figure: offerKindOf({ kind: 'termLoan' }).label is "Term loan".
import type { OfferKind, TermsOf } from './contract.ts';
import { cappedAgreement } from './kinds/capped-agreement.ts';
import { convertibleNote } from './kinds/convertible-note.ts';
import { equipmentLease } from './kinds/equipment-lease.ts';
import { equity } from './kinds/equity.ts';
import { orderFinance } from './kinds/order-finance.ts';
import { receivablesAdvance } from './kinds/receivables-advance.ts';
import { revenueShare } from './kinds/revenue-share.ts';
import { salesRoyalty } from './kinds/sales-royalty.ts';
import { termLoan } from './kinds/term-loan.ts';
import { unitRoyalty } from './kinds/unit-royalty.ts';

const list = [
  equity,
  convertibleNote,
  cappedAgreement,
  unitRoyalty,
  salesRoyalty,
  termLoan,
  revenueShare,
  receivablesAdvance,
  orderFinance,
  equipmentLease,
] as const;

type Kind = (typeof list)[number];

/** How the kinds state their stored terms. */
export type StatedPart = ReturnType<Kind['terms']>;

/** Any part of an offer as a plan keeps it. */
export type OfferPart = TermsOf<Kind['terms']>;

/** Every kind, in the picker's order. */
export const OFFER_KINDS = list as unknown as readonly OfferKind<OfferPart>[];

const byName = new Map<string, OfferKind<OfferPart>>(OFFER_KINDS.map((each) => [each.kind, each]));

/** The kind of a stored part. A kind that isn't listed is a bug. */
export function offerKindOf({ kind }: { kind: string }): OfferKind<OfferPart> {
  const found = byName.get(kind);
  if (!found) throw new Error(`offer kind ${kind} is not in the list`);
  return found;
}
