// Broker's commission: a share of invoices less return credits, paid monthly; on free goods only when agreed so.
// Worked figure: 5 % of an invoice price of 2.60, of which 4 % is credited back: 0.05 x 2.496 = 0.1248 a unit.
import * as z from 'zod/mini';
import { dec, toMillionths } from '../money/decimal.ts';
import * as f from '../plan/fields.ts';
import type { AllowanceKind } from './contract.ts';
import { invoiceWords, lessReturns, share } from './terms.ts';

const terms = z.strictObject({
  kind: z.literal('broker'),
  id: f.id(),
  rate: f.shareBelowOne(),
  onFreeGoods: z.boolean({ error: 'true or false' }),
});

export const broker = {
  kind: 'broker',
  label: 'Broker’s commission',
  meaning: 'A share of invoices, less return credits, for the broker who sells our line, paid monthly.',
  stage: 'sellingCost',
  owner: 'between',
  terms,
  blank: (id) => ({ kind: 'broker', id, rate: '0', onFreeGoods: false }),
  fields: [
    { key: 'rate', label: 'Share of invoices', unit: 'share' },
    { key: 'onFreeGoods', label: 'On free goods too', unit: 'switch' },
  ],
  uncertain: [],
  take: ({ rate }, bases) =>
    share({ rate, base: lessReturns(bases.invoice, bases), of: invoiceWords(bases) }),
  charge: ({ rate, onFreeGoods }) => ({
    settles: 'monthly',
    rateMillionths: toMillionths(dec(rate)),
    priceTenThousandths: 0,
    onFreeGoods,
  }),
  examples: [
    {
      terms: { kind: 'broker', id: 'a', rate: '0.05', onFreeGoods: false },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.13',
      arithmetic: '5 % of invoice 2.60 is 0.13',
    },
    {
      terms: { kind: 'broker', id: 'a', rate: '0.05', onFreeGoods: false },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0.04', caseUnits: 12 },
      expected: '0.1248',
      arithmetic: '4 % of 2.60 is credited back; 5 % of the other 2.496 is 0.1248',
    },
  ],
} satisfies AllowanceKind<z.output<typeof terms>>;
