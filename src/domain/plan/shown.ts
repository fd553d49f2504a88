// How a value that came is named in a problem's sentence: short, on one line, and never a whole object.
// Worked examples: 1.2 is shown as 1.2, "lots" as "lots" in its quotes, {"by":"margin"} as "an object", a missing
// field as "nothing".

const LENGTH_MOST = 80;

/** The value as text of at most 80 characters. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  if (typeof value === 'string' || typeof value === 'boolean' || value === null) {
    return shortened(JSON.stringify(value));
  }
  return shortened(String(value));
}

/** Text cut to 80 characters, the cut marked. */
export function shortened(text: string): string {
  if (text.length <= LENGTH_MOST) return text;
  const cut = text.slice(0, LENGTH_MOST - 1);
  return `${/[\uD800-\uDBFF]$/.test(cut) ? cut.slice(0, -1) : cut}…`;
}
