// Expected returns: a share of what the chain takes in comes back for credit, with freight, and some of it can be sold
// again. Units, stock and credits of the weekly pass follow the same rate, a lag after delivery.
// Worked figure: 4 % back of 2.60, 0.30 freight back, landed 1.00 of which half is resaleable:
// 0.04 x (2.60 + 0.30 - 0.50) = 0.096 a unit.
import { type Decimal, round4, ZERO } from '../money/decimal.ts';
import { kept, keptMillionths, keptTenThousandths } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { AllowanceKind, Means, TermsOf, UnitBases, UnitTake } from './contract.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('expectedReturns'),
    id: f.id(),
    rate: f.shareBelowOne(),
    resaleableShare: f.share(),
    freightBackPerUnit: f.unitAmount(),
    lagWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  });
type Terms = TermsOf<typeof terms>;

export const expectedReturns = {
  kind: 'expectedReturns',
  label: 'Expected returns',
  meaning: 'A share of units comes back for credit; what can be sold again goes back into our stock.',
  stage: 'deduction',
  owner: 'theirs',
  terms,
  blank: (id) => ({
    kind: 'expectedReturns',
    id,
    rate: '0',
    resaleableShare: '0',
    freightBackPerUnit: '0',
    lagWeeks: 8,
  }),
  fields: [
    { key: 'rate', label: 'Share of units that come back', unit: 'share' },
    { key: 'resaleableShare', label: 'Of these, fit to sell again', unit: 'share' },
    { key: 'freightBackPerUnit', label: 'Freight back', unit: 'perUnit' },
    { key: 'lagWeeks', label: 'Back after', unit: 'weeks' },
  ],
  uncertain: ['rate'],
  take: costOfReturns,
  charge: (stored) => ({
    settles: 'returns',
    rateMillionths: keptMillionths(stored.rate),
    resaleableMillionths: keptMillionths(stored.resaleableShare),
    freightBackTenThousandths: keptTenThousandths(stored.freightBackPerUnit),
    lagWeeks: stored.lagWeeks,
  }),
  examples: [
    {
      terms: {
        kind: 'expectedReturns',
        id: 'a',
        rate: '0.04',
        resaleableShare: '0.5',
        freightBackPerUnit: '0.3',
        lagWeeks: 8,
      },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0.04', caseUnits: 12 },
      expected: '0.096',
      arithmetic: '4 % of 2.60 credit + 0.30 freight back - 0.50 of stock saved is 0.04 x 2.40 = 0.096',
    },
  ],
} satisfies AllowanceKind<Terms>;

/** rate x (invoice + freight back - landed x resaleable share); never below zero, should stock be worth more than the credit. */
function costOfReturns(stored: Terms, { invoice, landed }: UnitBases): UnitTake {
  const back = kept(stored.freightBackPerUnit);
  const saved: Decimal = landed.times(kept(stored.resaleableShare));
  const perReturn = invoice.plus(back).minus(saved);
  const amount = perReturn.isNegative() ? ZERO : round4(perReturn.times(kept(stored.rate)));
  const parts = `${priceText(invoice)} credit + ${priceText(back)} freight back − ${priceText(saved)} sold again`;
  return { amount, reason: `${percentText(stored.rate)} of (${parts})` };
}
