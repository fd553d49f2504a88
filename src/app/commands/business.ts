// Commands about the business around the products: standing overhead, the funding a plan counts on, lines that make them.
// Worked example: addOverhead(plan, { overhead: { id: 'rent', label: 'Rent', amountPerWeek: '350', fromWeek: 0, untilWeek: null } })
import type { BasisNote, Business, Plan } from '../../domain/plan/index.ts';
import type { Outcome } from '../../domain/problems.ts';
import { addPart, append, removePlace, setField } from './field.ts';

type Overhead = Business['overheads'][number];
type Offer = Business['funding'][number];
type Line = Business['lines'][number];
type OnLine = NonNullable<Plan['items'][number]['supply']['line']>;

export function addOverhead(plan: Plan, { overhead }: { overhead: Overhead }): Outcome<Plan> {
  return append(plan, 'business/overheads', overhead);
}

export function removeOverhead(plan: Plan, { overheadId }: { overheadId: string }): Outcome<Plan> {
  return removePlace(plan, { path: `business/overheads/${overheadId}` });
}

export function addFunding(plan: Plan, { funding }: { funding: Offer }): Outcome<Plan> {
  return append(plan, 'business/funding', funding);
}

export function removeFunding(plan: Plan, { fundingId }: { fundingId: string }): Outcome<Plan> {
  return removePlace(plan, { path: `business/funding/${fundingId}` });
}

/** A new production line, and one product made on it from now on. */
export function addLineFor(
  plan: Plan,
  args: { line: Line; itemId: string; place: Omit<OnLine, 'lineId'>; notes: readonly BasisNote[] },
): Outcome<Plan> {
  const { line, itemId, place, notes } = args;
  const added = append(plan, 'business/lines', line);
  if (!added.ok) return added;
  const path = `items/${itemId}/supply/line`;
  return addPart(added.value, { path, value: { ...place, lineId: line.id }, notes });
}

/** What was made on it is made without a line again. */
export function removeLine(plan: Plan, { path }: { path: string }): Outcome<Plan> {
  const lineId = path.slice(path.lastIndexOf('/') + 1);
  const freed = plan.items
    .filter(({ supply }) => supply.line?.lineId === lineId)
    .reduce<Outcome<Plan>>(
      (before, { id }) =>
        before.ok ? setField(before.value, { path: `items/${id}/supply/line`, value: null }) : before,
      { ok: true, value: plan },
    );
  return freed.ok ? removePlace(freed.value, { path }) : freed;
}
