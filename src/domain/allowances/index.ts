// The list of allowance kinds, by hand: it greps, it type-checks, it works in Node and in a worker. A new kind is one
// file beside this one and one line in the list; the stored union (plan/allowance-terms.ts), validation, picker, form, ladder line, postings and
// the tests all follow from it. The order is the picker's. (The early-payment discount is part of an account's payment
// terms, not of this list.) Worked figure: kindOf({ kind: 'spoils', id: 'a', rate: '0.02' }).label is "Spoils allowance".
import { billBack } from './bill-back.ts';
import { broker } from './broker.ts';
import { chargebacks } from './chargebacks.ts';
import type { AllowanceKind, TermsOf } from './contract.ts';
import { coop } from './coop.ts';
import { dataFee } from './data-fee.ts';
import { expectedReturns } from './expected-returns.ts';
import { freightAllowance } from './freight-allowance.ts';
import { freightOut } from './freight-out.ts';
import { offInvoice } from './off-invoice.ts';
import { pickAndPack } from './pick-and-pack.ts';
import { royalty } from './royalty.ts';
import { scanBack } from './scan-back.ts';
import { spoils } from './spoils.ts';

const list = [
  offInvoice,
  freightAllowance,
  spoils,
  coop,
  dataFee,
  chargebacks,
  expectedReturns,
  scanBack,
  billBack,
  freightOut,
  pickAndPack,
  broker,
  royalty,
] as const;

type Kind = (typeof list)[number];

/** How the kinds state their stored terms. */
export type Stated = ReturnType<Kind['terms']>;

/** Any allowance as an account keeps it. */
export type Allowance = TermsOf<Kind['terms']>;

/** Every kind, in the picker's order. */
export const ALLOWANCE_KINDS = list as unknown as readonly AllowanceKind<Allowance>[];

const byName = new Map<string, AllowanceKind<Allowance>>(ALLOWANCE_KINDS.map((each) => [each.kind, each]));

/** The kind of a stored allowance: its words, its stage, and what it takes. A kind that isn't listed is a bug. */
export function kindOf({ kind }: { kind: string }): AllowanceKind<Allowance> {
  const found = byName.get(kind);
  if (!found) throw new Error(`allowance kind ${kind} is not in the list`);
  return found;
}
