// Which gate waits for which, through any number of others. Worked figure: artwork after labels, print after artwork: print
// waits for labels.
import type { Gate } from '../plan/index.ts';

/** Whether `id` is `other`, or can only begin when it is done. Ends also where gates wait for each other in a ring. */
export function waitsFor(gates: readonly Gate[], id: string, other: string): boolean {
  const after = new Map(gates.map((gate) => [gate.id, gate.after]));
  const seen = new Set<string>();
  const open = [id];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next === other) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    open.push(...(after.get(next) ?? []));
  }
  return false;
}
