// What a chain pays in a week, taken apart: invoices due, what is never paid, the deductions and discount of these very
// invoices, and claims from elsewhere that are taken off with them.
// Worked figure: due 1,248.00, deductions 24.96, claims 300.00: 923.04 is paid.
import { timesRate } from '../money/integer.ts';
import type { Account } from '../plan/index.ts';
import type { Posting } from '../rollout/books.ts';
import type { CompiledAccount } from '../rollout/compiled.ts';
import type { EventName } from '../rollout/events.ts';
import { entriesOf, entryLine } from './posting-lines.ts';
import type { WeekAt } from './splits.ts';
import type { ExplanationLine } from './types.ts';
import { moneyPart, type Scene, typed } from './write.ts';

const SETTLING: readonly EventName[] = ['remitted', 'remittedLess', 'badDebt'];

/** Of every account that settles anything this week. */
export function remittanceLines(at: WeekAt): ExplanationLine[] {
  const { scene, journal, week, compiled } = at;
  const entries = entriesOf(journal, week, (event) => SETTLING.includes(event));
  return scene.plan.accounts.flatMap((account, a) => {
    const own = entries.filter((entry) => entry.account === a);
    const terms = compiled.accounts[a];
    if (own.length === 0 || !terms) return [];
    const due = own.reduce((sum, { amount }) => sum + amount, 0);
    const bad = own.filter(({ event }) => event === 'badDebt');
    const taken = own.find(({ event }) => event === 'remittedLess')?.amount ?? 0;
    const deducted = Math.min(taken, deductionsDue(journal, a, terms, week));
    return [
      ...dueLines(scene, account, { amount: due, terms, week }),
      ...bad.map((entry) => entryLine(scene, entry, -1)),
      ...takenLines(scene, account, { deducted, claimed: taken - deducted }),
    ];
  });
}

interface Due {
  amount: number;
  terms: CompiledAccount;
  week: number;
}

function dueLines(scene: Scene, account: Account, { amount, terms, week }: Due): ExplanationLine[] {
  const { paymentDays, latenessDays } = account.terms;
  const path = `accounts/${account.id}/terms`;
  const gross = moneyPart(scene, amount, {
    label: `Invoices due, ${account.name}`,
    reason: `Of ${invoiceWeeks(scene, terms, week)}; ${paymentDays} days and ${latenessDays} late, in whole weeks`,
    owner: 'ours',
  });
  const late = typed(scene, `${path}/latenessDays`, {
    label: `Days late, ${account.name}`,
    value: scene.say.count(latenessDays),
  });
  return [typed(scene, `${path}/paymentDays`, gross), late];
}

/** The weeks whose invoices fall due now: a term ago, and as far back as the early discount reaches. */
function invoiceWeeks(scene: Scene, { collectWeeks, discount }: CompiledAccount, week: number): string {
  const late = week - collectWeeks;
  const early = discount === null ? -1 : week - discount.collectWeeks;
  const words = [
    late >= 0 ? scene.say.week(late) : '',
    early >= 0 ? `${scene.say.week(early)}, paid early` : '',
  ];
  return words.filter((word) => word !== '').join(' and ');
}

/** Deductions go with their invoice, early and late part in proportion, each rounded; the discount with the early part. */
function deductionsDue(
  journal: readonly Posting[],
  account: number,
  { collectWeeks, discount }: CompiledAccount,
  week: number,
): number {
  const early = (amount: number) => (discount ? timesRate(amount, discount.takenShare) : 0);
  return journal.reduce((sum, { week: earned, event, account: own, amount }) => {
    if (own !== account) return sum;
    const isEarly = discount !== null && earned === week - discount.collectWeeks;
    if (event === 'discountAccrued') return isEarly ? sum + amount : sum;
    if (event !== 'deductionAccrued') return sum;
    const late = earned === week - collectWeeks ? amount - early(amount) : 0;
    return sum + late + (isEarly ? early(amount) : 0);
  }, 0);
}

function takenLines(
  scene: Scene,
  account: Account,
  { deducted, claimed }: { deducted: number; claimed: number },
): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const lines: ExplanationLine[] = [];
  const add = (amount: number, at: string, label: string, reason: string) => {
    if (amount === 0) return;
    const made = moneyPart(scene, -amount, { label: `${label}, ${account.name}`, reason, owner: 'theirs' });
    lines.push(typed(scene, `${path}/${at}`, made));
  };
  add(
    deducted,
    'allowances',
    'Deductions of these invoices',
    'Allowances in percent, and the early-payment discount',
  );
  const claims = claimsField(account);
  add(
    claimed,
    claims,
    'Claims taken off',
    'Scan-backs, bill-backs, promotions, returns, slotting off remittances',
  );
  return lines;
}

/** The field most of an account's claims come from. */
function claimsField({ promotions, freeFill, slotting }: Account): string {
  if (promotions.length > 0) return 'promotions';
  if (freeFill.settled === 'billedBack') return 'freeFill';
  return slotting?.settled === 'offRemittances' ? 'slotting' : 'allowances';
}
