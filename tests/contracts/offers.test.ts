/**
 * Every listed kind of offer keeps its contract; a new kind is found by itself. A blank one parses and moves no money, terms
 * survive JSON, every field and movable term has words and a place in the terms, and money in that is asked comes or is said
 * never to come.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { FieldNote, OfferKind } from '../../src/domain/offers/contract.ts';
import { OFFER_KINDS, type OfferPart, offerKindOf } from '../../src/domain/offers/list.ts';
import { runOffer } from '../../src/domain/offers/run.ts';
import { rivalOffer } from '../../src/domain/plan/offer-terms.ts';
import { anOffer, anOwnership, aSteadyBasis } from '../support/offers.ts';

const folder = join(import.meta.dirname, '../../src/domain/offers/kinds');

const UNITS: readonly FieldNote['unit'][] = [
  'share',
  'sum',
  'perUnit',
  'times',
  'weeks',
  'months',
  'days',
  'switch',
  'choice',
  'tranches',
  'when',
];

/** A week's condition inside the horizon, and one that nothing reaches. */
const NEVER = { by: 'doors', doors: 1_000_000, accountId: null } as const;

function asked(kind: OfferKind<OfferPart>): OfferPart {
  const blank = kind.blank('part');
  const tranche = (id: string, when: object) => ({ id, amount: '12000', when });
  const tranches = [tranche('now', { by: 'week', week: 3 }), tranche('never', NEVER)];
  return ('tranches' in blank ? { ...blank, tranches } : { ...blank, starts: NEVER }) as OfferPart;
}

test('one file a kind, and one line in the list', () => {
  expect(readdirSync(folder)).toHaveLength(OFFER_KINDS.length);
  expect(new Set(OFFER_KINDS.map(({ kind }) => kind)).size).toBe(OFFER_KINDS.length);
  expect(() => offerKindOf({ kind: 'rebate' })).toThrow('not in the list');
});

describe.each(OFFER_KINDS.map((kind) => [kind.kind, kind] as const))('%s', (_, kind) => {
  const blank = kind.blank('part');
  const terms = blank as unknown as Record<string, unknown>;

  test('a blank one parses, survives JSON, and moves no money', () => {
    const offer = anOffer([blank]);
    expect(rivalOffer.safeParse(JSON.parse(JSON.stringify(offer)))).toEqual({ success: true, data: offer });
    const run = runOffer(aSteadyBasis(), offer, anOwnership());
    expect(run).toMatchObject({ flows: [], moneyIn: 0, owed: 0, settles: 0, lowestCash: 10_000_000 });
    expect(run.company.owners.find(({ id }) => id === 'founder')?.shares).toBe(1);
  });

  test('every stored term has a field, and every field words', () => {
    const keys = kind.fields.map(({ key }) => key);
    expect(
      Object.keys(terms)
        .filter((key) => !['kind', 'id'].includes(key))
        .sort(),
    ).toEqual([...keys].sort());
    for (const { label, unit, choices } of kind.fields) {
      expect(label).toMatch(/^[A-Z]/);
      expect(UNITS).toContain(unit);
      expect((choices?.length ?? 0) > 1).toBe(unit === 'choice');
    }
    expect(kind.label).toMatch(/^[A-Z]/);
    expect(kind.meaning).toMatch(/^[A-Z].*\.$/);
  });

  test('what a counter may move is a term of it, between ends', () => {
    expect(kind.movable.length).toBeGreaterThan(0);
    for (const { key, least, most } of kind.movable) {
      expect(Object.keys(terms)).toContain(key);
      expect(most).toBeGreaterThan(least);
    }
  });

  test('money that comes is in its week, money that never comes is said', () => {
    const run = runOffer(aSteadyBasis(), anOffer([asked(kind)]), anOwnership());
    expect(run.never).toHaveLength(1);
    expect(run.never[0]?.condition).toEqual(NEVER);
    if ('tranches' in blank) {
      expect(run.moneyIn).toBe(1_200_000);
      expect(run.flows[0]).toMatchObject({ week: 3, amount: 1_200_000 });
    } else expect(run.moneyIn).toBe(0);
  });
});
