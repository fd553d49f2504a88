// Doors week by week as waves, and back. A run of weeks that open as many doors each is one wave, with a last week of fewer
// where one follows; anything else is a wave a week. A wave that is there already keeps its id.
// Worked figure: 45, 45, 45, 45, 20 doors from week 10 are one wave of 200, 45 a week.
import type { Account } from '../plan/index.ts';

export type Wave = Account['waves'][number];

/** Doors that open in each week, weeks without any left out. */
export function doorsByWeek(waves: readonly Wave[]): Map<number, number> {
  const doors = new Map<number, number>();
  for (const wave of waves) {
    const weeks = Math.ceil(wave.doors / wave.doorsPerWeek);
    for (let index = 0; index < weeks; index++) {
      const week = wave.openWeek + index;
      const open = Math.min(wave.doorsPerWeek, wave.doors - index * wave.doorsPerWeek);
      doors.set(week, (doors.get(week) ?? 0) + open);
    }
  }
  return doors;
}

/** The fewest waves that say so, in order of their weeks; ids of `before` are kept where a wave is the same. */
export function wavesOf(doors: ReadonlyMap<number, number>, before: readonly Wave[]): Wave[] {
  const weeks = [...doors.keys()]
    .filter((week) => (doors.get(week) ?? 0) > 0)
    .sort((one, other) => one - other);
  const found: Omit<Wave, 'id'>[] = [];
  for (let at = 0; at < weeks.length; ) {
    const openWeek = weeks[at] ?? 0;
    const doorsPerWeek = doors.get(openWeek) ?? 0;
    const in_ = (index: number) => doors.get(openWeek + index) ?? 0;
    let length = 1;
    while (in_(length) === doorsPerWeek) length++;
    const rest = in_(length);
    const isTail = rest > 0 && rest < doorsPerWeek && in_(length + 1) !== rest;
    found.push({ openWeek, doors: doorsPerWeek * length + (isTail ? rest : 0), doorsPerWeek });
    at += length + (isTail ? 1 : 0);
  }
  const kept = found.map((wave) => before.find((each) => isSame(each, wave)) ?? null);
  const taken = new Set(kept.flatMap((wave) => (wave ? [wave.id] : [])));
  return found.map((wave, index) => kept[index] ?? { id: freeId(wave.openWeek, taken), ...wave });
}

function isSame(one: Wave, other: Omit<Wave, 'id'>): boolean {
  return (
    one.openWeek === other.openWeek && one.doors === other.doors && one.doorsPerWeek === other.doorsPerWeek
  );
}

/** "week-9", or with a number behind it where a wave of that id stays. */
function freeId(week: number, taken: Set<string>): string {
  let id = `week-${week}`;
  for (let count = 2; taken.has(id); count++) id = `week-${week}-${count}`;
  taken.add(id);
  return id;
}
