// From a file's JSON to a plan: envelope, version, migrations, shape, rules - each with its own words when it fails. A
// plan kept in the store comes in at readPlan, without the envelope; a text comes in at text.ts.
// Worked example: a file of version 2 opened by an app of version 1 is a refusal that names both numbers; a file with
// "paymentDays": "soon" is a problem that names the field.
// Whoever reads plans can judge any claim in them: the first screen, which reads none, goes without this part.
import '../domain/promise/sales-odds.ts';
import type { Plan } from '../domain/plan/index.ts';
import { shown } from '../domain/plan/shown.ts';
import { type Outcome, type Problem, trouble } from '../domain/problems.ts';
import { checkPlan } from './check.ts';
import { planOfEnvelope } from './envelope.ts';
import { MIGRATIONS, type Migration, migrated } from './migrations/index.ts';
import { type Reading, refused } from './refusal.ts';

/** What reading needs to know of a format: the app's own is RELEASED; tests bring others. */
export interface Format {
  migrations: readonly Migration[];
  check: (raw: unknown) => Outcome<Plan>;
}

export const RELEASED: Format = { migrations: MIGRATIONS, check: checkPlan };

export interface ReadPlan {
  plan: Plan;
  /** The version it was written in, when that is not today's. */
  migratedFrom: number | null;
}

/** The plan inside a file's JSON, or every problem with it, or a refusal when it is of a newer format. */
export function planOfFile(raw: unknown): Reading<Plan> {
  const plan = planOfEnvelope(raw);
  if (!plan.ok) return plan;
  const read = readKept(plan.value);
  return read.ok ? { ok: true, value: read.value.plan } : read;
}

/** A plan as it was kept, of any version released so far. */
export function readKept(raw: unknown): Reading<ReadPlan> {
  return readPlan(raw, RELEASED);
}

/** A plan as it was kept, of whatever version. The given value is never changed. */
export function readPlan(raw: unknown, format: Format): Reading<ReadPlan> {
  const newest = format.migrations.length + 1;
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return trouble({ code: 'not-a-plan', path: 'plan', got: shown(raw), expected: 'an object, the plan' });
  }
  const plan = raw as Readonly<Record<string, unknown>>;
  const version = Object.hasOwn(plan, 'version') ? plan['version'] : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return trouble(versionProblem(version, newest));
  }
  if (version > newest) return newer(plan, version, newest);
  const current = migratedOrTrouble(plan, version, format);
  const checked = current.ok ? format.check(current.value) : current;
  if (!checked.ok) return checked;
  return { ok: true, value: { plan: checked.value, migratedFrom: version === newest ? null : version } };
}

function versionProblem(version: unknown, newest: number): Problem {
  return {
    code: version === undefined ? 'field-missing' : 'field-invalid',
    path: 'version',
    got: shown(version),
    expected: newest === 1 ? 'the format version 1' : `a format version from 1 to ${newest}`,
  };
}

function newer(plan: Readonly<Record<string, unknown>>, version: number, newest: number): Reading<never> {
  const name = typeof plan['name'] === 'string' ? `The plan ${shown(plan['name'])}` : 'This plan';
  return refused(
    'newer-format',
    `${name} is of format version ${version}; this app reads versions up to ${newest}. ` +
      'Nothing was changed: update the app, or keep the plan as a file.',
    null,
  );
}

/** A migration reads a plan nobody has checked; where an old plan is not whole, that is the file's problem, not a bug. */
function migratedOrTrouble(
  plan: Readonly<Record<string, unknown>>,
  version: number,
  format: Format,
): Outcome<unknown> {
  try {
    return { ok: true, value: migrated(structuredClone(plan), version, format.migrations) };
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const got = `a plan of format version ${version} with parts missing`;
    return trouble({ code: 'not-a-plan', path: '', got, expected: `a whole plan of version ${version}` });
  }
}
