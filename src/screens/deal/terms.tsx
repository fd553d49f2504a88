// Every term of one chain, in groups that say what stands in them and open to be typed over in place.
// Worked example: "Money down" closed says "180 a door, 1 free case"; opened it has slotting, fees, display and term.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { SECTION_TITLES, Section } from '../inputs/section.tsx';
import { Fold, Part } from '../ladder/parts.tsx';
import type { ChainSection } from '../shared/input-places.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { ShownDeal } from './column.tsx';

type Summary = (at: ShownDeal, say: ScreenSay) => string;

const PER: Record<'item' | 'door' | 'chain' | 'itemDoor', string> = {
  item: 'a product',
  door: 'a door',
  chain: 'the chain',
  itemDoor: 'a product and door',
};

const GROUPS: readonly { section: ChainSection; summary: Summary }[] = [
  { section: 'openings', summary: doorsWords },
  { section: 'listings', summary: ratesWords },
  { section: 'moneyDown', summary: moneyDownWords },
  { section: 'terms', summary: termsWords },
  { section: 'allowances', summary: allowancesWords },
  { section: 'hands', summary: handsWords },
  {
    section: 'promotions',
    summary: ({ account }, say) => countWords(account.promotions.length, 'promotion', say),
  },
];

export function DealTerms({ at }: { at: ShownDeal }): VNode {
  const say = useSay();
  const { plan, account } = at;
  const ladder = hashOf({
    view: 'ladder',
    planId: plan.id,
    accountId: account.id,
    itemId: null,
    sheet: null,
  });
  return (
    <Part title="Terms">
      <div>
        {GROUPS.map(({ section, summary }) => (
          <Fold key={section} label={SECTION_TITLES[section]} value={summary(at, say)}>
            <Section place={{ of: 'chain', section, id: account.id }} />
          </Fold>
        ))}
      </div>
      <p>
        <a class="ff-link" href={ladder}>
          {account.name} on the ladder
        </a>
      </p>
    </Part>
  );
}

function doorsWords({ account }: ShownDeal, say: ScreenSay): string {
  const doors = account.waves.reduce((sum, wave) => sum + wave.doors, 0);
  const running = account.runningDoors.reduce((sum, group) => sum + group.doors, 0);
  const first =
    account.waves.length === 0 ? null : Math.min(...account.waves.map(({ openWeek }) => openWeek));
  const parts = [
    running > 0 ? `${say.count(running)} already sell` : '',
    first === null ? '' : `${say.count(doors)} from ${say.week(first)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'none yet' : parts.join(', ');
}

function ratesWords({ account, deal }: ShownDeal, say: ScreenSay): string {
  const rates = listWords(deal.items.map((item) => say.number(item.unitsPerStoreWeek)));
  const ramp = account.ramp.weeks === 0 ? '' : `, full in week ${account.ramp.weeks}`;
  return `${rates} a store a week${ramp}`;
}

/** "12 and 7": a comma between numbers would read as a decimal mark. */
function listWords(texts: readonly string[]): string {
  return texts.join(' and ');
}

function moneyDownWords({ account }: ShownDeal, say: ScreenSay): string {
  const { slotting, openingFees, display } = account;
  const free = Math.max(0, ...account.listings.map(({ freeCasesPerDoor }) => freeCasesPerDoor));
  const parts = [
    slotting === null ? '' : `${say.sum(slotting.amount)} ${PER[slotting.per]}`,
    free === 0 ? '' : `${countWords(free, 'free case', say)}`,
    openingFees.length === 0 ? '' : countWords(openingFees.length, 'fee', say),
    display === null ? '' : 'a display',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

function termsWords({ account: { terms, sale } }: ShownDeal, say: ScreenSay): string {
  const late = terms.latenessDays === 0 ? '' : `, ${say.count(terms.latenessDays)} late`;
  const kind = { shipment: '', guaranteed: ', guaranteed sale', scan: ', pay on scan' }[sale.by];
  return `${say.count(terms.paymentDays)} days${late}${kind}`;
}

function allowancesWords({ account, results }: ShownDeal, say: ScreenSay): string {
  const ladder = results.ladders.find(({ accountId }) => accountId === account.id);
  const count = countWords(account.allowances.length, 'line', say);
  return ladder ? `${count}, trade rate ${say.percent(ladder.tradeRate)}` : count;
}

function handsWords({ account, results }: ShownDeal, say: ScreenSay): string {
  const ladder = results.ladders.find(({ accountId }) => accountId === account.id);
  const last = ladder?.hands.at(-1);
  const between = account.hands.length - 1;
  const route = between === 0 ? 'direct' : `${countWords(between, 'hand', say)} between`;
  return last ? `${route}, margin ${say.percent(last.marginRate)}` : route;
}

function countWords(count: number, noun: string, say: ScreenSay): string {
  if (count === 0) return 'none';
  return `${say.count(count)} ${noun}${count === 1 ? '' : 's'}`;
}
