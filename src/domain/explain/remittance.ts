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

/** Of every account that settles anything this week, or of one of them, by its place among the accounts. */
export function remittanceLines(at: WeekAt, only?: number): ExplanationLine[] {
  const { scene, journal, week, compiled } = at;
  const entries = entriesOf(journal, week, (event) => SETTLING.includes(event));
  return scene.plan.accounts.flatMap((account, a) => {
    const own = entries.filter((entry) => entry.account === a);
    const terms = compiled.accounts[a];
    if (own.length === 0 || !terms || (only !== undefined && only !== a)) return [];
    const due = own.reduce((sum, { amount }) => sum + amount, 0);
    const bad = own.filter(({ event }) => event === 'badDebt');
    const taken = own.find(({ event }) => event === 'remittedLess')?.amount ?? 0;
    const dueNow = { account: a, terms, week };
    const deducted = Math.min(taken, deductionsDue(journal, dueNow, 'deductionAccrued'));
    const wrongly = Math.min(taken - deducted, deductionsDue(journal, dueNow, 'wrongDeducted'));
    return [
      ...dueLines(scene, account, { amount: due, terms, week }),
      ...bad.map((entry) => entryLine(scene, entry, -1)),
      ...takenLines(scene, account, { deducted, wrongly, claimed: taken - deducted - wrongly }),
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
  { account, terms, week }: { account: number; terms: CompiledAccount; week: number },
  wanted: 'deductionAccrued' | 'wrongDeducted',
): number {
  const { collectWeeks, discount } = terms;
  const early = (amount: number) => (discount ? timesRate(amount, discount.takenShare) : 0);
  return journal.reduce((sum, { week: earned, event, account: own, amount }) => {
    if (own !== account) return sum;
    const isEarly = discount !== null && earned === week - discount.collectWeeks;
    const isDiscount = event === 'discountAccrued' && wanted === 'deductionAccrued';
    if (isDiscount) return isEarly ? sum + amount : sum;
    if (event !== wanted) return sum;
    const late = earned === week - collectWeeks ? amount - early(amount) : 0;
    return sum + late + (isEarly ? early(amount) : 0);
  }, 0);
}

function takenLines(
  scene: Scene,
  account: Account,
  { deducted, wrongly, claimed }: { deducted: number; wrongly: number; claimed: number },
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
  add(
    wrongly,
    'disputed/wrongRate',
    'Deductions not owed',
    'A share of these invoices taken off without a right to it',
  );
  const claims = claimsField(account);
  add(
    claimed,
    claims,
    'Claims taken off',
    'Scan-backs, bill-backs, promotions, returns, short deliveries, slotting off remittances',
  );
  return lines;
}

/** The field most of an account's claims come from. */
function claimsField({ promotions, freeFill, slotting, service, allowances }: Account): string {
  if (promotions.length > 0) return 'promotions';
  if (freeFill.settled === 'billedBack') return 'freeFill';
  if (slotting?.settled === 'offRemittances') return 'slotting';
  return service !== null && allowances.length === 0 ? 'service' : 'allowances';
}
