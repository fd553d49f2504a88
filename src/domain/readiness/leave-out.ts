// What leaves the gates when something leaves the plan: a gate goes on without the account or opening that is gone, and
// goes with it where it held back nothing else. Then those after it wait for what it waited for.
// Worked example: labels after artwork after numbers; without artwork, labels come after numbers.
import type { Gate, Plan } from '../plan/index.ts';

export function withoutAccount(plan: Plan, accountId: string): Plan {
  const left = withHolds(plan, (holds) => {
    if (holds.by === 'waves') return holds.accountId === accountId ? null : holds;
    if (holds.by === 'market') return holds;
    const accountIds = holds.accountIds.filter((id) => id !== accountId);
    return accountIds.length === 0 ? null : { ...holds, accountIds };
  });
  const resets = left.readiness.resets.filter((reset) => reset.accountId !== accountId);
  return { ...left, readiness: { ...left.readiness, resets } };
}

export function withoutWave(plan: Plan, gone: { accountId: string; waveId: string }): Plan {
  return withHolds(plan, (holds) => {
    if (holds.by !== 'waves' || holds.accountId !== gone.accountId) return holds;
    const waveIds = holds.waveIds.filter((id) => id !== gone.waveId);
    return waveIds.length === 0 ? null : { ...holds, waveIds };
  });
}

export function withoutGate(plan: Plan, gateId: string): Plan {
  const { gates } = plan.readiness;
  const gone = gates.find(({ id }) => id === gateId);
  if (!gone) return plan;
  const left = gates
    .filter(({ id }) => id !== gateId)
    .map((gate) =>
      gate.after.includes(gateId)
        ? { ...gate, after: [...new Set(gate.after.flatMap((id) => (id === gateId ? gone.after : [id])))] }
        : gate,
    );
  return { ...plan, readiness: { ...plan.readiness, gates: left } };
}

function withHolds(plan: Plan, change: (holds: Gate['holds']) => Gate['holds'] | null): Plan {
  const gone: string[] = [];
  const gates = plan.readiness.gates.map((gate) => {
    const holds = change(gate.holds);
    if (holds === null) gone.push(gate.id);
    return holds === null || holds === gate.holds ? gate : { ...gate, holds };
  });
  return gone.reduce(withoutGate, { ...plan, readiness: { ...plan.readiness, gates } });
}
