// Which chains are looked at, and what can be done with one: copied, taken out, or another one added.
// Worked example: of five chains four fit beside each other; the fifth key waits until one is put away.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { Button, SelectField } from '../../widgets/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { Fold, Keys, useRemoval } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { addBlankChain, duplicateChain, removeChain } from './chains.ts';

/** One of the chains, on a phone; nothing where there is one. */
export function ChainPicker({ plan, accountId }: { plan: Plan; accountId: string }): VNode | null {
  const session = useSession();
  if (plan.accounts.length < 2) return null;
  return (
    <SelectField
      label="Chain"
      value={accountId}
      choices={plan.accounts.map(({ id, name }) => ({ value: id, label: name }))}
      onChoose={(id) => session.go({ view: 'deal', planId: plan.id, accountId: id, sheet: null })}
    />
  );
}

export interface ChainsShownProps {
  plan: Plan;
  columns: readonly string[];
  most: number;
  onChange: (columns: readonly string[]) => void;
}

/** A key for each chain that stays down while its column is there. */
export function ChainsShown({ plan, columns, most, onChange }: ChainsShownProps): VNode | null {
  if (plan.accounts.length < 2) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: keys that stay down, not a form
    <div class="ff-button-row" role="group" aria-label="Chains beside each other">
      {plan.accounts.map(({ id, name }) => {
        const on = columns.includes(id);
        return (
          <Button
            key={id}
            pressed={on}
            disabled={on ? columns.length === 1 : columns.length >= most}
            onPress={() => onChange(on ? columns.filter((each) => each !== id) : [...columns, id])}
          >
            {name}
          </Button>
        );
      })}
    </div>
  );
}

/** Name, copy, take out, add. */
export function ChainKeys({ plan, accountId }: { plan: Plan; accountId: string }): VNode {
  const session = useSession();
  const removal = useRemoval();
  const name = plan.accounts.find(({ id }) => id === accountId)?.name ?? '';
  return (
    <div>
      {removal.note}
      <Fold label="Chains of this plan" value={`${plan.accounts.length}`}>
        <FieldFor path={`accounts/${accountId}/name`} label="This chain is called" kind="text" />
        <Keys>
          <Button onPress={() => addBlankChain(session)}>Add a chain</Button>
          <Button onPress={() => duplicateChain(session, accountId)}>Copy {name}</Button>
          <Button onPress={() => removal.remove(name, () => removeChain(session, accountId))}>
            Take out {name}
          </Button>
        </Keys>
      </Fold>
    </div>
  );
}
