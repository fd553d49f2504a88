/**
 * The ladder against published figures: calculator manuals, marketing and business-mathematics textbooks, tax tables,
 * public statistics. Each title names its source; "recomputed" means the source gives inputs and rule. One that is not
 * here: the initial-markup exercise, since no figure of the product is an initial markup.
 */
import { describe, expect, test } from 'vitest';
import { discountByYear } from '../../src/domain/ladder/early-discount.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import { ladderOf, priced } from '../support/ladders.ts';

const solved = { by: 'solved' } as const;
const margin = (rate: string) => ({ by: 'margin', rate }) as const;
const markup = (rate: string) => ({ by: 'markup', rate }) as const;
const price = (amount: string) => ({ by: 'price', amount }) as const;

describe('margin and markup', () => {
  test('cost 255, price 300: margin 15.00 % (HP 10bII+ Financial Calculator User’s Guide, p. 47, table 3-7)', () => {
    const ladder = ladderOf(
      priced({ landed: '255', list: price('300'), hands: [margin('0')], shelf: solved }),
    );
    expect(ladder.ladderMarginRate.toFixed(4)).toBe('0.1500');
    const byHand = ladderOf(
      priced({ landed: '1', list: price('255'), hands: [solved], shelf: price('300') }),
    );
    expect(byHand.hands[0]?.marginRate.toFixed(4)).toBe('0.1500');
  });

  test('19.00 at 60 % on cost: 30.40 (HP 10B Owner’s Manual p. 34; 10bII+ guide table 3-8)', () => {
    const ladder = ladderOf(
      priced({ landed: '1', list: price('19'), hands: [markup('0.6')], shelf: solved }),
    );
    expect(ladder.shelf.toFixed(2)).toBe('30.40');
  });

  test('9.60 at 15 % on cost: 11.04, margin 13.04 % (HP 10B Owner’s Manual p. 34)', () => {
    const ladder = ladderOf(
      priced({ landed: '1', list: price('9.6'), hands: [markup('0.15')], shelf: solved }),
    );
    expect(ladder.shelf.toFixed(2)).toBe('11.04');
    expect(ladder.hands[0]?.marginRate.toFixed(4)).toBe('0.1304');
  });

  test('125 at a 20 % margin costs 100.00 (TI BA II Plus Guidebook, pp. 77-78)', () => {
    const ladder = ladderOf(
      priced({ landed: '1', list: solved, hands: [margin('0.2')], shelf: price('125') }),
    );
    expect(ladder.list.toFixed(2)).toBe('100.00');
    expect(ladder.miss.toFixed()).toBe('0');
  });
});

describe('down and up the ladder', () => {
  test('shelf 60, retailer 20 %, wholesaler 15 %: 48.00, 40.80 (Kotler & Armstrong, Principles of Marketing, Marketing by the Numbers)', () => {
    const plan = priced({
      landed: '1',
      list: solved,
      hands: [margin('0.15'), margin('0.2')],
      shelf: price('60'),
    });
    const ladder = ladderOf(plan);
    expect(ladder.hands[1]?.buys.toFixed(2)).toBe('48.00');
    expect(ladder.list.toFixed(2)).toBe('40.80');
  });

  test('shelf 800, 30 %, 10 %: 560, 504 (Kotler & Armstrong, another exercise)', () => {
    const plan = priced({
      landed: '1',
      list: solved,
      hands: [margin('0.1'), margin('0.3')],
      shelf: price('800'),
    });
    const ladder = ladderOf(plan);
    expect(ladder.hands[1]?.buys.toFixed(2)).toBe('560.00');
    expect(ladder.list.toFixed(2)).toBe('504.00');
  });

  test('cost 75, maker 40 %, retailer 30 %: 125.00, 178.57 (same kind of exercise, recomputed)', () => {
    const plan = priced({ landed: '75', list: margin('0.4'), hands: [margin('0.3')], shelf: solved });
    const ladder = ladderOf(plan);
    expect(ladder.list.toFixed(2)).toBe('125.00');
    expect(ladder.shelf.toFixed(2)).toBe('178.57');
  });

  test('shelf 3.00 at a 30 % margin: pays at most 2.10 (university extension text on food pricing, recomputed)', () => {
    const ladder = ladderOf(priced({ landed: '1', list: solved, hands: [margin('0.3')], shelf: price('3') }));
    expect(ladder.hands[0]?.buys.toFixed(2)).toBe('2.10');
  });
});

