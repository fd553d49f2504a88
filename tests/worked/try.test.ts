import { test } from 'vitest';
import { aPlan, anAccount, aListing } from '/work/main/tests/support/builders.ts';
import { ladderFor } from '/work/main/src/domain/ladder/ladder.ts';
import { dealFor } from '/work/main/src/domain/deals/index.ts';
test('x', () => {
  const account = anAccount({ slotting: { amount: '250', per: 'door', settled: 'atOpening' }, listings:[aListing({freeCasesPerDoor:1})]});
  const plan = aPlan({ accounts: [account] });
  const l = ladderFor({ plan, account, listing: account.listings[0]!, item: plan.items[0]! });
  if (!l.ok) throw new Error(JSON.stringify(l));
  console.log(JSON.stringify(dealFor({ plan, account, ladders: [l.value], storeStockMeans: [18], minorDigits: 2 }), null, 1));
  const big = { ...plan, accounts: Array.from({length:12}, () => anAccount({ ...account, attritionYearlyRate:'0.1', waves:[{id:'a',openWeek:4,doors:100,doorsPerWeek:10}], listings:[aListing(),aListing(),aListing()], deal:{termWeeks:104,hurdleAmount:'0'} })) };
  const run = () => { for (const a of big.accounts) dealFor({ plan: big, account: a, ladders: [l.value,l.value,l.value], storeStockMeans: [18,18,18], minorDigits: 2 }); };
  for (let i=0;i<300;i++) run();
  const t = performance.now(); for (let i=0;i<200;i++) run(); console.log('ms', (performance.now()-t)/200);
});
