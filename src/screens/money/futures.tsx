// Which offer wins how often, over draws of the plan's range: a sentence an offer, and the futures at P10, P50 and P90 with
// what each offer leaves us in them. An offer under which cash runs out can't win.
// Worked example: "Alder wins 124 of 200 draws (55 % to 69 %)."
import type { ComponentChildren, VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { OFFER_DRAWS } from '../../domain/offers/futures.ts';
import type { FutureOutcome, Futures } from '../../domain/offers/types.ts';
import { ProblemNote, Table, type TableColumn, type TableRow, WhereFrom } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { futureName, oddsWords } from './future-words.ts';
import { type MoneyModel, useOfferDraws } from './model.ts';
import { keptAddress, WinsSheet, winsAddress } from './wins-sheet.tsx';

export function Wins({ model }: { model: MoneyModel }): VNode {
  const say = useSay();
  const { found, running, older, trouble } = useOfferDraws();
  const now = running === null ? '' : `${say.count(running)} of ${say.count(OFFER_DRAWS)} draws run …`;
  return (
    <div class="ff-stack ff-money-wins">
      <h3 class="ff-label">Who wins how often</h3>
      {trouble !== '' && (
        <ProblemNote>
          <p>{trouble}</p>
        </ProblemNote>
      )}
      {found === null && trouble === '' && (
        <p class="ff-quiet">
          {running === null ? 'Draws of other futures follow.' : `Other futures: ${now}`}
        </p>
      )}
      {found !== null && <Drawn model={model} futures={found.futures} older={older} now={now} />}
      {found !== null && !older && <WinsSheet model={model} found={found} />}
    </div>
  );
}

interface DrawnProps {
  model: MoneyModel;
  futures: Futures;
  older: boolean;
  /** How far the newer draws are; empty where none are under way. */
  now: string;
}

function Drawn({ model: { plan }, futures, older, now }: DrawnProps): VNode {
  const say = useSay();
  const session = useSession();
  const open = (address: string) => () => session.openSheet(address);
  const known = plan.offers.filter(({ id }) => futures.offers.some(({ offerId }) => offerId === id));
  const columns: TableColumn[] = [
    { key: 'future', label: 'We keep', kind: 'text' },
    ...known.map(({ id, name }) => ({ key: id, label: name, kind: 'number' as const })),
  ];
  const rows: TableRow[] = futures.outcomes.map((outcome) => ({
    id: outcome.name,
    cells: [
      <Two key="future" main={futureName(outcome.name)} under={salesWords(outcome, say)} />,
      ...known.map(({ id }) => (
        <Kept key={id} outcome={outcome} offerId={id} open={open(keptAddress(outcome.name, id))} say={say} />
      )),
    ],
  }));
  return (
    <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
      <ul class="ff-said" aria-label="Who wins">
        {oddsWords(plan, futures, say).map(({ offerId, before, won, after }) => (
          <li key={offerId ?? before}>
            {before}
            {offerId !== null && <WhereFrom open={open(winsAddress(offerId))}>{won}</WhereFrom>}
            {after}
          </li>
        ))}
      </ul>
      {rows.length > 0 && (
        <Table caption="What we keep in other futures" captionHidden columns={columns} rows={rows} />
      )}
      <p class="ff-least ff-quiet">
        {older && `Of the plan before the last edit. ${now} `}
        Draws of the plan’s range, each run week by week without new money, goods bought by the plan’s own
        forecast. In brackets: what as many other draws might say (95 % limits). P10, P50, P90: the draws that
        a tenth, half, nine tenths of all don’t pass in net sales; all else in them is as it was drawn.
      </p>
      <p>
        <a class="ff-link" href={hashOf({ view: 'promise', planId: plan.id, sheet: null })}>
          What varies in the draws, and how far
        </a>
      </p>
    </div>
  );
}

function salesWords({ netSales }: FutureOutcome, say: ScreenSay): string {
  return netSales === 0 ? 'no sales' : `sales ${say.money(netSales)}`;
}

interface TwoProps {
  main: ComponentChildren;
  under: string;
  isBest?: boolean;
}

/** An amount, and under it what stands out about it. */
function Two({ main, under, isBest = false }: TwoProps): VNode {
  return (
    <>
      <span class={isBest ? 'ff-money-best' : ''}>{main}</span>
      {under !== '' && <span class="ff-money-under ff-least">{under}</span>}
    </>
  );
}

interface KeptProps {
  outcome: FutureOutcome;
  offerId: string;
  open: () => void;
  say: ScreenSay;
}

function Kept({ outcome, offerId, open, say }: KeptProps): VNode {
  const found = outcome.founder.find((each) => each.offerId === offerId);
  if (found === undefined) return <>–</>;
  const isBest = outcome.bestLasts && outcome.best === offerId;
  const under = found.lowestCash < 0 ? 'cash runs out' : isBest ? 'best' : '';
  const main = <WhereFrom open={open}>{say.money(found.amount)}</WhereFrom>;
  return <Two main={main} under={under} isBest={isBest} />;
}
