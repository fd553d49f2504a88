// Inputs of one chain: how often and in what its stores order, and a depot between us and them.
// Worked example: ordering every second week, a store looks two weeks ahead beside transit and cover, not one.
import type { VNode } from 'preact';
import type { Account } from '../../domain/plan/index.ts';
import { Fields, type Guess, Part } from './fields.tsx';
import { choice, count, type FieldSpec, ORDER_IN, onOff, week } from './specs.ts';

const ORDERING: readonly FieldSpec[] = [
  count('ordering/everyWeeks', 'Orders every', 'weeks', { step: 'one', least: 1 }),
  week('ordering/firstWeek', 'For the first time in'),
  onOff('ordering/daily', 'Looks every day', {
    hint: 'A store that looks by the day orders up to a week less.',
  }),
  choice('ordering/orderIn', 'In whole', ORDER_IN, { hint: 'Layers need the sizes of the product’s pack.' }),
];

const DEPOT: readonly FieldSpec[] = [
  choice('keptBy', 'Kept by', [
    { value: 'chain', label: 'the chain' },
    { value: 'distributor', label: 'a distributor' },
  ]),
  count('transitWeeks', 'From us to the depot', 'weeks', { step: 'one' }),
  count('fillWeeks', 'Laid in for a new door', 'weeks', {
    step: 'one',
    hint: 'Of its sale, beside what goes onto its shelf.',
  }),
  count('coverWeeks', 'The depot orders up to', 'weeks', { step: 'one', hint: 'Of what its doors sell.' }),
  count('openingWeeks', 'Lies there today', 'weeks', {
    step: 'one',
    hint: 'Of the sale of doors that already sell.',
  }),
  count('minimumOrderUnits', 'Smallest order', 'units'),
  choice('orderIn', 'The depot orders in whole', ORDER_IN),
];

const DEPOT_GUESSES: readonly Guess[] = [
  { field: 'fillWeeks', source: 'Depots lay in some weeks of sale; ask this one', low: '0', high: '6' },
  { field: 'coverWeeks', source: 'Depots keep some weeks of sale; ask this one', low: '1', high: '8' },
];

export function OrderingSection({ base, account }: { base: string; account: Account }): VNode {
  return (
    <>
      <Fields base={base} specs={ORDERING} />
      <Part
        path={`${base}/depot`}
        label="a depot"
        hint="Stock between us and the stores, the chain’s or a distributor’s. We invoice what leaves us for there."
        blank={() => blankDepot(account)}
        guesses={DEPOT_GUESSES}
      >
        <Fields base={`${base}/depot`} specs={DEPOT} />
      </Part>
    </>
  );
}

/** One week away, where the first opening leaves time for it; kept by the first of several hands, else by the chain. */
function blankDepot({ hands, waves, terms, ordering, runningDoors }: Account): NonNullable<Account['depot']> {
  const first = Math.min(...waves.map(({ openWeek }) => openWeek), Number.POSITIVE_INFINITY);
  const spare = first - ordering.firstWeek - terms.transitWeeks - 1;
  return {
    keptBy: hands.length > 1 ? 'distributor' : 'chain',
    transitWeeks: Math.max(0, Math.min(1, spare)),
    fillWeeks: 2,
    openingWeeks: runningDoors.length > 0 ? 3 : 0,
    coverWeeks: 3,
    minimumOrderUnits: 0,
    orderIn: 'case',
  };
}
