// The cautions a plan calls for, each with the view it stands in: what the product is not, and the lines of law that a
// chain's terms come near or cross in its market. Pure: a plan in, sentences out; no verdict depends on them.
// At the table they are short, and stand with the plan that has the draft in it; a shelf price on the table is one more.
// Sources, by name and article: Directive (EU) 2019/633, Article 3; Directive 2011/7/EU, Article 3(5); Regulation (EU)
// 2022/720, Article 4; 16 CFR Part 240; the UK Groceries Supply Code of Practice (Order of 2009, Schedule 1) and the Late
// Payment of Commercial Debts Regulations 2013. Article and paragraph numbers are from memory, save the Code's 12.
// Worked example: perishable food, the EU, paid after 60 days: "60 days is past 30, the EU line for perishable food, ...".
import { ALLOWANCE_KINDS } from './allowances/index.ts';
import type { Account, Plan } from './plan/index.ts';

export const CAUTION_PLACES = ['front', 'ladder', 'deal', 'terms', 'talks', 'rollOut', 'money'] as const;
export type CautionPlace = (typeof CAUTION_PLACES)[number];

export interface CautionNote {
  /** One a plan, place and chain. */
  id: string;
  place: CautionPlace;
  /** The chain it is about, or null for the plan as a whole. */
  accountId: string | null;
  sentence: string;
}

/** Every caution of a plan, in the order they are shown. */
export function cautionsOf(plan: Plan): CautionNote[] {
  const general: CautionNote[] = [
    note('advice', 'front', null, 'Computed, not advice. A licensed professional should confirm terms.'),
    note('shelf', 'ladder', null, shelfSentence(plan)),
    ...MONEY_LINES.map(({ id, sentence }) => note(id, 'money', null, sentence)),
  ];
  return [...general, ...plan.accounts.flatMap((account) => accountCautions(plan, account))];
}

function accountCautions(plan: Plan, account: Account): CautionNote[] {
  const advice = note(
    'advice',
    'deal',
    account.id,
    'Computed, not advice. A licensed professional should confirm terms.',
  );
  const lines = lawLines(plan, account);
  const both = lines.flatMap(({ id, sentence }) => [
    note(id, 'deal', account.id, sentence),
    note(id, 'terms', account.id, sentence),
  ]);
  const atTable = [...lines, ...shelfLines(plan, account)];
  const talks = atTable.map(({ id, short }) => note(id, 'talks', account.id, short));
  return [...both, ...talks, advice];
}

/** Where offers of money are compared; they name no law, since those differ from place to place. */
const MONEY_LINES = [
  {
    id: 'advice',
    sentence:
      'Computed, not securities, tax or legal advice. Licensed counsel should confirm terms before anyone signs.',
  },
  {
    id: 'lending',
    sentence:
      'Who may lend, at what rate and with which licence, and who may be offered shares, differs by country and state.',
  },
  {
    id: 'papers',
    sentence: 'Notes and agreements that convert are computed by plain arithmetic; the paper itself decides.',
  },
] as const;

interface LawLine {
  id: string;
  sentence: string;
  /** For the table: one line of it, with its source. */
  short: string;
}

/** The lines of law that one chain's terms cross in the plan's market. */
function lawLines(plan: Plan, account: Account): LawLine[] {
  switch (plan.market) {
    case 'US':
      return givesPromotionalMoney(account) ? [PROPORTIONAL] : [];
    case 'EU':
      return euLines(plan, account);
    case 'UK':
      return ukLines(account);
    case 'CA':
    case 'other':
      return [];
  }
}

const PROPORTIONAL: LawLine = {
  id: 'proportional',
  sentence:
    'Competing customers may be due this promotional money on proportionally equal terms (16 CFR 240).',
  short: 'Competing customers may be due this on proportionally equal terms (16 CFR 240).',
};

