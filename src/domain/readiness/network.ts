// The critical path method over steps that wait for each other: earliest start and finish forward, latest finish and start
// back, slack between them. Time counts from 0 in any unit (here worked days); steps must not wait in a ring.
// Worked figure: 10 days, then 5, then 3 beside one of 4 after the first: done at 18, the one of 4 has 4 days of slack.

export interface Step {
  id: string;
  /** 0 or more. */
  time: number;
  after: readonly string[];
  /** By when it has to be done, beside what waits for it; null: when the last step is. */
  due?: number | null;
}

export interface StepTimes {
  earliestStart: number;
  earliestFinish: number;
  /** Infinity where nothing asks for it. */
  latestFinish: number;
  latestStart: number;
  slack: number;
}

/** Steps so that each stands after those it waits for. Throws on a ring or an unknown step: rules refuse both. */
export function inOrder<T extends Pick<Step, 'id' | 'after'>>(steps: readonly T[]): T[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const done = new Set<string>();
  const ordered: T[] = [];
  const open = steps.map((step) => ({ step, entered: false })).reverse();
  const inside = new Set<string>();
  for (let next = open.pop(); next; next = open.pop()) {
    const { step, entered } = next;
    if (done.has(step.id)) continue;
    if (entered) {
      inside.delete(step.id);
      done.add(step.id);
      ordered.push(step);
      continue;
    }
    if (inside.has(step.id)) throw new Error(`step "${step.id}" waits for itself`);
    inside.add(step.id);
    open.push({ step, entered: true });
    for (const id of step.after) {
      const before = byId.get(id);
      if (!before) throw new Error(`step "${step.id}" waits for "${id}", which isn't there`);
      if (!done.has(id)) open.push({ step: before, entered: false });
    }
  }
  return ordered;
}

/** When each step finishes at the earliest, in the order of `ordered` (see inOrder). */
export function finishes(ordered: readonly Step[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { id, time, after } of ordered) {
    let start = 0;
    for (const before of after) start = Math.max(start, found.get(before) as number);
    found.set(id, start + time);
  }
  return found;
}

/** Earliest and latest times of every step. With `due` given on none, the last finish is due for all. */
export function timesOf(steps: readonly Step[]): Map<string, StepTimes> {
  const ordered = inOrder(steps);
  const finish = finishes(ordered);
  const end = Math.max(0, ...finish.values());
  const hasDue = steps.some(({ due }) => due !== undefined);
  const latest = new Map(
    ordered.map(({ id, due }) => [id, hasDue ? (due ?? Number.POSITIVE_INFINITY) : end]),
  );
  for (const { id, time, after } of [...ordered].reverse()) {
    const start = (latest.get(id) as number) - time;
    for (const before of after) latest.set(before, Math.min(latest.get(before) as number, start));
  }
  return new Map(
    ordered.map(({ id, time }) => {
      const earliestFinish = finish.get(id) as number;
      const latestFinish = latest.get(id) as number;
      const earliestStart = earliestFinish - time;
      const latestStart = latestFinish - time;
      return [
        id,
        { earliestStart, earliestFinish, latestFinish, latestStart, slack: latestStart - earliestStart },
      ];
    }),
  );
}

/** The longest chain that ends in `last`: first to last, each starting when the one before it ends; steps of no time left out. */
export function chainTo(last: string, steps: readonly Step[], finish: ReadonlyMap<string, number>): string[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const chain: string[] = [];
  for (let at = byId.get(last); at; ) {
    if (at.time > 0) chain.unshift(at.id);
    const ends = (id: string) => finish.get(id) as number;
    const [before] = at.after.filter((id) => ends(id) > 0).sort((x, y) => ends(y) - ends(x));
    at = before === undefined ? undefined : byId.get(before);
  }
  return chain;
}
