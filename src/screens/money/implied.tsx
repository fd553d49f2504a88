// What an ask for a part says the company is worth by this plan, and what the plan must do for the funder to make what it
// wants; what the offer's cost a unit does to each ladder and deal.
// Worked figure: 100,000 for 20 % is 500,000, 2 times a year's sales of 250,000.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { dec } from '../../domain/money/decimal.ts';
import { onDeals } from '../../domain/offers/index.ts';
import { Table, type TableColumn } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { MoneyModel, ShownOffer } from './model.ts';
import { timesWords } from './words.ts';

export function ImpliedWorth({ at }: { at: ShownOffer }): VNode {
  const say = useSay();
  if (at.implied.length === 0) {
    return (
      <p class="ff-quiet">
        No part of this offer buys shares at a price or under a cap, so it says nothing of what the company is
        worth.
      </p>
    );
  }
  return (
    <ul class="ff-said">
      {at.implied.flatMap((each) => [
        <li key={each.partId}>{askWords(each, say)}</li>,
        <li key={`${each.partId} times`}>{multiplesWords(each, say)}</li>,
        <li key={`${each.partId} needed`}>{neededWords(each, say)}</li>,
      ])}
    </ul>
  );
}

type Implied = ShownOffer['implied'][number];

function askWords({ by, amount, partRate, preMoney, postMoney }: Implied, say: ScreenSay): string {
  const [before, after] = [say.money(Math.round(preMoney)), say.money(Math.round(postMoney))];
  if (by === 'price') {
    return `${say.money(amount)} for ${say.percent(partRate)}: the company at ${before} before the money, ${after} after it.`;
  }
  return `${say.money(amount)} under the cap, without its interest, is ${say.percent(partRate)} at least: the company at no more than ${before} before the money, ${after} after it.`;
}

function multiplesWords(
  { timesRunRate, timesPlanRevenue, timesPlanProfit }: Implied,
  say: ScreenSay,
): string {
  const parts = [
    timesRunRate === null ? null : `${timesWords(timesRunRate, say)} a year of today’s sales`,
    timesPlanRevenue === null
      ? null
      : `${timesWords(timesPlanRevenue, say)} the plan’s last year of net sales`,
    timesPlanProfit === null
      ? 'no multiple of profit, since the plan’s last year makes none'
      : `${timesWords(timesPlanProfit, say)} its profit`,
  ].filter((each) => each !== null);
  const said = parts.join(', ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
}

function neededWords(
  { wantedYearlyRate, salePriceNeeded, timesRevenueNeeded }: Implied,
  say: ScreenSay,
): string {
  const wanted = say.percent(wantedYearlyRate);
  if (salePriceNeeded === null) return `No sale price within reach makes them ${wanted} a year.`;
  const times =
    timesRevenueNeeded === null ? '' : `, ${timesWords(timesRevenueNeeded, say)} the last year’s net sales`;
  return `To make ${wanted} a year they need the company sold for ${say.money(Math.round(salePriceNeeded))}${times}.`;
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'what', label: 'Where', kind: 'text' },
  { key: 'before', label: 'Without', kind: 'number' },
  { key: 'after', label: 'With', kind: 'number' },
];

/** Contribution a unit of each product, and each chain's first year, with the offer's cost as one more cost of a unit. */
export function OnLadders({ model, at }: { model: MoneyModel; at: ShownOffer }): VNode {
  const say = useSay();
  const { plan, results } = model;
  const { perUnit, name } = at.result;
  const found = useMemo(
    () => (perUnit === null || perUnit === 0 ? null : onDeals(plan, results, perUnit)),
    [plan, results, perUnit],
  );
  if (perUnit === null) {
    return <p class="ff-quiet">Nothing is sold in the plan’s weeks that it could be a cost of.</p>;
  }
  if (perUnit === 0) return <p class="ff-quiet">It costs nothing by the unit within the plan’s weeks.</p>;
  if (found === null)
    return <p class="ff-quiet">With this cost on each unit the ladders can’t be computed.</p>;
  const chain = (id: string) => plan.accounts.find((account) => account.id === id)?.name ?? id;
  const item = (id: string) => plan.items.find((each) => each.id === id)?.name ?? id;
  const rows = [
    ...found.ladders.map((ladder) => ({
      id: `${ladder.accountId} ${ladder.itemId}`,
      cells: [
        `${item(ladder.itemId)} at ${chain(ladder.accountId)}, contribution a unit`,
        say.price(dec(ladder.contribution)),
        say.price(dec(ladder.contributionWith)),
      ],
    })),
    ...found.deals.flatMap((deal) => [
      {
        id: `${deal.accountId} year`,
        cells: [`${chain(deal.accountId)}, first year`, say.sum(deal.firstYear), say.sum(deal.firstYearWith)],
      },
      {
        id: `${deal.accountId} back`,
        cells: [
          `${chain(deal.accountId)}, pays back`,
          backWords(deal.paybackWeeks, say),
          backWords(deal.paybackWeeksWith, say),
        ],
      },
    ]),
  ];
  return (
    <Table
      caption={`Ladders and deals with ${name}`}
      captionHidden
      compact
      bounded
      columns={COLUMNS}
      rows={rows}
    />
  );
}

function backWords(weeks: number | null, say: ScreenSay): string {
  return weeks === null ? 'not in its term' : `week ${say.count(Math.ceil(weeks))}`;
}
