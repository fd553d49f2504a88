/**
 * Cases on a pallet, pallets in a load, freight by the load, each worked out by hand in the comment; and what is said where
 * a plan's own counts don't fit its sizes.
 */
import { describe, expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { landedOf } from '../../src/domain/ladder/landed.ts';
import { arrange } from '../../src/domain/pack/arrange.ts';
import { palletOf } from '../../src/domain/pack/layer.ts';
import { loadOf, palletsOnFloor } from '../../src/domain/pack/load.ts';
import { LOAD_NAMES, LOADS, PALLET_GAP_MM } from '../../src/domain/pack/loads.ts';
import { type Pack, type PalletName, palletSides } from '../../src/domain/pack/pallets.ts';
import { loadSentence, packWarnings, palletSentence } from '../../src/domain/pack/words.ts';
import type { Item } from '../../src/domain/plan/index.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { aCostLine, anItem, aPlan } from '../support/builders.ts';
import { explained, subjectOf } from '../support/explained.ts';

const say = plainSay({ minorDigits: 2, startDay: 0, dateOf: isoDateOf });

/** 400 x 300 x 200 mm, 5 kg, ten a layer on 1200 x 1000. */
function aPack(changes: Partial<Pack> = {}): Pack {
  return {
    innerUnits: 6,
    caseLengthMm: 400,
    caseWidthMm: 300,
    caseHeightMm: 200,
    caseGrams: 5000,
    layerCases: 10,
    pallet: '1200x1000',
    palletMostHeightMm: 1600,
    palletMostKg: 1000,
    stacks: false,
    ...changes,
  };
}

describe('a pallet', () => {
  test('1,600 less 144 mm are 7 layers of 200; 1,000 kg are 200 cases, 20 layers: 70 cases, by height', () => {
    const pallet = palletOf(aPack());
    expect(pallet).toMatchObject({ layerCases: 10, layersByHeight: 7, layersByWeight: 20, cases: 70 });
    expect(pallet.limits).toBe('height');
  });

  test('cases of 20 kg: 50 within 1,000 kg, 5 layers of 10, by weight', () => {
    const pallet = palletOf(aPack({ caseGrams: 20_000 }));
    expect(pallet).toMatchObject({ layersByWeight: 5, cases: 50, limits: 'weight' });
  });

  test('cases of 300 kg: not a layer of ten within 1,000 kg, three single cases', () => {
    expect(palletOf(aPack({ caseGrams: 300_000 }))).toMatchObject({ layersByWeight: 0, cases: 3 });
  });

  test('a case larger than the pallet, a case higher than the load: none', () => {
    expect(palletOf(aPack({ caseLengthMm: 1300 }))).toMatchObject({
      layerCases: 0,
      cases: 0,
      limits: 'floor',
    });
    expect(palletOf(aPack({ caseHeightMm: 1500 }))).toMatchObject({ layersByHeight: 0, cases: 0 });
  });

  test('cases of a cubic centimetre are not laid one by one', () => {
    expect(palletOf(aPack({ caseLengthMm: 10, caseWidthMm: 10 })).layer).toBeNull();
  });
});

test.each<PalletName>(['1200x1000', '1200x800', '1219x1016', '1140x1140', '1100x1100', '1067x1067'])(
  'the table of pallets on a floor is what the arranger lays there: %s',
  (pallet) => {
    const { length, width } = palletSides(pallet);
    for (const name of LOAD_NAMES) {
      const { boxes } = arrange({
        length: LOADS[name].lengthMm,
        width: LOADS[name].widthMm,
        boxLength: length + PALLET_GAP_MM,
        boxWidth: width + PALLET_GAP_MM,
      });
      expect(palletsOnFloor(name, pallet), name).toBe(boxes.length);
    }
  },
);

describe('a load', () => {
  const item = anItem({ palletCases: 70, pack: aPack() });
  const load = (pack: Partial<Pack>, name: Parameters<typeof loadOf>[2], changes: Partial<Item> = {}) =>
    loadOf({ ...item, ...changes }, aPack(pack), name);

  test('a 20 ft container: 10 on the floor; 375 kg each, 75 by weight; 10 x 70 x 12 units', () => {
    expect(load({}, 'container20')).toEqual({
      load: 'container20',
      onFloor: 10,
      high: 1,
      byWeight: 75,
      pallets: 10,
      cases: 700,
      units: 8400,
      kg: 3750,
      limits: 'floor',
    });
  });

  test('18 kg a case: 1,285 kg a pallet, 26,730 kg carry 20 of the 21 that stand in 40 ft', () => {
    const figures = load({ caseGrams: 18_000 }, 'container40');
    expect(figures).toMatchObject({ onFloor: 21, byWeight: 20, pallets: 20, limits: 'weight', kg: 25_700 });
  });

  test('stacking: 1,144 mm twice is 2,288, too high for a container’s door, not for a European trailer', () => {
    expect(load({ stacks: true }, 'container20', { palletCases: 50 })).toMatchObject({
      high: 1,
      limits: 'height',
    });
    expect(load({ stacks: true }, 'trailerEu', { palletCases: 50 })).toMatchObject({ high: 2, pallets: 52 });
  });

  test('freight of 2,100 a 20 ft container of 8,400 units is 0.25 a unit', () => {
    const rule = { by: 'load' as const, amount: '2100', load: 'container20' as const };
    const landed = landedOf({
      ...item,
      costLines: [aCostLine(), aCostLine({ id: 'sea', label: 'Sea', family: 'freight', rule })],
    });
    if (!landed.ok) throw new Error('refused');
    expect(landed.value.unit.toFixed()).toBe('1.25');
    expect(landed.value.lines[1]?.reason).toBe('2100.00 a 20 ft container of 8400 units');
  });
});

test('where freight by the load comes from: its amount, what it carries and what that follows from', () => {
  const rule = { by: 'load' as const, amount: '2100', load: 'container20' as const };
  const costLines = [aCostLine(), aCostLine({ id: 'sea', label: 'Sea', family: 'freight', rule })];
  const item = anItem({ palletCases: 70, pack: aPack(), costLines });
  const found = explained(subjectOf(aPlan({ items: [item] })), {
    of: 'costLine',
    itemId: 'tea',
    lineId: 'sea',
  });
  expect(found.formula).toBe('2100.00 a 20 ft container of 8400 units = 0.25');
  expect(found.lines.map(({ label, value, path }) => [label, value, path])).toEqual([
    ['A 20 ft container', '2100.00', 'items/tea/costLines/sea/rule/amount'],
    ['Units it carries', '8400', null],
    ['Cases on a pallet', '70', 'items/tea/palletCases'],
    ['Units in a case', '12', 'items/tea/caseUnits'],
    ['Grams a case', '5000', 'items/tea/pack/caseGrams'],
  ]);
  expect(found.lines[1]?.reason).toBe('10 pallets of 70 cases of 12 units; its floor limits');
});

describe('what is said', () => {
  const said = (pack: Partial<Pack>, changes: Partial<Item> = {}) => {
    const item = anItem({ palletCases: 70, ...changes });
    return packWarnings({ item, pack: aPack(pack), pallet: palletOf(aPack(pack)), say });
  };

  test('nothing where all fits', () => {
    expect(said({})).toEqual([]);
  });

  test.each<[string, Partial<Pack>, Partial<Item>, string]>([
    [
      'a layer that can’t lie',
      { layerCases: 12 },
      {},
      '12 cases in a layer don’t fit: at most 10 of 400 × 300 mm lie on 1200 × 1000 mm.',
    ],
    [
      'a case too large',
      { caseLengthMm: 1300 },
      {},
      'A case of 1300 × 300 mm doesn’t lie inside a pallet of 1200 × 1000 mm.',
    ],
    [
      'too high',
      {},
      { palletCases: 80 },
      '80 cases on a pallet stand 1744 mm high, 10 in a layer; the most is 1600 mm.',
    ],
    ['too heavy', { caseGrams: 15_000 }, {}, '70 cases on a pallet weigh 1050 kg; the most is 1000 kg.'],
    ['inner packs', { innerUnits: 5 }, {}, 'A case of 12 units isn’t whole inner packs of 5.'],
  ])('%s', (_, pack, changes, sentence) => {
    expect(said(pack, changes)).toEqual([sentence]);
  });

  test('a layer that nobody found nor ruled out', () => {
    // 53 x 26, boxes of 7 x 4, has room for 48 (Lins, Lins and Morabito 2003) and a bound of 49: here in centimetres.
    const pack = { caseLengthMm: 134, caseWidthMm: 103, layerCases: 0 };
    const pallet = palletOf(aPack(pack));
    expect(pallet.layerAtMost).toBeGreaterThan(pallet.layerCases);
    expect(
      said({ ...pack, layerCases: pallet.layerAtMost, palletMostHeightMm: 3000, palletMostKg: 5000 }),
    ).toEqual([
      `${pallet.layerAtMost} cases in a layer: an arrangement of ${pallet.layerCases} was found, none of ${pallet.layerAtMost}. Try it with real cases.`,
    ]);
  });

  test('in a sentence, what limits', () => {
    const item = anItem({ palletCases: 70 });
    const pallet = palletOf(aPack());
    expect(palletSentence({ item, pack: aPack(), pallet, say })).toBe(
      '10 cases in a layer, 7 layers: 70 cases; height limits.',
    );
    expect(loadSentence(loadOf(item, aPack(), 'container20'), say)).toBe(
      '10 on the floor, 75 by weight: the floor limits.',
    );
    const tall = anItem({ palletCases: 120 });
    expect(loadSentence(loadOf(tall, aPack(), 'container20'), say)).toBe(
      'A loaded pallet is higher than its door, 2261 mm.',
    );
  });
});
