// Addresses: every view and every sheet has one, behind the hash so that the app works from any folder and offline.
// A sheet is part of the address, so Back closes the sheet first.
// Worked example: '#/p/spring/ladder/corner/tea?sheet=where' is the ladder of tea at the account "corner" in the plan
// "spring", with the sheet "where" open.

import { BULK_TABLES, type BulkTable } from '../domain/bulk/types.ts';

/** Views of a plan that need no more than the plan. */
export const PLAN_VIEWS = [
  'front',
  'cash',
  'promise',
  'roll-out',
  'readiness',
  'run-sheet',
  'numbers',
  'statements',
  'lender',
  'investor',
  'money',
  'inputs',
] as const;
export type PlanView = (typeof PLAN_VIEWS)[number];

export type Route =
  | { view: 'plans' | 'seven'; sheet: string | null }
  | { view: PlanView; planId: string; sheet: string | null }
  | { view: 'ladder'; planId: string; accountId: string | null; itemId: string | null; sheet: string | null }
  | { view: 'deal' | 'table'; planId: string; accountId: string | null; sheet: string | null }
  | { view: 'bulk'; planId: string; table: BulkTable | null; sheet: string | null }
  | { view: 'lost'; hash: string; sheet: null };

/** The route an address names; an address that names none is 'lost', with the address. */
export function parseRoute(hash: string): Route {
  const lost: Route = { view: 'lost', hash, sheet: null };
  const [address = '', query = ''] = hash.replace(/^#/, '').split('?', 2);
  const sheet = new URLSearchParams(query).get('sheet') || null;
  const parts = partsOf(address);
  if (parts === null) return lost;
  const [first, planId, view, accountId = null, itemId = null] = parts;
  if (parts.length === 1 && (first === 'plans' || first === 'seven')) return { view: first, sheet };
  if (first !== 'p' || planId === undefined || view === undefined || parts.length > 5) return lost;
  if (view === 'ladder') return { view, planId, accountId, itemId, sheet };
  if ((view === 'deal' || view === 'table') && itemId === null) return { view, planId, accountId, sheet };
  if (view === 'bulk' && parts.length < 5) return bulkRoute({ planId, named: accountId, sheet }) ?? lost;
  const plain = PLAN_VIEWS.find((each) => each === view);
  return plain && parts.length === 3 ? { view: plain, planId, sheet } : lost;
}

/** A table that nobody knows is no address. */
function bulkRoute(from: { planId: string; named: string | null; sheet: string | null }): Route | null {
  const { planId, named, sheet } = from;
  const table = BULK_TABLES.find((each) => each === named) ?? null;
  return named === null || table !== null ? { view: 'bulk', planId, table, sheet } : null;
}

/** The address of a route, to be put into a link. */
export function hashOf(route: Route): string {
  if (route.view === 'lost') return route.hash;
  const query = route.sheet === null ? '' : `?sheet=${encodeURIComponent(route.sheet)}`;
  return `#/${segmentsOf(route).map(encodeURIComponent).join('/')}${query}`;
}

/** The plan a route is about, or null. */
export function planIdOf(route: Route): string | null {
  return 'planId' in route ? route.planId : null;
}

function segmentsOf(route: Exclude<Route, { view: 'lost' }>): string[] {
  if (!('planId' in route)) return [route.view];
  const head = ['p', route.planId, route.view];
  if (route.view === 'ladder' && route.accountId !== null) {
    return [...head, route.accountId, ...(route.itemId === null ? [] : [route.itemId])];
  }
  if (route.view === 'bulk') return route.table === null ? head : [...head, route.table];
  return 'accountId' in route && route.accountId !== null ? [...head, route.accountId] : head;
}

/** Null where an address is empty or not decodable, as one cut off in the middle of a letter is. */
function partsOf(address: string): string[] | null {
  try {
    const parts = address.replace(/^\//, '').split('/').map(decodeURIComponent);
    return parts.every((part) => part !== '') ? parts : null;
  } catch {
    return null;
  }
}
