// scratch
import { ladderFor } from '../../src/domain/ladder/ladder.ts';
import { aPlan, anAccount, anItem, aListing, aHand } from './builders.ts';
const items = ['a','b','c'].map((id) => anItem({ id, name: id, lossRate: '0.025', costLines: [
 { id: 'goods', label: 'Goods', family: 'goods', rule: { by: 'unit', amount: '1.2' } },
 { id: 'fr', label: 'Freight', family: 'freight', rule: { by: 'shipment', amount: '1800' } },
 { id: 'duty', label: 'Duty', family: 'duty', rule: { by: 'share', rate: '0.05', of: ['goods'] } }]}));
const accounts = Array.from({length: 12}, (_, i) => anAccount({ id: `acc${i}`, name: `A${i}`,
  hands: [aHand({ id: 'dist', name: 'Distributor', rule: { by: 'markup', rate: '0.25' }, requiredMarginRate: '0.2' }), aHand({ requiredMarginRate: '0.35' })],
  pricePoints: { endings: ['0.49','0.99'], listOfPrices: false, move: 'nearest', absorbedBy: 'lastHand' },
  listings: items.map((it, j) => aListing(j === 0 ? { itemId: it.id, list: { by: 'solved' }, shelf: { by: 'price', amount: '4.99' } } : { itemId: it.id, list: { by: 'price', amount: `${2.5 + j * 0.13 + i * 0.01}`.slice(0, 6) } })),
  allowances: [
   { kind: 'offInvoice', id: 'o', rate: '0.05', on: 'list', passedOn: false },
   { kind: 'spoils', id: 's', rate: '0.02' }, { kind: 'coop', id: 'c', rate: '0.03' },
   { kind: 'freightOut', id: 'f', amount: '1.8', per: 'case' }, { kind: 'pickAndPack', id: 'p', amount: '1', per: 'case' },
   { kind: 'broker', id: 'b', rate: '0.05', onFreeGoods: false } ],
  terms: { ...anAccount().terms, earlyDiscount: { rate: '0.02', days: 10, takenShare: '0.8' } } }));
const text = JSON.stringify(aPlan({ items, accounts, shelfTax: { rate: '0.2', shown: 'inPrice' } }));
const run = (plan: ReturnType<typeof aPlan>) => { let n = 0; for (const account of plan.accounts) for (const listing of account.listings) { const item = plan.items.find(({id}) => id === listing.itemId)!; const r = ladderFor({ plan, account, listing, item }); if (!r.ok) throw new Error(JSON.stringify(r.problems)); n += r.value.shelf.toNumber(); } return n; };
const times: number[] = [];
for (let i = 0; i < 2000; i++) { const plan = JSON.parse(text); const t = performance.now(); run(plan); times.push(performance.now() - t); }
times.sort((a, b) => a - b);
console.log('median ms', times[1000]!.toFixed(3), 'min', times[0]!.toFixed(3));
const plan = JSON.parse(text);
const r = ladderFor({ plan, account: plan.accounts[0], listing: plan.accounts[0].listings[0], item: plan.items[0] });
if (process.argv[2]) console.log(JSON.stringify(r, null, 1));
