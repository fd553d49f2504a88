// Whose money the shelf price is: one band for each owner, from landed cost at the foot to the tax at the top. Bands add
// up to the shelf price exactly. What is passed on down the hands is in nobody's band: the tag is lower for it.
// Worked figure: landed 1.00, ours 1.418, given back 0.052, broker 0.13, the chain 1.7333: shelf 4.3333.

import type { Owner } from '../allowances/contract.ts';
import type { Decimal } from '../money/decimal.ts';
import { gridOf, rateOf } from '../money/grid.ts';
import type { Band, HandResult } from './types.ts';

export function bandsOf(args: {
  landed: Decimal;
  contribution: Decimal;
  givenBack: Decimal;
  sellingCosts: Decimal;
  hands: readonly HandResult[];
  tax: Decimal;
  shelf: Decimal;
}): Band[] {
  const whole = gridOf(args.shelf);
  const bands: Band[] = [];
  let sum = 0;
  const add = (id: string, label: string, owner: Owner | 'tax', amount: Decimal) => {
    const part = gridOf(amount);
    sum += part;
    bands.push({ id, label, owner, amount, shareOfShelf: rateOf({ part, whole }) });
  };
  add('landed', 'Landed cost', 'atRisk', args.landed);
  add('ours', 'Ours', 'ours', args.contribution);
  if (!args.givenBack.isZero()) add('givenBack', 'Given back', 'theirs', args.givenBack);
  if (!args.sellingCosts.isZero())
    add('sellingCosts', 'Freight, broker, other selling', 'between', args.sellingCosts);
  for (const hand of args.hands) add(hand.id, hand.name, hand.owner, hand.keeps);
  if (!args.tax.isZero()) add('tax', 'Tax', 'tax', args.tax);
  if (sum !== whole) throw new Error(`bands come to ${sum}, the shelf price is ${whole} (in 1/10,000)`);
  return bands;
}
