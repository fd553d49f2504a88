// Whether shoppers find what they want: fill rate, units lost and from when, units no capacity takes, single shelves that
// run dry where the pooled count doesn't show it, and stock that stands too long. All in words.
// Worked figure: 900 of 18,000 wanted units lost from week 14 on: a fill rate of 95 %.
import type { VNode } from 'preact';
import type { Plan } from '../../domain/plan/index.ts';
import type { Results } from '../../domain/results.ts';
import { emptyShelfRisks } from '../../domain/rollout/flags.ts';
import { Figure } from '../../widgets/index.ts';
import { Figures, Fold } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';

export interface ShelvesProps {
  plan: Plan;
  results: Results;
  older: boolean;
}

/** Weeks of sales that our own stock may reach before it is flagged. */
const STOCK_WEEKS_MOST = 26;

export function Shelves({ plan, results, older }: ShelvesProps): VNode {
  const say = useSay();
  const why = useWhy();
  const { fillRate, lostUnits, demandUnits, soldUnits } = results.reading;
  const fig = (
    label: string,
    value: string,
    figure: 'fillRate' | 'lostUnits' | 'demandUnits' | 'soldUnits',
  ) => <Figure label={label} value={value} older={older} whereFrom={why({ of: 'cash', figure })} />;
  return (
    <>
      <Figures>
        {fig('Fill rate', fillRate === null ? 'not known' : say.percent(fillRate), 'fillRate')}
        {fig('Units lost', say.count(lostUnits), 'lostUnits')}
        {fig('Wanted', say.count(demandUnits), 'demandUnits')}
        {fig('Sold', say.count(soldUnits), 'soldUnits')}
      </Figures>
      <ul class="ff-said">
        {shelfSentences(plan, results, say).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <SingleDoors plan={plan} />
    </>
  );
}

/** The count is over all doors; some of them may run dry all the same, each said in a sentence one tap away. */
function SingleDoors({ plan }: { plan: Plan }): VNode | null {
  const say = useSay();
  const risks = emptyShelfRisks(plan);
  if (risks.length === 0) return null;
  return (
    <Fold label="Single doors may still run empty" value={say.count(risks.length)}>
      <ul class="ff-said ff-least">
        {risks.map(({ sentence }) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Fold>
  );
}

/** What there is to say, the gravest first. */
function shelfSentences(plan: Plan, results: Results, say: ScreenSay): string[] {
  const { reading, pass } = results;
  const sentences: string[] = [];
  if (reading.demandUnits === 0) sentences.push('No door sells anything in these weeks: add an opening.');
  else if (reading.lostUnits === 0)
    sentences.push('All doors together have every unit that shoppers want in these weeks.');
  else sentences.push(...lostSentences(plan, results, say));
  pass.unplacedUnits.forEach((units, index) => {
    if (units === 0) return;
    sentences.push(
      `${say.count(units)} units of ${plan.items[index]?.name ?? 'a product'} are never ordered: no capacity within reach takes them.`,
    );
  });
  const { mostStockWeeks } = reading;
  if (mostStockWeeks !== null && mostStockWeeks > STOCK_WEEKS_MOST) {
    sentences.push(
      `Our own stock reaches ${say.count(Math.round(mostStockWeeks))} weeks of shipments at its highest, past ${STOCK_WEEKS_MOST}: look at the smallest order and the batch.`,
    );
  }
  return sentences;
}

function lostSentences(plan: Plan, { reading, pass }: Results, say: ScreenSay): string[] {
  const { firstLostWeek, lostUnits } = reading;
  const first = firstLostWeek === null ? '' : ` The first shelf is empty in ${say.week(firstLostWeek)}.`;
  const chains = pass.accounts.flatMap(({ lost }, index) => {
    const units = lost.reduce((sum, value) => sum + value, 0);
    return units === 0 ? [] : [`${plan.accounts[index]?.name ?? 'a chain'} ${say.count(units)}`];
  });
  const where = chains.length > 1 ? ` By chain: ${chains.join(', ')}.` : '';
  const one = lostUnits === 1;
  return [`${say.count(lostUnits)} ${one ? 'unit is' : 'units are'} wanted and not there.${first}${where}`];
}
