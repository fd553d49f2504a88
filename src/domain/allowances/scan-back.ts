// Scan-back: so much a unit scanned at the till in the weeks of a deal, claimed afterwards and taken off a remittance.
// Worked figure: 0.40 a unit on 1,000 units scanned in weeks 10 to 13 is a claim of 400.00.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { claim, each } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('scanBack'),
    id: f.id(),
    amountPerUnit: f.unitAmount(),
    fromWeek: f.weekIndex(),
    weeks: f.whole({ least: 0, most: 520, unit: 'weeks' }),
    lagWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
  });

export const scanBack = {
  kind: 'scanBack',
  label: 'Scan-back',
  meaning: 'So much for each unit scanned at the till in the weeks of a deal.',
  stage: 'perUnitOnDeal',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'scanBack', id, amountPerUnit: '0', fromWeek: 0, weeks: 0, lagWeeks: 4 }),
  fields: [
    { key: 'amountPerUnit', label: 'For each unit scanned', unit: 'perUnit' },
    { key: 'fromWeek', label: 'First week of the deal', unit: 'weeks' },
    { key: 'weeks', label: 'Weeks it runs', unit: 'weeks' },
    { key: 'lagWeeks', label: 'Claimed after', unit: 'weeks' },
  ],
  uncertain: [],
  take: ({ amountPerUnit }, bases) => each({ amount: amountPerUnit, per: 'unit' }, bases),
  charge: (stored) => claim(stored, 'unitSold'),
  examples: [
    {
      terms: { kind: 'scanBack', id: 'a', amountPerUnit: '0.4', fromWeek: 10, weeks: 4, lagWeeks: 4 },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.4',
      arithmetic: '0.40 for each unit scanned in the four weeks of the deal',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
