// A ladder has one rung that gives way: exactly one among list price, shelf price and hands is left to be solved, and
// it is not locked. Price points are endings below one, or whole prices.
// Worked example: list "solved", a shop with a margin of 0.42 and a shelf price of 4.99 leave one rung, the list price.
import type { Problem } from '../../problems.ts';
import type { Account, Listing, Plan } from '../index.ts';
import { shown } from '../shown.ts';

export function ladderProblems(plan: Plan): Problem[] {
  return plan.accounts.flatMap((account) => [
    ...account.listings.flatMap((listing) => solvedProblems(account, listing)),
    ...pointProblems(account),
  ]);
}

/** The rungs left to be solved, by name: "list", "shelf" or a hand's id. */
export function solvedRungs(account: Account, listing: Listing): string[] {
  return [
    ...(listing.list.by === 'solved' ? ['list'] : []),
    ...account.hands.filter(({ rule }) => rule.by === 'solved').map(({ id }) => id),
    ...(listing.shelf.by === 'solved' ? ['shelf'] : []),
  ];
}

function solvedProblems(account: Account, listing: Listing): Problem[] {
  const path = `accounts/${account.id}/listings/${listing.itemId}`;
  const solved = solvedRungs(account, listing);
  const [only] = solved;
  if (solved.length === 1 && only !== undefined) {
    const index = listing.lockedRungs.indexOf(only);
    if (index < 0) return [];
    const got = `${shown(only)}, which is also the rung to be solved`;
    const expected = 'a locked rung that is not the solved one';
    return [{ code: 'solved-count', path: `${path}/lockedRungs/${index}`, got, expected }];
  }
  const names = ['list', ...account.hands.map(({ id }) => id), 'shelf'].map(shown).join(', ');
  const got =
    solved.length === 0
      ? 'no rung to be solved'
      : `${solved.length} rungs to be solved: ${solved.map(shown).join(', ')}`;
  return [{ code: 'solved-count', path, got, expected: `exactly one of ${names} stated by "solved"` }];
}

function pointProblems({ id, pricePoints }: Account): Problem[] {
  if (pricePoints === null) return [];
  const fits = (ending: string) => (pricePoints.listOfPrices ? Number(ending) > 0 : Number(ending) < 1);
  const expected = pricePoints.listOfPrices ? 'a price above 0' : 'an ending below 1, like "0.99"';
  return pricePoints.endings.flatMap((ending, index): Problem[] =>
    fits(ending)
      ? []
      : [
          {
            code: 'field-invalid',
            path: `accounts/${id}/pricePoints/endings/${index}`,
            got: shown(ending),
            expected,
          },
        ],
  );
}
