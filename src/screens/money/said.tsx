// What was said of one offer, and when: one tap keeps it as it stands; any of it can be put back, which is one undo step.
// Worked example: "They offer, 14:20: Equity" and a way back to it.
import type { VNode } from 'preact';
import { setOfferParts, stampOffer } from '../../app/commands/offers.ts';
import type { RivalOffer } from '../../domain/plan/offer-terms.ts';
import { Button, ButtonRow } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { momentText } from '../shared/moment.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { termsWords } from './terms-words.ts';

type Said = RivalOffer['log'][number]['said'];

const WHO: Record<Said, string> = { theirs: 'They offer', ours: 'We answer', agreed: 'Agreed' };

export function SaidOf({ offer }: { offer: RivalOffer }): VNode {
  const session = useSession();
  const say = useSay();
  const at = `offers/${offer.id}/log`;
  const stamp = (said: Said): void => {
    const args = { offerId: offer.id, said, id: session.newId(), atSeconds: Math.floor(Date.now() / 1000) };
    session.endStep();
    session.run(stampOffer, args, at);
    session.endStep();
  };
  const back = (parts: RivalOffer['parts']): void => {
    session.endStep();
    session.run(setOfferParts, { offerId: offer.id, parts }, `offers/${offer.id}/parts`);
    session.endStep();
  };
  return (
    <div class="ff-stack">
      <ButtonRow>
        {(Object.keys(WHO) as Said[]).map((said) => (
          <Button
            key={said}
            onPress={() => stamp(said)}
            label={`${WHO[said]}: keep ${offer.name} as it stands`}
          >
            {WHO[said]}
          </Button>
        ))}
      </ButtonRow>
      {offer.log.length === 0 && (
        <p class="ff-quiet">Nothing kept yet. Each key keeps the offer as it stands now, with the time.</p>
      )}
      <ol class="ff-money-log" reversed>
        {[...offer.log].reverse().map(({ id, said, atSeconds, parts }) => (
          <li key={id}>
            <p>
              <span class="ff-label">{WHO[said]}</span>{' '}
              <span class="ff-least ff-quiet">{momentText(atSeconds * 1000)}</span>
            </p>
            <p>{termsWords(parts, say)}</p>
            <Button
              kind="quiet"
              label={`Back to this: ${WHO[said]}, ${momentText(atSeconds * 1000)}`}
              onPress={() => back(parts)}
            >
              Back to this
            </Button>
          </li>
        ))}
      </ol>
      <Trouble path={at} />
    </div>
  );
}
