import fc from 'fast-check';
import { arbitraryPlan, PLAN_SEED } from './arbitrary-plan.ts';
import { differencesOn } from './oracle/compare.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { planSchema } from '../../src/domain/plan/index.ts';
const n = Number(process.argv[2] ?? 60), seed = Number(process.argv[3] ?? PLAN_SEED);
const plans = fc.sample(arbitraryPlan(), { numRuns: n, seed });
const tally = new Map<string, number>(); let ok = 0, bad = 0;
plans.forEach((p, i) => {
  const probs = checkRules(p); if (probs.length) console.log(i, 'RULES', probs[0]);
  planSchema.parse(p);
  try { const d = differencesOn(p); if (d.length === 0) ok++; else { bad++; const wk = d[0]!.split(',')[0]; const key = d.filter(x=>x.startsWith(wk+',')).map(x=>x.split(': ')[0]!.replace(/^.*?, /,'')).filter(x=>!/retained|cash|low/.test(x)).join(' | ').replace(/item\d|account\d/g,'#');
    tally.set(key,(tally.get(key)??0)+1); if (process.argv[4]) console.log(i, d.filter(x=>x.startsWith(wk+',')).join('\n   ')); } }
  catch (e) { bad++; const m='ERR '+(e as Error).message.slice(0,120); tally.set(m,(tally.get(m)??0)+1); if (process.argv[4]) console.log(i, m);}
});
console.log({ ok, bad }); console.log([...tally].sort((a,b)=>b[1]-a[1]).slice(0,25));
