// The trade words of stock and cash, and words of our own; meanings.ts has the rest and is the door to both.
// Worked figure: CASH_TERMS.cashNeed.word is "cash need".

export interface Term {
  /** As it stands in a sentence. */
  word: string;
  /** One sentence. */
  meaning: string;
  /** In words; null where there is nothing to reckon. */
  formula: string | null;
}

export const term = (word: string, meaning: string, formula: string | null = null): Term => ({
  word,
  meaning,
  formula,
});

export const CASH_TERMS = {
  // stock and cash
  pipelineFill: term(
    'pipeline fill',
    'The first delivery that fills a new door’s shelf; it is no sale to a shopper.',
    'facings × depth + back stock, up to full cases',
  ),
  backlog: term('backlog', 'Orders we could not ship yet.'),
  fillRate: term(
    'fill rate',
    'The part of what shoppers want that they find on the shelf.',
    'units sold ÷ units wanted',
  ),
  leadTime: term('lead time', 'Weeks from a purchase order until its goods land.'),
  minimumOrder: term('minimum order', 'The fewest units a supplier makes at a time.'),
  deposit: term('deposit', 'The part of a purchase order paid when it is placed.'),
  remittance: term('remittance', 'What a chain pays for invoices that are due, less what it takes off.'),
  claim: term('claim', 'Money a chain has a right to, taken off a later remittance.'),
  creditLimit: term(
    'credit limit',
    'The most an account may owe us: what would pass it waits until it has paid.',
  ),
  shortDelivery: term(
    'charge for a short delivery',
    'What a chain takes when less arrives than was due, a share of the value that was short.',
    'units short × invoice price × rate',
  ),
  drop: term('drop', 'One stop of a truck: at a door, or at the depot of a chain or distributor.'),
  disputedDeduction: term(
    'disputed deduction',
    'A deduction the chain has no right to; part of it may be won back later.',
  ),
  lowestCash: term(
    'lowest cash',
    'The deepest point of cash within any week: money goes out before it comes in.',
  ),
  cashNeed: term(
    'cash need',
    'What has to be found beside our own cash so that the plan never runs out.',
    'the lowest cash below zero, without new funding',
  ),
  buffer: term('buffer', 'What cash should not fall below.', 'weeks of buffer × mean weekly outgoings'),
  daysOfStock: term(
    'days of stock (DIO)',
    'How many days of cost of sales stand in stock.',
    'mean stock × days ÷ cost of sales',
  ),
  daysOfReceivables: term(
    'days of receivables (DSO)',
    'How many days of sales wait to be paid.',
    'mean receivables × days ÷ invoiced sales',
  ),
  daysOfPayables: term(
    'days of payables (DPO)',
    'How many days of cost of sales suppliers wait for.',
    'mean payables × days ÷ cost of sales',
  ),
  cashCycle: term(
    'cash cycle',
    'Days between paying for goods and being paid for them.',
    'days of stock + of receivables − of payables',
  ),
  // words of our own
  verdict: term(
    'verdict',
    'One word for a part of the plan: it holds, it is tight, it fails, or it is not known yet.',
  ),
  leansOn: term(
    'leans on',
    'The guess that would turn a verdict, or moves it most, were it at one of its plausible ends.',
  ),
  atRisk: term('at risk', 'Money that is out before it is back.'),
} satisfies Record<string, Term>;
