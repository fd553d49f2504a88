// What is read off the weeks: need, buffer, what is left at the end, how long money is bound, and what runs short first.
// Worked figure: 41 days of stock and 57 of receivables less 14 of payables bind money for 84 days.
import type { VNode } from 'preact';
import type { CashFigure } from '../../domain/explain/types.ts';
import { Figure } from '../../widgets/index.ts';
import { Shelves } from '../roll-out/shelves.tsx';
import { Figures } from '../shared/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';

export function CashFigures({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const why = useWhy();
  const { results, older } = shown;
  const { reading } = results;
  const fig = (label: string, value: string, figure: CashFigure, note?: string) => (
    <Figure label={label} value={value} note={note} older={older} whereFrom={why({ of: 'cash', figure })} />
  );
  const needWeek = reading.cashNeedWeek;
  const back = reading.backAboveOpeningWeek;
  return (
    <Figures>
      {fig('Lowest cash', say.money(reading.lowestCash), 'lowestCash', say.week(reading.lowestWeek))}
      {fig(
        'More cash needed',
        say.money(reading.cashNeed),
        'cashNeed',
        needWeek === null ? 'without new funding' : `by ${say.week(needWeek)}, without new funding`,
      )}
      {fig('Depth from zero', say.money(reading.depthFromZero), 'depthFromZero', 'were there no cash at all')}
      {fig('Buffer', say.money(reading.bufferAmount), 'bufferAmount')}
      {fig('Back at the opening', back === null ? 'not seen' : `week ${back}`, 'backAboveOpeningWeek')}
      {fig('Cash at the end', say.money(reading.endCash), 'endCash')}
    </Figures>
  );
}

/** Days that money is bound, over the last 91 days. */
export function DaysFigures({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const why = useWhy();
  const { reading } = shown.results;
  const days: readonly [label: string, value: number | null, figure: CashFigure][] = [
    ['Stock', reading.daysInventory, 'daysInventory'],
    ['Receivables', reading.daysReceivable, 'daysReceivable'],
    ['Payables', reading.daysPayable, 'daysPayable'],
    ['Cash cycle', reading.cashCycleDays, 'cashCycleDays'],
  ];
  return (
    <>
      <Figures>
        {days.map(([label, value, figure]) => (
          <Figure
            key={figure}
            label={label}
            value={value === null ? 'not known' : say.count(Math.round(value))}
            unit={value === null ? undefined : 'days'}
            older={shown.older}
            whereFrom={why({ of: 'cash', figure })}
          />
        ))}
      </Figures>
      <p class="ff-least ff-quiet">Over the last 91 days: stock and receivables less payables.</p>
      <Shelves plan={shown.plan} results={shown.results} older={shown.older} />
    </>
  );
}
