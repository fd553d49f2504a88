// What was said so far: every offer with who said it and when, a way back to any, any two beside each other, and after
// the meeting what moved, what it cost and what was got for it. Taking an offer into the plan is one undo step.
// Worked example: "Agreed, 14:20: margin 41 %, slotting 150": cost 3,060, got 4,100.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { setDraft, takeIntoPlan } from '../../app/commands/talks.ts';
import type { OfferSaid } from '../../domain/plan/index.ts';
import { termsFrom } from '../../domain/talks/index.ts';
import type { Terms } from '../../domain/talks/types.ts';
import { Button, ButtonRow, SelectField, Table, type TableColumn } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { type Moves, moneyOf, movesBetween } from './moves.ts';
import { offerWords, upper, valueText } from './term-words.ts';
import { dayText, timeText } from './times.ts';
import { money, moneySigned, objectiveUnit } from './verdict-words.ts';

const WHO: Record<OfferSaid['said'], string> = { ask: 'They ask', ours: 'We offer', agreed: 'Agreed' };

/** Offers that are drawn at once; the older ones come with a key. */
const SHOWN_MOST = 20;

export function Said({ model }: { model: TalksModel }): VNode {
  const { log } = model.table;
  const [all, setAll] = useState(false);
  if (log.length === 0) {
    return (
      <p>
        Nothing said yet. They ask, We offer and Agreed each keep the whole of what is on the table, with the
        time.
      </p>
    );
  }
  const newest = [...log].reverse();
  const shown = all ? newest : newest.slice(0, SHOWN_MOST);
  return (
    <div class="ff-stack">
      <Summary model={model} />
      <ol class="ff-talks-said-list" reversed>
        {shown.map((offer) => (
          <Offer key={offer.id} model={model} offer={offer} />
        ))}
      </ol>
      {shown.length < newest.length && (
        <Button kind="quiet" onPress={() => setAll(true)}>
          {`The ${newest.length - shown.length} before these`}
        </Button>
      )}
      {log.length > 1 && <Compare model={model} />}
    </div>
  );
}

function Offer({ model, offer }: { model: TalksModel; offer: OfferSaid }): VNode {
  const session = useSession();
  const say = useSay();
  const { plan, account, table } = model;
  const terms = termsFrom(offer.terms);
  const { objective } = table;
  const at = moneyOf({ plan, accountId: account.id, objective, terms });
  const before = moneyOf({ plan, accountId: account.id, objective, terms: {} });
  const worth =
    at === null || before === null ? '' : `${moneySigned(at - before, say)} ${objectiveUnit(objective)}`;
  return (
    <li class="ff-talks-offer">
      <span class="ff-label">
        {WHO[offer.said]}
        <span class="ff-quiet ff-least"> {dayText(offer.atSeconds)}</span>
      </span>
      <span class="ff-number ff-label">{worth}</span>
      <span class="ff-talks-offer-terms">{contents(model, terms, say)}</span>
      <Button
        kind="quiet"
        label={`Back to ${WHO[offer.said]}, ${dayText(offer.atSeconds)}`}
        onPress={() => {
          session.endStep();
          session.run(setDraft, { accountId: account.id, terms }, 'talks/draft');
          session.endStep();
        }}
      >
        Back to this
      </Button>
    </li>
  );
}

function contents({ terms }: TalksModel, offer: Terms, say: ScreenSay): string {
  const words = offerWords(terms, offer, say);
  return words === '' ? 'As the plan has it.' : `${upper(words)}.`;
}

