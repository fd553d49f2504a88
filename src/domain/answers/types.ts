// The answers to "what limits, and what lifts it", as plain data: what limits each week, the changes that were tried and
// what each one does, and values searched for with the whole model. Amounts are whole minor units, weeks count from 0.
// Worked figure: a wave four weeks later, cash need 53,115 before and 4,215 after, 0 units lost either way.

/** What limits a week; ANSWERS.md says when each word is used, and which goes first. */
export const LIMITS = ['cash', 'capacity', 'stock', 'doors', 'demand'] as const;
export type Limit = (typeof LIMITS)[number];

export interface WeekLimit {
  week: number;
  what: Limit;
  /** With cash only: true while cash is under the buffer and not yet under zero. */
  tight: boolean;
  /** Items (places in the plan) whose lid or stock it is; empty for the other words. */
  items: readonly number[];
  /** Units that credit limits held back in the week's shipping: part of what is short without a lid in the way. */
  heldBack: number;
}

/** Weeks in a row with the same word (and the same tightness), both ends included. */
export interface LimitStretch {
  fromWeek: number;
  toWeek: number;
  what: Limit;
  tight: boolean;
}

export interface Binding {
  weeks: readonly WeekLimit[];
  stretches: readonly LimitStretch[];
  /** First week of each word; null where it never limits. */
  firstWeeks: Record<Limit, number | null>;
  /** The first week that something else than doors and demand limits; null when nothing does. */
  first: WeekLimit | null;
}

/** One change to a plan, as data: change-plan.ts makes the plan of it, words.ts the sentence. Days and weeks are whole. */
export type Change =
  | { kind: 'paidEarlier'; accountId: string; days: number }
  | { kind: 'paidOnTime'; accountId: string; days: number }
  | { kind: 'earlyDiscount'; accountId: string; rate: string; days: number }
  | { kind: 'slottingOffRemittances'; accountId: string }
  | { kind: 'creditLimit'; accountId: string; amount: string }
  | { kind: 'waveLater'; accountId: string; waveId: string; weeks: number }
  | { kind: 'slowerDoors'; accountId: string; waveId: string; doorsPerWeek: number }
  | { kind: 'smallerFill'; accountId: string }
  | { kind: 'capacityFrom'; itemId: string; fromWeek: number; unitsPerWeek: number }
  | { kind: 'stepEarlier'; itemId: string; stepId: string; fromWeek: number }
  | { kind: 'shiftFrom'; lineId: string; fromWeek: number; shifts: number }
  | { kind: 'rushOrders'; itemId: string; leadWeeks: number }
  | { kind: 'depositShare'; itemId: string; rate: string }
  | { kind: 'supplierDays'; itemId: string; days: number }
  | { kind: 'coverWeeks'; itemId: string; weeks: number }
  | { kind: 'smallerMinimum'; itemId: string; units: number };
export type ChangeKind = Change['kind'];

/** What a run of the whole model comes to, as far as lifts compare it. */
export interface Standing {
  /** Without new funding, opening cash counted in. */
  cashNeed: number;
  /** With the funding the plan counts on. */
  lowestCash: number;
  lowestWeek: number;
  unitsLost: number;
  /** Of the first 52 weeks (or as many as there are): all of the result but overhead, depreciation and financing. */
  contribution: number;
}

export interface Lift {
  change: Change;
  before: Standing;
  after: Standing;
  /** Whether it raises the lowest cash or lowers the need; whether fewer units are lost. */
  liftsCash: boolean;
  liftsUnits: boolean;
  /** The change is counted without what it costs to get (a shift nobody priced, a rush order's surcharge). */
  withoutItsCost: boolean;
}

export interface Lifts {
  /** What the first limit asks for: more cash, or fewer units lost. Lifts of that come first. */
  target: 'cash' | 'units';
  first: WeekLimit | null;
  before: Standing;
  /** At most ten, the best first. */
  best: readonly Lift[];
  /** The others that lift something. */
  others: readonly Lift[];
  /** Tried, and nothing was lifted. */
  noHelp: readonly Lift[];
}

/** The latest week an item's first purchase order may go out with no fill later and no unit more lost than planned. */
export interface LatestOrder {
  itemId: string;
  /** The week it goes out in the plan. */
  plannedWeek: number;
  week: number;
  /** A week later: fill units that ship later than planned, and units lost more than planned; null past the last week. */
  lateUnitsNext: number | null;
  lostUnitsNext: number | null;
  /** Run through the whole model, this week and the next. */
  confirmed: boolean;
  /** False when a later week was seen to hold again. */
  steady: boolean;
}

/** All openings spread over more weeks in the same proportions, so that cash stays above the buffer. */
export interface WaveSpacing {
  /** From the first opening week of a wave to the last, in the plan. */
  plannedWeeks: number;
  /** The least that holds; null when none of those tried does. */
  weeks: number | null;
  /** Most that was tried: all doors open within the plan's weeks. */
  triedTo: number;
  lowestThere: number;
  bufferThere: number;
  /** One week less; null where the plan's own spread holds, or none does. */
  lowestNext: number | null;
  bufferNext: number | null;
  confirmed: boolean;
  /** False when fewer weeks were seen to hold too, or more to fail. */
  steady: boolean;
}

/** The most doors a week, as a lid on every wave's pace, with which cash stays above the buffer. */
export interface DoorsAWeek {
  /** The fastest pace of the plan. */
  planned: number;
  /** Null when not even one door a week does. */
  doorsPerWeek: number | null;
  lowestThere: number;
  bufferThere: number;
  /** One door a week more; null when the plan's own pace holds. */
  lowestNext: number | null;
  bufferNext: number | null;
  confirmed: boolean;
  steady: boolean;
}

/** The rate of sale, as a factor on all rates of the plan, under which cash is not back above its opening in these weeks. */
export interface NeverCloses {
  /** In hundredths: the highest seen never to close, and the next, which does; null where none was seen. */
  neverAt: number | null;
  closesAt: number | null;
  /** The week it is back with the rates at `closesAt`. */
  backWeek: number | null;
  /** The plan's own first rate of sale at both, for a plan of one listing or as an example; 6 decimals at most. */
  rateNever: string | null;
  rateCloses: string | null;
  confirmed: boolean;
  steady: boolean;
}

/** The week from which on nothing more has to be put in: the lowest cash lies before it, without new funding. */
export interface FundsItself {
  /** 0: from the start. Null when the lowest cash falls in the last four weeks: these weeks don't show it. */
  week: number | null;
  /** What has to be put in before, and lowest cash with that, and with one minor unit less (null when it is 0). */
  amount: number;
  lowestThere: number;
  lowestBelow: number | null;
  confirmed: boolean;
}

export interface AnswerSolves {
  latestOrders: readonly LatestOrder[];
  /** Null for a plan whose doors all open in one week, or that opens none. */
  waveSpacing: WaveSpacing | null;
  /** Null where no wave takes more than a week. */
  doorsAWeek: DoorsAWeek | null;
  neverCloses: NeverCloses | null;
  fundsItself: FundsItself;
}
