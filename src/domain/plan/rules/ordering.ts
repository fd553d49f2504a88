// How stores and depots order has to be possible: layers need a pack that says what a layer is, an order looks ahead no
// further than sums stay exact, goods through a depot are sold at shipment or at the scan.
// Worked figure: ordering every 13 weeks, 26 in transit and 52 of cover, an order would look 91 weeks ahead: one too many.
import type { Problem } from '../../problems.ts';
import type { Account, Plan } from '../index.ts';

/** Weeks an order may look ahead: demand of 100,000,000 units a week in millionths stays below 2^53 so long (limits.ts). */
const MOST_AHEAD = 90;

export function orderingProblems(plan: Plan): Problem[] {
  return plan.accounts.flatMap((account) => [
    ...rhythm(account, plan.horizonWeeks),
    ...layers(plan, account),
    ...lookingAhead(account),
    ...guaranteedThroughDepot(account),
  ]);
}

function rhythm({ id, ordering }: Account, horizonWeeks: number): Problem[] {
  const path = `accounts/${id}/ordering`;
  const { daily, everyWeeks, firstWeek } = ordering;
  const problems: Problem[] = [];
  if (firstWeek >= horizonWeeks) {
    problems.push({
      code: 'dates-out-of-order',
      path: `${path}/firstWeek`,
      got: `week ${firstWeek}`,
      expected: `a week inside the plan's ${horizonWeeks} weeks, 0 to ${horizonWeeks - 1}`,
    });
  }
  if (daily && everyWeeks > 1) {
    problems.push({
      code: 'field-invalid',
      path: `${path}/everyWeeks`,
      got: `${everyWeeks} weeks from order to order, and orders by day`,
      expected: '1 where stores order by day',
    });
  }
  return problems;
}

/** Of each kind of order in layers, the listed items that nobody has measured. */
function layers({ items }: Plan, { id, listings, ordering, depot }: Account): Problem[] {
  const places = [
    { path: `accounts/${id}/ordering/orderIn`, orderIn: ordering.orderIn },
    ...(depot ? [{ path: `accounts/${id}/depot/orderIn`, orderIn: depot.orderIn }] : []),
  ];
  const unmeasured = listings.find(({ itemId }) =>
    items.some((item) => item.id === itemId && item.pack === null),
  );
  if (!unmeasured) return [];
  return places
    .filter(({ orderIn }) => orderIn === 'layer')
    .map(({ path }): Problem => {
      const got = `layers, and the pack of items/${unmeasured.itemId} doesn't say how many cases make one`;
      return {
        code: 'field-invalid',
        path,
        got,
        expected: '"case" or "pallet", or a pack with its cases in a layer',
      };
    });
}

function lookingAhead({ id, listings, ordering, terms, depot }: Account): Problem[] {
  const { everyWeeks } = ordering;
  const most = Math.max(...listings.map(({ coverWeeks }) => coverWeeks));
  const ways = [
    { path: `accounts/${id}/ordering/everyWeeks`, transit: terms.transitWeeks, cover: most },
    ...(depot
      ? [{ path: `accounts/${id}/depot/coverWeeks`, transit: depot.transitWeeks, cover: depot.coverWeeks }]
      : []),
  ];
  return ways
    .filter(({ transit, cover }) => everyWeeks + transit + cover > MOST_AHEAD)
    .map(({ path, transit, cover }): Problem => {
      const got = `${everyWeeks} weeks from order to order, ${transit} in transit and ${cover} of cover`;
      return { code: 'number-too-large', path, got, expected: `at most ${MOST_AHEAD} weeks together` };
    });
}

/** Units held for a review stand on shelves; what lies in a depot belongs to no review. */
function guaranteedThroughDepot({ id, depot, sale }: Account): Problem[] {
  if (depot === null || sale.by !== 'guaranteed') return [];
  return [
    {
      code: 'field-invalid',
      path: `accounts/${id}/sale/by`,
      got: '"guaranteed", and its stores are served from a depot',
      expected: '"shipment" or "scan" through a depot, or no depot',
    },
  ];
}
