// The address of the page that takes a table, from where its values are typed one by one.
// Worked example: from the season of a product in the plan "spring" it is '#/p/spring/bulk/season'.
import { hashOf } from '../../app/route.ts';
import type { BulkTable } from '../../domain/bulk/types.ts';
import { usePlan } from '../shared/session-context.ts';

export function useBulkHash(): (table: BulkTable) => string {
  const { id } = usePlan();
  return (table) => hashOf({ view: 'bulk', planId: id, table, sheet: null });
}
