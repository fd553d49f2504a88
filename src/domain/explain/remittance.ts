// What a chain pays in a week, taken apart: invoices due, what is never paid, the deductions and discount of these very
// invoices, and claims from elsewhere that are taken off with them.
// Worked figure: due 1,248.00, deductions 24.96, claims 300.00: 923.04 is paid.
import { timesRate } from '../money/integer.ts';
import type { Account } from '../plan/index.ts';
import type { Posting } from '../rollout/books.ts';
import type { CompiledAccount } from '../rollout/compiled.ts';
import type { EventName } from '../rollout/events.ts';
import { documentId } from './document-kinds.ts';
import { type InvoiceDue, invoicesDue } from './invoices-due.ts';
import { entriesOf, entryLine } from './posting-lines.ts';
import { postingsIn } from './runs.ts';
import { whose } from './sources.ts';
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
    const invoices = invoicesDue(at, a);
    return [
      ...dueLines(scene, account, { amount: due, terms, week, account: a, invoices }),
      ...bad.map((entry) => entryLine(scene, entry, -1)),
      ...deductionLines(scene, account, { deducted, invoices }),
      ...takenLines(scene, account, { wrongly, claimed: taken - deducted - wrongly }),
    ];
  });
}

interface Due {
  amount: number;
  terms: CompiledAccount;
  week: number;
  /** Index of the account. */
  account: number;
  invoices: readonly InvoiceDue[];
}

/** Each invoice that falls due, leading to itself; as one sum where they don't come to what is due. */
function dueLines(scene: Scene, account: Account, due: Due): ExplanationLine[] {
  const { paymentDays, latenessDays } = account.terms;
  const path = `accounts/${account.id}/terms`;
  const days = (field: 'paymentDays' | 'latenessDays', label: string) =>
    typed(scene, `${path}/${field}`, { label, value: scene.say.count(account.terms[field]) });
  const late = days('latenessDays', `Days late, ${account.name}`);
  const known = due.invoices.reduce((sum, { gross }) => sum + gross, 0);
  if (due.invoices.length > 0 && known === due.amount) {
    const lines = due.invoices.map((invoice) => invoiceLine(scene, due.account, invoice));
    return [...lines, days('paymentDays', `Days to pay, ${account.name}`), late];
  }
  const { amount, terms, week } = due;
  const gross = moneyPart(scene, amount, {
    label: `Invoices due, ${account.name}`,
    reason: `Of ${invoiceWeeks(scene, terms, week)}; ${paymentDays} days and ${latenessDays} late, in whole weeks`,
    owner: 'ours',
  });
  return [typed(scene, `${path}/paymentDays`, gross), late];
}

function invoiceLine(
  scene: Scene,
  account: number,
  { week, item, isEarly, gross }: InvoiceDue,
): ExplanationLine {
  return moneyPart(scene, gross, {
    label: `Invoice of ${scene.say.week(week)}, ${whose(scene, { account, item })}`,
    reason: isEarly ? 'The part paid early' : '',
    owner: 'ours',
    explains: { of: 'document', week, document: documentId('invoice', account, item) },
  });
}

/** What each allowance takes off these invoices; as one sum where they can't take all of it. */
function deductionLines(
  scene: Scene,
  account: Account,
  { deducted, invoices }: { deducted: number; invoices: readonly InvoiceDue[] },
): ExplanationLine[] {
  if (deducted === 0) return [];
  const path = `accounts/${account.id}`;
  const all = invoices.flatMap(({ taken }) => taken);
  const known = all.reduce((sum, { amount }) => sum + amount, 0);
  if (known !== deducted) {
    const made = moneyPart(scene, -deducted, {
      label: `Deductions of these invoices, ${account.name}`,
      reason: 'Allowances in percent, and the early-payment discount',
      owner: 'theirs',
    });
    return [typed(scene, `${path}/allowances`, made)];
  }
  return [...new Set(all.map(({ id }) => id))].flatMap((id) => {
    const own = all.filter((each) => each.id === id);
    const amount = own.reduce((sum, each) => sum + each.amount, 0);
    if (amount === 0) return [];
    const label = `${own[0]?.label ?? id}, ${account.name}`;
    const made = moneyPart(scene, -amount, { label, reason: 'Off these invoices', owner: 'theirs' });
    return [typed(scene, `${path}/${id === 'earlyDiscount' ? 'terms' : `allowances/${id}`}`, made)];
  });
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
  const weeks = discount ? [week - collectWeeks, week - discount.collectWeeks] : [week - collectWeeks];
  const postings = [...new Set(weeks)].flatMap((each) => postingsIn(journal, each));
  return postings.reduce((sum, { week: earned, event, account: own, amount }) => {
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
  { wrongly, claimed }: { wrongly: number; claimed: number },
): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const lines: ExplanationLine[] = [];
  const add = (amount: number, at: string, label: string, reason: string) => {
    if (amount === 0) return;
    const made = moneyPart(scene, -amount, { label: `${label}, ${account.name}`, reason, owner: 'theirs' });
    lines.push(typed(scene, `${path}/${at}`, made));
  };
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
