// Commands about the business around the products: standing overhead, and the funding a plan counts on.
// Worked example: addOverhead(plan, { overhead: { id: 'rent', label: 'Rent', amountPerWeek: '350', fromWeek: 0, untilWeek: null } })
import type { Business, Plan } from '../../domain/plan/index.ts';
import type { Outcome } from '../../domain/problems.ts';
import { append, removePlace } from './field.ts';

type Overhead = Business['overheads'][number];
type Offer = Business['funding'][number];

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
