// Every trade word the screens use, in one sentence, with its formula in words where it has one. A word is explained
// where it stands; the figure beside it has the same formula with this plan's numbers (explain).
// Worked figure: TERMS.gmroi.formula is "penny profit ÷ buying price × turns a year".
import { ALLOWANCE_KINDS } from '../allowances/index.ts';
import { CASH_TERMS, type Term, term } from './meanings-cash.ts';

export type { Term };

/** The words of the allowance kinds are the kinds' own. */
const ofKind = (kind: string, word: string, formula: string | null = null): Term => {
  const found = ALLOWANCE_KINDS.find((each) => each.kind === kind);
  if (!found) throw new Error(`no allowance kind ${kind}`);
  return term(word, found.meaning, formula);
};

export const TERMS = {
  // prices and hands
  landedCost: term(
    'landed cost',
    'What one good unit costs by the time it stands at our door.',
    'cost lines ÷ (1 − loss)',
  ),
  listPrice: term('list price', 'Our price to the first hand before any allowance.'),
  invoicePrice: term(
    'invoice price',
    'What our invoice asks for one unit.',
    'list price − off-invoice allowances',
  ),
  netPrice: term(
    'net price',
    'What is left of the invoice once everything the trade takes off it is gone.',
    'invoice price − discounts and deductions',
  ),
  contribution: term(
    'contribution',
    'What one unit brings us, to pay for the deal and then the business.',
    'net price − landed cost − selling costs',
  ),
  tradeRate: term(
    'trade rate',
    'The part of the list price that goes back to the trade.',
    '(list price − net price) ÷ list price',
  ),
  shelfPrice: term(
    'shelf price',
    'What the shopper reads on the tag, tax in it where the market shows it so.',
  ),
  margin: term(
    'margin',
    'What a hand keeps, as a part of its own selling price.',
    '(selling price − buying price) ÷ selling price',
  ),
  markup: term(
    'markup',
    'What a hand adds, as a part of its own buying price.',
    '(selling price − buying price) ÷ buying price',
  ),
  pricePoint: term('price point', 'A price the chain’s tags may show, like one that ends in .99.'),
  hand: term('hand', 'Anyone who buys and sells the goods between us and the shopper.'),
  rung: term('rung', 'One price of the ladder, from landed cost at the foot to the tag at the top.'),
  casePack: term('case pack', 'How many units are in one case: stores order whole cases.'),
  // what the trade takes
  offInvoice: ofKind('offInvoice', 'off-invoice', 'list price × rate'),
  freightAllowance: ofKind('freightAllowance', 'freight allowance'),
  spoils: ofKind('spoils', 'spoils', 'invoice price × rate'),
  coop: ofKind('coop', 'co-op', 'invoice price × rate'),
  dataFee: ofKind('dataFee', 'warehouse or data fee', 'invoice price × rate'),
  chargeback: ofKind('chargebacks', 'chargeback', 'invoice price × rate'),
  expectedReturns: ofKind(
    'expectedReturns',
    'expected returns',
    'rate × (invoice price + freight back − what is sold again)',
  ),
  scanBack: ofKind('scanBack', 'scan-back', 'units scanned in the deal’s weeks × amount'),
  billBack: ofKind('billBack', 'bill-back', 'units shipped in the deal’s weeks × amount'),
  freightOut: ofKind('freightOut', 'freight out'),
  pickAndPack: ofKind('pickAndPack', 'pick and pack'),
  broker: ofKind('broker', 'broker', '(invoices − credits) × rate'),
  royalty: ofKind('royalty', 'royalty', 'units × amount + (invoices − credits) × rate'),
  earlyDiscount: term(
    'early-payment discount',
    'A part of the invoice the chain may keep when it pays within so many days, like 2 % in 10.',
    'invoice price × discount × share that takes it',
  ),
  slotting: term('slotting', 'What a chain takes for a place on its shelf, whatever is sold.'),
  freeFill: term(
    'free fill',
    'Cases of the opening fill that the chain does not pay for.',
    'free units × (landed cost + their way to the shelf)',
  ),
  openingFee: term('opening fee', 'A fee for listing an item or opening a door, taken once.'),
  display: term('display', 'A stand of our own in the store, beside the shelf.'),
  displayShipper: term('display shipper', 'A carton that is shipped filled and opens into a stand.'),
  endCap: term('end cap', 'The shelf at the end of an aisle, rented for some weeks.'),
  promotion: term(
    'promotion',
    'Weeks at a lower shelf price, of whose depth we pay a share.',
    'depth × shelf price before tax × our share',
  ),
  lift: term(
    'lift',
    'How much more is sold while a promotion or display runs; 50 % more is 1.5 times.',
    'base rate of sale × (1 + lift)',
  ),
  dip: term(
    'dip',
    'Sales borrowed from the weeks after a promotion.',
    'dip share × extra units, off the weeks after',
  ),
  guaranteedSale: term('guaranteed sale', 'The chain may send back what it has not sold by the review.'),
  payOnScan: term(
    'pay on scan',
    'The chain owes us a unit only when it is scanned: the goods on its shelf are ours.',
  ),
  // the deal
  door: term('door', 'One store that sells the item.'),
  wave: term('wave', 'Doors that open from one week on, so many a week.'),
  facing: term('facing', 'One place at the front of the shelf.'),
  rateOfSale: term(
    'rate of sale',
    'Units one store sells in a week (units per store per week, USW), once it is used to them.',
    'units ÷ stores ÷ weeks',
  ),
  ramp: term(
    'ramp',
    'How sales of a new door grow to the full rate.',
    'start + (1 − start) × weeks open ÷ ramp weeks, at most 1',
  ),
  attrition: term('attrition', 'Doors that stop selling the item, as a part of all in a year.'),
  moneyDown: term(
    'money down',
    'What the chain asks for before anything is sold.',
    'slotting + fees + free fill + displays',
  ),
  payback: term('payback', 'Weeks from the first opening until the money down is back, for good.'),
  breakEven: term(
    'break-even rate of sale',
    'The smallest rate of sale at which the term brings the money down back.',
    'planned rate ÷ (contribution of the term ÷ money down)',
  ),
  hurdle: term('hurdle', 'What the term has to bring beside the money down.'),
  fillMargin: term(
    'margin on the fill',
    'What the paid part of the first delivery brings, before any shopper buys.',
    'paid units of the fill × contribution',
  ),
  // the retailer's side
  pennyProfit: term(
    'penny profit',
    'What one unit sold leaves the retailer, in money.',
    'shelf price before tax − its buying price',
  ),
  frontMargin: term(
    'front margin',
    'The retailer’s margin on the price it pays.',
    'penny profit ÷ shelf price before tax',
  ),
  allInMargin: term(
    'all-in margin',
    'The retailer’s margin with what it keeps of our allowances, fixed money and free goods.',
    '(penny profit + what it keeps) ÷ shelf price before tax',
  ),
  turns: term(
    'turns',
    'How many times a year a store sells the stock it holds on average.',
    'annual units ÷ average units in the store',
  ),
  gmroi: term(
    'GMROI',
    'Gross margin return on inventory: what a year of sales earns on each unit of money in stock.',
    'penny profit ÷ buying price × turns a year',
  ),
  weeksOfSupply: term(
    'weeks of supply',
    'How many weeks of sales stand in the store.',
    'units in the store ÷ weekly sales',
  ),
  sellThrough: term(
    'sell-through',
    'The part of what was delivered that shoppers have bought.',
    'units sold ÷ units delivered',
  ),
  reset: term('reset', 'The day a chain rearranges a shelf: new items go on, others leave.'),
  ...CASH_TERMS,
} satisfies Record<string, Term>;

export type TermId = keyof typeof TERMS;
