// Inputs of one product: who else makes it, what an order of many costs, what a rush costs, and in which currency it is
// bought. Worked example: from 10,000 units on the goods cost 92 %; a second supplier takes what the first one can't.
import type { VNode } from 'preact';
import { landedOf } from '../../domain/ladder/landed.ts';
import { CURRENCY_CODES } from '../../domain/money/currency.ts';
import { ZERO } from '../../domain/money/decimal.ts';
import type { Item } from '../../domain/plan/index.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { Fields, type Guess, nameIn, Part, Places } from './fields.tsx';
import { choice, count, type FieldSpec, factor, money, share, text, week } from './specs.ts';

const BREAK: readonly FieldSpec[] = [
  count('fromUnits', 'From an order of', 'units'),
  share('goodsFactor', 'Goods cost, of the usual', { step: 'slowShare' }),
];

const SOURCE: readonly FieldSpec[] = [
  text('name', 'Name'),
  money('goodsAmountPerUnit', 'Goods, a unit'),
  money('freightAmountPerUnit', 'Freight and duty, a unit', { hint: 'Paid as it lands.' }),
  count('leadWeeks', 'Takes to make', 'weeks', { step: 'one' }),
  count('minimumOrderUnits', 'Smallest order', 'units'),
  count('batchUnits', 'Made in batches of', 'units'),
  { ...count('capacityUnitsPerWeek', 'At most a week', 'units'), placeholder: 'no lid' },
  share('depositRate', 'Down with the order', { step: 'depth' }),
  count('supplierDays', 'Rest paid after landing', 'days', { step: 'days' }),
];

const RUSH: readonly FieldSpec[] = [
  count('leadWeeks', 'Lands after', 'weeks', { step: 'one' }),
  money('extraAmountPerUnit', 'Costs more, a unit', {
    step: 'sum',
    hint: 'Air freight or overtime, on top of what the unit costs anyway.',
  }),
  { ...count('mostUnitsPerWeek', 'At most a week', 'units'), placeholder: 'no lid' },
];

const RUSH_GUESSES: readonly Guess[] = [
  { field: 'leadWeeks', source: 'By air instead of by sea; ask the carrier', low: '1', high: '4' },
];

const SOURCE_GUESSES: readonly Guess[] = [
  { field: 'goodsAmountPerUnit', source: 'As the first supplier’s; ask this one', low: null, high: null },
  {
    field: 'freightAmountPerUnit',
    source: 'As from the first supplier; ask this one',
    low: null,
    high: null,
  },
];

const CURRENCY: readonly FieldSpec[] = [
  choice(
    'code',
    'Bought in',
    CURRENCY_CODES.map((code) => ({ value: code, label: code })),
    { asList: true, hint: 'Goods lines of the landed cost are typed in it.' },
  ),
  factor('rate', 'One of it costs'),
  { field: 'rateDate', label: 'On', kind: 'date' },
  share('shockRate', 'To try: it costs more by', { step: 'depth', least: null, hint: 'Below zero: less.' }),
  week('shockFromWeek', 'For orders from'),
];

export function BuyingSection({ base, item }: { base: string; item: Item }): VNode {
  const plan = usePlan();
  const say = useSay();
  const path = `${base}/supply`;
  const { supply } = item;
  const rush = rushExtra(item);
  return (
    <>
      <Places
        listPath={`${path}/priceBreaks`}
        nameOf={(_, index) => `Price break ${index + 1}`}
        addLabel="Add a price break"
        blank={(id) => ({ id, fromUnits: nextBreak(supply), goodsFactor: '1' })}
      >
        {(place) => <Fields base={place} specs={BREAK} />}
      </Places>
      <Places
        listPath={`${path}/sources`}
        nameOf={(place, index) => nameIn(place, 'name') ?? `Supplier ${index + 2}`}
        addLabel="Add another supplier"
        blank={(id) => blankSource(id, item)}
        guesses={SOURCE_GUESSES}
      >
        {(place) => <Fields base={place} specs={SOURCE} />}
      </Places>
      {supply.sources.length > 0 && (
        <p class="ff-least ff-quiet">Asked in this order, for what those before can’t make in time.</p>
      )}
      <Part
        path={`${path}/expedite`}
        label="rush orders"
        hint="For what stock and orders leave short within a few weeks."
        blank={() => ({
          leadWeeks: Math.min(2, supply.leadWeeks),
          extraAmountPerUnit: rush.middle,
          mostUnitsPerWeek: null,
        })}
        guesses={[
          ...RUSH_GUESSES,
          {
            field: 'extraAmountPerUnit',
            source: 'Half the landed cost again; ask the carrier',
            low: rush.low,
            high: rush.high,
          },
        ]}
      >
        <Fields base={`${path}/expedite`} specs={RUSH} />
      </Part>
      <Part
        path={`${path}/purchaseCurrency`}
        label="a purchase currency"
        hint="Where the goods are not paid in the plan’s own."
        blank={() => ({
          code: plan.currency === 'EUR' ? 'USD' : 'EUR',
          rate: '1',
          rateDate: plan.startDate,
          shockRate: '0',
          shockFromWeek: 0,
        })}
      >
        <Fields
          base={`${path}/purchaseCurrency`}
          specs={CURRENCY.map((spec) =>
            spec.field === 'rate' ? { ...spec, unit: say.look.currency } : spec,
          )}
        />
      </Part>
    </>
  );
}

/** The next break is for twice as many. */
function nextBreak({ priceBreaks, minimumOrderUnits }: Item['supply']): number {
  const most = Math.max(0, ...priceBreaks.map(({ fromUnits }) => fromUnits));
  return Math.min(most === 0 ? Math.max(1000, minimumOrderUnits * 2) : most * 2, 100_000_000);
}

/** As the first supplier in everything, until it was asked. */
function blankSource(id: string, item: Item): Item['supply']['sources'][number] {
  const { supply } = item;
  const landed = landedOf(item);
  const goods = landed.ok ? landed.value.goods : ZERO;
  const freight = landed.ok ? landed.value.unit.minus(goods) : ZERO;
  const { leadWeeks, minimumOrderUnits, batchUnits, depositRate, supplierDays, sources } = supply;
  return {
    id,
    name: `Supplier ${sources.length + 2}`,
    leadWeeks,
    minimumOrderUnits,
    batchUnits,
    capacityUnitsPerWeek: null,
    goodsAmountPerUnit: goods.toFixed(),
    freightAmountPerUnit: freight.toFixed(),
    depositRate,
    supplierDays,
  };
}

/** Half the landed cost of a unit, and the ends it may lie between: a fifth and all of it. */
function rushExtra(item: Item): Record<'low' | 'middle' | 'high', string> {
  const landed = landedOf(item);
  const part = (share: string) =>
    landed.ok ? landed.value.unit.times(share).toDecimalPlaces(2).toFixed() : '0';
  return { low: part('0.2'), middle: part('0.5'), high: part('1') };
}
