// A new offer in one tap: the kind is the key. It opens with its amount waiting to be typed, since somebody is saying it aloud
// just now; name and funder can wait. Worked example: Equity, "100k", tap, "20": an offer with all its figures.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { addOffer } from '../../app/commands/offers.ts';
import { OFFER_KINDS, offerKindOf } from '../../domain/offers/index.ts';
import { Button, ButtonRow, SelectField } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { Keys, Part } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';

/** Heard most, by judgement: they have keys of their own. */
const FIRST = ['equity', 'unitRoyalty', 'termLoan'];

export function NewOffer({ onAdded }: { onAdded: (id: string) => void }): VNode {
  const session = useSession();
  const { offers } = usePlan();
  const others = OFFER_KINDS.filter(({ kind }) => !FIRST.includes(kind));
  const [other, setOther] = useState<string>(others[0]?.kind ?? '');
  const add = (kind: string): void => {
    const taken = offers.map(({ name }) => name);
    const [id, partId, trancheId] = [session.newId(), session.newId(), session.newId()];
    const args = { id, partId, trancheId, kind, name: freeName(offerKindOf({ kind }).label, taken) };
    session.endStep();
    const added = session.run(addOffer, args, 'offers');
    session.endStep();
    if (added) onAdded(id);
  };
  return (
    <Part title={offers.length === 0 ? 'What is offered' : 'Another offer'}>
      <ButtonRow>
        {FIRST.map((kind) => (
          <Button key={kind} onPress={() => add(kind)} label={`New offer: ${offerKindOf({ kind }).label}`}>
            {offerKindOf({ kind }).label}
          </Button>
        ))}
      </ButtonRow>
      <SelectField
        label="Or"
        value={other}
        choices={others.map(({ kind, label }) => ({ value: kind, label }))}
        onChoose={setOther}
        hint={offerKindOf({ kind: other }).meaning}
      />
      <Keys>
        <Button onPress={() => add(other)}>
          New offer: {offerKindOf({ kind: other }).label.toLowerCase()}
        </Button>
      </Keys>
      <Trouble path="offers" />
    </Part>
  );
}

/** "Equity", then "Equity 2": told apart by ear before anybody has named them. */
function freeName(label: string, taken: readonly string[]): string {
  if (!taken.includes(label)) return label;
  let number = 2;
  while (taken.includes(`${label} ${number}`)) number++;
  return `${label} ${number}`;
}