function euLines(plan: Plan, account: Account): LawLine[] {
  const { paymentDays } = account.terms;
  const lines: LawLine[] = [];
  if (plan.perishableFood && paymentDays > 30) {
    lines.push({
      id: 'late',
      sentence: `${paymentDays} days is past 30, the EU line for perishable food, where the directive protects you (2019/633).`,
      short: `${paymentDays} days: past 30, the EU line for perishable food, where the directive protects you (2019/633).`,
    });
  } else if (paymentDays > 60) {
    lines.push({
      id: 'late',
      sentence: `${paymentDays} days is past 60: between businesses in the EU that has to be agreed expressly and not be grossly unfair (2011/7/EU); for food it is barred where the directive protects you (2019/633).`,
      short: `${paymentDays} days: past 60, the EU line unless agreed expressly (2011/7/EU); for food barred where the directive protects you (2019/633).`,
    });
  }
  if (plan.perishableFood && paysToBeListed(account)) {
    lines.push({
      id: 'listing',
      sentence:
        'In the EU a chain may charge for listing food only where that was agreed beforehand in clear terms (2019/633).',
      short: 'EU: paying to list food only where agreed beforehand in clear terms (2019/633).',
    });
  }
  if (plan.perishableFood && account.sale.by === 'guaranteed') {
    lines.push({
      id: 'unsold',
      sentence:
        'In the EU unsold food may go back unpaid only where that was agreed beforehand in clear terms (2019/633).',
      short: 'EU: unsold food goes back unpaid only where agreed beforehand in clear terms (2019/633).',
    });
  }
  return lines;
}

function ukLines(account: Account): LawLine[] {
  const { paymentDays } = account.terms;
  const lines: LawLine[] = [];
  if (paymentDays > 60) {
    lines.push({
      id: 'late',
      sentence: `${paymentDays} days is past 60: in the UK that has to be agreed expressly and not be grossly unfair.`,
      short: `${paymentDays} days: past 60, in the UK only where agreed expressly and not grossly unfair (Late Payment Regulations 2013).`,
    });
  }
  if (paysToBeListed(account)) {
    lines.push({
      id: 'listing',
      sentence:
        'UK: a large grocer may ask to be paid for listing only for a promotion or a new product, and then no more than its risk (Groceries Supply Code, 9).',
      short:
        'UK: paying to be listed only for a promotion or a new product, no more than the risk (Groceries Supply Code, 9).',
    });
  }
  if (account.display !== null && Number(account.display.feeAmountPerStoreWeek) > 0) {
    lines.push({
      id: 'position',
      sentence:
        'UK: a large grocer may not require payment for a better position outside a promotion (Groceries Supply Code, 12).',
      short: 'UK: no paying for a better position outside a promotion (Groceries Supply Code, 12).',
    });
  }
  if (account.sale.by === 'scan' && Number(account.sale.shrinkRate) > 0) {
    lines.push({
      id: 'shrink',
      sentence: 'UK: a large grocer may not have shrinkage paid by its supplier (Groceries Supply Code, 7).',
      short: 'UK: shrinkage is not the supplier’s to pay (Groceries Supply Code, 7).',
    });
  }
  return lines;
}

/** A shelf price that is on the table: suggesting one is one thing, agreeing one another. */
function shelfLines({ market }: Plan, { table }: Account): LawLine[] {
  const named = [...(table?.inPlay ?? []), ...(table?.draft ?? []).map(({ term }) => term)];
  if (!named.some((term) => term.split(':')[0] === 'shelf')) return [];
  const barred = market === 'EU' || market === 'UK';
  const short = barred
    ? 'The shelf price is the chain’s to set; agreeing a minimum is a hardcore restriction (EU 2022/720, UK alike).'
    : 'The shelf price is the chain’s to set: suggest one, don’t agree one. The rules differ by country.';
  return [{ id: 'shelf', sentence: short, short }];
}

function shelfSentence({ market }: Plan): string {
  if (market === 'EU' || market === 'UK') {
    return 'The shelf price is the chain’s to set. EU, UK: agreeing a minimum is a hardcore restriction.';
  }
  return 'The shelf price is the chain’s to set. Suggesting one is one thing, agreeing one another; the rules differ by country.';
}

/** Money that goes to the chain for promoting or placing the goods. */
function givesPromotionalMoney(account: Account): boolean {
  const theirs = account.allowances.some(({ kind }) => PROMOTIONAL_KINDS.has(kind));
  return theirs || account.promotions.length > 0 || account.display !== null || paysToBeListed(account);
}

const PROMOTIONAL_KINDS: ReadonlySet<string> = new Set(
  ALLOWANCE_KINDS.filter(({ owner }) => owner === 'theirs').map(({ kind }) => kind),
);

function paysToBeListed({ slotting, openingFees, listings }: Account): boolean {
  const pays = (amount: string | undefined) => Number(amount ?? '0') > 0;
  return (
    pays(slotting?.amount) ||
    openingFees.some(({ amount }) => pays(amount)) ||
    listings.some(({ freeCasesPerDoor }) => freeCasesPerDoor > 0)
  );
}

function note(id: string, place: CautionPlace, accountId: string | null, sentence: string): CautionNote {
  return { id: `${place} ${accountId ?? ''} ${id}`, place, accountId, sentence };
}
