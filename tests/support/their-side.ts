/**
 * Their side in a browser: a plan with talks in it, the turn by the app's own key, all that a page could give away put
 * into one text, and every own figure written in each way the app writes figures.
 * Worked figure: landed 1.895 is looked for as "1.90", "1.8950", "1.895" and "$1.90", never inside a longer number.
 */
import type { Page } from 'playwright-core';
import type { Decimal } from '../../src/domain/money/decimal.ts';
import * as format from '../../src/domain/money/format.ts';
import { type NumberLook, numberLook } from '../../src/domain/money/look.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { blankTable, termsOf, withTerms } from '../../src/domain/talks/index.ts';
import type { TheirRecord } from '../../src/domain/talks/their-record.ts';
import { planFile } from '../../src/plan-format/envelope.ts';
import { earned, earnedByReplaced } from '../../src/their-side/figures.ts';
import { type Writer, writerFor } from '../../src/their-side/format.ts';
import { shownFrom } from '../../src/their-side/record.ts';
import { chooseFile, goTo, resultsOf } from './app-driver.ts';

export interface InTalks {
  plan: Plan;
  account: Account;
  /** The plan under the last offer, under the draft, and under what was asked last. */
  under: { offer: Results; draft: Results; ask: Results };
}

const OFFERED = 0.01;
const DRAFTED = 0.03;
const ASKED = 0.05;
const TARGET = '41234.56';
const WALK_AWAY = '7654.32';

/** The plan under another name, in talks with one account: an offer of ours, then an ask, and a draft that differs. */
export function inTalks(plan: Plan, accountId: string): InTalks {
  const margin = termsOf(plan, accountId).find(({ name }) => name === 'margin')?.value;
  if (margin === undefined) throw new Error(`${accountId} has no margin to talk about`);
  const terms = (more: number) => [{ term: 'margin', value: (margin + more).toFixed(4) }];
  const said = (who: 'ask' | 'ours', more: number, at: number) => ({
    id: `offer-${at}`,
    said: who,
    atSeconds: 1_770_000_000 + at,
    terms: terms(more),
  });
  const table = {
    ...blankTable(),
    targetAmount: TARGET,
    walkAwayAmount: WALK_AWAY,
    draft: terms(DRAFTED),
    log: [said('ours', OFFERED, 1), said('ask', ASKED, 2)],
  };
  const accounts = plan.accounts.map((each) => (each.id === accountId ? { ...each, table } : each));
  const talked: Plan = { ...plan, id: `talks-${accountId}`, name: `Unspoken ${accountId}`, accounts };
  const account = talked.accounts.find(({ id }) => id === accountId);
  if (!account) throw new Error(`no account ${accountId}`);
  const under = (more: number): Results => {
    const offered = withTerms(talked, accountId, { margin: margin + more });
    if (!offered.ok) throw new Error(JSON.stringify(offered.problems));
    return resultsOf(offered.value);
  };
  return {
    plan: talked,
    account,
    under: { offer: under(OFFERED), draft: under(DRAFTED), ask: under(ASKED) },
  };
}

/** Brings the plan in as a file, goes to its talks and turns; the page is then their side. */
export async function turnedAt(page: Page, { plan, account }: InTalks): Promise<void> {
  await atTheTable(page, { plan, account });
  await turn(page);
}

export async function atTheTable(
  page: Page,
  { plan, account }: Pick<InTalks, 'plan' | 'account'>,
): Promise<void> {
  await goTo(page, '#/plans', 'Plans');
  await chooseFile(page, 'talks.json', planFile(plan).text);
  await page.locator('.ff-plan-link, h1', { hasText: plan.name }).first().waitFor();
  await goTo(page, `#/p/${plan.id}/table/${account.id}`, 'Across the table');
}

export async function turn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Turn around', exact: true }).click();
  await onTheirSide(page);
}

export async function onTheirSide(page: Page): Promise<void> {
  await page.waitForURL('**/their-side.html');
  await page.locator('.ts-page').waitFor();
}

