// Broker's commission: a share of invoices less return credits, paid monthly; on free goods only when agreed so.
// Worked figure: 5 % of an invoice price of 2.60, of which 4 % is credited back: 0.05 x 2.496 = 0.1248 a unit.
import { round4 } from '../money/decimal.ts';
import { kept, keptMillionths } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { AllowanceKind, Means, TermsOf, UnitBases, UnitTake } from './contract.ts';
import { lessReturns, share } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('broker'),
    id: f.id(),
    rate: f.shareBelowOne(),
    onFreeGoods: z.boolean({ error: 'true or false' }),
  });
type Terms = TermsOf<typeof terms>;

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
  take: commission,
  charge: ({ rate, onFreeGoods }) => ({
    settles: 'monthly',
    rateMillionths: keptMillionths(rate),
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
} satisfies AllowanceKind<Terms>;

function commission({ rate }: Terms, bases: UnitBases): UnitTake {
  if (bases.returnsRate.isZero()) return share({ rate, base: bases.invoice, of: 'invoice' });
  const base = lessReturns(bases.invoice, bases);
  return {
    amount: round4(base.times(kept(rate))),
    reason: `${percentText(rate)} of invoice less returns ${priceText(base.toDecimalPlaces(6))}`,
  };
}
