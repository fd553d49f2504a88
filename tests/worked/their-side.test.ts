/**
 * What the other side of a table is shown: the record made from an offer, and the page's own figures of it. The record
 * says what the model says of the retailer's side; the page recomputes from the record alone and must come to the same
 * texts as the app, in any locale. GMROI and turns as in Dunne & Lusch, Retailing, ch. 9 (checked from memory: gross
 * margin over average stock at cost; units sold over average units).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dec } from '../../src/domain/money/decimal.ts';
import * as format from '../../src/domain/money/format.ts';
import { type NumberShape, numberLook } from '../../src/domain/money/look.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { blankTable, termsOf, withTerms } from '../../src/domain/talks/index.ts';
import { theirRecord } from '../../src/domain/talks/their-record.ts';
import { earned, priceSteps, rateSteps, stepped } from '../../src/their-side/figures.ts';
import { writerFor } from '../../src/their-side/format.ts';
import { shownFrom } from '../../src/their-side/record.ts';
import { demos, resultsOf } from '../support/app-driver.ts';
import { anAccount, aPlan } from '../support/builders.ts';
import { readText } from '../support/source-files.ts';

const all = await demos();

function fineValue<T>(outcome: { ok: true; value: T } | { ok: false; problems: readonly unknown[] }): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

/** The plan after these were said, the last one last. */
function saidIn(plan: Plan, accountId: string, said: ['ask' | 'ours' | 'agreed', number][]): Plan {
  const log = said.map(([who, margin], index) => ({
    id: `offer-${index}`,
    said: who,
    atSeconds: 1_770_000_000 + index,
    terms: [{ term: 'margin', value: margin.toFixed(4) }],
  }));
  const table = { ...blankTable(), draft: [{ term: 'margin', value: '0.6' }], log };
  return {
    ...plan,
    accounts: plan.accounts.map((account) => (account.id === accountId ? { ...account, table } : account)),
  };
}

describe('the record', () => {
  const places = all.flatMap(({ plan }) =>
    plan.accounts.flatMap(({ id, listings }) =>
      listings.map(({ itemId }) => ({ plan, accountId: id, itemId })),
    ),
  );

  test.each(places)(
    '$plan.id, $accountId, $itemId: what the model says under the last offer, and no more',
    (place) => {
      const { plan, accountId, itemId } = place;
      const margin = termsOf(plan, accountId).find(({ name }) => name === 'margin')?.value ?? Number.NaN;
      const offered = margin + 0.01;
      const said = saidIn(plan, accountId, [
        ['agreed', margin],
        ['ours', offered],
        ['ask', margin + 0.04],
      ]);
      const record = fineValue(theirRecord({ plan: said, accountId, itemId, withTerms }));
      const under = fineValue(withTerms(plan, accountId, { margin: offered }));
      const deal = resultsOf(under).deals.find((each) => each.accountId === accountId);
      const side = deal?.items.find((each) => each.itemId === itemId)?.retailer;
      expect(record.offer).toMatchObject({
        buying: side?.buying.toFixed(),
        marginRate: side?.frontMarginRate.toFixed(),
        pennyProfit: side?.pennyProfit.toFixed(),
        perStoreWeek: side?.perStoreWeek.toFixed(),
        perFacingWeek: side?.perFacingWeek.toFixed(),
        gmroi: side?.gmroi?.toFixed() ?? null,
        turnsPerYear: side?.turnsPerYear?.toFixed() ?? null,
      });
      expect(Object.keys(record).sort()).toEqual([
        'chain',
        'currency',
        'item',
        'minorDigits',
        'offer',
        'shelf',
      ]);
      expect(Object.keys(record.offer ?? {}).sort()).toEqual([
        'buying',
        'facings',
        'gmroi',
        'marginRate',
        'pennyProfit',
        'perFacingWeek',
        'perStoreWeek',
        'replaced',
        'shelfBeforeTax',
        'taxRate',
        'turnsPerYear',
        'unitsPerStoreWeek',
      ]);

      const shown = shownFrom(JSON.parse(JSON.stringify(record)));
      if (!shown?.offer || !record.offer) throw new Error('the page can’t read the record');
      const now = earned(shown.offer, {
        shelf: shown.shelf,
        unitsPerStoreWeek: shown.offer.unitsPerStoreWeek,
      });
      const write = writerFor('en-US', record.currency, record.minorDigits);
      const look = lookOf('en-US', record.currency, record.minorDigits);
      const price = (text: string) => format.unitPrice(look, dec(text));
      expect(write.price(now.pennyProfit)).toBe(price(record.offer.pennyProfit));
      expect(write.price(now.perStoreWeek)).toBe(price(record.offer.perStoreWeek));
      expect(write.price(now.perFacingWeek ?? Number.NaN)).toBe(price(record.offer.perFacingWeek));
      expect(write.share(now.marginRate ?? Number.NaN)).toBe(shareText(look, record.offer.marginRate));
      expect(write.number(now.gmroi ?? 0)).toBe(
        format.exact(look, dec(record.offer.gmroi ?? '0').toDecimalPlaces(2)),
      );
      expect(write.tenth(now.turnsPerYear ?? 0)).toBe(
        format.tenths(look, dec(record.offer.turnsPerYear ?? '0')),
      );
    },
  );

  test('before anything was said as ours or agreed: chain, item and shelf price, whatever was asked', () => {
    const plan = aPlan({ accounts: [anAccount()] });
    for (const said of [[], [['ask', 0.45]]] as ['ask', number][][]) {
      const record = theirRecord({
        plan: saidIn(plan, 'corner', said),
        accountId: 'corner',
        itemId: 'tea',
        withTerms,
      });
      expect(fineValue(record)).toMatchObject({ chain: 'Corner', item: 'Tea', shelf: '4.3334', offer: null });
    }
  });

  test('an offer that fits the plan no longer is a problem in words', () => {
    const plan = saidIn(aPlan({ accounts: [anAccount()] }), 'corner', [['ours', 1.2]]);
    const record = theirRecord({ plan, accountId: 'corner', itemId: 'tea', withTerms });
    expect(record).toMatchObject({ ok: false, problems: [{ code: 'field-invalid', got: '1.2' }] });
    const nowhere = theirRecord({ plan, accountId: 'elsewhere', itemId: 'tea', withTerms });
    expect(nowhere).toMatchObject({ ok: false, problems: [{ code: 'reference-unknown', got: 'elsewhere' }] });
  });
});

