// The parts of an offer with their own fields, and a picker for more. Kinds and their fields come from the model's list, so
// that a new kind needs nothing here. Worked example: a part equity for 60,000, and beside it a royalty of 0.20 a unit.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { removePlace } from '../../app/commands/field.ts';
import { addOfferPart } from '../../app/commands/offers.ts';
import type { FieldNote } from '../../domain/offers/contract.ts';
import { OFFER_KINDS, type OfferPart, offerKindOf } from '../../domain/offers/index.ts';
import type { RivalOffer } from '../../domain/plan/offer-terms.ts';
import { Button, SelectField } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { ChoiceFor, FieldFor, SwitchFor } from '../shared/field-for.tsx';
import { Fold, Keys, useRemoval } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekFor } from '../shared/week-for.tsx';
import { TranchesFields, WhenFields } from './when-fields.tsx';

export function Parts({ offer }: { offer: RivalOffer }): VNode {
  const session = useSession();
  const removal = useRemoval();
  const listPath = `offers/${offer.id}/parts`;
  return (
    <div class="ff-places">
      {offer.parts.map((part) => (
        <OnePart
          key={part.id}
          path={`${listPath}/${part.id}`}
          part={part}
          onRemove={() =>
            removal.remove(offerKindOf(part).label, () =>
              session.run(removePlace, { path: `${listPath}/${part.id}` }, listPath),
            )
          }
        />
      ))}
      {removal.note}
      <Trouble path={listPath} />
      <AnotherPart offer={offer} />
    </div>
  );
}

interface OnePartProps {
  path: string;
  part: OfferPart;
  onRemove: () => void;
}

function OnePart({ path, part, onRemove }: OnePartProps): VNode {
  const { label, meaning, fields } = offerKindOf(part);
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">{label}</legend>
      <p class="ff-least ff-quiet">{meaning}</p>
      {fields.map((field) => (
        <TermField key={field.key} path={`${path}/${field.key}`} field={field} />
      ))}
      <Button kind="quiet" label={`Take out ${label}`} onPress={onRemove}>
        Take out
      </Button>
    </fieldset>
  );
}

/** One input of a kind, by its unit. */
function TermField({ path, field }: { path: string; field: FieldNote }): VNode | null {
  const say = useSay();
  const { key, label, unit, choices = [], orNone = false } = field;
  const prefix = say.look.money.before.trim() || undefined;
  const placeholder = orNone ? 'none' : undefined;
  switch (unit) {
    case 'tranches':
      return <TranchesFields path={path} label={label} />;
    case 'when':
      return <WhenFields path={path} label={label} />;
    case 'share':
      return <FieldFor path={path} label={label} kind="percent" step="margin" placeholder={placeholder} />;
    case 'sum':
      return (
        <FieldFor
          path={path}
          label={label}
          kind="amount"
          step="sum"
          prefix={prefix}
          placeholder={placeholder}
        />
      );
    case 'perUnit':
      return <FieldFor path={path} label={label} kind="amount" step="tag" prefix={prefix} unit="a unit" />;
    case 'times':
      return (
        <FieldFor
          path={path}
          label={label}
          kind="factor"
          step="rate"
          unit="times"
          placeholder={placeholder}
        />
      );
    case 'weeks':
      if (/Week$/.test(key)) return <WeekFor path={path} label={label} placeholder={placeholder} />;
      return (
        <FieldFor path={path} label={label} kind="whole" unit="weeks" step="one" placeholder={placeholder} />
      );
    case 'months':
      return (
        <FieldFor path={path} label={label} kind="whole" unit="months" step="one" placeholder={placeholder} />
      );
    case 'days':
      return (
        <FieldFor path={path} label={label} kind="whole" unit="days" step="days" placeholder={placeholder} />
      );
    case 'switch':
      return <SwitchFor path={path} label={label} />;
    case 'choice':
      return <ChoiceFor path={path} label={label} choices={choices} asList />;
  }
}

/** The picker: what each kind means is said before it is added. */
function AnotherPart({ offer }: { offer: RivalOffer }): VNode {
  const session = useSession();
  const [kind, setKind] = useState<string>(OFFER_KINDS[0]?.kind ?? '');
  const add = (): void => {
    const [partId, trancheId] = [session.newId(), session.newId()];
    const at = `offers/${offer.id}/parts`;
    session.endStep();
    session.run(addOfferPart, { offerId: offer.id, kind, partId, trancheId }, at);
    session.endStep();
  };
  return (
    <Fold label="Another part of this offer">
      <SelectField
        label="Kind"
        value={kind}
        choices={OFFER_KINDS.map((each) => ({ value: each.kind, label: each.label }))}
        onChoose={setKind}
        hint={offerKindOf({ kind }).meaning}
      />
      <Keys>
        <Button onPress={add}>Add to this offer</Button>
      </Keys>
    </Fold>
  );
}
