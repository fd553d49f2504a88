// Which offer wins in which future: rates of sale a good deal lower, as planned, a good deal higher. An offer under which cash
// runs out can't win against one under which it lasts. Worked example: equity wins the bad future, the royalty the others.
import type { VNode } from 'preact';
import { PLAIN_FUTURES } from '../../domain/offers/futures.ts';
import type { Futures } from '../../domain/offers/index.ts';
import { ProblemNote, Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { MoneyModel, useOfferFutures } from './model.ts';
import { nameOf } from './words.ts';

type Later = ReturnType<typeof useOfferFutures>;

export function Wins({ model, later }: { model: MoneyModel; later: Later }): VNode {
  const say = useSay();
  const { answer, older } = later;
  if (answer === null) return <p class="ff-quiet">Other futures are being worked out …</p>;
  if (!answer.ok) {
    return (
      <ProblemNote>
        <p>{answer.trouble}</p>
      </ProblemNote>
    );
  }
  const { outcomes, wins } = answer.value.futures;
  const known = model.plan.offers.filter(({ id }) => wins.some(({ offerId }) => offerId === id));
  const columns: TableColumn[] = [
    { key: 'future', label: 'We keep', kind: 'text' },
    ...known.map(({ id, name }) => ({ key: id, label: name, kind: 'number' as const })),
  ];
  const rows: TableRow[] = outcomes.map((outcome) => ({
    id: outcome.name,
    current: outcome.name === 'p50',
    cells: [futureWords(outcome.name, say), ...known.map(({ id }) => cell(outcome, id, say))],
  }));
  return (
    <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
      <ul class="ff-said" aria-label="Who wins">
        {outcomes.map((outcome) => (
          <li key={outcome.name}>{bestWords(model, outcome, say)}</li>
        ))}
        <li>{winsWords(model, answer.value.futures, say)}</li>
      </ul>
      <Table caption="What we keep in other futures" captionHidden columns={columns} rows={rows} />
      <p class="ff-least ff-quiet">
        Rates of sale times {PLAIN_FUTURES.map(({ factor }) => say.number(factor)).join(', ')}, the plan run
        again with each: a judgement, no forecast.
        {older ? ' Of the plan before the last edit, being worked out anew.' : ''}
      </p>
    </div>
  );
}

type Outcome = Futures['outcomes'][number];

/** "Alder wins 2 of 3, Birch 1." */
function winsWords({ plan }: MoneyModel, { outcomes, wins }: Futures, say: ScreenSay): string {
  const won = wins.filter((each) => each.wins > 0).sort((a, b) => b.wins - a.wins);
  const words = won.map((each, at) => {
    const count =
      at === 0 ? `wins ${say.count(each.wins)} of ${say.count(outcomes.length)}` : say.count(each.wins);
    return `${nameOf(plan, each.offerId)} ${count}`;
  });
  return words.length === 0 ? 'No offer wins any of them.' : `${words.join(', ')}.`;
}

function cell(outcome: Outcome, offerId: string, say: ScreenSay): string {
  const found = outcome.founder.find((each) => each.offerId === offerId);
  if (found === undefined) return '–';
  return found.lowestCash < 0 ? `${say.money(found.amount)}, cash runs out` : say.money(found.amount);
}

function futureWords(name: string, say: ScreenSay): string {
  const factor = PLAIN_FUTURES.find((each) => each.name === name)?.factor;
  if (factor === undefined) return name;
  return factor === 1
    ? 'As planned'
    : `Sales ${say.percent(Math.abs(factor - 1))} ${factor < 1 ? 'lower' : 'higher'}`;
}

function bestWords({ plan }: MoneyModel, outcome: Outcome, say: ScreenSay): string {
  const future = futureWords(outcome.name, say);
  if (outcome.best === null) return `${future}: no offer to compare.`;
  const best = nameOf(plan, outcome.best);
  return outcome.bestLasts
    ? `${future}: ${best} leaves us most.`
    : `${future}: cash runs out under every offer; ${best} would leave us most.`;
}