describe('the page', () => {
  const offer = {
    taxRate: 0,
    buying: 2.6,
    pennyProfit: 1.4,
    unitsPerStoreWeek: 6,
    facings: 2,
    turnsPerYear: 26,
    gmroi: 14,
    replaced: null,
  };

  test('earns by hand: 4.00 bought at 2.60, 6 a week, 12 in a store', () => {
    const now = earned(offer, { shelf: 4, unitsPerStoreWeek: 6 });
    expect(now.pennyProfit).toBe(1.4);
    expect(now.marginRate).toBeCloseTo(0.35, 12);
    expect(now.perStoreWeek).toBeCloseTo(8.4, 12);
    expect(now.perFacingWeek).toBeCloseTo(4.2, 12);
    expect(now.gmroi).toBeCloseTo((1.4 / 2.6) * 26, 12);
    expect(earned(offer, { shelf: 3.3, unitsPerStoreWeek: 6 }).gmroi).toBeCloseTo((0.7 / 2.6) * 26, 12);
    const faster = earned(offer, { shelf: 4, unitsPerStoreWeek: 9 });
    expect(faster.turnsPerYear).toBeCloseTo(39, 12); // 468 a year over the same 12
    const taxed = earned({ ...offer, taxRate: 0.2 }, { shelf: 4.8, unitsPerStoreWeek: 6 });
    expect(taxed.pennyProfit).toBe(1.4);
    expect(earned(offer, { shelf: 2, unitsPerStoreWeek: 6 }).pennyProfit).toBe(-0.6);
  });

  test('steps keep a tag’s ending, come back to where they began, and end only where the record says nothing', () => {
    const prices = priceSteps(8.99, 2);
    expect(stepped(8.99, 1, prices)).toBe(9.09);
    expect(stepped(9.09, -1, prices)).toBe(8.99);
    expect(priceSteps(498, 0).size).toBe(5);
    expect(rateSteps(6).size).toBe(0.2);
    for (const [from, steps] of [
      [8.99, prices],
      [6, rateSteps(6)],
    ] as const) {
      let least: number = from;
      let most: number = from;
      for (let count = 0; count < 5000; count++) {
        least = stepped(least, -1, steps);
        most = stepped(most, 1, steps);
      }
      expect(least).toBeLessThan(from / 9);
      expect(least).toBeGreaterThan(0);
      expect(most).toBeGreaterThan(from * 9.5);
    }
  });

  test('a record that is damaged, or another version’s, is not shown', () => {
    const record = { chain: 'Corner', item: 'Tea', currency: 'USD', minorDigits: 2, shelf: '4', offer: null };
    expect(shownFrom(record)).toEqual({ ...record, shelf: 4 });
    expect(shownFrom({ ...record, landed: '1.00' })).toEqual({ ...record, shelf: 4 });
    for (const bad of [
      null,
      'x',
      {},
      { ...record, shelf: 'x' },
      { ...record, chain: 3 },
      { ...record, offer: {} },
    ]) {
      expect(shownFrom(bad)).toBeNull();
    }
  });

  test('its paper and ink are the app’s, and it has no other colour', () => {
    const [tokens, own] = [
      readText('src/widgets/styles/tokens.css'),
      readText('src/their-side/their-side.css'),
    ];
    const colours = (text: string, prefix: string): string[] =>
      [...text.matchAll(new RegExp(`--${prefix}-(paper|tag|ink|ink-2|line|hair): (#[0-9a-f]{6});`, 'g'))].map(
        ([, name, value]) => `${name} ${value}`,
      );
    expect(colours(own, 'ts')).toEqual(colours(tokens, 'ff'));
    const named = new Set(colours(own, 'ts').map((each) => each.split(' ')[1]));
    const used = [own, readText('src/their-side/controls.css')].flatMap(
      (text) => text.match(/#[0-9a-f]{3,8}\b/g) ?? [],
    );
    expect(used.filter((colour) => !named.has(colour))).toEqual([]);
  });
});

describe.each(['en-US', 'de-DE', 'de-CH', 'fr-FR', 'en-IN', 'ar-EG', 'tr-TR'])('numbers in %s', (locale) => {
  test('are written as the app writes them', () => {
    const amount = fc.integer({ min: -99_999_999, max: 99_999_999 }).map((units) => units / 10_000);
    fc.assert(
      fc.property(amount, fc.constantFrom('USD', 'EUR', 'JPY', 'KWD'), (value, currency) => {
        const minorDigits = { USD: 2, EUR: 2, JPY: 0, KWD: 3 }[currency];
        const look = lookOf(locale, currency, minorDigits);
        const write = writerFor(locale, currency, minorDigits);
        const decimal = dec(value);
        expect(write.price(value)).toBe(format.unitPrice(look, decimal));
        expect(write.priceWithSign(value)).toBe(format.withCurrency(look, format.unitPrice(look, decimal)));
        expect(write.priceSigned(value)).toBe(format.withPlus(look, format.unitPrice(look, decimal)));
        expect(write.tenth(value)).toBe(format.tenths(look, decimal));
        expect(write.number(value)).toBe(format.exact(look, decimal.toDecimalPlaces(2)));
        expect(write.share(value / 100)).toBe(shareText(look, decimal.div(100).toFixed()));
      }),
    );
  });
});

/** As the screens have it: see browserLook() in src/screens/shared/screen-say.ts, which asks a browser. */
function lookOf(locale: string, currency: string, minorDigits: number) {
  const partsOf = (value: number, shape: NumberShape) =>
    new Intl.NumberFormat(locale, shape).formatToParts(value);
  const look = numberLook({ partsOf, currency, minorDigits });
  return look.percent.after.endsWith('%') ? { ...look, percent: { before: '', after: '\u00a0%' } } : look;
}

/** "42.0 %" is read as "42 %". */
function shareText(look: ReturnType<typeof lookOf>, rate: string): string {
  const text = format.percent(look, dec(rate));
  const zero = `${look.decimal}${look.digits[0]}${look.percent.after}`;
  return text.endsWith(zero) ? `${text.slice(0, -zero.length)}${look.percent.after}` : text;
}
