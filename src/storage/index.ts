// The door of this room: where plans are kept on the device, and how they leave and enter as files. Everything returns
// a value or a refusal in words; nothing here knows what a plan means.
// Worked example: openStore, then listPlans(store), loadPlan(store, id), savePlan(store, {...}).

export { type ChosenFile, downloadFile, fileSharing, readPlanFile } from './files.ts';
export { readMeta, writeMeta } from './meta.ts';
export { DATABASE_NAME, DATABASE_VERSION, openStore, type PlanRecord, type Store } from './open.ts';
export { askPersistent } from './persist.ts';
export {
  deletePlan,
  type LoadedPlan,
  listPlans,
  loadPlan,
  type PlanRow,
  type PlanToSave,
  restorePlan,
  savePlan,
} from './plans.ts';
export { makeSaver, type Saver } from './saver.ts';
export { type News, openTabs, type Tabs, type Telling } from './tabs.ts';
