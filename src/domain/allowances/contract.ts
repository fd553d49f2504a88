// What every allowance kind must be: the sequence of section "from list price to what we keep" is made of these.
// One kind is one file; the list in index.ts is all that knows them. A kind says what it takes from one unit (for the
// ladder and the deal, in decimals) and what the weekly pass must post (as a Charge, in integers).
// Worked figure: spoils of 2 % on an invoice price of 2.60 take 0.052 a unit; a 1,300.00 invoice posts 26.00.
import type * as zod from 'zod/mini';
import type { Decimal } from '../money/decimal.ts';
import type * as fields from '../plan/fields.ts';

/** Where an allowance stands in the order from list price to contribution. */
export type Stage = 'offInvoice' | 'deduction' | 'perUnitOnDeal' | 'sellingCost';

/** Who ends up with the money, for the one idea of the look. */
export type Owner = 'ours' | 'theirs' | 'between' | 'atRisk';

/** The unit prices a kind may take its amount from; all on the 0.0001 grid. */
export interface UnitBases {
  list: Decimal;
  /** List less the off-invoice allowances before this one (for discounts in series). */
  running: Decimal;
  invoice: Decimal;
  landed: Decimal;
  /** The part of the units invoiced that comes back and is credited: broker and royalty are not owed on it. */
  returnsRate: Decimal;
  caseUnits: number;
}

/** What one unit gives up, never negative, rounded to 4 decimals, with the reason in words ("2 % of invoice 2.60"). */
export interface UnitTake {
  amount: Decimal;
  reason: string;
}

/** Posting rules the weekly pass knows. Prices in 1/10,000 of the currency unit, rates in millionths. */
export type Charge =
  /**
   * Already inside the invoice price. `passedOn`: the next hand buys at the lowered price. `pickUp`: the buyer's own
   * truck fetches the goods, so freight out is zero.
   */
  | { settles: 'onInvoice'; passedOn: boolean; pickUp: boolean }
  /** A share of each rounded invoice, accrued with it, taken off its remittance; a document of its own. */
  | { settles: 'remittance'; rateMillionths: number }
  /** So much a unit scanned (or shipped) in weeks [fromWeek, untilWeek), claimed lagWeeks later off remittances. */
  | {
      settles: 'claim';
      per: 'unitSold' | 'unitShipped';
      priceTenThousandths: number;
      fromWeek: number;
      untilWeek: number;
      lagWeeks: number;
    }
  /** A share of invoices, or so much a unit invoiced; less return credits; free goods only when said. */
  | {
      settles: 'monthly' | 'quarterly';
      rateMillionths: number;
      priceTenThousandths: number;
      onFreeGoods: boolean;
    }
  /** Cash out when units leave us, so much a unit, free goods too. */
  | { settles: 'shipment'; flow: 'freightOut' | 'pickAndPack'; priceTenThousandths: number }
  /** A share of the units delivered comes back lagWeeks after they reached the store. */
  | {
      settles: 'returns';
      rateMillionths: number;
      resaleableMillionths: number;
      freightBackTenThousandths: number;
      lagWeeks: number;
    };

/** One input of a kind's form, as plain data. */
export interface FieldNote {
  key: string;
  label: string;
  unit: 'share' | 'perUnit' | 'perCase' | 'weeks' | 'days' | 'switch' | 'choice';
  choices?: readonly { value: string; label: string }[];
}

/** A hand-worked case: terms and bases in, what one unit gives up out, with the arithmetic in words. */
export interface Example<Terms> {
  terms: Terms;
  bases: {
    list: string;
    running: string;
    invoice: string;
    landed: string;
    returnsRate: string;
    caseUnits: number;
  };
  expected: string;
  arithmetic: string;
}

/**
 * What a kind states its stored terms with. It is passed in, so that what works with allowances (ladder, weekly pass)
 * doesn't bring the means of judging a file with it: those are fetched after the first screen.
 */
export interface Means {
  z: Pick<typeof zod, 'strictObject' | 'literal' | 'enum' | 'boolean'>;
  f: typeof fields;
}

/** The stored terms of a kind, out of how it states them. */
export type TermsOf<Stated extends (means: Means) => zod.ZodMiniType> = zod.output<ReturnType<Stated>>;

export interface AllowanceKind<Terms extends { kind: string; id: string }> {
  kind: Terms['kind'];
  label: string;
  /** One sentence in trade words. */
  meaning: string;
  stage: Stage;
  owner: Owner;
  /** The stored terms: kind, id, and the kind's own. */
  terms: (means: Means) => zod.ZodMiniType<Terms, unknown>;
  /** New terms that take nothing, for the picker. */
  blank: (id: string) => Terms;
  fields: readonly FieldNote[];
  /** Keys of terms that may vary in the risk range. */
  uncertain: readonly string[];
  take: (terms: Terms, bases: UnitBases) => UnitTake;
  charge: (terms: Terms, bases: UnitBases) => Charge;
  examples: readonly Example<Terms>[];
}