/** Everything the page holds that a person, a tool or a printer could read, as one text. */
export async function everythingOf(page: Page): Promise<string> {
  const devtools = await page.context().newCDPSession(page);
  const { nodes } = await devtools.send('Accessibility.getFullAXTree');
  await devtools.detach();
  const spoken = nodes.map(({ name, value, description }) => [name?.value, value?.value, description?.value]);
  const held = await page.evaluate(async () => {
    const own = [...document.documentElement.computedStyleMap()];
    const variables = own
      .filter(([name]) => name.startsWith('--'))
      .map((pair) => pair.map(String).join(': '));
    const inline = [...document.querySelectorAll('[style]')].map((each) => each.getAttribute('style'));
    getSelection()?.selectAllChildren(document.body);
    const copied = String(getSelection());
    getSelection()?.removeAllRanges();
    const record = await new Promise((done, failed) => {
      const opening = indexedDB.open('firstfill-their-side');
      opening.onerror = () => failed(opening.error);
      opening.onsuccess = () => {
        const reading = opening.result.transaction('turns').objectStore('turns').get('now');
        reading.onsuccess = () => {
          opening.result.close();
          done((reading.result as { record: unknown } | undefined)?.record);
        };
      };
    });
    return [
      document.documentElement.outerHTML,
      document.title,
      location.href,
      document.referrer,
      window.name,
      document.cookie,
      JSON.stringify(history.state),
      JSON.stringify({ ...localStorage }),
      JSON.stringify({ ...sessionStorage }),
      JSON.stringify(record),
      copied,
      ...variables,
      ...inline,
    ].join('\n');
  });
  await page.emulateMedia({ media: 'print' });
  const printed = await page.locator('body').innerText();
  await page.emulateMedia({ media: null });
  return [held, printed, ...spoken.flat().map(String)].join('\n');
}

/** What their page shows of the record, as texts. */
export function figuresShown(record: TheirRecord): string[] {
  const shown = shownFrom(record);
  if (!shown?.offer) throw new Error('nothing offered');
  const write = writerFor('en-US', shown.currency, shown.minorDigits);
  const { offer } = shown;
  const now = earned(offer, { shelf: shown.shelf, unitsPerStoreWeek: offer.unitsPerStoreWeek });
  const texts = [write.price(shown.shelf), write.number(offer.unitsPerStoreWeek), ...textsOf(now, write)];
  if (offer.replaced) {
    const replaced = earnedByReplaced(offer.replaced);
    texts.push(...textsOf(replaced, write).filter((text) => text !== ''));
    texts.push(write.priceSigned(now.perStoreWeek - replaced.perStoreWeek));
  }
  return texts;
}

/** The texts that the record may hold, by the fields that are allowed: one more field in it is none of these. */
export function textsAllowed({ shelf, offer }: TheirRecord): string[] {
  const replaced = offer?.replaced;
  return [
    shelf,
    offer?.shelfBeforeTax,
    offer?.buying,
    offer?.marginRate,
    offer?.pennyProfit,
    offer?.unitsPerStoreWeek,
    offer?.perStoreWeek,
    offer?.perFacingWeek,
    offer?.turnsPerYear,
    offer?.gmroi,
    replaced?.shelfBeforeTax,
    replaced?.buying,
    replaced?.marginRate,
    replaced?.pennyProfit,
    replaced?.unitsPerStoreWeek,
    replaced?.perStoreWeek,
  ].flatMap((text) => text ?? []);
}

function textsOf(each: ReturnType<typeof earned>, write: Writer): string[] {
  const text = (value: number | null, as: (value: number) => string) => (value === null ? '' : as(value));
  return [
    write.price(each.buying),
    write.price(each.pennyProfit),
    text(each.marginRate, write.share),
    write.price(each.perStoreWeek),
    text(each.perFacingWeek, write.price),
    text(each.turnsPerYear, write.tenth),
    text(each.gmroi, write.number),
  ].filter((each) => each !== '');
}

export interface Secret {
  what: string;
  text: string;
}

/** What must be nowhere: own figures in each of the app's ways of writing them, and the names of others. */
export function secretsOf({ plan, account, under }: InTalks, itemId: string): Secret[] {
  const look = usLook(under.offer);
  const amounts: [string, Decimal | null | undefined][] = [
    ...ownAmounts(under.offer, account.id, itemId),
    ...(['draft', 'ask'] as const).flatMap((state) => theirAmounts(state, under[state], account.id, itemId)),
  ];
  const rates = ownRates(under.offer, account.id, itemId);
  const names = [
    plan.name,
    plan.lesson,
    ...plan.accounts.filter(({ id }) => id !== account.id).map(({ name }) => name),
    ...account.hands.slice(0, -1).map(({ name }) => name),
    ...[
      'Walk-away',
      'walkAway',
      'landed',
      'contribution',
      'Our margin',
      'net price',
      'distributor',
      'wholesaler',
    ],
  ];
  return [
    ...amounts.flatMap(([what, amount]) => amountTexts(look, amount).map((text) => ({ what, text }))),
    ...rates.flatMap(([what, rate]) => rateTexts(look, rate).map((text) => ({ what, text }))),
    ...[TARGET, WALK_AWAY, '41,235', '7,654.32'].map((text) => ({ what: 'target or walk-away', text })),
    ...names.filter((text) => text !== '').map((text) => ({ what: 'name', text })),
  ];
}

