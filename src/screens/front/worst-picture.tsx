// The picture of the worst verdict, from 900 px: the hole where the cash fails, the curve where the deal does, the ladder
// where the shelf does. Where all hold, the cash: it is the one that runs out.
// Worked example: Deal holds and Cash fails: the cash picture, its slider at the lowest week.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import type { Results, VerdictName, VerdictState } from '../../domain/results.ts';
import { CashDrawing } from '../cash/picture.tsx';
import { PaybackCurve } from '../deal/curve.tsx';
import { LadderAndStrip } from '../ladder/picture.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import '../cash/cash.css';
import '../deal/deal.css';
import '../ladder/ladder.css';

const BAD: Record<VerdictState, number> = { fails: 0, tight: 1, holds: 2, unknown: 3 };

/** The first of the worst, cash before deal before ladder where they are as bad. */
export function worstVerdict({ verdicts }: Results): Exclude<VerdictName, 'promise'> {
  const names = ['cash', 'deal', 'ladder'] as const;
  return names.reduce((worst, name) =>
    BAD[verdicts[name].state] < BAD[verdicts[worst].state] ? name : worst,
  );
}

export function WorstPicture(): VNode | null {
  const shown = useShown();
  if (shown === null) return null;
  const worst = worstVerdict(shown.results);
  if (worst === 'deal') return <DealPart shown={shown} />;
  return worst === 'ladder' ? <LadderPart shown={shown} /> : <CashPart shown={shown} />;
}

function Titled({ title, href, children }: { title: string; href: string; children: VNode }): VNode {
  return (
    <section class="ff-stack" aria-label={title}>
      <h2>
        <a class="ff-front-link" href={href}>
          {title}
        </a>
      </h2>
      {children}
    </section>
  );
}

function CashPart({ shown: { plan, results } }: { shown: Shown }): VNode {
  const [week, setWeek] = useState<number | null>(null);
  const at = Math.min(week ?? results.reading.lowestWeek, results.pass.weeks - 1);
  return (
    <Titled title="Cash" href={hashOf({ view: 'cash', planId: plan.id, sheet: null })}>
      <CashDrawing plan={plan} results={results} week={at} onWeek={setWeek} />
    </Titled>
  );
}

function DealPart({ shown: { plan, results, older } }: { shown: Shown }): VNode | null {
  const { accountId } = results.verdicts.deal;
  const account = plan.accounts.find(({ id }) => id === accountId);
  const deal = results.deals.find((each) => each.accountId === accountId);
  if (!account || !deal) return null;
  return (
    <Titled
      title={`Deal: ${account.name}`}
      href={hashOf({ view: 'deal', planId: plan.id, accountId, sheet: null })}
    >
      <PaybackCurve key={accountId} at={{ plan, account, deal, results, older }} />
    </Titled>
  );
}

function LadderPart({ shown: { plan, results, older } }: { shown: Shown }): VNode | null {
  const { accountId, itemId } = results.verdicts.ladder;
  const account = plan.accounts.find(({ id }) => id === accountId);
  const listing = account?.listings.find((each) => each.itemId === itemId);
  const item = plan.items.find(({ id }) => id === itemId);
  const ladder = results.ladders.find((each) => each.accountId === accountId && each.itemId === itemId);
  if (!account || !listing || !item || !ladder) return null;
  return (
    <Titled
      title={`Ladder: ${item.name}, ${account.name}`}
      href={hashOf({ view: 'ladder', planId: plan.id, accountId, itemId, sheet: null })}
    >
      <LadderAndStrip
        key={`${accountId} ${itemId}`}
        shown={{ plan, account, listing, item, ladder, results, older }}
      />
    </Titled>
  );
}
