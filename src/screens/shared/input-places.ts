// Where in the inputs a field of the plan stands: the section that holds it, as a sheet's name, so that any figure leads
// to the field it was typed into. Sheets are "inputs:<section>" or "inputs:<section>:<id>".
// Worked example: 'accounts/corner/terms/latenessDays' stands in "inputs:terms:corner".

/** Sections of one chain, of one product, and of the plan as a whole. */
export const CHAIN_SECTIONS = [
  'hands',
  'listings',
  'openings',
  'ordering',
  'terms',
  'deductions',
  'allowances',
  'moneyDown',
  'promotions',
  'standing',
] as const;
export const PRODUCT_SECTIONS = ['cost', 'pack', 'supply', 'buying', 'season', 'stock'] as const;
export const PLAN_SECTIONS = [
  'market',
  'cash',
  'overhead',
  'lines',
  'funding',
  'books',
  'verdictLines',
  'claim',
] as const;

export type ChainSection = (typeof CHAIN_SECTIONS)[number];
export type ProductSection = (typeof PRODUCT_SECTIONS)[number];
export type PlanSection = (typeof PLAN_SECTIONS)[number];

export type InputPlace =
  | { of: 'chain'; section: ChainSection; id: string }
  | { of: 'product'; section: ProductSection; id: string }
  | { of: 'plan'; section: PlanSection };

const PREFIX = 'inputs:';

/** The sheet's name for a section. */
export function sheetOfPlace(place: InputPlace): string {
  return place.of === 'plan' ? `${PREFIX}${place.section}` : `${PREFIX}${place.section}:${place.id}`;
}

/** The section a sheet's name stands for; null for another sheet. */
export function placeOfSheet(sheet: string): InputPlace | null {
  if (!sheet.startsWith(PREFIX)) return null;
  const [name = '', id = ''] = sheet.slice(PREFIX.length).split(':');
  const chain = CHAIN_SECTIONS.find((each) => each === name);
  if (chain && id !== '') return { of: 'chain', section: chain, id };
  const product = PRODUCT_SECTIONS.find((each) => each === name);
  if (product && id !== '') return { of: 'product', section: product, id };
  const plan = PLAN_SECTIONS.find((each) => each === name);
  return plan ? { of: 'plan', section: plan } : null;
}

/** The sheet that holds the field at `path`; null for what no section shows (a plan's name). */
export function sheetOfPath(path: string): string | null {
  const place = placeOfPath(path);
  return place === null ? null : sheetOfPlace(place);
}

const CHAIN_FIELDS: Readonly<Record<string, ChainSection>> = {
  hands: 'hands',
  pricePoints: 'hands',
  listings: 'listings',
  waves: 'openings',
  runningDoors: 'openings',
  attritionYearlyRate: 'openings',
  cutWeek: 'openings',
  cuts: 'openings',
  exitMarkdownRate: 'openings',
  voidRate: 'openings',
  closedStock: 'openings',
  ramp: 'listings',
  ordering: 'ordering',
  depot: 'ordering',
  terms: 'terms',
  creditLimitAmount: 'terms',
  sale: 'terms',
  priority: 'terms',
  delivery: 'deductions',
  service: 'deductions',
  disputed: 'deductions',
  allowances: 'allowances',
  slotting: 'moneyDown',
  freeFill: 'moneyDown',
  openingFees: 'moneyDown',
  display: 'moneyDown',
  deal: 'moneyDown',
  promotions: 'promotions',
  standing: 'standing',
};

const PRODUCT_FIELDS: Readonly<Record<string, ProductSection>> = {
  costLines: 'cost',
  lossRate: 'cost',
  caseUnits: 'pack',
  palletCases: 'pack',
  shipmentUnits: 'pack',
  pack: 'pack',
  numbers: 'pack',
  supply: 'supply',
  opening: 'stock',
  removals: 'stock',
  seasonFactors: 'season',
};

/** Of what is under `supply`, the part that is bought elsewhere, or otherwise. */
const BUYING_FIELDS = ['sources', 'priceBreaks', 'expedite', 'purchaseCurrency'];

const BUSINESS_FIELDS: Readonly<Record<string, PlanSection>> = {
  openingCashAmount: 'cash',
  baseSales: 'cash',
  overheads: 'overhead',
  capital: 'overhead',
  lines: 'lines',
  lender: 'funding',
  funding: 'funding',
  openingBooks: 'books',
  vat: 'market',
};

function placeOfPath(path: string): InputPlace | null {
  const [list = '', id = '', field = '', part = ''] = path.split('/');
  if (list === 'accounts' && id !== '') {
    return { of: 'chain', section: CHAIN_FIELDS[field] ?? 'hands', id };
  }
  if (list === 'items' && id !== '') {
    const isBuying = field === 'supply' && BUYING_FIELDS.includes(part);
    return { of: 'product', section: isBuying ? 'buying' : (PRODUCT_FIELDS[field] ?? 'cost'), id };
  }
  if (list === 'business') return { of: 'plan', section: BUSINESS_FIELDS[id] ?? 'cash' };
  if (list === 'promise' && (id === 'claim' || id === 'spreads')) return { of: 'plan', section: 'claim' };
  if (list === 'thresholds') return { of: 'plan', section: 'verdictLines' };
  const market = ['currency', 'market', 'perishableFood', 'shelfTax', 'startDate', 'horizonWeeks'];
  return market.includes(list) ? { of: 'plan', section: 'market' } : null;
}
