/**
 * Every listed allowance kind keeps its contract; a new kind is found by itself. Its hand-worked examples hold, a blank one
 * parses and takes nothing, terms survive JSON, every field has words and a place in the terms, and what it takes and
 * what it posts are the same money.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Charge, UnitBases } from '../../src/domain/allowances/contract.ts';
import { ALLOWANCE_KINDS, kindOf } from '../../src/domain/allowances/index.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import { allowance } from '../../src/domain/plan/allowance-terms.ts';

const folder = join(import.meta.dirname, '../../src/domain/allowances');

const strings = { list: '3', running: '2.7', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 };

function basesOf(from: typeof strings): UnitBases {
  return {
    list: dec(from.list),
    running: dec(from.running),
    invoice: dec(from.invoice),
    landed: dec(from.landed),
    returnsRate: dec(from.returnsRate),
    caseUnits: from.caseUnits,
  };
}

/** What a charge posts for one unit at the given invoice price, in whole 1/10,000; null for what is no such sum. */
function postedPerUnit(charge: Charge, bases: UnitBases): number | null {
  const keptUnits = 1 - bases.returnsRate.toNumber();
  const invoice = bases.invoice.toNumber() * 10_000;
  if (charge.settles === 'remittance') return (invoice * charge.rateMillionths) / 1e6;
  if (charge.settles === 'claim' || charge.settles === 'shipment') return charge.priceTenThousandths;
  if (charge.settles === 'monthly' || charge.settles === 'quarterly') {
    return ((invoice * charge.rateMillionths) / 1e6 + charge.priceTenThousandths) * keptUnits;
  }
  if (charge.settles === 'returns') {
    const saved = bases.landed.toNumber() * 10_000 * (charge.resaleableMillionths / 1e6);
    return ((invoice + charge.freightBackTenThousandths - saved) * charge.rateMillionths) / 1e6;
  }
  return null;
}

test('the list has no kind twice, and every kind is a file of its own beside it', () => {
  const names = ALLOWANCE_KINDS.map(({ kind }) => kind);
  expect(new Set(names).size).toBe(names.length);
  const files = names.map((name) => `${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}.ts`);
  expect(readdirSync(folder)).toEqual(expect.arrayContaining(files));
});

test('a kind that is not listed is refused by name, with the kinds there are', () => {
  const answer = allowance.safeParse({ kind: 'rebateOfTheMoon', id: 'a' });
  expect(answer.success).toBe(false);
  expect(answer.error?.issues[0]?.message).toContain('"spoils"');
  expect(() => kindOf({ kind: 'rebateOfTheMoon' })).toThrow(/rebateOfTheMoon/);
});

describe.each(ALLOWANCE_KINDS.map((kind) => [kind.kind, kind] as const))('%s', (name, kind) => {
  test('says what it is', () => {
    expect(kindOf({ kind: name })).toBe(kind);
    expect(kind.label).toMatch(/^[A-Z].{2,40}$/);
    expect(kind.meaning).toMatch(/^[A-Z].+\.$/);
    expect(['theirs', 'between']).toContain(kind.owner);
  });

  test('its examples hold, each with its arithmetic in words', () => {
    expect(kind.examples.length).toBeGreaterThan(0);
    for (const { terms, bases, expected, arithmetic } of kind.examples) {
      const { amount, reason } = kind.take(terms, basesOf(bases));
      expect(amount.toFixed(), arithmetic).toBe(dec(expected).toFixed());
      expect(arithmetic).toMatch(/\d/);
      expect(reason).toMatch(/\d/);
    }
  });

  test('what one unit gives up is what the weekly pass posts for it, to half a step of the price grid', () => {
    for (const { terms, bases } of kind.examples) {
      const given = basesOf(bases);
      const posted = postedPerUnit(kind.charge(terms, given), given);
      if (posted === null) expect(kind.stage).toBe('offInvoice');
      else
        expect(Math.abs(posted - kind.take(terms, given).amount.toNumber() * 10_000)).toBeLessThanOrEqual(
          0.5001,
        );
    }
  });

  test('a blank one parses, and takes nothing', () => {
    const blank = kind.blank('new-1');
    expect(allowance.parse(blank)).toEqual(blank);
    expect(kind.take(blank, basesOf(strings)).amount.toFixed()).toBe('0');
    expect(postedPerUnit(kind.charge(blank, basesOf(strings)), basesOf(strings)) ?? 0).toBe(0);
  });

  test('terms survive JSON, and an unknown or missing term is refused', () => {
    for (const terms of [kind.blank('new-1'), ...kind.examples.map((example) => example.terms)]) {
      expect(allowance.parse(JSON.parse(JSON.stringify(terms)))).toEqual(terms);
      expect(allowance.safeParse({ ...terms, extra: 1 }).success).toBe(false);
      for (const key of Object.keys(terms)) {
        const without = Object.fromEntries(Object.entries(terms).filter(([each]) => each !== key));
        expect(allowance.safeParse(without).success, `without ${key}`).toBe(false);
      }
    }
  });

  test('every term has a field with a label and a unit, and every field a term', () => {
    const keys = Object.keys(kind.blank('new-1')).filter((key) => key !== 'kind' && key !== 'id');
    expect(kind.fields.map(({ key }) => key).sort()).toEqual([...keys].sort());
    for (const { label, unit, choices } of kind.fields) {
      expect(label).toMatch(/^[A-Z].{1,60}$/);
      expect(unit === 'choice').toBe(choices !== undefined);
      for (const choice of choices ?? []) expect(choice.label).not.toBe('');
    }
    for (const key of kind.uncertain) expect(keys).toContain(key);
  });

  test('every choice of a field is one the schema takes', () => {
    for (const { key, choices } of kind.fields) {
      for (const { value } of choices ?? []) {
        expect(allowance.safeParse({ ...kind.blank('new-1'), [key]: value }).success, value).toBe(true);
      }
    }
  });

  test('bad amounts are refused with a sentence part', () => {
    for (const { key, unit } of kind.fields) {
      if (unit === 'switch' || unit === 'choice') continue;
      for (const bad of ['lots', '-1', 'NaN', null]) {
        const answer = allowance.safeParse({ ...kind.blank('new-1'), [key]: bad });
        expect(answer.success, `${key} ${bad}`).toBe(false);
        expect(answer.error?.issues[0]?.message).toMatch(/^(an? |a whole number)/);
      }
    }
  });
});
