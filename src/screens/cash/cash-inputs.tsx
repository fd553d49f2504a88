// What the cash plan rests on, to type over beside it: cash at hand and the buffer, overhead, funding, the opening books.
// Worked example: 36,000 at hand and a buffer of four weeks' outgoings.
import type { VNode } from 'preact';
import { SECTION_TITLES, Section } from '../inputs/section.tsx';
import { sectionWords } from '../inputs/section-words.ts';
import { FieldFor } from '../shared/field-for.tsx';
import type { PlanSection } from '../shared/input-places.ts';
import { Fold } from '../shared/parts.tsx';
import { usePlan, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

const GROUPS: readonly PlanSection[] = ['overhead', 'funding', 'books'];

export function CashInputs(): VNode {
  const plan = usePlan();
  const say = useSay();
  const results = useShown()?.results ?? null;
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
      {GROUPS.map((section) => {
        const place = { of: 'plan', section } as const;
        return (
          <Fold
            key={section}
            label={SECTION_TITLES[section]}
            value={sectionWords(place, { plan, results, say })}
          >
            <Section place={place} />
          </Fold>
        );
      })}
    </div>
  );
}
