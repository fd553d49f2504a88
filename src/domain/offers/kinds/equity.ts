// Money for a part of the company. The part is of the company after all of the offer's money (post-money); of tranches each
// buys in proportion to its money, and what never comes buys nothing. Post-money = money / part; pre-money = post - money.
// Worked figure: 100,000 for 20 % is 500,000 post-money and 400,000 pre-money.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';

const terms = ({ z, f, tranches }: Means) =>
  z.strictObject({
    kind: z.literal('equity'),
    id: f.id(),
    tranches: tranches(),
    partRate: f.shareBelowOne(),
    preference: z.enum(['none', 'nonParticipating', 'participating'], {
      error: '"none", "nonParticipating" or "participating"',
    }),
    preferenceMultiple: f.factor(),
    poolRate: f.shareBelowOne(),
    proRata: z.boolean({ error: 'true or false' }),
  });
type Terms = TermsOf<typeof terms>;

export const equity = {
  kind: 'equity',
  label: 'Equity',
  meaning:
    'Money for a part of the company; nothing is paid back, the part is paid out when the company is sold.',
  terms,
  blank: (id) => ({
    kind: 'equity',
    id,
    tranches: [],
    partRate: '0',
    preference: 'nonParticipating',
    preferenceMultiple: '1',
    poolRate: '0',
    proRata: false,
  }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    { key: 'partRate', label: 'For this part of the company', unit: 'share' },
    {
      key: 'preference',
      label: 'Its money back first, or its part (preference)',
      unit: 'choice',
      choices: [
        { value: 'none', label: 'None: shares alike' },
        { value: 'nonParticipating', label: 'Non-participating: either' },
        { value: 'participating', label: 'Participating: both' },
      ],
    },
    { key: 'preferenceMultiple', label: 'So many times its money', unit: 'times' },
    { key: 'poolRate', label: 'Option pool made with it', unit: 'share' },
    { key: 'proRata', label: 'Keeps its part in later rounds by paying in (pro rata)', unit: 'switch' },
  ],
  movable: [
    { key: 'partRate', label: 'Part', unit: 'share', least: 0, most: 0.95, decimals: 4 },
    {
      key: 'preferenceMultiple',
      label: 'Times its money first',
      unit: 'times',
      least: 0,
      most: 5,
      decimals: 2,
    },
  ],
  outcome: (stored, basis) => {
    const { flows, never, money, asked } = tranchesIn(stored.tranches, basis);
    return {
      flows,
      never,
      owed: 0,
      settles: 0,
      stake: {
        by: 'shares',
        buys: money,
        asked,
        partRate: Number(stored.partRate),
        preference: stored.preference,
        preferenceMultiple: Number(stored.preferenceMultiple),
        poolRate: Number(stored.poolRate),
        proRata: stored.proRata,
      },
    };
  },
} satisfies OfferKind<Terms>;
