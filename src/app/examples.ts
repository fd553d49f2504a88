// The example plans that come with the app. They are plan files like any other; one that can't be read is a bug of ours.
// An example is kept on the device from its first edit on, so opening one writes nothing.
import type { Plan } from '../domain/plan/index.ts';
import { sentence } from '../domain/problems.ts';
import { isRefused, planOfFile } from '../plan-format/index.ts';
import type { Example } from './core.ts';

const read = new WeakMap<Example, Plan>();

/** All examples, in the catalogue's order. */
export function examplePlans(examples: readonly Example[]): Plan[] {
  return examples.map(planOf);
}

/** The example whose plan has that id, or null. Example ids and their plans' ids are the same. */
export function exampleOf(examples: readonly Example[], id: string): Plan | null {
  const example = examples.find((each) => each.id === id);
  return example ? planOf(example) : null;
}

function planOf(example: Example): Plan {
  const known = read.get(example);
  if (known) return known;
  const plan = planOfFile(JSON.parse(example.text));
  if (!plan.ok) {
    const why = isRefused(plan) ? plan.refusal.sentence : plan.problems.map(sentence).join(' ');
    throw new Error(`the example "${example.id}" can't be read: ${why}`);
  }
  if (plan.value.id !== example.id)
    throw new Error(`the example "${example.id}" holds the plan "${plan.value.id}"`);
  read.set(example, plan.value);
  return plan.value;
}
