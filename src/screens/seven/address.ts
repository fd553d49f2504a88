// The address at which a plan's seven numbers are typed over: the screen of the seven numbers, with the plan in place of
// a sheet. Worked example: plan "spring" is typed over at #/seven?sheet=edit%3Aspring.
import { hashOf } from '../../app/route.ts';

const EDIT = 'edit:';

export function sevenHash(planId: string): string {
  return hashOf({ view: 'seven', sheet: `${EDIT}${planId}` });
}

/** The plan a seven-number address is about; null for a plan to be. */
export function editedPlan(sheet: string | null): string | null {
  return sheet?.startsWith(EDIT) ? sheet.slice(EDIT.length) : null;
}
