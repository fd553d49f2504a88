// One line of the money a deal asks for whatever is sold: what was typed, for how many, and what a free unit costs us.
// Worked figure: slotting of 250 a door for 60 doors is 15,000.
import type { FixedLine } from '../deals/types.ts';
import { dec } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import type { Account } from '../plan/index.ts';
import { wayOutLines } from './deal-risk.ts';
import { fillLines } from './deal-units.ts';
import { countLine, doorLines } from './inputs.ts';
import { listingLine, type Place, placesOf, stepKey } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactPercent, exactPrice, line, moneyText, type Scene, typed } from './write.ts';

/** Null when the deal has no such line. */
export function fixedLineFigure(scene: Scene, accountId: string, lineId: string): Draft | null {
  const account = scene.plan.accounts.find(({ id }) => id === accountId);
  const deal = scene.results.deals.find((each) => each.accountId === accountId);
  const found = deal?.fixedLines.find(({ id }) => id === lineId);
  if (!account || !found) return null;
  return {
    title: `${found.label}, ${account.name}`,
    value: moneyText(scene, found.amount),
    exact: found.amount.toFixed(),
    meaning: meaningOf(found.id, account),
    formula: `${found.reason} = ${exactPrice(scene, found.amount)}`,
    lines: linesOf(scene, account, found),
    caution: null,
  };
}

const FREE_FILL = 'free-fill-';
const DISPLAY_FIELDS = {
  'display-build': 'buildAmountPerDoor',
  'display-freight': 'freightAmountPerDoor',
  'display-fees': 'feeAmountPerStoreWeek',
} as const;

function isDisplay(id: string): id is keyof typeof DISPLAY_FIELDS {
  return Object.hasOwn(DISPLAY_FIELDS, id);
}

function meaningOf(id: string, account: Account): string {
  if (account.openingFees.some((fee) => fee.id === id))
    return 'A fee the chain takes for listing or opening.';
  if (id === 'slotting') return 'What the chain takes for a place on its shelf, whatever is sold.';
  if (id.startsWith(FREE_FILL))
    return 'Cases of the opening fill that the chain does not pay for, at what they cost us.';
  return 'A stand of our own in the store: what it costs to build, to bring there and to keep standing.';
}

function linesOf(scene: Scene, account: Account, { id }: FixedLine): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const fee = account.openingFees.find((each) => each.id === id);
  if (fee) return askedLines(scene, account, { ...fee, path: `${path}/openingFees/${id}` });
  if (id === 'slotting' && account.slotting) {
    return askedLines(scene, account, { ...account.slotting, path: `${path}/slotting` });
  }
  if (id.startsWith(FREE_FILL)) {
    const place = placesOf(scene, account).find(({ item }) => item.id === id.slice(FREE_FILL.length));
    return place ? freeFillLines(scene, place) : [];
  }
  return isDisplay(id) ? displayLines(scene, account, DISPLAY_FIELDS[id]) : [];
}

const PER_WORDS = {
  item: 'An item',
  door: 'A door',
  chain: 'Once for the chain',
  itemDoor: 'An item and door',
};

function askedLines(
  scene: Scene,
  account: Account,
  asked: { amount: string; per: keyof typeof PER_WORDS; path: string },
): ExplanationLine[] {
  const amount = typed(scene, `${asked.path}/amount`, {
    label: PER_WORDS[asked.per],
    value: exactPrice(scene, kept(asked.amount)),
    owner: 'theirs',
  });
  const perItem = asked.per === 'item' || asked.per === 'itemDoor';
  const perDoor = asked.per === 'door' || asked.per === 'itemDoor';
  const items = countLine(scene, `accounts/${account.id}/listings`, 'Items listed', account.listings.length);
  return [amount, ...(perItem ? [items] : []), ...(perDoor ? doorLines(scene, account) : [])];
}

function freeFillLines(scene: Scene, place: Place): ExplanationLine[] {
  const { account } = place;
  const billed =
    account.freeFill.settled === 'billedBack'
      ? [
          typed(scene, `accounts/${account.id}/freeFill/settled`, {
            label: 'Billed back by the distributor',
            value: exactPrice(scene, dec(place.ladder.forPass.firstHandSellsTenThousandths).div(10_000)),
            reason: 'At its selling price, less the invoice it paid us',
            owner: 'between',
          }),
          listingLine(scene, place, 'invoice'),
        ]
      : [];
  return [
    ...fillLines(scene, place),
    listingLine(scene, place, 'landed'),
    ...wayOutLines(scene, place),
    ...freeGoodsLines(scene, place),
    ...billed,
    ...doorLines(scene, account),
  ];
}

/** Broker and royalty, where they are owed on free goods too. */
function freeGoodsLines(scene: Scene, place: Place): ExplanationLine[] {
  return place.ladder.steps
    .filter(({ id }) =>
      place.account.allowances.some(
        (terms) => terms.id === id && 'onFreeGoods' in terms && terms.onFreeGoods,
      ),
    )
    .map((step) =>
      line({
        label: `${step.label}, on free goods too`,
        value: exactPrice(scene, step.amount),
        reason: step.reason,
        owner: step.owner,
        explains: stepKey(place, step.id),
      }),
    );
}

function displayLines(
  scene: Scene,
  account: Account,
  field: (typeof DISPLAY_FIELDS)[keyof typeof DISPLAY_FIELDS],
): ExplanationLine[] {
  const { display } = account;
  if (!display) return [];
  const path = `accounts/${account.id}/display`;
  const amount = typed(scene, `${path}/${field}`, {
    label: field === 'feeAmountPerStoreWeek' ? 'A store and week' : 'A door',
    value: exactPrice(scene, kept(display[field])),
    owner: field === 'buildAmountPerDoor' ? 'atRisk' : 'theirs',
  });
  if (field !== 'feeAmountPerStoreWeek') return [amount, ...doorLines(scene, account)];
  return [
    amount,
    countLine(scene, `${path}/weeks`, 'Weeks it stands', display.weeks),
    ...doorLines(scene, account),
    typed(scene, `accounts/${account.id}/attritionYearlyRate`, {
      label: 'Doors lost in a year',
      value: exactPercent(scene, kept(account.attritionYearlyRate)),
    }),
  ];
}
