// How far we would go on each term, and the order of what we would rather give, first to last. A limit that can't be is
// refused in words; an empty one is none. Worked example: slotting at most 300, and doors given before margin.
import type { VNode } from 'preact';
import { moveInOrder, orderOf, setLimit } from '../../app/commands/talks.ts';
import { termsFrom } from '../../domain/talks/index.ts';
import type { Term } from '../../domain/talks/types.ts';
import { AmountField } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { KIND_OF, unitText, valueText } from './term-words.ts';
import { useTyped } from './use-typed.ts';

export function Limits({ model }: { model: TalksModel }): VNode {
  const session = useSession();
  const { plan, account, terms } = model;
  const order = orderOf(plan, account);
  const move = (term: string, by: 1 | -1): void => {
    session.endStep();
    session.run(moveInOrder, { accountId: account.id, term, by }, 'talks/order');
    session.endStep();
  };
  return (
    <ol class="ff-talks-limits">
      {order.map((name, index) => {
        const term = terms.find((each) => each.name === name);
        return term === undefined ? null : (
          <Limit
            key={name}
            model={model}
            term={term}
            onUp={index === 0 ? null : () => move(name, -1)}
            onDown={index === order.length - 1 ? null : () => move(name, 1)}
          />
        );
      })}
    </ol>
  );
}

interface LimitProps {
  model: TalksModel;
  term: Term;
  onUp: (() => void) | null;
  onDown: (() => void) | null;
}

function Limit({ model, term, onUp, onDown }: LimitProps): VNode {
  const session = useSession();
  const say = useSay();
  const { account } = model;
  const field = useTyped({
    label: `${term.label}, limit`,
    kind: KIND_OF[term.unit],
    read: () => {
      const table = session.plan.value?.accounts.find(({ id }) => id === account.id)?.table;
      return termsFrom(table?.limits ?? [])[term.name] ?? null;
    },
    put: (value) => {
      const args = { accountId: account.id, term: term.name, value: value === null ? null : Number(value) };
      const possible = session.plan.value === null ? null : setLimit(session.plan.value, args);
      if (possible !== null && !possible.ok) return possible.problems;
      session.run(setLimit, args, `talks/limit/${term.name}`);
      return [];
    },
    mayBeEmpty: true,
  });
  const assumed = term.assumed === null ? '' : ` (${term.assumed})`;
  return (
    <li class="ff-talks-limit">
      <AmountField
        label={term.label}
        value={field.text}
        suffix={unitText(term, say)}
        placeholder="no limit"
        hint={`Now ${valueText(term, term.value, say)}${assumed}`}
        problem={field.problem}
        onInput={field.onInput}
        onCommit={field.onCommit}
      />
      <span class="ff-talks-order">
        <OrderKey label={`${term.label}, rather give`} up onPress={onUp} />
        <OrderKey label={`${term.label}, rather keep`} up={false} onPress={onDown} />
      </span>
    </li>
  );
}

function OrderKey({
  label,
  up,
  onPress,
}: {
  label: string;
  up: boolean;
  onPress: (() => void) | null;
}): VNode {
  return (
    <button
      type="button"
      class="ff-step"
      aria-label={label}
      disabled={onPress === null}
      onClick={() => onPress?.()}
    >
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={up ? 'M3 10l5-5 5 5' : 'M3 6l5 5 5-5'} />
      </svg>
    </button>
  );
}
