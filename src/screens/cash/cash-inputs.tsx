// What the cash plan rests on, to type over beside it: cash at hand and the buffer, overhead, funding, the opening books.
// Worked example: 36,000 at hand and a buffer of four weeks' outgoings.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import { SECTION_TITLES, Section } from '../inputs/section.tsx';
import { Fold } from '../ladder/parts.tsx';
import { FieldFor } from '../shared/field-for.tsx';
import type { PlanSection } from '../shared/input-places.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

const GROUPS: readonly { section: PlanSection; words: (plan: Plan, say: ScreenSay) => string }[] = [
  { section: 'overhead', words: overheadWords },
  { section: 'funding', words: ({ business }, say) => countWords(business.funding.length, say) },
  {
    section: 'books',
    words: ({ business: { openingBooks: books } }, say) =>
      countWords(
        books.receivables.length + books.payables.length + books.accrued.length + books.loans.length,
        say,
      ),
  },
];

export function CashInputs(): VNode {
  const plan = usePlan();
  const say = useSay();
  return (
    <div>
      <Section place={{ of: 'plan', section: 'cash' }} />
      <FieldFor
        path="thresholds/cashBufferWeeks"
        label="Buffer, weeks of outgoings"
        kind="whole"
        unit="weeks"
        step="one"
        hint="Below it the verdict is tight."
      />
      {GROUPS.map(({ section, words }) => (
        <Fold key={section} label={SECTION_TITLES[section]} value={words(plan, say)}>
          <Section place={{ of: 'plan', section }} />
        </Fold>
      ))}
    </div>
  );
}

function overheadWords({ business }: Plan, say: ScreenSay): string {
  const { overheads, capital } = business;
  if (overheads.length + capital.length === 0) return 'not in this yet';
  return countWords(overheads.length + capital.length, say);
}

function countWords(count: number, say: ScreenSay): string {
  return count === 0 ? 'none' : `${say.count(count)} ${count === 1 ? 'line' : 'lines'}`;
}
