// Penny profit with all that the retailer keeps: deductions, free goods at its own cost, fixed money over the units.
// Worked figure: penny profit 1.40 + spoils 0.052 + slotting 15,000 over 18,720 units 0.8013 = 2.2533.
import { nearest } from '../deals/curve.ts';
import type { RetailerSide } from '../deals/types.ts';
import { freePerDoor } from '../rollout/cells.ts';
import { dealSums, sumWeeks, YEAR_WEEKS } from './deal-sums.ts';
import { type Place, stepKey } from './place.ts';
import { priceFigure, retailerKey } from './retailer-lines.ts';
import type { ExplanationLine } from './types.ts';
import { comingTo, type Draft, part, type Scene, typed } from './write.ts';

export function allInFigure(scene: Scene, place: Place): Draft {
  const side = place.dealItem.retailer;
  const parts = [
    part(scene, side.pennyProfit, {
      label: 'Penny profit',
      owner: 'theirs',
      explains: retailerKey(place, 'pennyProfit'),
    }),
    ...keptLines(scene, place),
    ...givenLines(scene, place, side),
  ];
  return priceFigure({
    scene,
    place,
    name: 'Penny profit, all in',
    amount: side.pennyProfitAllIn,
    meaning:
      'Penny profit with what the retailer keeps of our allowances, fixed money and free goods, per unit.',
    parts: comingTo(scene, side.pennyProfitAllIn, parts, 'Lines are rounded to 4 decimals'),
    beside: [],
  });
}

/** Deductions the retailer keeps; a credit for goods it sends back is none. */
function keptLines(scene: Scene, place: Place): ExplanationLine[] {
  const { steps, forPass } = place.ladder;
  const isCredit = (stepId: string) =>
    forPass.charges.some(({ id, charge }) => id === stepId && charge.settles === 'returns');
  return steps
    .filter(({ id, stage, owner }) => stage === 'deduction' && owner === 'theirs' && !isCredit(id))
    .map((step) =>
      part(scene, step.amount, {
        label: step.label,
        reason: step.reason,
        owner: 'theirs',
        explains: stepKey(place, step.id),
      }),
    );
}

/** Free goods at its own cost, and fixed money it keeps, over the first year's units. */
function givenLines(scene: Scene, place: Place, side: RetailerSide): ExplanationLine[] {
  const { account, item, listing, dealItem } = place;
  const own = dealItem.firstYearUnits.toNumber();
  const { stores, fixed, items } = dealSums(scene, account);
  const filled = sumWeeks(stores.fillings, YEAR_WEEKS, 0).toNumber();
  const free = freePerDoor(account, listing, item) * filled;
  const units = items.reduce((sum, each) => sum + sumWeeks(each.units, YEAR_WEEKS, 6).toNumber(), 0);
  const theirs = sumWeeks(fixed.theirsByWeek, YEAR_WEEKS, 4).toNumber();
  const lines: ExplanationLine[] = [];
  if (free > 0 && own > 0) {
    const amount = nearest((side.buying.toNumber() * free) / own, 4);
    const base = part(scene, amount, {
      label: 'Free goods, at its own cost',
      reason: `${scene.say.count(free)} free units over ${scene.say.number(dealItem.firstYearUnits)} scanned`,
      owner: 'theirs',
    });
    lines.push(typed(scene, `${place.path}/freeCasesPerDoor`, base));
  }
  if (theirs > 0 && units > 0 && own > 0) {
    lines.push(
      part(scene, nearest(theirs / units, 4), {
        label: 'Fixed money it keeps, per unit',
        owner: 'theirs',
        explains: { of: 'deal', accountId: account.id, figure: 'fixedAmount' },
      }),
    );
  }
  return lines;
}
