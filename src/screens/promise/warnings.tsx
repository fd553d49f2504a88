// Where the evidence can't carry what is read off it: too few stores, all of one chain, falling sales, accounts whose
// doors count as certain. Worked example: "All stores are of Corner: shoppers of other chains may buy more, or less."
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { addDays } from '../../domain/calendar.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { evidenceOf } from '../../domain/promise/evidence.ts';
import { evidenceWarnings } from '../../domain/promise/warnings.ts';
import { Caution } from '../../widgets/index.ts';
import { today } from '../shared/moment.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';

export function EvidenceWarnings({ plan }: { plan: Plan }): VNode | null {
  const say = useSay();
  const sentences = useMemo(
    () => [...aheadWarnings(plan, today(), say), ...salesWarnings(plan, say), ...standingWarnings(plan, say)],
    [plan, say],
  );
  if (sentences.length === 0) return null;
  return (
    <section class="ff-promise-warnings" aria-label="What the evidence can’t carry">
      {sentences.map((sentence) => (
        <Caution key={sentence}>{sentence}</Caution>
      ))}
    </section>
  );
}

/** Weeks that haven't begun on a day, YYYY-MM-DD, where the person is: a plan can't refuse them, it knows no today. */
export function aheadWarnings({ promise: { scans } }: Plan, day: string, say: ScreenSay): string[] {
  const ahead = scans.flatMap(({ store, firstDate, units }) => {
    const weeks = units.flatMap((sold, week) => (sold === null ? [] : [addDays(firstDate, 7 * week)]));
    const from = weeks.find((week) => week > day);
    return from === undefined ? [] : [`${store}, from ${say.date(from)}`];
  });
  if (ahead.length === 0) return [];
  const named = ahead.slice(0, 3).join('; ');
  const more = ahead.length > 3 ? `; and ${say.count(ahead.length - 3)} more` : '';
  return [
    `Weeks that haven’t begun by today are no evidence, and are counted here as typed: ${named}${more}. Check the first day.`,
  ];
}

/** Of every item that was seen; named where there are several, once for those that the same is said of. */
export function salesWarnings(plan: Plan, say: ScreenSay): string[] {
  const found = evidenceOf(plan);
  const names = new Map<string, string[]>();
  for (const evidence of found) {
    const name = plan.items.find(({ id }) => id === evidence.itemId)?.name ?? '';
    for (const { sentence } of evidenceWarnings(plan, evidence, say))
      names.set(sentence, [...(names.get(sentence) ?? []), name]);
  }
  return [...names].map(([sentence, of]) =>
    found.length === 1 ? sentence : `${of.join('; ')}: ${sentence}`,
  );
}

function standingWarnings({ accounts, promise: { claim } }: Plan, say: ScreenSay): string[] {
  const sure = accounts.filter(({ standing, waves }) => standing === null && waves.length > 0);
  if (claim === null || sure.length === 0) return [];
  const all = accounts.filter(({ waves }) => waves.length > 0).length;
  const which = sure.length === all ? 'Every account' : sure.length === 1 ? (sure[0]?.name ?? '') : '';
  const subject =
    which === '' ? `${say.count(sure.length)} of ${say.count(all)} accounts are` : `${which} is`;
  return [
    `${subject} taken as planned: those doors count as certain until it is said how far they are agreed.`,
  ];
}
