// Every allowance a chain takes, with its own fields, and a picker for more. Kinds and their fields come from the model's
// list, so a new kind needs nothing here. Worked example: "Spoils allowance" of 2 % of invoices, 0.052 a unit.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { addAllowance, removeAllowance } from '../../app/commands/accounts.ts';
import type { FieldNote } from '../../domain/allowances/contract.ts';
import { ALLOWANCE_KINDS, type Allowance, kindOf } from '../../domain/allowances/index.ts';
import { stepsInDealWeeks } from '../../domain/ladder/deal-week.ts';
import type { Account } from '../../domain/plan/index.ts';
import { Button, SelectField } from '../../widgets/index.ts';
import { ChoiceFor, FieldFor, SwitchFor } from '../shared/field-for.tsx';
import { Fold, Keys, useRemoval } from '../shared/parts.tsx';
import { usePlan, useSession, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekFor } from '../shared/week-for.tsx';
import { PlaceKeys } from './place-keys.tsx';

export function AllowancesEditor({ accountId }: { accountId: string }): VNode | null {
  const session = useSession();
  const account = usePlan().accounts.find(({ id }) => id === accountId);
  const [added, setAdded] = useState<string | null>(null);
  const removal = useRemoval();
  if (!account) return null;
  const listPath = `accounts/${accountId}/allowances`;
  const add = (kind: string): void => {
    const allowance = kindOf({ kind }).blank(session.newId());
    session.endStep();
    session.run(addAllowance, { accountId, allowance }, listPath);
    session.endStep();
    setAdded(allowance.id);
  };
  return (
    <div>
      {account.allowances.length === 0 && (
        <p class="ff-quiet">Nothing yet: it pays the list price in full.</p>
      )}
      {account.allowances.map((allowance, index) => (
        <OneAllowance
          key={allowance.id}
          account={account}
          allowance={allowance}
          index={index}
          open={allowance.id === added}
          onRemove={() =>
            removal.remove(kindOf(allowance).label, () =>
              session.run(removeAllowance, { accountId, allowanceId: allowance.id }, listPath),
            )
          }
        />
      ))}
      {removal.note}
      <Picker onAdd={add} />
    </div>
  );
}

interface OneProps {
  account: Account;
  allowance: Allowance;
  index: number;
  open: boolean;
  onRemove: () => void;
}

function OneAllowance({ account, allowance, index, open, onRemove }: OneProps): VNode {
  const kind = kindOf(allowance);
  const path = `accounts/${account.id}/allowances/${allowance.id}`;
  return (
    <Fold label={kind.label} value={useTaken(account, allowance)} open={open}>
      <p class="ff-least ff-quiet">{kind.meaning}</p>
      {kind.fields.map((field) => (
        <AllowanceField key={field.key} path={`${path}/${field.key}`} field={field} />
      ))}
      <PlaceKeys
        path={path}
        name={kind.label}
        order={{ index, count: account.allowances.length }}
        onRemove={onRemove}
      />
    </Fold>
  );
}

/** One input of a kind, by its unit. */
function AllowanceField({ path, field }: { path: string; field: FieldNote }): VNode {
  const say = useSay();
  const { key, label, unit, choices = [] } = field;
  const prefix = say.look.money.before.trim() || undefined;
  switch (unit) {
    case 'share':
      return <FieldFor path={path} label={label} kind="percent" step="slowShare" />;
    case 'perUnit':
      return <FieldFor path={path} label={label} kind="amount" step="sum" prefix={prefix} unit="a unit" />;
    case 'perCase':
      return <FieldFor path={path} label={label} kind="amount" step="sum" prefix={prefix} />;
    case 'weeks':
      return <WeeksField path={path} label={label} isDate={key === 'fromWeek'} />;
    case 'days':
      return <FieldFor path={path} label={label} kind="whole" unit="days" step="days" />;
    case 'switch':
      return <SwitchFor path={path} label={label} />;
    case 'choice':
      return <ChoiceFor path={path} label={label} choices={choices} asList={choices.length > 2} />;
  }
}

function WeeksField({ path, label, isDate }: { path: string; label: string; isDate: boolean }): VNode {
  if (!isDate) return <FieldFor path={path} label={label} kind="whole" unit="weeks" step="one" />;
  return <WeekFor path={path} label={label} />;
}

/** What it takes of a unit of the first listed product. */
function useTaken(account: Account, allowance: Allowance): string {
  const say = useSay();
  const ladder = useShown()?.results.ladders.find(({ accountId }) => accountId === account.id);
  if (!ladder) return '';
  const steps = [...ladder.steps, ...stepsInDealWeeks(ladder)];
  const step = steps.find(({ id }) => id === allowance.id);
  return step ? `${say.priceExact(step.amount)} a unit` : 'takes nothing yet';
}

/** The picker: what each kind means is said before it is added. */
function Picker({ onAdd }: { onAdd: (kind: string) => void }): VNode {
  const [kind, setKind] = useState<string>(ALLOWANCE_KINDS[0]?.kind ?? '');
  return (
    <>
      <SelectField
        label="Another"
        value={kind}
        choices={ALLOWANCE_KINDS.map((each) => ({ value: each.kind, label: each.label }))}
        onChoose={setKind}
        hint={kindOf({ kind }).meaning}
      />
      <Keys>
        <Button onPress={() => onAdd(kind)}>Add {kindOf({ kind }).label.toLowerCase()}</Button>
      </Keys>
    </>
  );
}
