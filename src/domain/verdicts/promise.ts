// Verdict four: does the evidence support what is promised? The chance of the claim by its date, against two lines that are
// judgement and the plan's own. Worked figure: 320 doors that come with a chance of 0.25 on 900 that are open: a claim of
// 1,000 has a chance of 25 %: tight.
import type { Account, Plan } from '../plan/index.ts';
import { chanceWords } from '../promise/chance-words.ts';
import { type NotPlaced, type PlacedClaim, placeClaim } from '../promise/place-claim.ts';
import type { Verdict, VerdictState } from '../results.ts';
import type { PassResult } from '../rollout/types.ts';
import type { Say } from './say.ts';

export interface PromiseVerdictArgs {
  plan: Plan;
  pass: Pick<PassResult, 'accounts' | 'weeks' | 'minorDigits'>;
  say: Say;
}

export function promiseVerdict({ plan, pass, say }: PromiseVerdictArgs): Verdict {
  const placing = placeClaim(plan, pass);
  if (placing.placed === null) {
    const base = { name: 'promise', state: 'unknown', figure: '', value: null } as const;
    return { ...base, reason: unknownReason(plan, placing.why, say), accountId: null, itemId: null };
  }
  const { placed } = placing;
  const { promiseFailsBelowRate: fails, promiseTightBelowRate: tight } = plan.thresholds;
  const { chance } = placed;
  const state = chance < Number(fails) ? 'fails' : chance < Number(tight) ? 'tight' : 'holds';
  const words = chanceWords(chance, say.percent, [Number(fails), Number(tight)]);
  const weighing = weightiestOf(plan, placed);
  return {
    name: 'promise',
    state,
    // The date is in the reason: beside the word the figure has one line of a phone.
    figure: `${words} · ${claimedWords(plan, placed.claim, say)}`,
    value: chance.toFixed(6),
    reason: `${WORD[state]}. ${reasonOf({ plan, placed, words, weighing, say })}`,
    accountId: weighing?.account.id ?? null,
    itemId: null,
  };
}

const WORD: Record<VerdictState, string> = {
  holds: 'Holds',
  tight: 'Tight',
  fails: 'Fails',
  unknown: 'Not known yet',
};

function unknownReason(plan: Plan, why: NotPlaced, say: Say): string {
  const { claim, scans } = plan.promise;
  const date = claim === null ? '' : say.date(claim.byDate);
  const hasEvidence = scans.length > 0 || plan.accounts.some(({ standing }) => standing !== null);
  switch (why) {
    case 'noClaim':
      return hasEvidence
        ? 'Not known yet. No claim yet: say what is promised by when, in doors, units or revenue.'
        : 'Not known yet. No evidence entered yet: say how far each chain is agreed, and what is promised by when.';
    case 'noEvidence':
      return claim?.of === 'doors'
        ? 'Not known yet. No evidence entered yet: say how far each chain is agreed.'
        : 'Not known yet. No evidence entered yet: add store sales, or say how far each chain is agreed.';
    case 'beforeStart':
      return `Not known yet. The claim is for ${date}, before this plan’s first day: give it a date inside the plan.`;
    case 'pastEnd':
      return `Not known yet. The claim is for ${date}, after this plan’s last week: give the plan more weeks.`;
    case 'tooWide':
      return 'Not known yet. With a rate of sale that may be anything nothing can be said of units or revenue: say how far it may come out otherwise, 30 % for instance.';
    case 'partMissing':
      return 'Not known yet. The part that works out units and revenue is still being fetched.';
  }
}

/** "1,900 doors by 1 Oct 2026" */
export function claimWords(plan: Plan, claim: PlacedClaim['claim'], say: Say): string {
  return `${claimedWords(plan, claim, say)} by ${say.date(claim.byDate)}`;
}

/** An amount of what a claim is of, in whole doors and units, in revenue without cents. */
export function amountWords(plan: Plan, of: PlacedClaim['claim']['of'], amount: number, say: Say): string {
  const count = say.count(Math.round(amount));
  return of === 'revenue' ? `${plan.currency} ${count}` : counted(count, of, say);
}

/** What is claimed, as it was typed: 170.4 doors are not reached by 170. */
export function claimedWords(plan: Plan, claim: PlacedClaim['claim'], say: Say): string {
  const { of, amount } = claim;
  const exact = Number(amount);
  if (of === 'revenue' || Number.isInteger(exact)) return amountWords(plan, of, exact, say);
  return counted(say.number(exact), of, say);
}

/** What comes out on average: of less than ten a tenth is told, or a door that may well open would read as none. */
export function averageWords(plan: Plan, of: PlacedClaim['claim']['of'], amount: number, say: Say): string {
  const tenths = Math.round(amount * 10) / 10;
  if (of === 'revenue' || tenths >= 10) return amountWords(plan, of, amount, say);
  return counted(say.number(tenths), of, say);
}

function counted(count: string, of: 'doors' | 'units', say: Say): string {
  return `${count} ${count === say.count(1) ? of.slice(0, -1) : of}`;
}

interface Weighing {
  account: Account;
  /** Doors still missing from it, on average, of what the plan opens by the date. */
  missing: number;
}

/** The account whose doors are missing most, on average; null where none are. */
function weightiestOf(plan: Plan, { doors }: PlacedClaim): Weighing | null {
  let most: Weighing | null = null;
  doors.accounts.forEach(({ planned, expected }, a) => {
    const missing = planned - expected;
    const account = plan.accounts[a];
    if (account && missing > 0.5 && missing > (most?.missing ?? 0)) most = { account, missing };
  });
  return most;
}

interface ReasonArgs {
  plan: Plan;
  placed: PlacedClaim;
  words: string;
  weighing: Weighing | null;
  say: Say;
}

function reasonOf({ plan, placed, words, weighing, say }: ReasonArgs): string {
  const { claim, planned, expected } = placed;
  const amount = (value: number) => amountWords(plan, claim.of, value, say);
  const speaksFor = `the evidence speaks for ${averageWords(plan, claim.of, expected, say)} on average`;
  const chance = `A chance of ${words} of ${claimWords(plan, claim, say)}; ${speaksFor}`;
  if (planned < Number(claim.amount) && claim.of === 'doors')
    return `With every chain on time the plan opens ${amount(planned)} by ${say.date(claim.byDate)}; ${speaksFor}.`;
  if (weighing === null) return `${chance}.`;
  const { account } = weighing;
  const rung = account.standing === null ? '' : `, ${RUNG_WORDS[account.standing.rung]}`;
  return `${chance}. Most hangs on ${account.name}${rung}.`;
}

export const RUNG_WORDS: Record<NonNullable<Account['standing']>['rung'], string> = {
  orderInHand: 'order in hand',
  signed: 'signed',
  saidYes: 'the buyer said yes',
  inTalks: 'in talks',
  hopedFor: 'hoped for',
};
