// The claim placed: its chance, the ruler, what would have to be true, and multiples of what runs today; or what is
// missing for that. Worked example: "15 % · 1,900 doors by 1 Oct 2027 · 4.2 times today's 450".
import type { VNode } from 'preact';
import { Caution, EmptyState } from '../../widgets/index.ts';
import { Part } from '../ladder/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { MustBeTrue } from './must-be-true.tsx';
import { placedOf } from './placed.ts';
import { PromiseRuler } from './ruler.tsx';
import { claimText } from './words.ts';

export function PlacedClaim({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const { plan } = shown;
  const { claim } = plan.promise;
  if (claim === null) {
    return (
      <EmptyState title="No claim yet. Add what was promised: doors, units or revenue, and by when.">
        <p class="ff-least">Then it is placed in what the evidence supports.</p>
      </EmptyState>
    );
  }
  const placed = placedOf(shown, say);
  return (
    <>
      <Part title="The claim in what the evidence supports">
        <p>
          <strong>{claimText(plan, claim, say)}</strong>
          {claim.who !== '' && <span class="ff-quiet">, so {claim.who}</span>}
        </p>
        {placed !== null && (
          <>
            <PromiseRuler figures={placed.ruler} />
            <p>{placed.sentence}</p>
          </>
        )}
      </Part>
      {placed !== null && (
        <Part title="What would have to be true">
          <MustBeTrue rows={placed.rows} />
          <p class="ff-least ff-quiet">Each alone, with all else as the evidence has it.</p>
        </Part>
      )}
      {placed !== null && placed.warnings.length > 0 && (
        <div class="ff-promise-warnings">
          {placed.warnings.map((sentence) => (
            <Caution key={sentence}>{sentence}</Caution>
          ))}
        </div>
      )}
    </>
  );
}