/** From the plan before the talks to what was agreed, or to the last offer. */
function Summary({ model }: { model: TalksModel }): VNode | null {
  const session = useSession();
  const say = useSay();
  const { plan, account, table } = model;
  const last = table.log.findLast(({ said }) => said === 'agreed') ?? table.log.at(-1);
  if (last === undefined) return null;
  const to = termsFrom(last.terms);
  const args = { plan, accountId: account.id, objective: table.objective };
  const moves = movesBetween({ ...args, from: {}, to });
  const ask = table.log.find(({ said }) => said === 'ask');
  const fromAsk =
    ask === undefined || ask === last ? null : movesBetween({ ...args, from: termsFrom(ask.terms), to });
  const isAgreed = last.said === 'agreed';
  return (
    <section class="ff-stack ff-talks-summary" aria-label="In short">
      <p>
        <strong>{isAgreed ? 'Agreed' : `So far, ${WHO[last.said].toLowerCase()}`}:</strong>{' '}
        {summaryWords(model, moves, say)}
        {fromAsk !== null && fromAsk.total !== null && (
          <>
            {' '}
            Against what they first asked: {moneySigned(fromAsk.total, say)} {objectiveUnit(table.objective)}.
          </>
        )}
      </p>
      {moves.moves.length > 0 && <MovesTable caption="What moved" model={model} moves={moves} say={say} />}
      {moves.moves.length > 0 && (
        <ButtonRow>
          <Button
            kind={isAgreed ? 'primary' : 'plain'}
            onPress={() => {
              session.endStep();
              session.run(takeIntoPlan, { accountId: account.id, terms: to }, 'talks/taken');
              session.endStep();
            }}
          >
            Take into the plan
          </Button>
        </ButtonRow>
      )}
    </section>
  );
}

function summaryWords({ table }: TalksModel, { moves, total }: Moves, say: ScreenSay): string {
  if (moves.length === 0) return 'nothing moved; it is as the plan has it.';
  const sum = (sign: 1 | -1) => moves.reduce((all, { worth }) => all + Math.max(0, sign * (worth ?? 0)), 0);
  const unit = objectiveUnit(table.objective);
  const all = total === null ? 'together not known' : `together ${moneySigned(total, say)}`;
  return `it cost ${money(sum(-1), say)} ${unit}, and ${money(sum(1), say)} was got for it: ${all}.`;
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'term', label: 'Term', kind: 'text' },
  { key: 'from', label: 'From', kind: 'number' },
  { key: 'to', label: 'To', kind: 'number' },
  { key: 'worth', label: 'Worth to us', kind: 'number' },
];

function MovesTable(props: { caption: string; model: TalksModel; moves: Moves; say: ScreenSay }): VNode {
  const { caption, moves, say } = props;
  const worthText = (worth: number | null): string =>
    worth === null ? 'not known' : moneySigned(worth, say);
  const rows = moves.moves.map(({ term, from, to, worth }) => ({
    id: term.name,
    cells: [term.label, valueText(term, from, say), valueText(term, to, say), worthText(worth)],
  }));
  const footer = { id: 'all', cells: ['Together', '', '', worthText(moves.total)] };
  return <Table caption={caption} columns={COLUMNS} rows={rows} footer={footer} />;
}

/** Any two, or one against the plan before the talks. */
function Compare({ model }: { model: TalksModel }): VNode {
  const say = useSay();
  const { plan, account, table } = model;
  const ids = table.log.map(({ id }) => id);
  const [one, setOne] = useState(ids.at(-2) ?? '');
  const [other, setOther] = useState(ids.at(-1) ?? '');
  const termsOfOffer = (id: string): Terms =>
    termsFrom(table.log.find((offer) => offer.id === id)?.terms ?? []);
  const choices = [
    { value: '', label: 'The plan before' },
    ...table.log.map((offer, index) => ({
      value: offer.id,
      label: `${index + 1}. ${WHO[offer.said]}, ${timeText(offer.atSeconds)}`,
    })),
  ];
  const moves = movesBetween({
    plan,
    accountId: account.id,
    objective: table.objective,
    from: termsOfOffer(one),
    to: termsOfOffer(other),
  });
  return (
    <section class="ff-stack" aria-label="Two beside each other">
      <h3>Two beside each other</h3>
      <div>
        <SelectField label="From" value={one} choices={choices} onChoose={setOne} />
        <SelectField label="To" value={other} choices={choices} onChoose={setOther} />
      </div>
      {moves.moves.length === 0 ? (
        <p>They are the same.</p>
      ) : (
        <MovesTable caption="What differs" model={model} moves={moves} say={say} />
      )}
    </section>
  );
}
