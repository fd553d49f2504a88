// Who stands between us and the shelf, in order, and how each of them prices; the last one is the shelf's.
// Worked example: a distributor at 20 % of its price, then the chain at 35 % of its own. Stated the other way, a hand keeps
// what it keeps.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { addHand, removeHand } from '../../app/commands/accounts.ts';
import { dec } from '../../domain/money/decimal.ts';
import type { Account, Hand } from '../../domain/plan/index.ts';
import { Button } from '../../widgets/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { Fold, Keys, useRemoval } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { HandRule } from './hand-rule.tsx';
import { PlaceKeys } from './place-keys.tsx';

export function HandsEditor({ accountId }: { accountId: string }): VNode | null {
  const session = useSession();
  const say = useSay();
  const account = usePlan().accounts.find(({ id }) => id === accountId);
  const [added, setAdded] = useState<string | null>(null);
  const removal = useRemoval();
  if (!account) return null;
  const listPath = `accounts/${accountId}/hands`;
  const last = account.hands.length - 1;
  const add = (): void => {
    const id = session.newId();
    const hand: Hand = { id, name: 'New hand', rule: { by: 'margin', rate: '0' }, requiredMarginRate: null };
    session.endStep();
    session.run(addHand, { accountId, hand, index: last }, listPath);
    session.endStep();
    setAdded(id);
  };
  return (
    <div>
      {account.hands.map((hand, index) => (
        <Fold key={hand.id} label={hand.name} value={ruleWords(hand, say)} open={hand.id === added}>
          <FieldFor path={`${listPath}/${hand.id}/name`} label="Called" kind="text" />
          <HandRule account={account} hand={hand} />
          <FieldFor
            path={`${listPath}/${hand.id}/requiredMarginRate`}
            label="Margin it says it needs"
            kind="percent"
            placeholder="none said"
            hint="Empty when it said nothing. Below it the ladder fails."
          />
          <PlaceKeys
            path={`${listPath}/${hand.id}`}
            name={hand.name}
            order={{ index, count: account.hands.length }}
            kept={whyKept(account, hand)}
            onRemove={() =>
              removal.remove(hand.name, () =>
                session.run(removeHand, { accountId, handId: hand.id }, listPath),
              )
            }
          />
        </Fold>
      ))}
      {removal.note}
      <Keys>
        <Button onPress={add}>Add a hand between</Button>
      </Keys>
    </div>
  );
}

function whyKept(account: Account, hand: Hand): string | undefined {
  if (account.hands.length === 1) return 'A shelf has at least one hand.';
  return hand.rule.by === 'solved' ? 'It gives way: let another rung give way first.' : undefined;
}

function ruleWords({ rule }: Hand, say: ScreenSay): string {
  if (rule.by === 'margin') return `margin ${say.percent(dec(rule.rate))}`;
  if (rule.by === 'markup') return `markup ${say.percent(dec(rule.rate))}`;
  if (rule.by === 'fixed') return `${say.sum(rule.amount)} a ${rule.per}`;
  return 'gives way';
}
