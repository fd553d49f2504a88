// The documents of a week as papers: each purchase order, delivery, invoice, claim, remittance and payment with its lines,
// every posting of the week on exactly one of them. A document comes to the sum of its lines; lines without an amount of
// their own say what else it says. Worked figure: an invoice of 1,248.00 with deductions of 24.96 comes to 1,223.04,
// paid in week 15.
import { dec } from '../money/decimal.ts';
import { timesPrice } from '../money/integer.ts';
import type { Posting } from '../rollout/books.ts';
import { effectOf } from '../statements/ledger.ts';
import {
  DOCUMENT_KINDS,
  DOCUMENT_OF,
  DOCUMENTS_BY,
  type DocumentKind,
  documentId,
  KIND_WORDS,
} from './document-kinds.ts';
import { EVENT_WORDS } from './event-words.ts';
import { orderLines } from './order-lines.ts';
import { listingKey, placeOf } from './place.ts';
import { entriesOf, entryLines } from './posting-lines.ts';
import { remittanceLines } from './remittance.ts';
import { journalOf, postingsIn } from './runs.ts';
import { type Entry, whose } from './sources.ts';
import type { WeekAt } from './splits.ts';
import type { ExplanationLine } from './types.ts';
import { exactPrice, line, type Scene } from './write.ts';

export interface WeekDocument {
  id: string;
  kind: DocumentKind;
  /** "Invoice, Corner, Tea". */
  title: string;
  /** When it is paid, or what it is. */
  note: string;
  lines: readonly ExplanationLine[];
  /** What the lines with an amount come to, in minor units; null on a paper that only says something. */
  amount: number | null;
  /** What it did to cash in this week, in minor units. */
  cash: number;
}

/** All papers dated in a week, in the order of DOCUMENT_KINDS; none beyond the plan's horizon. */
export function documentsOf(scene: Scene, week: number): WeekDocument[] {
  const { compiled } = scene.results;
  const journal = journalOf(scene, 'plan');
  const at: WeekAt = { scene, compiled, week, journal };
  const entries = entriesOf(journal, week, () => true);
  return DOCUMENT_KINDS.flatMap((kind) => {
    const own = entries.filter(({ event }) => DOCUMENT_OF[event] === kind);
    const papers = [...gathered(own, kind)].map(([id, entries]) => documentOf(at, { id, kind, entries }));
    return kind === 'order' ? [...papers, ...ordersUnpaid(at, own)] : papers;
  });
}

/** Entries that stand on one paper, by its name: bills go by what they are, other papers by whose they are. */
function gathered(entries: readonly Entry[], kind: DocumentKind): Map<string, Entry[]> {
  const papers = new Map<string, Entry[]>();
  for (const entry of entries) {
    const id = `${documentId(kind, entry.account, entry.item)}${DOCUMENTS_BY[kind] === 'event' ? entry.event : ''}`;
    papers.set(id, [...(papers.get(id) ?? []), entry]);
  }
  return papers;
}

interface Paper {
  id: string;
  kind: DocumentKind;
  entries: readonly Entry[];
}

function documentOf(at: WeekAt, { id, kind, entries }: Paper): WeekDocument {
  const { scene } = at;
  const [first] = entries as [Entry, ...Entry[]];
  const by = DOCUMENTS_BY[kind];
  const name = by === 'event' ? EVENT_WORDS[first.event][0] : KIND_WORDS[kind][0];
  const names =
    by === 'all' || by === 'event' ? '' : whose(scene, by === 'account' ? { ...first, item: -1 } : first);
  const signed = entries.map((entry) => ({ entry, sign: signOn(kind, entry) }));
  const lines =
    kind === 'remittance'
      ? remittanceLines(at, first.account)
      : [...said(at, kind, first), ...signed.flatMap(({ entry, sign }) => entryLines(at, entry, sign))];
  return {
    id,
    kind,
    title: names === '' ? name : `${name}, ${names}`,
    note: noteOf(at, kind, first),
    lines,
    amount:
      kind === 'remittance'
        ? cashOf(entries)
        : signed.reduce((sum, { entry, sign }) => sum + sign * entry.amount, 0),
    cash: cashOf(entries),
  };
}

