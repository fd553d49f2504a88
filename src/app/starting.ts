// The start, in an order that can lose nothing: open the store, read the list, find the address, open its plan - and
// only then may anything be written. Without a store everything works in memory, and says so.
// Worked example: a first start with no address shows the first example; a later one shows the address it was left at.
import { effect, untracked } from '@preact/signals';
import { isRefused, type Refusal } from '../plan-format/index.ts';
import { readMeta, writeMeta } from '../storage/index.ts';
import type { Core } from './core.ts';
import { gateOf } from './gate.ts';
import { followResults } from './leans.ts';
import { followAddress, replaceRoute } from './navigation.ts';
import { hear } from './news.ts';
import { dismiss, notify, notifyRefusal } from './notices.ts';
import { openPlan } from './opening.ts';
import { hashOf, parseRoute, planIdOf, type Route } from './route.ts';
import { refreshRows } from './rows.ts';
import { flush, saveAgain } from './saving.ts';
import { keepTyped } from './typing.ts';

export async function start(core: Core): Promise<void> {
  const { deps, state } = core;
  void gateOf(core); // on its way; who needs it waits for it, and says so where it can't be had
  await openTheStore(core);
  await refreshRows(core);
  replaceRoute(core, await firstRoute(core));
  followAddress(core);
  const planId = planIdOf(state.route.value);
  if (planId !== null) await openPlan(core, planId);
  state.phase.value = 'ready';
  followRoute(core);
  followResults(core);
  keepTyped(core);
  deps.tabs.listen((news) => void hear(core, news));
  deps.tabs.tell({ kind: 'opened' });
  deps.device.onHide(() => void flush(core));
  deps.device.onOnlineChange(() => sayOnline(core));
  sayOnline(core);
}

/** Tries again after a refusal; what was held in memory meanwhile is then saved. */
export async function openStoreAgain(core: Core): Promise<boolean> {
  if (!(await openTheStore(core))) return false;
  await saveAgain(core);
  await refreshRows(core);
  const planId = planIdOf(core.state.route.value);
  if (planId !== null) await openPlan(core, planId);
  return true;
}

async function openTheStore(core: Core): Promise<boolean> {
  const opened = await core.deps.openStore((refusal) => say(core, refusal));
  if (opened.ok) {
    core.store = opened.value;
    core.state.storage.value = null;
    return true;
  }
  if (isRefused(opened)) say(core, opened.refusal);
  return false;
}

function say(core: Core, refusal: Refusal): void {
  core.state.storage.value = refusal;
  notifyRefusal(core.state.notices, refusal);
}

async function firstRoute(core: Core): Promise<Route> {
  const { deps, state, store } = core;
  const hash = deps.history.hash();
  if (hash.replace(/^#\/?/, '') !== '') return parseRoute(hash);
  const last = store === null ? null : await readMeta(store, 'route');
  const route = last?.ok && typeof last.value === 'string' ? parseRoute(last.value) : null;
  if (route !== null && route.view !== 'lost') return { ...route, sheet: null };
  const [example] = deps.examples;
  if (state.plans.value.length === 0 && example) return { view: 'front', planId: example.id, sheet: null };
  return { view: 'plans', sheet: null };
}

/** The plan follows the address, and the address is remembered. */
function followRoute(core: Core): void {
  effect(() => {
    const route = core.state.route.value;
    if (core.store !== null && route.view !== 'lost') void writeMeta(core.store, 'route', hashOf(route));
    const planId = planIdOf(route);
    if (planId !== null) untracked(() => void openPlan(core, planId));
  });
}

function sayOnline({ deps, state }: Core): void {
  dismiss(state.notices, 'offline device');
  if (deps.device.isOnline()) return;
  notify(state.notices, 'device', {
    kind: 'offline',
    sentence: 'Offline. Everything works.',
    action: null,
    file: null,
  });
}
