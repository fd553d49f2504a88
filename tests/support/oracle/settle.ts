/**
 * Step 9, first half: what each account pays, with its own deductions and claims taken off.
 * Worked figure: 1,000.00 due, 5.00 bad, 20.00 own deductions: a pool of 975.00; 600.00 of slotting leaves 375.00 paid.
 */
import { doorsIn, opens } from './facts.ts';
import { leastOf, millionths, share, totalOf } from './numbers.ts';
import { feesOpening } from './opening-fees.ts';
import { claim, pay, post, receive, type World } from './world.ts';

const QUIET_WEEKS = 8;

export function claimSlotting(world: World): void {
  world.facts.plan.accounts.forEach(({ slotting }, accountAt) => {
    if (slotting?.settled !== 'offRemittances') return;
    claim(world, accountAt, feesOpening(world, accountAt, slotting), 0);
  });
}

export function settleAccounts(world: World): void {
  for (let accountAt = 0; accountAt < world.ledgers.length; accountAt++) settle(world, accountAt);
  for (const { week, amount } of world.recoveries) {
    if (week === world.week) receive(world, 'retained', amount, 'recovered');
  }
}

function settle(world: World, accountAt: number): void {
  const ledger = world.ledgers[accountAt];
  const account = world.facts.plan.accounts[accountAt];
  if (!ledger || !account) return;
  const hadOpenInvoice = ledger.parts.length > 0;
  const due = ledger.parts.filter(({ dueWeek }) => dueWeek <= world.week);
  ledger.parts = ledger.parts.filter(({ dueWeek }) => dueWeek > world.week);

  const gross = totalOf(due.map((part) => part.gross));
  const bad = totalOf(due.map((part) => share(part.gross, millionths(account.terms.badDebtRate))));
  const asked = totalOf(due.map(({ deductions, discount }) => deductions + discount));
  const own = leastOf(gross - bad, asked);
  const pool = gross - bad - own;
  post(world, 'retained', 'receivables', bad);
  post(world, 'accrued', 'receivables', own);
  const taken = takeClaims(world, accountAt, pool);
  post(world, 'accrued', 'receivables', taken);
  receive(world, 'receivables', pool - taken, 'remittances');
  ledger.receivables -= gross;
  for (const { advanced } of due) repay(world, advanced);

  ledger.quietWeeks = hadOpenInvoice ? 0 : ledger.quietWeeks + 1;
  if (ledger.quietWeeks >= QUIET_WEEKS)
    pay(world, 'accrued', takeClaims(world, accountAt, null), 'claimsPaid');
  const row = world.accountWeeks[accountAt];
  if (row) row.remitted[world.week] = pool - taken;
}

/** Takes due claims, oldest first, as far as `room` reaches (null: all). */
function takeClaims(world: World, accountAt: number, room: bigint | null): bigint {
  let taken = 0n;
  for (const each of world.ledgers[accountAt]?.claims ?? []) {
    if (each.dueWeek > world.week) continue;
    const now = room === null ? each.left : leastOf(each.left, room - taken);
    each.left -= now;
    taken += now;
  }
  return taken;
}

function repay(world: World, advanced: readonly bigint[]): void {
  advanced.forEach((amount, at) => {
    const advance = world.advances[at];
    if (!advance) return;
    advance.balance -= amount;
    pay(world, 'loans', amount, 'advanceRepaid');
  });
}

/** What the account's weeks show at the end. */
export function noteAccounts(world: World): void {
  world.accountWeeks.forEach((row, accountAt) => {
    row.receivables[world.week] = world.ledgers[accountAt]?.receivables ?? 0n;
    for (const cohort of world.facts.cohorts) {
      if (cohort.accountAt !== accountAt || !(cohort.isRunning || opens(cohort))) continue;
      row.doors[world.week] = (row.doors[world.week] ?? 0) + doorsIn(cohort, world.week);
    }
  });
}
