// Offers that are no price, each valued by the model, and what it would cost to give the other chains the same term.
// Worked example: "A test first ... +1,200 at the first review"; "Slotting 250 for the other two: 5,300 a year".
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { BesideMeasure, BesideOffer } from '../../domain/talks/beside-types.ts';
import { matchCost } from '../../domain/talks/match.ts';
import { SelectField, Table, type TableColumn } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { problemSentence } from '../shared/problem-words.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { termWords, upper, valueText } from './term-words.ts';
import { money, moneySigned } from './verdict-words.ts';
import type { Work } from './work.ts';

const MEASURE_WORDS: Record<BesideMeasure, string> = {
  firstYear: 'in the first year',
  atReview: 'at the first review',
  aYear: 'a year',
  cashNeed: 'less cash needed',
  endCash: 'of cash at the end',
};

export function Beside({ model, work }: { model: TalksModel; work: Work }): VNode {
  const say = useSay();
  const { droppedAtReview, reviewedAfterWeeks } = model.figures;
  return (
    <div class="ff-stack">
      <p>
        Dropped at the first review, week {reviewedAfterWeeks}:{' '}
        <strong class="ff-number">{moneySigned(droppedAtReview, say)}</strong>. What keeps us on the shelf is
        weighed against that.
      </p>
      <Offers model={model} work={work} say={say} />
      <Part title="The same for the other chains">
        <Match model={model} say={say} />
      </Part>
    </div>
  );
}

function Offers({ model, work, say }: { model: TalksModel; work: Work; say: ScreenSay }): VNode {
  const [told, setTold] = useState<{ offers: readonly BesideOffer[]; trouble: string } | null>(null);
  useEffect(() => {
    let gone = false;
    const job = {
      kind: 'beside',
      plan: model.drafted,
      accountId: model.account.id,
      reviewWeeks: model.table.reviewWeeks,
    } as const;
    void work.computer.run(job).answer.then((answer) => {
      if (gone || answer === null) return;
      setTold(answer.ok ? { offers: answer.value, trouble: '' } : { offers: [], trouble: answer.trouble });
    });
    return () => {
      gone = true;
    };
  }, [work.key]);
  if (told === null) return <p class="ff-quiet">Working it out …</p>;
  if (told.trouble !== '') return <p>{told.trouble}</p>;
  return (
    <ul class="ff-talks-offers">
      {told.offers.map((offer) => (
        <li key={offer.id} class="ff-talks-beside-offer">
          <h3>{offer.label}</h3>
          <span class="ff-number ff-label">
            {offer.value === null
              ? 'not known'
              : `${moneySigned(offer.value, say)} ${MEASURE_WORDS[offer.measure]}`}
          </span>
          <p class="ff-talks-offer-terms">{offer.what}</p>
          {offer.lines.length > 0 && (
            <ul class="ff-talks-lines ff-least">
              {offer.lines.map((line) => (
                <li key={line.label}>
                  <span>{line.label}</span>
                  <span class="ff-number">{moneySigned(line.amount, say)}</span>
                </li>
              ))}
            </ul>
          )}
          {offer.assumed !== null && (
            <p class="ff-least ff-quiet ff-talks-offer-terms">Assumed: {offer.assumed}</p>
          )}
        </li>
      ))}
    </ul>
  );
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'chain', label: 'Chain', kind: 'text' },
  { key: 'now', label: 'Now', kind: 'number' },
  { key: 'cost', label: 'Costs, first year', kind: 'number' },
];

function Match({ model, say }: { model: TalksModel; say: ScreenSay }): VNode {
  const { plan, account, drafted, inPlay, draft } = model;
  const moved = inPlay.filter(({ name }) => name !== 'doors');
  const first = moved.find(({ name }) => draft[name] !== undefined) ?? moved[0];
  const [chosen, setChosen] = useState(first?.name ?? '');
  const term = moved.find(({ name }) => name === chosen) ?? first;
  if (plan.accounts.length < 2) return <p>There is no other chain in this plan.</p>;
  if (term === undefined) return <p>No term in play could be given to another chain too.</p>;
  const match = matchCost(drafted, account.id, term.name);
  const choices = moved.map((each) => ({ value: each.name, label: upper(termWords(each, each.value, say)) }));
  return (
    <div class="ff-stack">
      <SelectField label="Term" value={term.name} choices={choices} onChoose={setChosen} />
      {match.ok ? (
        <Table
          caption={`The same for the other chains would cost ${money(match.value.total, say)} in their first year.`}
          columns={COLUMNS}
          rows={match.value.lines.map((line) => ({
            id: line.accountId,
            cells: [
              line.name,
              line.now === null ? '·' : valueText(term, line.now, say),
              line.cost === null || line.why !== '' ? (
                <span class="ff-talks-why">{line.why === '' ? 'not known' : line.why}</span>
              ) : (
                money(line.cost, say)
              ),
            ],
          }))}
        />
      ) : (
        <p>{match.problems.map((problem) => problemSentence(plan, problem)).join(' ')}</p>
      )}
    </div>
  );
}
