// The address and the view, kept in step. Opening a sheet is a step of the browser's history, so Back closes it; closing
// it by its own button takes that very step back.
// Worked example: from '#/p/spring/cash' openSheet('where') goes to '#/p/spring/cash?sheet=where'; Back returns.
import type { Core } from './core.ts';
import { hashOf, parseRoute, type Route } from './route.ts';

/** The browser's history, as far as it is needed. */
export interface HistoryPort {
  hash: () => string;
  /** Adds an entry; `isSheet` is remembered with it, over reloads too. */
  push: (hash: string, isSheet: boolean) => void;
  replace: (hash: string) => void;
  back: () => void;
  /** Whether the entry we are on was pushed as a sheet. */
  isSheet: () => boolean;
  /** Called when the person goes back, forward, follows a link or edits the address. */
  listen: (tell: () => void) => void;
}

export function go(core: Core, route: Route): void {
  const hash = hashOf(route);
  if (hash === core.deps.history.hash()) return;
  core.deps.history.push(hash, false);
  core.state.route.value = route;
}

/** Takes the place of the entry we are on: the old address is not to be returned to. */
export function replaceRoute(core: Core, route: Route): void {
  core.deps.history.replace(hashOf(route));
  core.state.route.value = route;
}

/** A sheet opened from within a sheet takes its place. */
export function openSheet(core: Core, name: string): void {
  const route = core.state.route.value;
  if (route.view === 'lost') return;
  const next: Route = { ...route, sheet: name };
  if (route.sheet === null) core.deps.history.push(hashOf(next), true);
  else core.deps.history.replace(hashOf(next));
  core.state.route.value = next;
}

export function closeSheet(core: Core): void {
  const { deps, state } = core;
  const route = state.route.value;
  if (route.sheet === null) return;
  if (deps.history.isSheet()) deps.history.back();
  else replaceRoute(core, { ...route, sheet: null });
}

/** Follows the address from now on. */
export function followAddress(core: Core): void {
  const { history } = core.deps;
  history.listen(() => {
    const next = parseRoute(history.hash());
    if (hashOf(next) !== hashOf(core.state.route.value)) core.state.route.value = next;
  });
}
