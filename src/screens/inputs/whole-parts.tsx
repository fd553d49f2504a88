// Whole chains and products: added as a copy of the last one, since most of their terms are alike, and taken out again.
// Worked example: "Add a chain like Corner" makes "Corner, copy" with Corner's terms, openings and notes of defaults.
import type { VNode } from 'preact';
import { addAccount, removeAccount } from '../../app/commands/accounts.ts';
import { addItem, removeItem } from '../../app/commands/items.ts';
import type { BasisNote, Plan } from '../../domain/plan/index.ts';
import { Button } from '../../widgets/index.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { blankAccount } from './blank-account.ts';
import { Trouble } from './fields.tsx';

const NAME_MOST = 110;

export function AddChain(): VNode {
  const session = useSession();
  const plan = usePlan();
  const last = plan.accounts.at(-1);
  const [item] = plan.items;
  const add = () => {
    const id = session.newId();
    const account = last
      ? { ...last, id, name: `${last.name.slice(0, NAME_MOST)}, copy` }
      : item && blankAccount({ id, itemId: item.id, horizonWeeks: plan.horizonWeeks });
    if (!account) return;
    const notes = last ? notesUnder(plan, `accounts/${last.id}`, `accounts/${id}`) : [];
    session.run(addAccount, { account, notes }, 'accounts');
    session.endStep();
  };
  return (
    <div class="ff-inputs-add">
      <Button onPress={add}>{last ? `Add a chain like ${last.name}` : 'Add a chain'}</Button>
      <Trouble path="accounts" />
    </div>
  );
}

export function AddProduct(): VNode {
  const session = useSession();
  const plan = usePlan();
  const last = plan.items.at(-1);
  const add = () => {
    if (!last) return;
    const id = session.newId();
    const item = { ...last, id, name: `${last.name.slice(0, NAME_MOST)}, copy` };
    session.run(addItem, { item, notes: notesUnder(plan, `items/${last.id}`, `items/${id}`) }, 'items');
    session.endStep();
  };
  return (
    <div class="ff-inputs-add">
      <Button onPress={add}>Add a product like {last?.name}</Button>
      <p class="ff-least ff-quiet">Then list it at a chain, under “Price and rate of sale”.</p>
      <Trouble path="items" />
    </div>
  );
}

export function TakeOut({ of, id, name }: { of: 'chain' | 'product'; id: string; name: string }): VNode {
  const session = useSession();
  const takeOut = () => {
    if (of === 'chain') session.run(removeAccount, { accountId: id }, 'accounts');
    else session.run(removeItem, { itemId: id }, 'items');
    session.endStep();
  };
  return (
    <Button kind="quiet" onPress={takeOut}>
      Take out {name}
    </Button>
  );
}

/** The notes about one place, as they would stand at its copy. */
function notesUnder(plan: Plan, from: string, to: string): BasisNote[] {
  return plan.basis
    .filter(({ path }) => path.startsWith(`${from}/`))
    .map((note) => ({ ...note, path: `${to}${note.path.slice(from.length)}` }));
}
