// How far things may come out otherwise than planned: what the range draws from. All of it is judgement, said so; with
// every spread at 0 and doors as planned the range is the plan.
// Worked example: 30 % on the rate of sale puts two thirds of the draws within a factor of 1.35 of the plan's.
import type { VNode } from 'preact';
import { Fields } from '../inputs/fields.tsx';
import { choice, count, type FieldSpec, share } from '../inputs/specs.ts';
import { usePlan } from '../shared/session-context.ts';

const DOORS = choice('doors', 'Doors open', [
  { value: 'asStanding', label: 'as agreed so far' },
  { value: 'asPlanned', label: 'as planned' },
]);

const SPREADS: readonly FieldSpec[] = [
  share('rateOfSaleRate', 'Rate of sale, by', {
    placeholder: 'as seen',
    hint: 'Empty: as far as store sales leave it open; 30 % where there are none.',
  }),
  share('rampRate', 'Time until full sales, by', { step: 'depth' }),
  count('latenessDays', 'Payments, by', 'days', { step: 'days' }),
  share('goodsRate', 'Cost of goods, by', { step: 'margin' }),
  share('deductionsRate', 'Deductions, by', { step: 'margin', hint: 'Points of the invoice.' }),
  share('voidRate', 'Doors with an empty place, by', { step: 'margin', hint: 'Points of all doors.' }),
  share('sharedRate', 'What all accounts share', {
    step: 'depth',
    hint: 'How alike their fates are, 0 to 100 %. At 0 one’s luck makes up for another’s, and the range is too narrow.',
  }),
];

export function SpreadFields(): VNode {
  const { doors } = usePlan().promise.spreads;
  return (
    <div class="ff-stack">
      <p class="ff-least ff-quiet">
        Two thirds of the draws lie within these of the plan. Judgement, no source: change what you know
        better.
      </p>
      <Fields base="promise/spreads" specs={[DOORS, ...SPREADS]} />
      {doors === 'asPlanned' && <p class="ff-least">The range takes every door as certain.</p>}
    </div>
  );
}
