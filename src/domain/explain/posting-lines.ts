// Postings of a week as lines: those of one event, account and item are one line; those that gather several causes are
// taken apart. Worked figure: freight out of 62.40 for Corner and Tea is the line "Freight out, Corner, Tea: −62.40".
import type { Posting } from '../rollout/books.ts';
import type { EventName } from '../rollout/events.ts';
import { EVENT_WORDS } from './event-words.ts';
import { postingsIn } from './runs.ts';
import { type Entry, sourceOf, whose } from './sources.ts';
import { type Share, sharesOf, type WeekAt } from './splits.ts';
import type { ExplanationLine } from './types.ts';
import { line, moneyPart, type Scene, typed } from './write.ts';

/** Postings of one week and of wanted events, summed by event, account and item, in the order they first came. */
export function entriesOf(
  journal: readonly Posting[],
  week: number,
  isWanted: (event: EventName) => boolean,
): Entry[] {
  const entries = new Map<string, Entry>();
  for (const posting of postingsIn(journal, week)) {
    if (!isWanted(posting.event)) continue;
    const { event, account, item, amount } = posting;
    const id = `${event} ${account} ${item}`;
    const before = entries.get(id)?.amount ?? 0;
    entries.set(id, { event, account, item, amount: before + amount });
  }
  return [...entries.values()];
}

/** One entry, or the parts it gathers, each with the sign it has in the figure. */
export function entryLines(at: WeekAt, entry: Entry, sign: 1 | -1): ExplanationLine[] {
  const shares = sharesOf(at, entry);
  if (shares === null) return [entryLine(at.scene, entry, sign)];
  const left = shares.reduce((rest, { amount }) => rest - amount, entry.amount);
  const lines = shares
    .filter(({ amount }) => amount !== 0)
    .map((share) => shareLine(at.scene, entry, share, sign));
  if (left === 0) return lines;
  const carried = entryLine(at.scene, { ...entry, amount: left }, sign);
  return [...lines, { ...carried, label: `${carried.label}, carried over` }];
}

export function entryLine(scene: Scene, entry: Entry, sign: 1 | -1): ExplanationLine {
  const [label, reason] = EVENT_WORDS[entry.event];
  const { path, explains, owner } = sourceOf(scene, entry);
  const names = whose(scene, entry);
  const from = { label: names === '' ? label : `${label}, ${names}`, reason, owner, explains };
  const made = moneyPart(scene, sign * entry.amount, from);
  return path === null ? line(made) : typed(scene, path, made);
}

function shareLine(scene: Scene, entry: Entry, share: Share, sign: 1 | -1): ExplanationLine {
  if ('event' in share) return entryLine(scene, share, sign);
  const { owner } = sourceOf(scene, entry);
  const reason = EVENT_WORDS[entry.event][1];
  return typed(
    scene,
    share.path,
    moneyPart(scene, sign * share.amount, { label: share.label, reason, owner }),
  );
}
