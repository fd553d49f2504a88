// The example plans that come with the app. They are files of today's format, held sound by tests/worked/demo.test.ts, so
// that the first screen needn't wait for what judges a plan; one of another format is a bug of ours.
// An example is kept on the device from its first edit on, so opening one writes nothing.
import type { Plan } from '../domain/plan/index.ts';
import { FORMAT_VERSION, planOfEnvelope } from '../plan-format/index.ts';
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
  const inside = planOfEnvelope(JSON.parse(example.text));
  const plan = inside.ok ? (inside.value as Plan) : null;
  if (plan?.version !== FORMAT_VERSION || plan.id !== example.id) {
    throw new Error(`the example "${example.id}" is no plan of that id in format ${FORMAT_VERSION}`);
  }
  read.set(example, plan);
  return plan;
}
