import fc from 'fast-check';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { planSchema } from '../../src/domain/plan/index.ts';
import { arbitraryPlan } from './arbitrary-plan.ts';
import { differencesOn } from './oracle/compare.ts';
const [n, seed] = [Number(process.argv[2]), Number(process.argv[3])];
const rnd = (a: number, b: number) => fc.integer({ min: a, max: b });
const wide = arbitraryPlan().chain((plan) =>
  fc.tuple(...Array.from({ length: 40 }, () => rnd(0, 1_000_000))).map((r) => {
    let k = 0; const pick = (a: number, b: number) => a + ((r[k++ % 40] ?? 0) % (b - a + 1));
    const p = structuredClone(plan);
    for (const i of p.items) { i.supply.leadWeeks = pick(0, 104) >> pick(0, 5); i.supply.coverWeeks = pick(0, 52) >> pick(0, 4); i.supply.supplierDays = pick(0, 365);
      i.supply.capacitySteps = i.supply.capacitySteps.filter(() => pick(0,1)); }
    for (const a of p.accounts) {
      const L = Math.min(pick(0, 26) >> pick(0, 3), p.horizonWeeks - 1); a.terms.transitWeeks = L;
      a.terms.paymentDays = pick(0, 365); a.terms.latenessDays = pick(0, 365);
      if (a.terms.earlyDiscount) a.terms.earlyDiscount.days = Math.min(a.terms.paymentDays, pick(0, 90));
      for (const w of a.waves) { w.openWeek = Math.max(w.openWeek, L); w.doorsPerWeek = pick(1, 3); w.doors = pick(1, 90); }
      if (a.display) { a.display.buildWeeks = pick(0, 52); a.display.weeks = pick(1, 104); }
      if (a.sale.by === 'guaranteed') a.sale.reviewWeeks = Math.max(1, pick(1, 104) >> pick(0, 4));
      for (const l of a.listings) { l.coverWeeks = pick(0, 52) >> pick(0, 4); }
      if (a.cutWeek !== null) { const first = Math.min(...a.waves.map(w=>w.openWeek)); a.cutWeek = Math.max(a.runningDoors.length || !a.waves.length ? 0 : first + 1, pick(0, p.horizonWeeks + 60)); }
      for (const al of a.allowances) if (al.kind === 'expectedReturns') al.lagWeeks = pick(0, 104) >> pick(0, 4);
    }
    const b = p.business.baseSales; if (b) { b.collectDays = pick(0, 365); b.payDays = pick(0, 365); }
    return p;
  }),
);
let ok = 0;
fc.sample(wide, { numRuns: n, seed }).forEach((p, i) => {
  planSchema.parse(p); const probs = checkRules(p); if (probs.length) console.log(i, probs[0]);
  try { const d = differencesOn(p); if (d.length) console.log(i, d.slice(0, 6)); else ok++; } catch (e) { console.log(i, (e as Error).message); }
});
console.log(seed, 'ok', ok, 'of', n);
