// When money comes: in a week, once doors are open, or once an order is in hand; and the tranches of a part, each with its
// own. A sum that comes at once in week 0 is one row, its condition folded away.
// Worked example: 60,000 in week 0 and 40,000 once 60 doors are open.
import type { VNode } from 'preact';
import { addPlace, removePlace } from '../../app/commands/field.ts';
import type { Tranche, When } from '../../domain/offers/contract.ts';
import { getAt } from '../../domain/plan/path.ts';
import { Button, SelectField } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { FieldFor } from '../shared/field-for.tsx';
import { Fold, Keys } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekFor } from '../shared/week-for.tsx';
import { whenWords } from './words.ts';

const BY = [
  { value: 'week', label: 'In a week' },
  { value: 'doors', label: 'Once so many doors are open' },
  { value: 'order', label: 'Once an order is in hand' },
];

/** Another way to say when, with nothing said yet. */
function blankWhen(by: string): When {
  if (by === 'doors') return { by: 'doors', doors: 1, accountId: null };
  return by === 'order' ? { by: 'order', accountId: null } : { by: 'week', week: 0 };
}

export function WhenFields({ path, label }: { path: string; label: string }): VNode | null {
  const session = useSession();
  const plan = usePlan();
  const when = getAt(plan, path) as When | undefined;
  if (when === undefined) return null;
  const set = (at: string, value: unknown): void => {
    session.setField(at, value);
    session.endStep();
  };
  return (
    <>
      <SelectField
        label={label}
        value={when.by}
        choices={BY}
        onChoose={(by) => set(path, blankWhen(by))}
        problem={undefined}
      />
      {when.by === 'week' && <WeekFor path={`${path}/week`} label="Week" />}
      {when.by === 'doors' && (
        <FieldFor path={`${path}/doors`} label="Doors open" kind="whole" step="doors" least={1} />
      )}
      {when.by !== 'week' && plan.accounts.length > 0 && (
        <SelectField
          label="At"
          value={when.accountId ?? ''}
          choices={[
            { value: '', label: 'any chain' },
            ...plan.accounts.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChoose={(id) => set(`${path}/accountId`, id === '' ? null : id)}
        />
      )}
      <Trouble path={path} />
    </>
  );
}

export function TranchesFields({ path, label }: { path: string; label: string }): VNode {
  const session = useSession();
  const plan = usePlan();
  const say = useSay();
  const tranches = (getAt(plan, path) ?? []) as readonly Tranche[];
  const prefix = say.look.money.before.trim() || undefined;
  const several = tranches.length > 1;
  const add = (): void => {
    const place: Tranche = { id: session.newId(), amount: '0', when: { by: 'week', week: 0 } };
    session.endStep();
    session.run(addPlace, { listPath: path, index: tranches.length, place }, path);
    session.endStep();
  };
  return (
    <>
      {tranches.map((tranche, index) => {
        const name = several ? `${label}, part ${index + 1}` : label;
        const own = `${path}/${tranche.id}`;
        return (
          <div key={tranche.id}>
            <FieldFor path={`${own}/amount`} label={name} kind="amount" step="sum" prefix={prefix} />
            <Fold
              label={several ? `Part ${index + 1} comes` : 'It comes'}
              value={whenWords(tranche.when, plan, say)}
            >
              <WhenFields path={`${own}/when`} label="When" />
              <Keys>
                <Button
                  kind="quiet"
                  label={`Take out ${name}`}
                  onPress={() => session.run(removePlace, { path: own }, path)}
                >
                  Take out
                </Button>
              </Keys>
            </Fold>
          </div>
        );
      })}
      <Trouble path={path} />
      <Button kind="quiet" onPress={add}>
        {tranches.length === 0 ? `Add ${label.toLowerCase()}` : 'More of it later'}
      </Button>
    </>
  );
}
