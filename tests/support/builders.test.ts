/** The builders' own check: what they give is a valid plan, and stays as it is when read back. */
import { expect, test } from 'vitest';
import { planSchema } from '../../src/domain/plan/index.ts';
import { aBusiness, aLoan, anAccount, aPlan, aPromotion } from './builders.ts';

test('a built plan parses and is not changed by parsing', () => {
  const plan = aPlan({
    accounts: [anAccount({ promotions: [aPromotion()] })],
    business: aBusiness({ funding: [aLoan()] }),
  });
  expect(planSchema.parse(JSON.parse(JSON.stringify(plan)))).toEqual(plan);
});
