// Royalty or licence: so much a unit, or a share of invoices, or both; less return credits, paid quarterly; on free
// goods only when agreed so. Worked figure: 0.05 a unit and 4 % of an invoice price of 2.60 are 0.154 a unit.
import { round4 } from '../money/decimal.ts';
import { kept, keptMillionths, keptTenThousandths } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { AllowanceKind, Means, TermsOf, UnitBases, UnitTake } from './contract.ts';
import { invoiceWords, lessReturns } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('royalty'),
    id: f.id(),
    amountPerUnit: f.unitAmount(),
    rate: f.shareBelowOne(),
    onFreeGoods: z.boolean({ error: 'true or false' }),
  });
type Terms = TermsOf<typeof terms>;

export const royalty = {
  kind: 'royalty',
  label: 'Royalty or licence',
  meaning: 'So much a unit, or a share of invoices, for a name or a design we use, paid quarterly.',
  stage: 'sellingCost',
  owner: 'between',
  terms,
  blank: (id) => ({ kind: 'royalty', id, amountPerUnit: '0', rate: '0', onFreeGoods: false }),
  fields: [
    { key: 'amountPerUnit', label: 'For each unit', unit: 'perUnit' },
    { key: 'rate', label: 'Share of invoices', unit: 'share' },
    { key: 'onFreeGoods', label: 'On free goods too', unit: 'switch' },
  ],
  uncertain: [],
  take: owed,
  charge: ({ amountPerUnit, rate, onFreeGoods }) => ({
    settles: 'quarterly',
    rateMillionths: keptMillionths(rate),
    priceTenThousandths: keptTenThousandths(amountPerUnit),
    onFreeGoods,
  }),
  examples: [
    {
      terms: { kind: 'royalty', id: 'a', amountPerUnit: '0.05', rate: '0.04', onFreeGoods: false },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.154',
      arithmetic: '0.05 a unit and 4 % of invoice 2.60, 0.104, are 0.154',
    },
    {
      terms: { kind: 'royalty', id: 'a', amountPerUnit: '0.05', rate: '0', onFreeGoods: false },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0.1', caseUnits: 12 },
      expected: '0.045',
      arithmetic: '0.05 on the nine units in ten that stay sold is 0.045',
    },
  ],
} satisfies AllowanceKind<Terms>;

function owed({ amountPerUnit, rate }: Terms, bases: UnitBases): UnitTake {
  const perUnit = kept(amountPerUnit);
  const base = bases.invoice.times(kept(rate)).plus(perUnit);
  const parts = [];
  if (!perUnit.isZero()) parts.push(`${priceText(perUnit)} a unit`);
  if (rate !== '0') parts.push(`${percentText(rate)} of ${invoiceWords(bases)} ${priceText(bases.invoice)}`);
  return { amount: round4(lessReturns(base, bases)), reason: parts.join(' + ') || 'nothing' };
}
