// What rival offers and the ownership beside them have to mean: founder and pool hold at most the whole company, a
// round has a price, a cap is above nothing. A condition on an account that is gone is no fault: its money never comes, and
// that is said where offers are compared.
// Worked example: a founder of 95 % beside a pool of 10 % is refused: together at most 100 %.

import { dec } from '../../money/decimal.ts';
import { percentText } from '../../money/plain.ts';
import type { Problem } from '../../problems.ts';
import type { Plan } from '../index.ts';

type Part = Plan['offers'][number]['parts'][number];

export function offerProblems(plan: Plan): Problem[] {
  return [
    ...plan.offers.flatMap(({ id, parts }) =>
      parts.flatMap((part) => partProblems(part, `offers/${id}/parts/${part.id}`)),
    ),
    ...ownershipProblems(plan),
  ];
}

function partProblems(part: Part, path: string): Problem[] {
  if (part.kind === 'equity' && dec(part.partRate).plus(part.poolRate).gte(1)) {
    const most = percentText(dec(1).minus(part.partRate).toFixed());
    return [
      invalid(`${path}/poolRate`, percentText(part.poolRate), `less than ${most}, what the part leaves`),
    ];
  }
  if (!('capAmount' in part) || part.capAmount === null || !dec(part.capAmount).isZero()) return [];
  return [invalid(`${path}/capAmount`, '0', 'an amount above 0, or null for no cap')];
}

function ownershipProblems({ ownership }: Plan): Problem[] {
  const { founderRate, poolRate, rounds } = ownership;
  const both = dec(founderRate).plus(poolRate);
  const unpriced = rounds.filter(({ preMoneyAmount }) => dec(preMoneyAmount).isZero());
  return [
    ...(both.gt(1)
      ? [
          invalid(
            'ownership/poolRate',
            percentText(poolRate),
            `at most ${percentText(dec(1).minus(founderRate).toFixed())} beside the founder’s part`,
          ),
        ]
      : []),
    ...unpriced.map(({ id }) =>
      invalid(
        `ownership/rounds/${id}/preMoneyAmount`,
        '0',
        'what the company is worth before the round, above 0',
      ),
    ),
  ];
}

function invalid(path: string, got: string, expected: string): Problem {
  return { code: 'field-invalid', path, got, expected };
}
