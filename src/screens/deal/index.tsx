// The Deal: does this chain's offer pay back, and how fast must it sell for that? One chain with its curve, figures, terms
// and the other side of the table; from 900 px up to four chains in columns.
// Worked example: at #/p/spring/deal/corner 180 doors at 63,000 down pay back in week 28 of 52.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { useWide } from '../../widgets/index.ts';
import { NoChain } from '../ladder/empty.tsx';
import { isTexts, useKept } from '../shared/kept.ts';
import { Whole } from '../shared/parts.tsx';
import { useSession, useShown } from '../shared/session-context.ts';
import { View } from '../shared/view.tsx';
import { ChainKeys, ChainPicker, ChainsShown } from './chain-keys.tsx';
import { DealColumn } from './column.tsx';
import { SideBySideKey, SideBySideLater } from './side-by-side-later.tsx';
import './deal.css';

/** Columns beside each other at most. */
const COLUMNS_MOST = 4;

export function DealScreen(): VNode {
  const shown = useShown();
  const computed = shown === null || shown.results.deals.length === 0;
  return (
    <View title="Deal" verdict="deal">
      {computed ? <NoChain sentence="No chain yet. Add one to see what its terms cost." /> : <Deals />}
    </View>
  );
}

function Deals(): VNode | null {
  const wide = useWide();
  const shown = useShown();
  const accountId = useAccountId();
  const [also, setAlso] = useKept('chains', isTexts);
  if (shown === null || accountId === null) return null;
  const { plan } = shown;
  const columns = wide ? columnsOf(plan, accountId, also) : [accountId];
  const binding = shown.results.verdicts.deal.accountId;
  const isSaidAbove = (id: string) => plan.accounts.length === 1 || (!wide && id === binding);
  return (
    <Whole older={shown.older}>
      {wide ? (
        <ChainsShown plan={plan} columns={columns} most={COLUMNS_MOST} onChange={setAlso} />
      ) : (
        <ChainPicker plan={plan} accountId={accountId} />
      )}
      <div class="ff-button-row">
        <SideBySideKey />
      </div>
      <SideBySideLater plan={plan} accountId={accountId} />
      <div class={columns.length === 1 ? 'ff-deals ff-deals-one' : 'ff-deals'}>
        {columns.map((id) => (
          <DealColumn key={id} accountId={id} alone={isSaidAbove(id)} />
        ))}
      </div>
      <ChainKeys plan={plan} accountId={accountId} />
    </Whole>
  );
}

/** The chain of the address, else the one the verdict speaks of, else the first. */
function useAccountId(): string | null {
  const route = useSession().route.value;
  const shown = useShown();
  if (shown === null || route.view !== 'deal') return null;
  const computed = shown.results.deals.map((deal) => deal.accountId);
  const wanted = [route.accountId, shown.results.verdicts.deal.accountId, ...computed];
  const ids = shown.plan.accounts.map(({ id }) => id);
  return wanted.find((id) => id !== null && ids.includes(id) && computed.includes(id)) ?? null;
}

/** The chosen chains in plan order, the one of the address always among them. */
function columnsOf(plan: Plan, accountId: string, chosen: readonly string[] | null): string[] {
  const ids = plan.accounts.map(({ id }) => id);
  const wanted = chosen ?? ids;
  const others = ids.filter((id) => id !== accountId && wanted.includes(id)).slice(0, COLUMNS_MOST - 1);
  return ids.filter((id) => id === accountId || others.includes(id));
}
