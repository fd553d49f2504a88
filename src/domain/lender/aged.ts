// Who owes us since when, and whom we owe, at a week's end: days counted from the invoice date. Our invoices are dated the
// last day of their week, a supplier's the first (PASS.md), so an invoice of five weeks ago is 35 and 41 days old.
// Worked figure: 10,000 invoiced each week and paid in 7 weeks: at a week's end 50,000 are up to 30 days old (0, 7, 14,
// 21 and 28 days), 20,000 up to 60 (35 and 42).
import { timesRate } from '../money/integer.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import type { CompiledAccount } from '../rollout/compiled.ts';
import type { Ledger } from './ledger.ts';
import { AGES, type Age, type Aged, type AgedLine } from './types.ts';

interface AgedArgs {
  plan: Plan;
  results: Pick<Results, 'compiled' | 'pass'>;
  ledger: Ledger;
  week: number;
}

/** An invoice's bucket by its days. */
export function ageOf(days: number): Age {
  if (days <= 30) return 'to30';
  if (days <= 60) return 'to60';
  return days <= 90 ? 'to90' : 'over90';
}

/** Receivables by account; sales beside the plan and the opening books in lines of their own. */
export function agedReceivables({ plan, results, ledger, week }: AgedArgs): Aged {
  const { compiled } = results;
  const lines = plan.accounts.map((account, a) => {
    const line = emptyLine('account', account.id);
    const terms = compiled.accounts[a] as CompiledAccount;
    for (const invoices of ledger.invoices[a]?.values() ?? []) {
      for (let v = 0; v <= week; v++)
        addOpen(line, { days: 7 * (week - v), amount: openOf(terms, invoices[v] ?? 0, week - v) });
    }
    return line;
  });
  const { base, receivables } = compiled.business;
  const beside = emptyLine('base', null);
  if (base) {
    for (let v = Math.max(0, week - base.collectWeeks + 1); v <= week; v++)
      addOpen(beside, { days: 7 * (week - v), amount: base.revenue });
  }
  return agedOf(week, [...lines, beside, openingLine(receivables, week)]);
}

/** What of one invoice is still to be paid so many weeks after it: the part taken early, and the rest. */
function openOf(terms: CompiledAccount, gross: number, weeksAfter: number): number {
  if (gross === 0) return 0;
  const early = terms.discount ? timesRate(gross, terms.discount.takenShare) : 0;
  const earlyOpen = terms.discount && terms.discount.collectWeeks > weeksAfter ? early : 0;
  return earlyOpen + (terms.collectWeeks > weeksAfter ? gross - early : 0);
}

/**
 * Payables by item. Where an item has several suppliers their invoices are taken as paid oldest first: the pass keeps
 * what is due by week, not by supplier.
 */
export function agedPayables({ plan, results, ledger, week }: AgedArgs): Aged {
  const { compiled, pass } = results;
  const days = (v: number) => 7 * (week - v) + 6;
  const lines = plan.items.map((item, i) => {
    const line = emptyLine('item', item.id);
    if (item.supply.sources.length > 0) return line;
    const supplierWeeks = compiled.items[i]?.buying.suppliers[0]?.supplierWeeks ?? 0;
    for (let v = Math.max(0, week - supplierWeeks + 1); v <= week; v++)
      addOpen(line, { days: days(v), amount: ledger.supplied[i]?.[v] ?? 0 });
    return line;
  });
  const { base, payables } = compiled.business;
  const beside = emptyLine('base', null);
  if (base) {
    for (let v = Math.max(0, week - base.payWeeks + 1); v <= week; v++)
      addOpen(beside, { days: days(v), amount: base.cost });
  }
  const all = [...lines, beside, openingLine(payables, week)];
  const known = all.reduce((sum, line) => sum + line.sum, 0);
  let left = (pass.balances.payables[week] ?? 0) - known;
  const several = plan.items.flatMap(({ supply }, i) => (supply.sources.length > 0 ? [i] : []));
  for (let v = week; v >= 0 && left > 0 && several.length > 0; v--) {
    for (const i of several) {
      const amount = Math.min(left, ledger.supplied[i]?.[v] ?? 0);
      addOpen(lines[i] as AgedLine, { days: days(v), amount });
      left -= amount;
    }
  }
  return agedOf(week, all);
}

function emptyLine(kind: AgedLine['kind'], id: string | null): AgedLine {
  return { id, kind, ages: { to30: 0, to60: 0, to90: 0, over90: 0 }, unknown: 0, sum: 0 };
}

function addOpen(line: AgedLine, { days, amount }: { days: number; amount: number }): void {
  line.ages[ageOf(days)] += amount;
  line.sum += amount;
}

/** Of the opening books only the week of payment is typed: their invoice dates are not known. */
function openingLine(sums: readonly { week: number; amount: number }[], week: number): AgedLine {
  const line = emptyLine('opening', null);
  for (const sum of sums) {
    if (sum.week <= week) continue;
    line.unknown += sum.amount;
    line.sum += sum.amount;
  }
  return line;
}

function agedOf(week: number, all: readonly AgedLine[]): Aged {
  const lines = all.filter(({ sum, ages }) => sum !== 0 || AGES.some((age) => ages[age] !== 0));
  const total = emptyLine('account', null);
  for (const line of lines) {
    for (const age of AGES) total.ages[age] += line.ages[age];
    total.unknown += line.unknown;
    total.sum += line.sum;
  }
  return { week, lines, total };
}
