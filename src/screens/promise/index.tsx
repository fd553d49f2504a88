// Promise: is the roll-out claimed believable on the evidence there is? Evidence has no place in a plan yet, so the view
// says so, and what evidence will be; it shows what the plan claims, and no figure beyond it.
// Worked example: "This plan claims 350 stores by week 20, selling 6 a store a week."
import type { VNode } from 'preact';
import type { Account } from '../../domain/plan/index.ts';
import { EmptyState } from '../../widgets/index.ts';
import { useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import './promise.css';

export function PromiseScreen(): VNode {
  return (
    <View title="Promise" verdict={null}>
      <EmptyState title="No evidence entered yet, so nothing is said of what this plan promises.">
        <div class="ff-promise-what">
          <p>
            Evidence is what stores have sold: store, week, units. It says which rates of sale are believable,
            and for how many stores.
          </p>
          <p>A friendly word is not a purchase order: doors count by how far they are agreed.</p>
        </div>
      </EmptyState>
      <Claims />
    </View>
  );
}

/** What the plan claims, as it stands in its inputs. */
function Claims(): VNode | null {
  const shown = useShown();
  const say = useSay();
  if (shown === null || shown.plan.accounts.length === 0) return null;
  const { plan } = shown;
  return (
    <section class="ff-stack" aria-labelledby="claims">
      <h2 id="claims">What the plan claims</h2>
      <ul class="ff-claims">
        {plan.accounts.map((account) => (
          <li key={account.id}>
            <p>
              {account.name}: {say.count(doorsOf(account))} stores{byWhen(account, say.week)}.
            </p>
            {account.listings.map((listing) => (
              <p key={listing.itemId} class="ff-least ff-quiet">
                {plan.items.find(({ id }) => id === listing.itemId)?.name}:{' '}
                {say.number(Number(listing.unitsPerStoreWeek))} a store a week
              </p>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

function doorsOf(account: Account): number {
  const sum = (counts: readonly { doors: number }[]) => counts.reduce((all, { doors }) => all + doors, 0);
  return sum(account.waves) + sum(account.runningDoors);
}

/** The week the last wave is through: its first week and as many as its doors a week take. */
function byWhen(account: Account, week: (index: number) => string): string {
  if (account.waves.length === 0) return '';
  const last = Math.max(
    ...account.waves.map(
      ({ openWeek, doors, doorsPerWeek }) => openWeek + Math.ceil(doors / doorsPerWeek) - 1,
    ),
  );
  return ` by ${week(last)}`;
}
