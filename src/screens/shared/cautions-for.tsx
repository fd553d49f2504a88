// The cautions that apply here, short and in place. Which ones do is the model's to say (domain/cautions.ts).
// Worked example: at a deal in the EU paid after 60 days, the line for perishable food.
import type { VNode } from 'preact';
import { type CautionPlace, cautionsOf } from '../../domain/cautions.ts';
import { Caution } from '../../widgets/index.ts';
import { usePlan } from './session-context.ts';

/** Cautions of one place; of one chain where an account is named. */
export function CautionsFor({
  place,
  accountId,
}: {
  place: CautionPlace;
  accountId: string | null;
}): VNode | null {
  const plan = usePlan();
  const cautions = cautionsOf(plan).filter(
    (each) =>
      each.place === place && (each.accountId === null || accountId === null || each.accountId === accountId),
  );
  if (cautions.length === 0) return null;
  return (
    <div class="ff-cautions">
      {cautions.map((each) => (
        <Caution key={each.id}>{each.sentence}</Caution>
      ))}
    </div>
  );
}
