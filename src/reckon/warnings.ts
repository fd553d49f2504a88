// What a careful reader of the results should know beside them, one sentence each, on standard error.
// Worked example: "1,204 units of demand find an empty shelf, the first in week 15."
import { roundsPastEnd } from '../domain/offers/index.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Results } from '../domain/results.ts';
import { emptyShelfRisks } from '../domain/rollout/flags.ts';
import type { Say } from '../domain/verdicts/say.ts';
import { sayFor } from './say.ts';

export function warningsOf(plan: Plan, results: Results): string[] {
  const { reading, pass, minorDigits, compiled } = results;
  const say = sayFor({ currency: results.currency, minorDigits, startDay: compiled.startDay });
  const warnings: string[] = [];
  if (plan.business.openingCashAmount === null) {
    warnings.push('opening cash is not known: the pass starts from zero and no cash verdict is given.');
  }
  if (reading.floorNotSeen) {
    warnings.push(`the lowest cash falls in the last four of ${pass.weeks} weeks: the floor is not seen.`);
  }
  if (reading.firstLostWeek !== null) {
    const first = say.week(reading.firstLostWeek);
    warnings.push(
      `${say.count(reading.lostUnits)} units of demand find an empty shelf, the first in ${first}.`,
    );
  }
  if (reading.mostStockWeeks !== null && reading.mostStockWeeks > 26) {
    warnings.push(
      `stock of ours would last ${say.number(reading.mostStockWeeks)} weeks at its peak, more than 26.`,
    );
  }
  pass.unplacedUnits.forEach((units, i) => {
    if (units === 0) return;
    const asked = `${say.count(units)} units, counted again in each week that asks for them`;
    warnings.push(`orders for ${plan.items[i]?.name} found no capacity within reach: ${asked}.`);
  });
  for (const { label } of plan.offers.length === 0 ? [] : roundsPastEnd(plan))
    warnings.push(`the later round “${label}” comes after the plan’s last week: it counts nowhere.`);
  warnings.push(...emptyShelves(plan, say));
  if (plan.business.overheads.length === 0)
    warnings.push('rent and wages are not in this plan: no overhead is entered.');
  return warnings;
}

/** Doors whose fill does not last until a reorder is there. */
function emptyShelves(plan: Plan, say: Say): string[] {
  return emptyShelfRisks(plan).flatMap(({ accountId, itemId, fillUnits, neededUnits }) => {
    // A product of binary fractions: 15.299999999999999 is 15.3, and 63.00000000000001 is no more than 63.
    const needed = Number(neededUnits.toFixed(6));
    if (fillUnits >= needed) return [];
    const account = plan.accounts.find(({ id }) => id === accountId)?.name;
    const item = plan.items.find(({ id }) => id === itemId)?.name;
    return [
      `${account}: a door is filled with ${say.count(fillUnits)} of ${item} and sells ${say.number(needed)} before ` +
        'a reorder arrives; single shelves run empty where the pooled count does not show it.',
    ];
  });
}
