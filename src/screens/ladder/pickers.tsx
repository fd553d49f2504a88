// Which chain's shelf, and which product on it; nothing is asked where there is only one. The verdict above speaks of the
// plan's worst ladder: when that is another one, a link leads there.
import type { VNode } from 'preact';
import { SelectField } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { ladderHash, type ShownLadder } from './place.ts';

export function LadderPickers({ shown }: { shown: ShownLadder }): VNode | null {
  const session = useSession();
  const { plan, account, item, results } = shown;
  const go = (accountId: string, itemId: string | null): void =>
    session.go({ view: 'ladder', planId: plan.id, accountId, itemId, sheet: null });
  const { accountId: worstAccount, itemId: worstItem } = results.verdicts.ladder;
  const elsewhere = worstAccount !== null && (worstAccount !== account.id || worstItem !== item.id);
  if (plan.accounts.length < 2 && account.listings.length < 2) return null;
  return (
    <div class="ff-pickers">
      {plan.accounts.length > 1 && (
        <SelectField
          label="Chain"
          value={account.id}
          choices={plan.accounts.map(({ id, name }) => ({ value: id, label: name }))}
          onChoose={(id) => go(id, null)}
        />
      )}
      {account.listings.length > 1 && (
        <SelectField
          label="Product"
          value={item.id}
          choices={account.listings.map(({ itemId }) => ({ value: itemId, label: nameOf(shown, itemId) }))}
          onChoose={(id) => go(account.id, id)}
        />
      )}
      {elsewhere && worstAccount !== null && (
        <p class="ff-least">
          The verdict speaks of the worst ladder:{' '}
          <a class="ff-link" href={ladderHash(plan.id, worstAccount, worstItem ?? item.id)}>
            {nameOf(shown, worstItem ?? '')} at {plan.accounts.find(({ id }) => id === worstAccount)?.name}
          </a>
        </p>
      )}
    </div>
  );
}

function nameOf({ plan }: ShownLadder, itemId: string): string {
  return plan.items.find(({ id }) => id === itemId)?.name ?? '';
}
