// What happened when, above the cash curve: purchase orders, openings, the first payment.
// Worked example: an order of 6,000 units of honey in week 3 is a carton over week 3.
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import type { Lane, LaneMark } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function lanesOf({ plan, results, say }: { plan: Plan; results: Results; say: ScreenSay }): Lane[] {
  const { reading } = results;
  const paid = reading.firstPaymentWeek;
  const payments: LaneMark[] = paid === null ? [] : [{ index: paid, label: say.week(paid) }];
  return [
    { id: 'orders', label: 'Purchase orders', drawing: 'carton', marks: orders(plan, results, say) },
    { id: 'openings', label: 'Openings', drawing: 'truck', marks: openings(results, say) },
    { id: 'payment', label: 'First payment', drawing: 'tag', marks: payments },
  ];
}

function orders(plan: Plan, { pass }: Results, say: ScreenSay): LaneMark[] {
  return weeksOf(pass.weeks).flatMap((week) => {
    const placed = pass.units.flatMap(({ ordered }, index) => {
      const units = ordered[week] ?? 0;
      return units > 0 ? [`${say.count(units)} of ${plan.items[index]?.name ?? 'a product'}`] : [];
    });
    return placed.length === 0 ? [] : [{ index: week, label: `${say.week(week)}: ${placed.join(', ')}` }];
  });
}

function openings({ compiled, pass }: Results, say: ScreenSay): LaneMark[] {
  const doors = new Map<number, number>();
  for (const { openWeek, doorsAtOpening } of compiled.cohorts) {
    if (openWeek < 0 || openWeek >= pass.weeks) continue;
    doors.set(openWeek, (doors.get(openWeek) ?? 0) + doorsAtOpening);
  }
  return [...doors]
    .sort(([one], [other]) => one - other)
    .map(([week, count]) => ({ index: week, label: `${say.week(week)}: ${say.count(count)} doors` }));
}

function weeksOf(count: number): number[] {
  return Array.from({ length: count }, (_, week) => week);
}
