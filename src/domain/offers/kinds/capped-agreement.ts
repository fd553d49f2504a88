// Money now for shares at the next round, without interest or a due date: at the better of a cap on the value after this
// money (post-money: part = money / cap) and a discount on the round. Generic arithmetic; a paper may say otherwise.
// Worked figure: 100,000 under a cap of 1,000,000 is 10 % of the company just before the next round's money.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';

const terms = ({ z, f, tranches }: Means) =>
  z.strictObject({
    kind: z.literal('cappedAgreement'),
    id: f.id(),
    tranches: tranches(),
    capAmount: z.nullable(f.sumAmount()),
    discountRate: f.shareBelowOne(),
  });
type Terms = TermsOf<typeof terms>;

export const cappedAgreement = {
  kind: 'cappedAgreement',
  label: 'Capped agreement',
  meaning: 'Money now for shares at the next round, priced by a cap on the value or a discount; no interest.',
  terms,
  blank: (id) => ({ kind: 'cappedAgreement', id, tranches: [], capAmount: null, discountRate: '0' }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    { key: 'capAmount', label: 'Cap on the value after this money', unit: 'sum', orNone: true },
    { key: 'discountRate', label: 'Discount on the next round', unit: 'share' },
  ],
  movable: [
    { key: 'capAmount', label: 'Cap', unit: 'sum', least: 1, most: 1e9, decimals: 0 },
    { key: 'discountRate', label: 'Discount', unit: 'share', least: 0, most: 0.9, decimals: 4 },
  ],
  outcome: (stored, basis) => {
    const { flows, never, money } = tranchesIn(stored.tranches, basis);
    return {
      flows,
      never,
      owed: 0,
      settles: 0,
      stake: {
        by: 'converts',
        buys: money,
        yearlyRate: 0,
        cap: stored.capAmount === null ? null : Number(stored.capAmount) * 10 ** basis.minorDigits,
        capBase: 'postMoney',
        discountRate: Number(stored.discountRate),
        repaidWeek: null,
      },
    };
  },
} satisfies OfferKind<Terms>;
