// Readiness in one line for the first screen: what to do next, what is late, what that costs a week. No verdict of its own
// standing: four verdicts say whether the plan pays, this says whether it can come true on its dates.
// Worked figure: "Next: Artwork. 2 late; the opening at Corner comes 3 weeks later, at 1,200 a week."
import type { Plan } from '../plan/index.ts';
import type { Say } from '../verdicts/say.ts';
import type { GateReading, Readiness, SlipCost } from './types.ts';

export interface ReadinessLine {
  /** none: no gates yet; ready: all done; inTime; late: an opening comes later than planned. */
  state: 'none' | 'ready' | 'inTime' | 'late';
  /** The gate to work on next, or null. */
  next: { id: string; name: string; owner: string; start: string } | null;
  lateCount: number;
  /** Weeks the latest opening comes later. */
  slipWeeks: number;
  /** Contribution lost per week of it, in words ("1,200"); null where nothing is late or it isn't known. */
  costPerWeek: string | null;
  sentence: string;
}

/** `cost`: what everything late costs (slipCostsOf().all), or null while it isn't computed. */
export function readinessLine(args: {
  plan: Plan;
  readiness: Readiness;
  cost: SlipCost | null;
  say: Pick<Say, 'money' | 'count'>;
}): ReadinessLine {
  const { plan, readiness, cost, say } = args;
  const { gates, waves, late } = readiness;
  const [nextId] = readiness.next;
  const gate = gates.find(({ id }) => id === nextId);
  const worst = [...waves].sort((x, y) => y.slipWeeks - x.slipWeeks)[0];
  const slipWeeks = worst?.slipWeeks ?? 0;
  const perWeek = slipWeeks > 0 ? (cost?.contributionPerWeek ?? null) : null;
  const costPerWeek = perWeek === null ? null : say.money(perWeek);
  const next = gate && {
    id: gate.id,
    name: gate.name,
    owner: gate.owner,
    start: gate.start ?? readiness.today,
  };
  const state = stateOf(plan, gates, slipWeeks);
  const parts = {
    none: 'Nothing to get ready is written down yet.',
    ready: 'Everything is ready.',
    inTime: `${nextWords(gate)}Nothing is late.`,
    late: `${nextWords(gate)}${lateWords(late.length, say)}${worst?.name} comes ${weekCount(slipWeeks, say)} later${
      costPerWeek === null ? '' : `, at ${costPerWeek} a week`
    }.`,
  };
  return {
    state,
    next: next ?? null,
    lateCount: late.length,
    slipWeeks,
    costPerWeek,
    sentence: parts[state],
  };
}

function stateOf(plan: Plan, gates: readonly GateReading[], slipWeeks: number): ReadinessLine['state'] {
  if (plan.readiness.gates.length === 0) return 'none';
  if (gates.every(({ state }) => state === 'done')) return 'ready';
  return slipWeeks > 0 ? 'late' : 'inTime';
}

function nextWords(gate: GateReading | undefined): string {
  if (!gate) return '';
  return gate.owner ? `Next: ${gate.name} (${gate.owner}). ` : `Next: ${gate.name}. `;
}

function lateWords(count: number, say: Pick<Say, 'count'>): string {
  return count === 0 ? '' : `${say.count(count)} late; `;
}

function weekCount(weeks: number, say: Pick<Say, 'count'>): string {
  return weeks === 1 ? '1 week' : `${say.count(weeks)} weeks`;
}
