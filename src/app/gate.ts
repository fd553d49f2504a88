// What judges plans comes in a script of its own, beside the first screen. An example is shown without it; opening an own
// plan waits for it; an edit made before it is there is kept as it was made, and judged in its turn (commit.ts).
// Worked example: "70" typed into doors a moment too early stands in its field, marked as not yet counted; once the gate
// is there the plan has 70 doors and one step to undo.
import { type Gate, isRefused, type Reading, refused } from '../plan-format/index.ts';
import type { Core } from './core.ts';
import { dismiss, notifyRefusal } from './notices.ts';

/** What judges plans, fetched where it isn't there; a refusal where it can't be. */
export async function gateOf(core: Core): Promise<Reading<Gate>> {
  if (core.gate !== null) return { ok: true, value: core.gate };
  try {
    core.gate = await core.deps.loadGate();
    dismiss(core.state.notices, 'refusal part-missing');
    return { ok: true, value: core.gate };
  } catch {
    const sentence =
      'The part of this app that reads and checks plans could not be fetched. Nothing was changed: load the page again, with a network.';
    return refused('part-missing', sentence, null);
  }
}

/** The same; where it can't be had that is said, and null comes back. */
export async function gateOrSay(core: Core): Promise<Gate | null> {
  const gate = await gateOf(core);
  if (gate.ok) return gate.value;
  if (isRefused(gate)) notifyRefusal(core.state.notices, gate.refusal);
  return null;
}