/** A week's cash of some entries. */
function cashOf(entries: readonly Pick<Posting, 'event' | 'amount'>[]): number {
  return entries.reduce((sum, { event, amount }) => sum + effectOf(event, 'cash') * amount, 0);
}

/** Goods come to what they are worth; other papers to what they bring or take: cash, else the result, else what is owed. */
function signOn(kind: DocumentKind, { event }: Entry): 1 | -1 {
  if (kind === 'goods') return 1;
  const effects = (['cash', 'retained', 'receivables', 'stock'] as const).map((balance) =>
    effectOf(event, balance),
  );
  return effects.find((effect) => effect !== 0) ?? 1;
}

/** Lines that say more than money: units and their price, units ordered. */
function said(at: WeekAt, kind: DocumentKind, first: Entry): ExplanationLine[] {
  if (kind === 'invoice') return invoicedUnits(at, first);
  return kind === 'order' ? orderLines(at, first.item) : [];
}

/** Units of an invoice, where its price tells them without a doubt. */
function invoicedUnits(at: WeekAt, { account, item }: Entry): ExplanationLine[] {
  const { scene, compiled, week, journal } = at;
  const place = placeOf(scene, scene.plan.accounts[account]?.id ?? '', scene.plan.items[item]?.id ?? '');
  const terms = compiled.listings.find((each) => each.account === account && each.item === item);
  const price = terms?.invoicePrice[week] ?? 0;
  const amount = postingsIn(journal, week)
    .filter((each) => each.event === 'invoiced')
    .filter((each) => each.account === account && each.item === item)
    .reduce((sum, each) => sum + each.amount, 0);
  if (place === null || price <= 0) return [];
  const units = Math.round((amount * compiled.perMinor) / price);
  if (timesPrice(units, price, compiled.perMinor) !== amount) return [];
  return [
    line({
      label: 'Units invoiced',
      value: scene.say.count(units),
      reason: `At ${exactPrice(scene, dec(price).div(PRICE_PER_UNIT))} each`,
      explains: listingKey(place, 'invoice'),
    }),
  ];
}

/** Unit prices are kept in ten-thousandths. */
const PRICE_PER_UNIT = 10_000;

/** Orders that nothing is paid ahead for: no posting tells of them. */
function ordersUnpaid(at: WeekAt, paid: readonly Entry[]): WeekDocument[] {
  const { scene, week } = at;
  return scene.plan.items.flatMap((item, i) => {
    const units = scene.results.pass.units[i]?.ordered[week] ?? 0;
    if (units === 0 || paid.some((entry) => entry.item === i)) return [];
    return [
      {
        id: documentId('order', -1, i),
        kind: 'order' as const,
        title: `${KIND_WORDS.order[0]}, ${item.name}`,
        note: 'Nothing is paid ahead.',
        lines: orderLines(at, i),
        amount: null,
        cash: 0,
      },
    ];
  });
}

/** When it will be paid, where a paper has a date for that. */
function noteOf({ scene, compiled, week }: WeekAt, kind: DocumentKind, first: Entry): string {
  const { say } = scene;
  const [, meaning] = KIND_WORDS[kind];
  const plain = `${meaning.charAt(0).toUpperCase()}${meaning.slice(1)}.`;
  const terms = compiled.accounts[first.account];
  if (kind === 'invoice' && terms) {
    const late = `Paid in ${say.week(week + terms.collectWeeks)}`;
    const early = terms.discount;
    return early ? `${late}; the part paid early in ${say.week(week + early.collectWeeks)}.` : `${late}.`;
  }
  const item = compiled.items[first.item];
  if (kind === 'goods' && item) {
    const [supplier, ...more] = item.buying.suppliers;
    if (!supplier || more.length > 0) return 'The rest is paid when each supplier asks for it.';
    return `The rest is paid in ${say.week(week + supplier.supplierWeeks)}.`;
  }
  return plain;
}
