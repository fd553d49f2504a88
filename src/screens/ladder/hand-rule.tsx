// How one hand prices: a margin of its own selling price, a markup on what it buys at, or a fixed amount. Changing the way
// keeps what it keeps of the first listed product. Worked example: a margin of 42 % becomes a markup of 72.4138 %.
import type { VNode } from 'preact';
import type { HandResult } from '../../domain/ladder/types.ts';
import { type Decimal, ZERO } from '../../domain/money/decimal.ts';
import type { Account, Hand } from '../../domain/plan/index.ts';
import { SelectField } from '../../widgets/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { usePlan, useSession, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

const WAYS = [
  { value: 'margin', label: 'margin of its price' },
  { value: 'markup', label: 'markup on its buying price' },
  { value: 'unit', label: 'fixed amount a unit' },
  { value: 'case', label: 'fixed amount a case' },
];

export function HandRule({ account, hand }: { account: Account; hand: Hand }): VNode {
  const session = useSession();
  const say = useSay();
  const plan = usePlan();
  const now = useHandResult(account, hand.id);
  const path = `accounts/${account.id}/hands/${hand.id}/rule`;
  const { rule } = hand;
  if (rule.by === 'solved') {
    return (
      <p class="ff-quiet">It gives way: it keeps what the other rungs leave. Choose another on the ladder.</p>
    );
  }
  const caseUnits = plan.items.find(({ id }) => id === account.listings[0]?.itemId)?.caseUnits ?? 1;
  return (
    <>
      <SelectField
        label="Prices by"
        value={rule.by === 'fixed' ? rule.per : rule.by}
        choices={WAYS}
        onChoose={(way) => {
          session.endStep();
          session.setField(path, ruleBy(way, now, caseUnits));
          session.endStep();
        }}
      />
      {rule.by === 'fixed' ? (
        <FieldFor path={`${path}/amount`} label="Keeps" kind="amount" step="sum" unit={`a ${rule.per}`} />
      ) : (
        <FieldFor
          path={`${path}/rate`}
          label={rule.by === 'margin' ? 'Margin' : 'Markup'}
          kind="percent"
          step="margin"
          hint={now && readBack(rule.by, now)}
        />
      )}
    </>
  );

  function readBack(by: 'margin' | 'markup', { marginRate, markupRate }: HandResult): string {
    if (by === 'markup') return `a margin of ${say.percent(marginRate)} of its price`;
    return markupRate === null ? '' : `a markup of ${say.percent(markupRate)} on what it buys at`;
  }
}

function useHandResult(account: Account, handId: string): HandResult | null {
  const shown = useShown();
  const ladder = shown?.results.ladders.find(({ accountId }) => accountId === account.id);
  return ladder?.hands.find(({ id }) => id === handId) ?? null;
}

/** The other way of saying what it keeps now. */
function ruleBy(way: string, now: HandResult | null, caseUnits: number): Hand['rule'] {
  const text = (value: Decimal | null | undefined, places: number): string =>
    (value ?? ZERO).toDecimalPlaces(places).toFixed();
  if (way === 'margin') return { by: 'margin', rate: text(now?.marginRate, 6) };
  if (way === 'markup') return { by: 'markup', rate: text(now?.markupRate, 6) };
  if (way === 'case') return { by: 'fixed', amount: text(now?.keeps.times(caseUnits), 4), per: 'case' };
  return { by: 'fixed', amount: text(now?.keeps, 4), per: 'unit' };
}
