// One chain's deal: what it asks for before it brings anything, what it brings in the first year, and when that is back.
// Worked figure: 250 a door over 60 doors is 15,000 down; the first year brings 11,793.60 and ends at −3,206.40.
import type { DealResult } from '../deals/types.ts';
import { dec, ZERO } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import { dealItemKey, unitLine } from './deal-item.ts';
import { contributedTo, dealSums, sumWeeks, YEAR_WEEKS } from './deal-sums.ts';
import { fillMarginFigure, loadedFigure } from './deal-units.ts';
import { doorLines, takeLines } from './inputs.ts';
import { paybackFigure, ratioFigure } from './payback.ts';
import { placesOf } from './place.ts';
import type { DealFigure, ExplanationLine, FigureKey } from './types.ts';
import { comingTo, type Draft, exactPrice, moneyText, part, type Scene, sumFormula } from './write.ts';

export interface DealAt {
  scene: Scene;
  account: Account;
  deal: DealResult;
}

/** Null when the plan has no such account. */
export function dealFigure(scene: Scene, accountId: string, figure: DealFigure): Draft | null {
  const account = scene.plan.accounts.find(({ id }) => id === accountId);
  const deal = scene.results.deals.find((each) => each.accountId === accountId);
  if (!account || !deal) return null;
  return FIGURES[figure]({ scene, account, deal });
}

const FIGURES: Record<DealFigure, (at: DealAt) => Draft> = {
  contributionPerStoreWeek: perStoreWeek,
  fixedAmount,
  moneyDownPerDoor,
  paybackWeeks: paybackFigure,
  breakEvenRatio: ratioFigure,
  firstYearContribution,
  firstYearAfterFixed,
  fullyLoadedNetPerUnit: loadedFigure,
  fillMargin: fillMarginFigure,
};

export function dealKey(account: Account, figure: DealFigure): FigureKey {
  return { of: 'deal', accountId: account.id, figure };
}

function perStoreWeek({ scene, account, deal }: DealAt): Draft {
  const lines = placesOf(scene, account).map((place) =>
    part(scene, place.dealItem.contributionPerStoreWeek, {
      label: place.item.name,
      owner: 'ours',
      explains: dealItemKey(place, 'contributionPerStoreWeek'),
    }),
  );
  const amount = deal.contributionPerStoreWeek;
  return {
    title: `Contribution per store and week, ${account.name}`,
    value: moneyText(scene, amount),
    exact: amount.toFixed(),
    meaning: 'What one store of this chain brings us in a week, all its items at their full rate of sale.',
    formula: sumFormula(scene, lines, amount),
    lines,
    caution: null,
  };
}

function fixedLines({ scene, account, deal }: DealAt): ExplanationLine[] {
  return deal.fixedLines.map((each) =>
    part(scene, each.amount, {
      label: each.label,
      reason: each.reason,
      owner: each.owner,
      explains: { of: 'fixedLine', accountId: account.id, lineId: each.id },
    }),
  );
}

function fixedAmount(at: DealAt): Draft {
  const { scene, account, deal } = at;
  const lines = fixedLines(at);
  return {
    title: `Money down, ${account.name}`,
    value: moneyText(scene, deal.fixedAmount),
    exact: deal.fixedAmount.toFixed(),
    meaning: 'What the chain asks for whatever is sold: slotting, fees, free fill at our cost, displays.',
    formula: lines.length === 0 ? 'nothing is put down' : sumFormula(scene, lines, deal.fixedAmount),
    lines: [...lines, ...(lines.length === 0 ? doorLines(scene, account) : [])],
    caution: null,
  };
}

function moneyDownPerDoor(at: DealAt): Draft {
  const { scene, account, deal } = at;
  const amount = deal.moneyDownPerDoor;
  const doors = account.waves.length > 0 ? deal.doors : 0;
  const each = fixedLines(at).map((fixed) =>
    part(
      scene,
      doors === 0
        ? ZERO
        : dec(fixed.adds ?? '0')
            .div(doors)
            .toDecimalPlaces(4),
      {
        label: fixed.label,
        reason: `${fixed.value} over ${scene.say.count(doors)} doors`,
        owner: fixed.owner,
        explains: fixed.explains,
      },
    ),
  );
  const lines = comingTo(scene, amount, each, 'Lines are rounded to 4 decimals');
  return {
    title: `Money down per door, ${account.name}`,
    value: moneyText(scene, amount),
    exact: amount.toFixed(),
    meaning: 'What is put down for one door before it sells anything.',
    formula:
      doors === 0
        ? 'no door is opened: nothing is put down'
        : `${exactPrice(scene, deal.fixedAmount)} ÷ ${scene.say.count(doors)} doors = ${exactPrice(scene, amount)}`,
    lines: [...lines, ...doorLines(scene, account)],
    caution: null,
  };
}

function firstYearContribution({ scene, account, deal }: DealAt): Draft {
  const { items } = dealSums(scene, account);
  const brought = items.flatMap((item) => {
    const { place } = item;
    const taken = sumWeeks(item.taken, YEAR_WEEKS, 4);
    const units = part(scene, contributedTo(item, YEAR_WEEKS).plus(taken), {
      label: place.item.name,
      reason: `${scene.say.number(place.dealItem.firstYearUnits)} units at ${scene.say.price(place.dealItem.contributionPerUnit)}`,
      owner: 'ours' as const,
      explains: dealItemKey(place, 'firstYearUnits'),
    });
    if (taken.isZero()) return [units];
    return [units, dealTakenLine({ scene, account, deal }, place.item.name, taken)];
  });
  const amount = deal.firstYearContribution;
  const lines = comingTo(scene, amount, brought, 'Lines are rounded to 4 decimals');
  return {
    title: `First-year contribution, ${account.name}`,
    value: moneyText(scene, amount),
    exact: amount.toFixed(),
    meaning:
      'What the units scanned in the 52 weeks from the first opening bring us, before the money put down.',
    formula: sumFormula(scene, lines, amount),
    lines: [...lines, ...items.map(({ place }) => unitLine(scene, place)), ...takeLines(scene, account)],
    caution: null,
  };
}

/** Deal weeks' money of one item, as a part taken off. It leads to where the deals are typed. */
function dealTakenLine(
  { scene, account }: DealAt,
  name: string,
  taken: ReturnType<typeof dec>,
): ExplanationLine {
  const path = `accounts/${account.id}/${account.promotions.length > 0 ? 'promotions' : 'allowances'}`;
  return part(scene, taken.negated(), {
    label: `Deals, ${name}`,
    reason: 'Scan-backs, bill-backs and promotions we pay for, in their weeks',
    owner: 'theirs',
    path,
  });
}

function firstYearAfterFixed({ scene, account, deal }: DealAt): Draft {
  const amount = deal.firstYearAfterFixed;
  const putDown = deal.firstYearContribution.minus(amount);
  const lines = [
    part(scene, deal.firstYearContribution, {
      label: 'First-year contribution',
      owner: 'ours',
      explains: dealKey(account, 'firstYearContribution'),
    }),
    part(scene, putDown.negated(), {
      label: 'Money down within that year',
      owner: 'theirs',
      explains: dealKey(account, 'fixedAmount'),
    }),
  ];
  return {
    title: `First year after money down, ${account.name}`,
    value: moneyText(scene, amount),
    exact: amount.toFixed(),
    meaning: 'Where this chain stands after 52 weeks from the first opening.',
    formula: sumFormula(scene, lines, amount),
    lines,
    caution: null,
  };
}