function placeIn(results: Results, accountId: string, itemId: string) {
  const ladder = results.ladders.find((each) => each.accountId === accountId && each.itemId === itemId);
  const deal = results.deals.find((each) => each.accountId === accountId);
  const item = deal?.items.find((each) => each.itemId === itemId);
  if (!ladder || !deal || !item) throw new Error(`no results for ${accountId} and ${itemId}`);
  return { ladder, deal, item };
}

function ownAmounts(results: Results, accountId: string, itemId: string): [string, Decimal | null][] {
  const { ladder, deal, item } = placeIn(results, accountId, itemId);
  const between = ladder.hands.slice(0, -1);
  const isThroughOthers = between.length > 0;
  return [
    ['landed', ladder.landed.unit],
    ['goods', ladder.landed.goods],
    ...ladder.landed.lines.map(({ id, amount }): [string, Decimal] => [`cost line ${id}`, amount]),
    ['net', ladder.net],
    ['contribution', ladder.contribution],
    ['contribution of the deal', item.contributionPerUnit],
    ['contribution a store and week', item.contributionPerStoreWeek],
    ['contribution a year', deal.firstYearContribution],
    ['first year', deal.firstYearAfterFixed],
    ['money down', deal.fixedAmount],
    ['money down a door', deal.moneyDownPerDoor],
    ['break-even rate of sale', item.breakEvenUnitsPerStoreWeek],
    ['penny profit all in', item.retailer.pennyProfitAllIn],
    ...(isThroughOthers
      ? ([
          ['list', ladder.list],
          ['invoice', ladder.invoice],
        ] as [string, Decimal][])
      : []),
    ...between.flatMap(({ id, buys, keeps }): [string, Decimal][] => [
      [`${id} buys`, buys],
      [`${id} keeps`, keeps],
    ]),
  ];
}

/** Of a draft or an ask, what their side would show if it were the offer. */
function theirAmounts(
  state: string,
  results: Results,
  accountId: string,
  itemId: string,
): [string, Decimal][] {
  const { retailer } = placeIn(results, accountId, itemId).item;
  return [
    [`${state}: buying`, retailer.buying],
    [`${state}: penny profit`, retailer.pennyProfit],
    [`${state}: a store a week`, retailer.perStoreWeek],
  ];
}

function ownRates(results: Results, accountId: string, itemId: string): [string, Decimal | null][] {
  const { ladder } = placeIn(results, accountId, itemId);
  return [
    ['contribution rate', ladder.contributionRate],
    ['ladder margin', ladder.ladderMarginRate],
    ...ladder.hands.slice(0, -1).flatMap(({ id, marginRate, markupRate }): [string, Decimal | null][] => [
      [`${id}: margin`, marginRate],
      [`${id}: markup`, markupRate],
    ]),
  ];
}

/** As tags, workings, files and sums write it; what has under two digits after the point only if it is long. */
function amountTexts(look: NumberLook, amount: Decimal | null | undefined): string[] {
  if (!amount || amount.isZero()) return [];
  const size = amount.abs();
  const raw = size.toFixed();
  return [
    format.unitPrice(look, size),
    format.unitPriceExact(look, size),
    format.money(look, size),
    ...(raw.length >= 4 ? [raw] : []),
  ].filter((text) => text.replace(/\D/g, '').length >= 3);
}

function rateTexts(look: NumberLook, rate: Decimal | null): string[] {
  if (rate === null || rate.isZero()) return [];
  const share = format.percent(look, rate);
  const raw = rate.toFixed();
  return [share, share.replace(/\.0(?=\D*$)/, ''), ...(raw.length >= 6 ? [raw] : [])];
}

function usLook({ currency, minorDigits }: Results): NumberLook {
  const look = numberLook({
    partsOf: (value, shape) => new Intl.NumberFormat('en-US', shape).formatToParts(value),
    currency,
    minorDigits,
  });
  return { ...look, percent: { before: '', after: '\u00a0%' } };
}

/** Whether a text is there by itself: a figure never as a part of a longer one. */
export function has(everything: string, { text }: Secret): boolean {
  const escaped = text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\u00a0/g, '(?:\\s|&nbsp;)');
  const figure = /^[\d.,]/.test(text) ? `(?<![\\d.,])${escaped}(?!\\d|[.,]\\d)` : escaped;
  return new RegExp(figure).test(everything);
}
