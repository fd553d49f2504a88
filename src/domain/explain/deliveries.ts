// How many drops, or pallets, a week's payment for deliveries is for: its price tells it, where it does so without a doubt.
// Worked figure: 42.55 at 4.255 a drop are ten drops.
import { timesPrice } from '../money/integer.ts';
import { kept } from '../money/kept.ts';
import type { Entry } from './sources.ts';
import type { Share, WeekAt } from './splits.ts';
import { exactPrice } from './write.ts';

const WORDS = {
  amountPerDrop: ['drop', 'drops'],
  amountPerPallet: ['pallet', 'pallets'],
} as const;

/** The payment as a line that says its count; the plain line where the count can't be told from the sum. */
export function deliveryShares(at: WeekAt, entry: Entry, field: keyof typeof WORDS): Share[] {
  const { scene, compiled } = at;
  const account = scene.plan.accounts[entry.account];
  const terms = compiled.accounts[entry.account]?.conduct?.delivery;
  if (!account?.delivery || !terms) return [entry];
  const price = field === 'amountPerDrop' ? terms.perDrop : terms.perPallet;
  const count = Math.round((entry.amount * compiled.perMinor) / price);
  const isSure = price >= compiled.perMinor && timesPrice(count, price, compiled.perMinor) === entry.amount;
  if (!isSure) return [entry];
  const [one, many] = WORDS[field];
  const each = exactPrice(scene, kept(account.delivery[field]));
  return [
    {
      amount: entry.amount,
      path: `accounts/${account.id}/delivery/${field}`,
      label: `${scene.say.count(count)} ${count === 1 ? one : many} at ${each}, ${account.name}`,
    },
  ];
}
