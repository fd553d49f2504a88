// What one offer comes to: lowest cash with its week, what it covers, what the funder is paid and makes of it, what it costs
// a unit, what the founder keeps. Worked figure: 100,000 in, 150,000 paid: 1.5 times.
import type { VNode } from 'preact';
import { Figure, ProblemNote } from '../../widgets/index.ts';
import { Figures } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import type { ShownOffer } from './model.ts';
import {
  carriesWords,
  coverWords,
  perUnitWords,
  rangeWords,
  returnWords,
  timesWords,
  whenWords,
} from './words.ts';

export function OfferFigures({ at, minorDigits }: { at: ShownOffer; minorDigits: number }): VNode {
  const say = useSay();
  const why = useWhy();
  const { result } = at;
  const { id: offerId, founder } = result;
  const paysBack = returnWords(result, say);
  return (
    <>
      <Figures>
        <Figure
          label="Lowest cash"
          value={say.money(result.lowestCash)}
          note={say.week(result.lowestWeek)}
          whereFrom={why({ of: 'offer', offerId, figure: 'lowestCash' })}
        />
        <Figure
          label="Paid to them in total"
          value={say.money(result.totalPaid)}
          note={paidNote(at, say)}
          whereFrom={why({ of: 'offer', offerId, figure: 'totalPaid' })}
        />
        <Figure
          label="We keep at the end"
          value={say.money(founder.amount)}
          note={`${say.percent(founder.rate)} of the company`}
          whereFrom={why({ of: 'offer', offerId, figure: 'founderAmount' })}
        />
        <Figure
          label="They make"
          value={paysBack.value}
          note={paysBack.note}
          whereFrom={why({ of: 'offer', offerId, figure: 'return' })}
        />
        <Figure
          label="Of their money"
          value={timesWords(result.multiple, say)}
          note="comes back to them"
          whereFrom={result.multiple === null ? undefined : why({ of: 'offer', offerId, figure: 'multiple' })}
        />
        <Figure
          label="Costs a unit"
          value={perUnitWords(result, minorDigits, say)}
          note="sold in the plan’s weeks"
          whereFrom={result.perUnit === null ? undefined : why({ of: 'offer', offerId, figure: 'perUnit' })}
        />
      </Figures>
      <ul class="ff-said" aria-label="What it covers">
        {sentences(at, say).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {at.drawn !== null && (
        <p class="ff-least ff-quiet">
          P50, P80, P95: the cash need that 50, 80, 95 of 100 futures don’t pass.
        </p>
      )}
      <NeverComes at={at} />
    </>
  );
}

function sentences(at: ShownOffer, say: ScreenSay): string[] {
  const { result } = at;
  return [coverWords(result, say), rangeWords(at, say), carriesWords(result, say)].filter(
    (each) => each !== '',
  );
}

/** What of it is paid by date, and what at the sale. */
function paidNote({ result }: ShownOffer, say: ScreenSay): string | undefined {
  if (result.totalPaid === 0) return undefined;
  const atSale = result.settles + result.payout;
  return atSale === 0 ? 'all of it by date' : `${say.money(atSale)} of it when the company is sold`;
}

/** Money that the plan never reaches, and rounds that can't happen: said, since they change every figure. */
function NeverComes({ at: { result } }: { at: ShownOffer }): VNode | null {
  const say = useSay();
  const plan = usePlan();
  const rounds = plan.ownership.rounds.filter(({ id }) => result.failedRounds.includes(id));
  if (result.never.length === 0 && rounds.length === 0) return null;
  return (
    <ProblemNote>
      {result.never.map(({ partId, trancheId, amount, condition }) => (
        <p key={`${partId} ${trancheId}`}>
          {/* What is advanced by the bill has no amount of its own. */}
          {trancheId === ''
            ? 'It never begins: it was to'
            : `${say.money(amount)} never comes: it was to come`}{' '}
          {whenWords(condition, plan, say)}, and the plan does not get there.
        </p>
      ))}
      {rounds.map(({ id, label }) => (
        <p key={id}>
          {label} does not happen: what turns into shares at it, and its option pool, would take all it is
          priced at.
        </p>
      ))}
    </ProblemNote>
  );
}
