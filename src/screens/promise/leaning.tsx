// How much hangs on one customer, and on one way to the shelf: shares, how concentrated they are, and the plan without the
// largest. Worked example: Corner has 62 % of revenue; without it from week 30 cash falls to −28,000 instead of 1,200.
import type { VNode } from 'preact';
import { dec } from '../../domain/money/decimal.ts';
import { percent } from '../../domain/money/format.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { Concentration } from '../../domain/promise/leaning.ts';
import type { LeaningGroup, LeaningOn, WithoutLargest } from '../../domain/promise/leaning-on.ts';
import { Table, type TableColumn } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { FollowedClaim } from './claim-work.ts';

const columns = (what: string): TableColumn[] => [
  { key: 'what', label: what, kind: 'text' },
  { key: 'revenue', label: 'Revenue', kind: 'number' },
  { key: 'units', label: 'Units', kind: 'number' },
  { key: 'doors', label: 'Doors', kind: 'number' },
];

export function LeaningPart({ followed }: { followed: FollowedClaim }): VNode | null {
  const { work, older } = followed;
  if (!work?.leaning) return null;
  return (
    <Part title="What hangs on one customer">
      <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
        <LeaningTables leaning={work.leaning} />
        {(work.leaning.accounts.without ?? work.leaning.routes.without) !== null && (
          <p class="ff-least ff-quiet">
            It is gone 26 weeks after its first opening, or after the plan’s start (common practice, no
            source); goods are bought on the plan’s forecast until it happens.
          </p>
        )}
        {older && <p class="ff-least">Of before the last change; being run again …</p>}
      </div>
    </Part>
  );
}

function LeaningTables({ leaning }: { leaning: LeaningOn }): VNode {
  const { accounts, routes } = leaning;
  return (
    <>
      <Group group={accounts} what="Account" isMain />
      {routes.names.length > 1 && <Group group={routes} what="Way to the shelf" isMain={false} />}
    </>
  );
}

function Group({ group, what, isMain }: { group: LeaningGroup; what: string; isMain: boolean }): VNode {
  const say = useSay();
  const { names, by, without } = group;
  const order = names.map((_, place) => place);
  order.sort((one, other) => (by.revenue.shares[other] ?? 0) - (by.revenue.shares[one] ?? 0));
  const share = (shares: readonly number[], place: number) => percent(say.look, dec(shares[place] ?? 0));
  return (
    <div class="ff-stack">
      <Table
        caption={`Shares by ${what.toLowerCase()}`}
        captionHidden
        columns={columns(what)}
        rows={order.map((place) => ({
          id: String(place),
          cells: [
            names[place] ?? '',
            share(by.revenue.shares, place),
            share(by.units.shares, place),
            share(by.doors.shares, place),
          ],
        }))}
        compact
      />
      {isMain && by.revenue.largest !== null && (
        <p class="ff-least">{indexWords(by.revenue.index, by.revenue.band, say)}</p>
      )}
      {without !== null && <p>{withoutWords(without, say)}</p>}
    </div>
  );
}

/** Bounds of the bands, from the source that the sentence names. */
const BANDS: Record<Concentration, (say: ScreenSay) => string> = {
  low: (say) => `spread out (below ${say.count(1000)})`,
  moderate: (say) => `moderately concentrated (${say.count(1000)} to ${say.count(1800)})`,
  high: (say) => `highly concentrated (above ${say.count(1800)})`,
};

/** The yardstick is for markets, and says so. */
export function indexWords(index: number, band: Concentration, say: ScreenSay): string {
  return `Shares of revenue, squared and added: ${say.count(Math.round(index))} of ${say.count(10_000)}, ${BANDS[band](say)} by the bands of the US competition authorities (2023), which are for markets.`;
}

function withoutWords({ name, week, plan, there }: WithoutLargest, say: ScreenSay): string {
  const from = `Without ${name} from ${say.week(week)} on`;
  const low = `${say.money(there.lowestCash)} in ${say.week(there.lowestWeek)}`;
  const end = `${say.money(there.endCash)} at the end instead of ${say.money(plan.endCash)}`;
  if (there.lowestCash === plan.lowestCash && there.cashNeed === plan.cashNeed)
    return `${from}: cash is ${end}; its lowest stays ${low}.`;
  const need = `More cash needed: ${needText(there.cashNeed, say)} instead of ${needText(plan.cashNeed, say)}`;
  return `${from}: cash is ${end}, and at its lowest ${low} instead of ${say.money(plan.lowestCash)}. ${need}.`;
}

function needText(cashNeed: number, say: ScreenSay): string {
  return cashNeed === 0 ? 'none' : say.money(cashNeed);
}

/** How the chance hangs on an account; '' while it isn't known. */
export function accountNote(
  plan: Plan,
  of: { without: number; withIt: number } | undefined,
  chance: (share: number) => string,
): string {
  if (of === undefined || plan.promise.claim === null) return '';
  return `Chance of the claim without it: ${chance(of.without)}; if it surely comes: ${chance(of.withIt)}.`;
}
