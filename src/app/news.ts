// What other tabs tell. A newer format ends all writing here; a newer revision of the open plan is shown, unless this
// tab has edits the store doesn't have yet (then saving finds out, and keeps both); a deleted plan is left.
// Worked example: revision 8 of the open plan comes from another tab while this one shows 7: it is read and shown, and
// undo goes back to 7.
import { FORMAT_VERSION, refused } from '../plan-format/index.ts';
import { loadPlan, type News } from '../storage/index.ts';
import { replacePlan } from './commit.ts';
import type { Core } from './core.ts';
import { gateOf } from './gate.ts';
import { replaceRoute } from './navigation.ts';
import { notifyInfo, notifyRefusal } from './notices.ts';
import { leave } from './opening.ts';
import { planIdOf } from './route.ts';
import { refreshRows } from './rows.ts';
import { isKept } from './saving.ts';
import { shared } from './share.ts';
import { together } from './state.ts';
import { stepped } from './undo.ts';

export async function hear(core: Core, news: News): Promise<void> {
  if (news.format > FORMAT_VERSION) return stopWriting(core, news.format);
  if (news.kind === 'opened') return;
  await refreshRows(core);
  if (core.state.plan.value?.id !== news.id || !isKept(core, news.id)) return;
  if (news.kind === 'deleted') return leaveDeleted(core, news.id);
  if (news.revision > (core.seen.get(news.id) ?? 0)) await reload(core, news.id);
}

function stopWriting(core: Core, format: number): void {
  const { refusal } = refused(
    'store-closed',
    `Another tab runs a newer version of this app (plan format ${format}). Reload this page to go on; until then nothing is saved here.`,
    null,
  );
  core.store?.stopWriting(refusal);
  core.state.storage.value = refusal;
  notifyRefusal(core.state.notices, refusal);
}

async function reload(core: Core, id: string): Promise<void> {
  const { state, store } = core;
  const before = state.plan.value;
  const kept = store === null ? null : await loadPlan(store, id, () => gateOf(core));
  // An edit made while the store answered goes first: its own save will find the two versions.
  if (!kept?.ok || before === null || state.plan.value !== before || !isKept(core, id)) return;
  const { plan, revision } = kept.value;
  core.seen.set(id, revision);
  together(() => {
    state.steps.value = { ...stepped(state.steps.value, before, ''), open: null };
    replacePlan(core, shared(before, plan), revision);
  });
}

function leaveDeleted(core: Core, id: string): void {
  const { state } = core;
  const name = state.plan.value?.name ?? '';
  together(() => {
    leave(core);
    if (planIdOf(state.route.value) === id) replaceRoute(core, { view: 'plans', sheet: null });
    notifyInfo(state.notices, `deleted ${id}`, `"${name}" was deleted in another tab.`);
  });
}
