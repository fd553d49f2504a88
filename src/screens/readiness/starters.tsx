// Starter sets: what usually has to be ready, by how goods are sold and what they are, to be taken in or left. Nothing goes
// into the plan by itself. Worked example: food sold in grocery proposes some twenty; what was taken isn't proposed again.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { addStarters } from '../../app/commands/readiness.ts';
import type { Plan } from '../../domain/plan/index.ts';
import {
  CHANNELS,
  type Channel,
  PRODUCT_KINDS,
  type ProductKind,
  type Suggestion,
  suggestedGates,
} from '../../domain/readiness/index.ts';
import { Button, Caution, SelectField, Sheet, SwitchField } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { useKept } from '../shared/kept.ts';
import { usePlan, useSession } from '../shared/session-context.ts';

export const STARTERS_SHEET = 'starters';

const CHANNEL_WORDS: Readonly<Record<Channel, string>> = {
  grocery: 'Grocery',
  pharmacy: 'Pharmacy',
  gift: 'Gift and speciality shops',
  club: 'Club',
  distributor: 'Through a distributor',
};
const KIND_WORDS: Readonly<Record<ProductKind, string>> = {
  food: 'Food',
  personalCare: 'Personal care',
  toyChild: 'Toys, goods for children',
  electrical: 'Electrical goods',
  household: 'Household goods',
};

interface Asked {
  channels: Record<string, Channel>;
  kinds: ProductKind[];
}

/** What was chosen before; a chain that is gone brings nothing. */
function isAsked(value: unknown): value is Asked {
  if (typeof value !== 'object' || value === null) return false;
  const { channels, kinds } = value as Record<string, unknown>;
  return (
    typeof channels === 'object' &&
    channels !== null &&
    Object.values(channels).every((each) => CHANNELS.some((known) => known === each)) &&
    Array.isArray(kinds) &&
    kinds.every((each) => PRODUCT_KINDS.some((known) => known === each))
  );
}

/** Until somebody says otherwise: grocery for chains that have openings to come; food where the plan says that it sells food that spoils. */
function usualFor(plan: Plan): Asked {
  return {
    channels: Object.fromEntries(
      plan.accounts.filter(({ waves }) => waves.length > 0).map(({ id }) => [id, 'grocery']),
    ),
    kinds: plan.perishableFood ? ['food'] : [],
  };
}

export function StartersSheet(): VNode {
  const session = useSession();
  const plan = usePlan();
  const [kept, keep] = useKept('starters', isAsked);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const asked = kept ?? usualFor(plan);
  const suggested = useMemo(
    () => suggestedGates(plan, { channels: asked.channels, productKinds: asked.kinds }),
    [plan, asked],
  );
  const chosen = suggested.filter(({ gate }) => !left.has(keyOf(gate)));
  const take = (): void => {
    session.endStep();
    const isIn = session.run(addStarters, { gates: chosen.map(({ gate }) => gate) }, 'readiness/gates');
    session.endStep();
    if (isIn) session.closeSheet();
  };
  const toggle = (key: string): void => {
    const next = new Set(left);
    if (!next.delete(key)) next.add(key);
    setLeft(next);
  };
  return (
    <Sheet
      title="What usually has to be ready"
      onClose={() => session.closeSheet()}
      footer={
        <Button kind="primary" wide disabled={chosen.length === 0} onPress={take}>
          {chosen.length === 0 ? 'Nothing to take in' : `Take in ${chosen.length}`}
        </Button>
      }
    >
      <div class="ff-inputs-section">
        <p class="ff-least ff-quiet">
          Common practice, no source: names, order and days are a first guess to be changed.
        </p>
        {plan.accounts.map(({ id, name }) => (
          <SelectField
            key={id}
            label={name}
            value={asked.channels[id] ?? ''}
            choices={[
              { value: '', label: 'none of these' },
              ...CHANNELS.map((value) => ({ value, label: CHANNEL_WORDS[value] })),
            ]}
            onChoose={(value) => keep({ ...asked, channels: withChannel(asked.channels, id, value) })}
          />
        ))}
        <fieldset class="ff-place">
          <legend class="ff-label">What is sold</legend>
          {PRODUCT_KINDS.map((kind) => (
            <SwitchField
              key={kind}
              label={KIND_WORDS[kind]}
              on={asked.kinds.includes(kind)}
              onChange={() => keep({ ...asked, kinds: toggledKind(asked.kinds, kind) })}
            />
          ))}
        </fieldset>
        <Proposed suggested={suggested} left={left} onToggle={toggle} />
        <Trouble path="readiness/gates" />
        <SafetyCaution />
      </div>
    </Sheet>
  );
}

/** Safety and labelling are for those whose trade and licence it is. */
export function SafetyCaution(): VNode {
  return (
    <Caution>
      A reminder, not advice: what product safety, labelling and permits ask for is in the law and code of the
      place of sale, and for licensed or accredited bodies to confirm.
    </Caution>
  );
}

interface ProposedProps {
  suggested: readonly Suggestion[];
  left: ReadonlySet<string>;
  onToggle: (key: string) => void;
}

function Proposed({ suggested, left, onToggle }: ProposedProps): VNode {
  if (suggested.length === 0) return <p>All that these sets hold is in the plan.</p>;
  const reasons = [...new Set(suggested.map(({ because }) => because))];
  return (
    <>
      {reasons.map((because) => (
        <fieldset key={because} class="ff-place">
          <legend class="ff-label">{because}</legend>
          {suggested
            .filter((each) => each.because === because)
            .map(({ gate }) => (
              <SwitchField
                key={keyOf(gate)}
                label={gate.name}
                hint={`${gate.leadDays.optimistic}, ${gate.leadDays.likely}, ${gate.leadDays.pessimistic} working days`}
                on={!left.has(keyOf(gate))}
                onChange={() => onToggle(keyOf(gate))}
              />
            ))}
        </fieldset>
      ))}
    </>
  );
}

function keyOf({ starter, id }: Suggestion['gate']): string {
  return starter ?? id;
}

function withChannel(channels: Asked['channels'], id: string, value: string): Asked['channels'] {
  const { [id]: _, ...others } = channels;
  const channel = CHANNELS.find((each) => each === value);
  return channel === undefined ? others : { ...others, [id]: channel };
}

function toggledKind(kinds: readonly ProductKind[], kind: ProductKind): ProductKind[] {
  return kinds.includes(kind) ? kinds.filter((each) => each !== kind) : [...kinds, kind];
}
