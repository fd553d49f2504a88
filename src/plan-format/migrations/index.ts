// The one straight line from every format ever released to today's. Number n takes a plan of version n to n + 1; it
// lives in a file of its own, 000n-<what>.ts, frozen once released, and is added to the list below, last.
// Worked figure: with the migrations 1 and 2 a plan of version 1 is taken to 2 and then to 3.

import { talks } from './0001-talks.ts';
import { asItGoes } from './0002-as-it-goes.ts';

export interface Migration {
  /** The version it starts from. */
  from: number;
  /** "doors by wave", in a few words. */
  what: string;
  /** Pure; gets a plan object of version `from`, gives one of `from` + 1 (its `version` included). */
  migrate: (plan: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

export const MIGRATIONS: readonly Migration[] = [talks, asItGoes];

/** Today's format version: one more than there are migrations. */
export const FORMAT_VERSION = MIGRATIONS.length + 1;

/** What is wrong with the numbering of a list of migrations, or null: 1, 2, 3 ... without gaps. */
export function numberingFault(migrations: readonly Migration[]): string | null {
  const wrong = migrations.findIndex(({ from }, index) => from !== index + 1);
  if (wrong < 0) return null;
  return `migration ${migrations[wrong]?.from} stands where ${wrong + 1} belongs`;
}

/** Step by step from the plan's version to the newest. A step that gives no next version is a bug, and throws. */
export function migrated(
  plan: Readonly<Record<string, unknown>>,
  version: number,
  migrations: readonly Migration[],
): Readonly<Record<string, unknown>> {
  return migrations.slice(version - 1).reduce((before, { from, what, migrate }) => {
    const after = migrate(before);
    if (after['version'] !== from + 1) {
      throw new Error(`migration ${from} (${what}) gave version ${String(after['version'])}`);
    }
    return after;
  }, plan);
}
