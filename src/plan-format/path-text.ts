// How a path is written in a sentence when anybody may have made up the names in it: on one line, and cut.
// Worked example: a field named "a", line feed, "b" is written a\nb.
import { shortened } from '../domain/plan/shown.ts';

/** At most 80 characters, on one line. */
export function pathText(path: string): string {
  return shortened(JSON.stringify(path).slice(1, -1));
}
