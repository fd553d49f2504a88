// Off-invoice allowance: the invoice itself is lower. Several stand in series, one after another, when each is taken
// on the running price. It stays with the hand that buys from us unless it is marked passed on.
// Worked figure: 20/10/5 on the running price keeps 0.80 x 0.90 x 0.95 = 0.684 of list.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { share } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('offInvoice'),
    id: f.id(),
    rate: f.shareBelowOne(),
    on: z.enum(['list', 'running'], { error: '"list" or "running"' }),
    passedOn: z.boolean({ error: 'true or false' }),
  });

export const offInvoice = {
  kind: 'offInvoice',
  label: 'Off-invoice allowance',
  meaning: 'A part of the list price that is never invoiced, on every unit shipped.',
  stage: 'offInvoice',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'offInvoice', id, rate: '0', on: 'list', passedOn: false }),
  fields: [
    { key: 'rate', label: 'Off the price', unit: 'share' },
    {
      key: 'on',
      label: 'Taken on',
      unit: 'choice',
      choices: [
        { value: 'list', label: 'list price' },
        { value: 'running', label: 'what earlier discounts left' },
      ],
    },
    { key: 'passedOn', label: 'Passed on: the next hand buys lower', unit: 'switch' },
  ],
  uncertain: [],
  take: ({ rate, on }, bases) =>
    on === 'list'
      ? share({ rate, base: bases.list, of: 'list' })
      : share({ rate, base: bases.running, of: 'what is left of list' }),
  charge: ({ passedOn }) => ({ settles: 'onInvoice', passedOn, pickUp: false }),
  examples: [
    {
      terms: { kind: 'offInvoice', id: 'a', rate: '0.1', on: 'list', passedOn: false },
      bases: { list: '3', running: '2.4', invoice: '2.1', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.3',
      arithmetic: '10 % of list 3.00 is 0.30',
    },
    {
      terms: { kind: 'offInvoice', id: 'a', rate: '0.1', on: 'running', passedOn: true },
      bases: { list: '3', running: '2.4', invoice: '2.16', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.24',
      arithmetic: '3.00 less 20 % leaves 2.40; 10 % of that is 0.24',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
