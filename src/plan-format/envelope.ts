// What a plan file is: one JSON object that says it is a plan file, and the plan. The format version stands inside the
// plan, and only there, so that no second number can disagree with it.
// Worked example: {"format": "firstfill-plan", "plan": {"version": 1, "id": "spring", "name": "Spring tea", ...}}
import type { Plan } from '../domain/plan/index.ts';
import { shown } from '../domain/plan/shown.ts';
import { type Outcome, type Problem, trouble } from '../domain/problems.ts';
import { pathText } from './path-text.ts';
import type { PlanFile } from './refusal.ts';

export const FORMAT_NAME = 'firstfill-plan';

/** Longest text taken in, in characters; far above any plan the limits of the schema allow. */
export const FILE_CHARACTERS_MOST = 20_000_000;

/** Fields beside the plan that are named, when there are more. */
const NAMED_MOST = 50;

const ENVELOPE_EXPECTED = `an object of two fields: "format", which is "${FORMAT_NAME}", and "plan"`;

/** The text of a plan file; reading it back gives the same plan. */
export function planText(plan: Plan): string {
  return envelopeText(plan);
}

/** A file around anything that was kept as a plan, readable here or not, so that nothing is lost. */
export function rawPlanFile(raw: unknown, name: string): PlanFile {
  return { name: fileNameOf(name), text: envelopeText(raw) };
}

export function planFile(plan: Plan): PlanFile {
  return { name: fileNameOf(plan.name), text: planText(plan) };
}

/** What stands inside the envelope, not yet checked. */
export function planOfEnvelope(raw: unknown): Outcome<unknown> {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return trouble({ code: 'not-a-plan', path: '', got: shown(raw), expected: ENVELOPE_EXPECTED });
  }
  const { format, plan, ...others } = raw as Record<string, unknown>;
  if (format === undefined && 'version' in raw && 'items' in raw) {
    const got = 'a plan without the object around it';
    const expected = `{"format": "${FORMAT_NAME}", "plan": { ... }} with that plan inside`;
    return trouble({ code: 'not-a-plan', path: '', got, expected });
  }
  if (format !== FORMAT_NAME) {
    const got = format === undefined ? 'no field "format"' : `"format" ${shown(format)}`;
    return trouble({ code: 'not-a-plan', path: '', got, expected: ENVELOPE_EXPECTED });
  }
  if (plan === undefined) {
    return trouble({ code: 'not-a-plan', path: '', got: 'no field "plan"', expected: ENVELOPE_EXPECTED });
  }
  const unknown = Object.entries(others)
    .slice(0, NAMED_MOST)
    .map(([key, value]) => unknownField(key, value));
  return unknown.length > 0 ? trouble(...unknown) : { ok: true, value: plan };
}

function unknownField(key: string, value: unknown): Problem {
  const expected = 'only the fields format and plan around the plan';
  return { code: 'field-unknown', path: pathText(key), got: shown(value), expected };
}

function envelopeText(plan: unknown): string {
  return `${JSON.stringify({ format: FORMAT_NAME, plan }, null, 2)}\n`;
}

/** "Spring tea, 60 doors" is kept as Spring-tea-60-doors.firstfill.json. */
function fileNameOf(name: string): string {
  const stem = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'plan' : stem}.firstfill.json`;
}
