// Fields by the words a person knows them by, from their path in the plan: names of chains, products and hands stand for
// their ids. Used where a problem or a default has to be named away from its field.
// Worked example: 'accounts/corner/terms/latenessDays' is "Corner, paid late, days".
import type { Plan } from '../../domain/plan/index.ts';
import { getAt } from '../../domain/plan/path.ts';

/** Field names whose own words are no good, by name. Anything else is its name with spaces. */
const WORDS: Readonly<Record<string, string>> = {
  accounts: '',
  items: '',
  business: '',
  listings: '',
  hands: '',
  rule: '',
  terms: '',
  supply: '',
  amount: 'amount',
  rate: 'rate',
  ramp: 'start of sales',
  startRate: 'first week, of full rate',
  costLines: 'cost line',
  allowances: '',
  waves: 'opening',
  openingFees: 'opening fee',
  overheads: 'overhead',
  openingCashAmount: 'cash we have today',
  openingBooks: 'opening books',
  shelf: 'shelf price',
  list: 'list price',
  unitsPerStoreWeek: 'sold per store per week',
  caseUnits: 'units in a case',
  palletCases: 'cases on a pallet',
  shipmentUnits: 'units in a shipment',
  lossRate: 'lost on the way',
  leadWeeks: 'weeks to make',
  coverWeeks: 'weeks of supply',
  depositRate: 'down with the order',
  minimumOrderUnits: 'smallest order',
  paymentDays: 'paid in, days',
  latenessDays: 'paid late, days',
  transitWeeks: 'weeks on the way',
  attritionYearlyRate: 'doors lost in a year',
  openWeek: 'first opening week',
  doorsPerWeek: 'doors a week',
  termWeeks: 'term, weeks',
  horizonWeeks: 'weeks in the plan',
  shelfTax: 'tax on the shelf price',
  startDate: 'first day',
  moneyDown: 'money down',
  slotting: 'slotting',
  freeCasesPerDoor: 'free cases a store',
  depthUnits: 'units behind a facing',
  vat: 'tax between businesses',
  sources: 'supplier',
  priceBreaks: 'price break',
  expedite: 'rush orders',
  lines: 'production line',
  steps: 'change of shifts',
  cuts: 'planned closing',
  service: 'short deliveries',
  disputed: 'deductions not owed',
  delivery: 'a delivery',
  voidRate: 'doors without it on the shelf',
  exitMarkdownRate: 'money for marking it down',
  creditLimitAmount: 'may owe us at most',
  seasonFactors: 'season',
  pack: 'sizes and weight',
  readiness: '',
  gates: '',
  resets: '',
  leadDays: 'working days',
  after: 'needs first',
  holds: 'holds back',
  numbers: 'number',
};

/** The place as words, outermost first. */
export function placeWords(plan: Plan, path: string): string {
  const segments = path.split('/');
  const words = segments.map((segment, index) => {
    const here = segments.slice(0, index + 1).join('/');
    return placeName(plan, here) ?? WORDS[segment] ?? (isPlace(plan, here) ? '' : spaced(segment));
  });
  const said = words.filter((word) => word !== '').join(', ');
  return said === '' ? '' : `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}

/** What a place of a list is called: its own name or label, or its item's name. */
function placeName(plan: Plan, path: string): string | null {
  const place = getAt(plan, path);
  if (typeof place !== 'object' || place === null || Array.isArray(place)) return null;
  const { name, label, itemId } = place as Record<string, unknown>;
  if (typeof name === 'string') return name;
  if (typeof label === 'string') return label;
  return typeof itemId === 'string' ? (plan.items.find(({ id }) => id === itemId)?.name ?? null) : null;
}

/** A place of a list without a name of its own: its id would say nothing. */
function isPlace(plan: Plan, path: string): boolean {
  return Array.isArray(getAt(plan, path.slice(0, Math.max(0, path.lastIndexOf('/')))));
}

/** "unitsPerWeek" is "units per week"; an id that names nothing is left out. */
function spaced(segment: string): string {
  if (/^\d+$/.test(segment)) return `number ${Number(segment) + 1}`;
  return segment
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/-/g, ' ')
    .toLowerCase();
}
