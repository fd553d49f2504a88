/**
 * Every field of a plan stands in a section of the inputs, so that a figure or a problem leads to it: what the schema has
 * more than the sections know would lead to the wrong one, silently.
 */
import { describe, expect, test } from 'vitest';
import { fieldNamesAt } from '../../src/domain/plan/schema-at.ts';
import { placeOfSheet, sheetOfPath } from '../../src/screens/shared/input-places.ts';
import { examplePlan } from '../storage/store.ts';

const plan = examplePlan('whole');
const [account] = plan.accounts;
const [item] = plan.items;

/** Fields that are no input of a section: identifiers, names, and what the screens of talks ask for themselves. */
const OWN_PLACE = ['id', 'name', 'table'];

function sectionsAt(base: string): Record<string, string | undefined> {
  const names = fieldNamesAt(plan, base).filter((name) => !OWN_PLACE.includes(name));
  expect(names.length).toBeGreaterThan(5);
  return Object.fromEntries(
    names.map((name) => [name, placeOfSheet(sheetOfPath(`${base}/${name}`) ?? '')?.section]),
  );
}

describe('where a field stands', () => {
  test('of a chain: only hands and price points fall to the first section', () => {
    const sections = sectionsAt(`accounts/${account?.id}`);
    expect(Object.keys(sections).filter((name) => sections[name] === 'hands')).toEqual([
      'hands',
      'pricePoints',
    ]);
    expect(sections).toMatchObject({
      depot: 'ordering',
      service: 'deductions',
      creditLimitAmount: 'terms',
      cuts: 'openings',
    });
  });

  test('of a product: only cost lines and loss fall to the first section', () => {
    const sections = sectionsAt(`items/${item?.id}`);
    expect(Object.keys(sections).filter((name) => sections[name] === 'cost')).toEqual([
      'costLines',
      'lossRate',
    ]);
    expect(sections).toMatchObject({ pack: 'pack', seasonFactors: 'season' });
  });

  test('of a supply: what is bought elsewhere or otherwise has a section of its own', () => {
    const sections = sectionsAt(`items/${item?.id}/supply`);
    expect(Object.keys(sections).filter((name) => sections[name] === 'buying')).toEqual([
      'sources',
      'priceBreaks',
      'expedite',
      'purchaseCurrency',
    ]);
  });

  test('of the business: only cash and other sales fall to the first section', () => {
    const sections = sectionsAt('business');
    expect(Object.keys(sections).filter((name) => sections[name] === 'cash')).toEqual([
      'openingCashAmount',
      'baseSales',
    ]);
    expect(sections).toMatchObject({ lines: 'lines', lender: 'funding' });
  });
});