describe('discounts in series', () => {
  function invoiceAfter(list: string, rates: readonly string[], passedOn: boolean) {
    const allowances = rates.map(
      (rate, place) => ({ kind: 'offInvoice', id: `off-${place}`, rate, on: 'running', passedOn }) as const,
    );
    return priced({
      landed: '1',
      list: price(list),
      hands: [margin('0')],
      shelf: solved,
      account: { allowances },
    });
  }

  test('324.00 less 20/10: 233.28, as one discount 28 % (business-mathematics exercise)', () => {
    const ladder = ladderOf(invoiceAfter('324', ['0.2', '0.1'], false));
    expect(ladder.invoice.toFixed(2)).toBe('233.28');
    expect(ladder.tradeRate.toFixed(4)).toBe('0.2800');
  });

  test('20/16/5 keeps .63840, one discount of 36.160 % (Brechner & Bergeman, Contemporary Mathematics, type exercise)', () => {
    const ladder = ladderOf(invoiceAfter('1000', ['0.2', '0.16', '0.05'], false));
    expect(ladder.invoice.div(ladder.list).toFixed(5)).toBe('0.63840');
    expect(ladder.tradeRate.toFixed(5)).toBe('0.36160');
  });

  test('a 30/10 chain worth 248.40: list 671.35, net 422.95 (REA Business Problem Solver)', () => {
    const forward = ladderOf(invoiceAfter('671.35', ['0.3', '0.1'], false));
    expect(forward.list.minus(forward.invoice).toFixed(2)).toBe('248.40');
    expect(forward.invoice.toFixed(2)).toBe('422.95');
    const plan = invoiceAfter('1', ['0.3', '0.1'], true);
    const listing = { ...plan.accounts[0]?.listings[0], list: solved, shelf: price('422.95') };
    const backward = ladderOf({
      ...plan,
      accounts: plan.accounts.map((account) => ({
        ...account,
        listings: [listing] as typeof account.listings,
      })),
    });
    expect(backward.list.toFixed(2)).toBe('671.35');
  });
});

describe('what missing an early-payment discount costs a year', () => {
  test.each([
    ['0.02', 10, 30, 'simple360', '0.3673', 'HP 10bII+ guide p. 138'],
    ['0.02', 10, 30, 'simple365', '0.3724', 'Gitman exercise'],
    ['0.02', 10, 30, 'compounded365', '0.4459', 'recomputed'],
    ['0.01', 10, 30, 'simple365', '0.1843', 'Gitman exercise'],
    ['0.02', 10, 45, 'simple365', '0.2128', 'Gitman exercise'],
    ['0.03', 10, 30, 'simple365', '0.5644', 'Gitman exercise'],
  ] as const)('%s in %d days, net %d, %s: %s (%s)', (rate, earlyDays, netDays, which, expected, _) => {
    const found = discountByYear({ rate: dec(rate), earlyDays, netDays });
    expect(found?.[which].toFixed(4)).toBe(expected);
  });
});

describe('tax in the shelf price (HMRC, VAT-inclusive and VAT-exclusive prices)', () => {
  test.each([
    ['0.2', '120', '1/6'],
    ['0.05', '105', '1/21'],
  ])('100 at %s is %s; the tax in it is %s', (rate, gross, part) => {
    const plan = { shelfTax: { rate, shown: 'inPrice' as const } };
    const up = ladderOf(
      priced({ landed: '1', list: price('100'), hands: [margin('0')], shelf: solved, plan }),
    );
    expect(up.shelf.toFixed(2)).toBe(`${gross}.00`);
    const down = ladderOf(
      priced({ landed: '1', list: solved, hands: [margin('0')], shelf: price(gross), plan }),
    );
    expect(down.shelfBeforeTax.toFixed(2)).toBe('100.00');
    const [one = '', of = ''] = part.split('/');
    const share = down.bands.find(({ id }) => id === 'tax')?.shareOfShelf;
    expect(share?.toFixed(5)).toBe(dec(one).div(of).toFixed(5));
  });
});

describe('gross margins of store types, from sales and cost of goods in $M (Statistics Canada, Canada Year Book 2009, table 26.9)', () => {
  test.each([
    ['supermarkets', '68878.1', '51665.8', '25.0'],
    ['clothing', '18821.7', '9357.0', '50.3'],
    ['home centres and hardware', '20819.6', '14330.1', '31.2'],
    ['sporting goods and hobby', '11435.3', '7098.6', '37.9'],
    ['miscellaneous (gift)', '12126.6', '7248.1', '40.2'],
  ])('%s: sales %s, cost %s, margin %s %%', (_, sales, cost, expected) => {
    const ladder = ladderOf(priced({ landed: '1', list: price(cost), hands: [solved], shelf: price(sales) }));
    expect(ladder.hands[0]?.marginRate.times(100).toFixed(1)).toBe(expected);
  });
});
