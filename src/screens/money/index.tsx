// Money: which offer costs least, in which future? Offers as rows that open on a phone, as columns beside each other on a
// desk; each typed and stepped where it stands; two against each other below, with the places where the better one changes.
// Worked example: three offers heard are three taps on their kinds, and their numbers typed.
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Disclosure, EmptyState, useWide, WhereFrom } from '../../widgets/index.ts';
import { CashRange } from '../cash/range.tsx';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { Fold, Part, useRemoval, Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy, View } from '../shared/view.tsx';
import { Against } from './against.tsx';
import { bestWords } from './best-words.ts';
import { type MoneyModel, type ShownOffer, shownOffers, useDrawing, useMoney } from './model.ts';
import { NewOffer } from './new-offer.tsx';
import { bodyId, OfferBody } from './offer-body.tsx';
import { OwnershipPart } from './ownership.tsx';
import { SideBySide } from './side-by-side.tsx';
import { kindWords } from './words.ts';
import './money.css';

export function MoneyScreen(): VNode {
  const shown = useShown();
  return (
    <View title="Money" verdict={null}>
      {shown !== null && (
        <Whole older={shown.older}>
          <MoneyParts shown={shown} />
        </Whole>
      )}
    </View>
  );
}

function MoneyParts({ shown }: { shown: Shown }): VNode {
  const wide = useWide();
  const model = useMoney(shown);
  useDrawing();
  const removal = useRemoval();
  const [added, setAdded] = useState<string | null>(null);
  useAmountReady(added);
  const offers = shownOffers(model);
  const body = (at: ShownOffer) => <OfferBody model={model} at={at} onRemove={removal.remove} />;
  return (
    <>
      <Need shown={shown} />
      {offers.length > 0 && (
        <Fold label="What the plan needs in other futures">
          <CashRange />
        </Fold>
      )}
      {offers.length === 0 && (
        <EmptyState title="No offer yet. Tap what is offered, and type its numbers: what it costs, and what it leaves you, stands beside every other." />
      )}
      {offers.length > 1 && (
        <>
          <Best model={model} />
          <div class="ff-money-side">
            <SideBySide model={model} />
          </div>
        </>
      )}
      <div class={wide ? 'ff-money-columns' : ''}>
        {offers.map((at) =>
          wide ? (
            <Part key={at.offer.id} title={at.offer.name}>
              {kindWords(at.offer.parts) !== at.offer.name && (
                <p class="ff-quiet">{kindWords(at.offer.parts)}</p>
              )}
              {body(at)}
            </Part>
          ) : (
            <Disclosure key={at.offer.id} open={at.offer.id === added} summary={<Row at={at} />}>
              {body(at)}
            </Disclosure>
          ),
        )}
      </div>
      {removal.note}
      <div class="ff-money-new">
        <NewOffer onAdded={setAdded} />
      </div>
      {offers.length > 1 && <Against model={model} />}
      <OwnershipPart />
      <CautionsFor place="money" accountId={null} />
    </>
  );
}

/** What the plan needs without any of them, that all are judged by. */
function Need({ shown: { results } }: { shown: Shown }): VNode {
  const say = useSay();
  const why = useWhy();
  const { cashNeed, cashNeedWeek } = results.reading;
  return (
    <p class="ff-sentence">
      {cashNeedWeek === null ? (
        'This plan needs no new money: its cash stays above zero without any.'
      ) : (
        <>
          Without new money the plan needs{' '}
          <WhereFrom open={why({ of: 'cash', figure: 'cashNeed' })}>{say.money(cashNeed)}</WhereFrom> by{' '}
          {say.week(cashNeedWeek)}.
        </>
      )}{' '}
      <span class="ff-quiet">Offers change no figure of the plan until one is taken over under Funding.</span>
    </p>
  );
}

/** The answer first: which costs least, on the plan and in other futures. */
function Best({ model }: { model: MoneyModel }): VNode {
  const say = useSay();
  return (
    <ul class="ff-said" aria-label="Which costs least">
      {bestWords(model, say).map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  );
}

/** A phone's row: name, kind, and the three figures that tell offers apart. */
function Row({ at: { offer, result } }: { at: ShownOffer }): VNode {
  const say = useSay();
  const kind = kindWords(offer.parts);
  const figures = [
    ['Lowest cash', say.money(result.lowestCash)],
    ['Paid in total', say.money(result.totalPaid)],
    ['We keep', say.money(result.founder.amount)],
  ] as const;
  return (
    <span class="ff-money-row">
      <span class="ff-money-name">{offer.name}</span>
      {kind !== offer.name && <span class="ff-money-kind ff-least ff-quiet">{kind}</span>}
      {figures.map(([label, value]) => (
        <span key={label} class="ff-money-figure">
          <span class="ff-least ff-quiet">{label}</span>
          <span class="ff-number">{value}</span>
        </span>
      ))}
    </span>
  );
}

/** The new offer's amount waits for what is being said: focused, and what is in it selected. */
function useAmountReady(added: string | null): void {
  useEffect(() => {
    if (added === null) return undefined;
    const timer = setTimeout(() => {
      const input = document
        .getElementById(bodyId(added))
        ?.querySelector<HTMLInputElement>('input[type="text"]');
      input?.focus();
      input?.select();
    }, 0);
    return () => clearTimeout(timer);
  }, [added]);
}
