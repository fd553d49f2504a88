// A loan that turns into shares at the next round: at the lower of the round's price less a discount and the price that a
// cap on the company's value gives. Interest is simple, and turns into shares too. Without a round by its last month it is
// paid back, or stays until the sale, as agreed. Generic arithmetic; a paper somebody signs may say otherwise.
// Worked figure: 50,000 at 8 % a year for one year before a round is 54,000 to be turned into shares.
import { monthsAfter, tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';

const terms = ({ z, f, tranches }: Means) =>
  z.strictObject({
    kind: z.literal('convertibleNote'),
    id: f.id(),
    tranches: tranches(),
    yearlyRate: f.factor(),
    capAmount: z.nullable(f.sumAmount()),
    capBase: z.enum(['preMoney', 'postMoney'], { error: '"preMoney" or "postMoney"' }),
    discountRate: f.shareBelowOne(),
    maturityMonths: f.whole({ least: 1, most: 120, unit: 'months' }),
    atMaturity: z.enum(['repaid', 'waits'], { error: '"repaid" or "waits"' }),
  });
type Terms = TermsOf<typeof terms>;

export const convertibleNote = {
  kind: 'convertibleNote',
  label: 'Convertible note',
  meaning:
    'A loan that turns into shares at the next round, cheaper than the round, or at a cap on the value.',
  terms,
  blank: (id) => ({
    kind: 'convertibleNote',
    id,
    tranches: [],
    yearlyRate: '0',
    capAmount: null,
    capBase: 'preMoney',
    discountRate: '0',
    maturityMonths: 24,
    atMaturity: 'waits',
  }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    { key: 'yearlyRate', label: 'Interest a year', unit: 'share' },
    { key: 'capAmount', label: 'Cap on the value', unit: 'sum', orNone: true },
    {
      key: 'capBase',
      label: 'The cap is',
      unit: 'choice',
      choices: [
        { value: 'preMoney', label: 'Before this money' },
        { value: 'postMoney', label: 'After this money' },
      ],
    },
    { key: 'discountRate', label: 'Discount on the next round', unit: 'share' },
    { key: 'maturityMonths', label: 'Months until it is due', unit: 'months' },
    {
      key: 'atMaturity',
      label: 'Due without a round',
      unit: 'choice',
      choices: [
        { value: 'repaid', label: 'Paid back with interest' },
        { value: 'waits', label: 'Waits for a round or a sale' },
      ],
    },
  ],
  movable: [
    { key: 'capAmount', label: 'Cap', unit: 'sum', least: 1, most: 1e9, decimals: 0 },
    { key: 'discountRate', label: 'Discount', unit: 'share', least: 0, most: 0.9, decimals: 4 },
    { key: 'yearlyRate', label: 'Interest a year', unit: 'share', least: 0, most: 1, decimals: 4 },
  ],
  outcome: (stored, basis) => {
    const { flows, never, money } = tranchesIn(stored.tranches, basis);
    const first = money[0]?.week ?? 0;
    return {
      flows,
      never,
      owed: 0,
      settles: 0,
      stake: {
        by: 'converts',
        buys: money,
        yearlyRate: Number(stored.yearlyRate),
        cap: stored.capAmount === null ? null : Number(stored.capAmount) * 10 ** basis.minorDigits,
        capBase: stored.capBase,
        discountRate: Number(stored.discountRate),
        repaidWeek: stored.atMaturity === 'repaid' ? monthsAfter(basis, first, stored.maturityMonths) : null,
      },
    };
  },
} satisfies OfferKind<Terms>;
