// The money a chain asks for beside the unit price, dated: slotting, opening fees, displays and their weekly fee.
// Per-door sums fall due as each cohort opens; per-item and per-chain sums at the account's first opening.
// Worked figure: 250 a door for cohorts of 10 doors is 2,500 in each opening week.
import { dec, minorOf } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import type { Cohort, CompiledAccount, DatedSum } from './compiled.ts';

type FixedPart = Pick<
  CompiledAccount,
  | 'slottingCash'
  | 'slottingClaims'
  | 'openingFees'
  | 'displayPaid'
  | 'displayOpened'
  | 'displayFees'
  | 'hasFixedSums'
>;

interface FixedArgs {
  account: Account;
  cohorts: readonly Cohort[];
  weeks: number;
  minorDigits: number;
}

export function fixedSums(args: FixedArgs): FixedPart {
  const { account } = args;
  const slotting = account.slotting ? sumsOf(args, account.slotting) : [];
  const byRemittance = account.slotting?.settled === 'offRemittances';
  return {
    slottingCash: byRemittance ? [] : slotting,
    slottingClaims: byRemittance ? slotting : [],
    openingFees: account.openingFees.flatMap((fee) => sumsOf(args, fee)),
    ...displaySums(args),
    hasFixedSums: account.slotting !== null || account.openingFees.length > 0 || account.display !== null,
  };
}

/** Cohorts that open within the plan's reach and before any cut. */
function opening(args: FixedArgs): Cohort[] {
  const cut = args.account.cutWeek ?? Number.POSITIVE_INFINITY;
  const started = args.cohorts.slice(args.account.runningDoors.length);
  return started.filter((cohort) => cohort.openWeek < cut);
}

type Per = 'item' | 'door' | 'chain' | 'itemDoor';

function sumsOf(args: FixedArgs, ask: { amount: string; per: Per }): DatedSum[] {
  const cohorts = opening(args);
  const items = args.account.listings.length;
  const sum = (week: number, times: number): DatedSum => ({
    week,
    amount: minorOf(dec(ask.amount).times(times), args.minorDigits),
  });
  if (cohorts.length === 0) return [];
  if (ask.per === 'door' || ask.per === 'itemDoor') {
    const each = ask.per === 'door' ? 1 : items;
    return cohorts.map((cohort) => sum(cohort.openWeek, cohort.authorisedAtOpening * each));
  }
  const first = Math.min(...cohorts.map((cohort) => cohort.openWeek));
  return [sum(first, ask.per === 'chain' ? 1 : items)];
}

function displaySums(args: FixedArgs): Pick<FixedPart, 'displayPaid' | 'displayOpened' | 'displayFees'> {
  const { account, weeks, minorDigits } = args;
  const display = account.display;
  const displayFees = new Float64Array(weeks);
  if (!display) return { displayPaid: [], displayOpened: [], displayFees };
  const perDoor = dec(display.buildAmountPerDoor).plus(display.freightAmountPerDoor);
  const displayOpened = opening(args).map((cohort) => ({
    week: cohort.openWeek,
    amount: minorOf(perDoor.times(cohort.authorisedAtOpening), minorDigits),
  }));
  // Paid when ordered, but never before the plan begins.
  const displayPaid = displayOpened.map(({ week, amount }) => ({
    week: Math.max(0, week - display.buildWeeks),
    amount,
  }));
  const doorsWithDisplay = new Int32Array(weeks);
  // Doors that run already may still be young enough to have theirs.
  for (const cohort of args.cohorts) {
    const until = Math.min(weeks, cohort.openWeek + display.weeks);
    for (let w = Math.max(0, cohort.openWeek); w < until; w++) {
      doorsWithDisplay[w] = (doorsWithDisplay[w] ?? 0) + (cohort.authorised[w] ?? 0);
    }
  }
  const fee = dec(display.feeAmountPerStoreWeek);
  if (!fee.isZero()) {
    doorsWithDisplay.forEach((doors, w) => {
      displayFees[w] = minorOf(fee.times(doors), minorDigits);
    });
  }
  return { displayPaid, displayOpened, displayFees };
}
