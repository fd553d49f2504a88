// Chances in words: to 5 %, since nothing that goes into them is known better. Rounding never moves a chance over a line
// that a verdict is drawn at. Worked figure: 0.347 is "35 %", 0.496 with a line at 0.5 "just under 50 %", 0.01 "under 5 %".

const STEPS = 20;

/** `lines`: chances that a word hangs on, which rounding must not pass. `percent` writes a share. */
export function chanceWords(
  chance: number,
  percent: (share: number) => string,
  lines: readonly number[] = [],
): string {
  const rounded = Math.round(chance * STEPS) / STEPS;
  for (const line of lines) {
    if (chance < line && rounded >= line) return `just under ${percent(line)}`;
    if (chance >= line && rounded < line) return percent(line);
  }
  if (rounded === 0) return `under ${percent(1 / STEPS)}`;
  if (rounded === 1 && chance < 1) return `over ${percent(1 - 1 / STEPS)}`;
  return percent(rounded);
}
