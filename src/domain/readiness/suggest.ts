// Gates that a plan calls for and doesn't have yet: proposed, never put in by themselves. A starter's name in a gate
// ("grocery/itemSetup/corner") says that it was taken; a gate removed is proposed again.
// Worked example: a new chain in grocery brings agreement, item set-up, exchange, routing, samples and a place on the shelf.
import type { Gate, Plan } from '../plan/index.ts';
import {
  type Channel,
  FOR_ALL,
  FOR_CAPACITY,
  FOR_CHANNEL,
  FOR_PRODUCT,
  type ProductKind,
  type Starter,
} from './starter-sets.ts';

export interface SuggestArgs {
  /** The kind of each chain, by account id; chains without one bring nothing. */
  channels: Readonly<Record<string, Channel>>;
  productKinds: readonly ProductKind[];
}

export interface Suggestion {
  gate: Gate;
  /** Why: "Corner", "Food", "Every plan", "Tea, more from week 12". */
  because: string;
}

/** What to take over, in the order of the sets; each waits for those of its set, and of the market's, that are in or proposed. */
export function suggestedGates(plan: Plan, { channels, productKinds }: SuggestArgs): Suggestion[] {
  const market: Gate['holds'] = { by: 'market' };
  const sets: StarterSet[] = [
    { name: 'all', starters: FOR_ALL, holds: market, because: 'Every plan' },
    ...productKinds.map((kind) => ({
      name: kind,
      starters: FOR_PRODUCT[kind],
      holds: market,
      because: KIND_WORDS[kind],
    })),
    ...plan.accounts.flatMap(({ id, name }) => {
      const channel = channels[id];
      if (channel === undefined) return [];
      const holds: Gate['holds'] = { by: 'accounts', accountIds: [id] };
      return [{ name: `${channel}/${id}`, starters: FOR_CHANNEL[channel], holds, because: name }];
    }),
    ...capacitySets(plan),
  ];
  return freshOf(plan, sets);
}

const KIND_WORDS: Readonly<Record<ProductKind, string>> = {
  food: 'Food',
  personalCare: 'Personal care',
  toyChild: 'Toys and goods for children',
  electrical: 'Electrical goods',
  household: 'Household goods',
};

interface StarterSet {
  name: string;
  starters: readonly Starter[];
  holds: Gate['holds'];
  because: string;
}

/** A step that comes in a week holds back the openings from that week on; none, where all open before it. */
function capacitySets(plan: Plan): StarterSet[] {
  const steps = [
    ...plan.items.flatMap(({ id, name, supply }) =>
      supply.capacitySteps.map((step) => ({ ...step, of: `item-${id}`, name })),
    ),
    ...plan.business.lines.flatMap(({ id, name, steps: own }) =>
      own.map((step) => ({ ...step, of: `line-${id}`, name })),
    ),
  ];
  return steps.flatMap(({ id, of, name, fromWeek }) =>
    plan.accounts.flatMap((account): StarterSet[] => {
      const waveIds = account.waves.filter(({ openWeek }) => openWeek >= fromWeek).map((wave) => wave.id);
      if (waveIds.length === 0) return [];
      return [
        {
          name: `capacity/${of}/${id}/${account.id}`,
          starters: FOR_CAPACITY,
          holds: { by: 'waves', accountId: account.id, waveIds },
          because: `${name}, more from week ${fromWeek}`,
        },
      ];
    }),
  );
}

function freshOf(plan: Plan, sets: readonly StarterSet[]): Suggestion[] {
  const idOf = new Map(plan.readiness.gates.flatMap(({ id, starter }) => (starter ? [[starter, id]] : [])));
  const used = new Set(plan.readiness.gates.map(({ id }) => id));
  const known = new Set(idOf.keys());
  for (const { name, starters } of sets) {
    for (const { key } of starters) {
      const starter = `${name}/${key}`;
      if (!known.has(starter)) idOf.set(starter, freeId(key, used));
    }
  }
  return sets.flatMap(({ name, starters, holds, because }) =>
    starters
      .filter(({ key }) => !known.has(`${name}/${key}`))
      .map((starter) => {
        const after = starter.after.flatMap(
          (key) => idOf.get(`${name}/${key}`) ?? idOf.get(`all/${key}`) ?? [],
        );
        const full = `${name}/${starter.key}`;
        return { gate: gateOf(starter, { id: idOf.get(full) ?? starter.key, full, after, holds }), because };
      }),
  );
}

function freeId(key: string, used: Set<string>): string {
  let id = key;
  for (let more = 2; used.has(id); more++) id = `${key}-${more}`;
  used.add(id);
  return id;
}

function gateOf(
  { name, days, before, evidence }: Starter,
  given: { id: string; full: string; after: string[]; holds: Gate['holds'] },
): Gate {
  const [optimistic, likely, pessimistic] = days;
  return {
    id: given.id,
    name,
    leadDays: { optimistic, likely, pessimistic },
    after: given.after,
    owner: '',
    evidence,
    state: { is: 'notStarted' },
    holds: given.holds,
    before,
    starter: given.full.slice(0, 200),
  };
}
