// A second door of this room, for texts: looking for where a text stops being JSON is a walk of its own, which only an
// import and the command line need, so the app fetches it when a file is chosen.
// Worked example: '{"format": ' is a problem: got the end at line 1, column 12, expected a value.
import type { Plan } from '../domain/plan/index.ts';
import { pathOfKeys } from '../domain/plan/path.ts';
import { type Outcome, type Problem, trouble } from '../domain/problems.ts';
import { capped, PROBLEMS_MOST } from './check.ts';
import { FILE_CHARACTERS_MOST } from './envelope.ts';
import { walkJson } from './json-text.ts';
import { planOfFile } from './parse.ts';
import { pathText } from './path-text.ts';
import type { Reading } from './refusal.ts';

/** The plan a file holds, or every problem with it, or a refusal when it is of a newer format. */
export function parsePlanText(text: string): Reading<Plan> {
  const raw = parseJson(text.replace(/^\uFEFF/, ''));
  return raw.ok ? planOfFile(raw.value) : raw;
}

function parseJson(text: string): Outcome<unknown> {
  if (text.length > FILE_CHARACTERS_MOST) {
    const got = `a file of ${Math.ceil(text.length / 1_000_000)} million characters`;
    return trouble({
      code: 'not-a-plan',
      path: '',
      got,
      expected: 'a plan file of at most 20 million characters',
    });
  }
  const { fault, repeated } = walkJson(text);
  if (fault) {
    const isEmpty = text.trim() === '';
    const got = isEmpty ? 'an empty file' : `${fault.got} at line ${fault.line}, column ${fault.column}`;
    const expected = isEmpty ? 'a plan file, written in JSON' : fault.expected;
    return trouble({ code: 'not-json', path: '', got, expected });
  }
  const raw: unknown = JSON.parse(text);
  if (repeated.length > 0) return capped(repeatedFields(raw, repeated));
  return { ok: true, value: raw };
}

function repeatedFields(raw: unknown, repeated: readonly string[][]): Problem[] {
  const once = new Map(repeated.map((keys) => [keys.join('/'), keys]));
  return [...once.values()].slice(0, PROBLEMS_MOST).map((keys) => repeatedField(raw, keys));
}

/** The last of two fields of one name would silently win, so neither does. */
function repeatedField(raw: unknown, keys: readonly string[]): Problem {
  const path = pathText(pathOfKeys(raw, keys).replace(/^plan\//, ''));
  return { code: 'id-repeated', path, got: 'the field written twice', expected: 'each field once' };
}
