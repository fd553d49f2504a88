// The seven-number room's door: numbers to a plan, a plan back to its numbers, and what may be shown of it meanwhile.
// Worked figure: 4.99 on the tag, 1.10 landed and a 42 % margin are enough for a ladder, not yet for a deal.
export { askingNothing } from './account.ts';
export { SEVEN_PATHS, sevenOf, withSeven } from './back.ts';
export { DEFAULTS, QUICK_THRESHOLDS } from './defaults.ts';
export { type QuickArgs, quickPlan } from './plan.ts';
export { otherRegion, REGIONS, type Region, regionOf } from './regions.ts';
export * from './seven.ts';
