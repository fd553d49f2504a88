// What every kind of rival offer must be. One kind is one file in kinds/; the list in list.ts is all that knows them. A
// kind says how its terms are stored, and turns them into dated flows on one future of the plan; everything else (cash
// curve, return, founder's money, turning points, counters) is made of those flows and is the same for all kinds.
// Worked figure: 0.50 for each of 100 units sold in week 3, paid weekly, is one flow: week 4, -5,000 cents, "royalty".
import type * as zod from 'zod/mini';
import type * as fields from '../plan/fields.ts';
import type { Basis } from './basis.ts';

/** What a flow is, for its words. */
export const FLOW_KINDS = [
  'moneyIn',
  'fee',
  'interest',
  'principal',
  'royalty',
  'share',
  'minimum',
  'advance',
  'advanceRepaid',
  'payment',
  'payout',
] as const;
export type FlowKind = (typeof FLOW_KINDS)[number];

/** Money between the funder and us; a week past the horizon is a payment that the terms date then. */
export interface DatedFlow {
  week: number;
  /** Whole minor units; above 0 comes to us, below 0 goes to the funder. */
  amount: number;
  what: FlowKind;
  /** Comes in before anything is paid in its week (step 1 of PASS.md), so it helps the week's lowest cash. */
  early: boolean;
}

/** What a part holds of the company, to be turned into a share of it by the rounds (cap-table.ts). */
export type Stake =
  | {
      by: 'shares';
      /** Money that comes, and all that was asked: what never comes buys nothing. */
      buys: { week: number; amount: number }[];
      asked: number;
      /** Part of the company after all of it, 0 to 1. */
      partRate: number;
      preference: 'none' | 'nonParticipating' | 'participating';
      /** How many times its money comes first. */
      preferenceMultiple: number;
      /** Option pool made room for with the money, out of those who were there before; share of the company after it. */
      poolRate: number;
      proRata: boolean;
    }
  | {
      by: 'converts';
      buys: { week: number; amount: number }[];
      /** Simple interest a year, 0 for none; it turns into shares with the money. */
      yearlyRate: number;
      /** Null: no cap. Minor units. */
      cap: number | null;
      capBase: 'preMoney' | 'postMoney';
      discountRate: number;
      /** Paid back in this week unless a round came before; null: never. */
      repaidWeek: number | null;
    };

/** Money of a part that never comes in this future of the plan. */
export interface NeverComes {
  trancheId: string;
  amount: number;
  condition: When;
}

/** What one part comes to on one future of the plan. */
export interface PartOutcome {
  flows: DatedFlow[];
  never: NeverComes[];
  /** Still to be paid when the company is sold at the end of the horizon; comes off what its owners share. */
  owed: number;
  /** Of `owed`, what no dated flow after the horizon covers: it counts as paid to the funder at the sale. */
  settles: number;
  stake: Stake | null;
}

/** When money comes. `order`: an order is in hand, `doors`: so many are open; of one account, or of any (null). */
export type When =
  | { by: 'week'; week: number }
  | { by: 'doors'; doors: number; accountId: string | null }
  | { by: 'order'; accountId: string | null };

/** A part of the money with its own condition. */
export interface Tranche {
  id: string;
  amount: string;
  when: When;
}

/** One input of a kind's form, as plain data. `orNone`: may be left empty (null). */
export interface FieldNote {
  key: string;
  label: string;
  unit:
    | 'share'
    | 'sum'
    | 'perUnit'
    | 'times'
    | 'weeks'
    | 'months'
    | 'days'
    | 'switch'
    | 'choice'
    | 'tranches'
    | 'when';
  orNone?: boolean;
  choices?: readonly { value: string; label: string }[];
}

/** A term that a counter may move, and the step it stands on. */
export interface Movable {
  key: string;
  label: string;
  unit: 'share' | 'sum' | 'perUnit' | 'times';
  least: number;
  most: number;
  decimals: number;
}

/** What a kind states its stored terms with; passed in, so that the model doesn't bring the means of judging a file. */
export interface Means {
  z: Pick<typeof zod, 'strictObject' | 'literal' | 'enum' | 'boolean' | 'nullable'>;
  f: typeof fields;
  /** The tranches of a part, and one condition. */
  tranches: () => zod.ZodMiniType<Tranche[], unknown>;
  when: () => zod.ZodMiniType<When, unknown>;
}

/** The stored terms of a kind, out of how it states them. */
export type TermsOf<Stated extends (means: Means) => zod.ZodMiniType> = zod.output<ReturnType<Stated>>;

export interface OfferKind<Terms extends { kind: string; id: string }> {
  kind: Terms['kind'];
  label: string;
  /** One sentence in trade words. */
  meaning: string;
  terms: (means: Means) => zod.ZodMiniType<Terms, unknown>;
  /** New terms for the picker: nothing comes and nothing is owed. */
  blank: (id: string) => Terms;
  fields: readonly FieldNote[];
  /** Terms a counter may move; the first is the one it moves when nothing else is said. */
  movable: readonly Movable[];
  outcome: (terms: Terms, basis: Basis) => PartOutcome;
}
