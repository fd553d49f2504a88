// Cash: can we fill the doors? The balance week by week with its deepest point, the week at hand read out down to its
// documents, what ends the hole, how long money is bound, and two questions put to the whole plan.
// Worked example: short by 28,115 in week 26; the first chain pays in week 19, and the hole ends in week 47.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { ButtonRow, LinkButton, useWide } from '../../widgets/index.ts';
import { DoorsPicture } from '../roll-out/doors-picture.tsx';
import { unitSeries } from '../roll-out/unit-words.ts';
import { CapacityPicture, SoldPicture } from '../roll-out/units-picture.tsx';
import { isWeek, useKept } from '../shared/kept.ts';
import { Fold, Part, Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { CashFigures, DaysFigures } from './cash-figures.tsx';
import { CashInputs } from './cash-inputs.tsx';
import { endSentences } from './cash-words.ts';
import { Limits } from './limits.tsx';
import { CashDrawing } from './picture.tsx';
import { CashRange } from './range.tsx';
import { BalancesTable, FlowsTable } from './series-table.tsx';
import { Solves } from './solves.tsx';
import { WeekRead } from './week.tsx';
import './cash.css';

export function CashScreen(): VNode {
  const shown = useShown();
  return (
    <View title="Cash" verdict="cash">
      {shown !== null && (
        <Whole older={shown.older}>
          <CashParts shown={shown} />
        </Whole>
      )}
    </View>
  );
}

function CashParts({ shown }: { shown: Shown }): VNode {
  const wide = useWide();
  const { plan, results } = shown;
  const { pass, reading } = results;
  const [chosen, setChosen] = useKept('week', isWeek);
  const week = Math.min(chosen ?? reading.lowestWeek, pass.weeks - 1);
  const picture = (
    <div class="ff-column ff-cash-picture" key="picture">
      <CashDrawing plan={plan} results={results} week={week} onWeek={setChosen} />
      <CashRange />
      <Ends shown={shown} />
      {wide && <RollOutBelow shown={shown} week={week} />}
    </div>
  );
  return (
    <>
      <div class="ff-cash">
        {picture}
        <div class="ff-column">
          <WeekRead shown={shown} week={week} />
          <Part title="What it comes to">
            <CashFigures shown={shown} />
            <Solves shown={shown} />
          </Part>
        </div>
      </div>
      <Limits shown={shown} />
      <div class="ff-side-by-side">
        <Part title="How long money is bound, and what runs short">
          <DaysFigures shown={shown} />
        </Part>
        <Part title="What it rests on">
          <CashInputs />
        </Part>
      </div>
      <Tables shown={shown} />
    </>
  );
}

function Ends({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const { plan, results } = shown;
  const hasCash = plan.business.openingCashAmount !== null;
  return (
    <>
      <ul class="ff-said" aria-label="What ends it">
        {endSentences(results, hasCash, say).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {(results.verdicts.cash.state !== 'holds' || plan.offers.length > 0) && (
        <ButtonRow>
          <LinkButton kind="quiet" href={hashOf({ view: 'money', planId: plan.id, sheet: null })}>
            Money: offers side by side
          </LinkButton>
        </ButtonRow>
      )}
    </>
  );
}

/** Doors and units on the same weeks, under the cash they cost. */
function RollOutBelow({ shown: { plan, results }, week }: { shown: Shown; week: number }): VNode | null {
  const { pass, compiled } = results;
  if (plan.accounts.length === 0) return null;
  const name = plan.items.length === 1 ? (plan.items[0]?.name ?? '') : 'All products';
  const units = { name, pass, item: null, week };
  return (
    <>
      <h2 class="ff-label">Doors open</h2>
      <DoorsPicture
        plan={plan}
        pass={pass}
        accounts={plan.accounts.map((_, index) => index)}
        week={week}
        heightRem={8}
        onWeek={undefined}
      />
      <h2 class="ff-label">Units landed a week</h2>
      <CapacityPicture {...units} compiled={compiled} heightRem={8} />
      <h2 class="ff-label">Units wanted and sold a week</h2>
      <SoldPicture
        {...units}
        sold={unitSeries(pass, null, 'sold')}
        lost={unitSeries(pass, null, 'lost')}
        heightRem={8}
      />
    </>
  );
}

function Tables({ shown: { plan, results } }: { shown: Shown }): VNode {
  return (
    <div>
      <ButtonRow>
        <LinkButton href={hashOf({ view: 'statements', planId: plan.id, sheet: null })}>
          Statements: profit and loss, balance sheet, cash flow
        </LinkButton>
        <LinkButton href={hashOf({ view: 'lender', planId: plan.id, sheet: null })}>
          For a lender: 13 weeks, who owes since when
        </LinkButton>
      </ButtonRow>
      <Fold label="Every cash flow by week">
        <FlowsTable pass={results.pass} />
      </Fold>
      <Fold label="Balances by week">
        <BalancesTable pass={results.pass} />
      </Fold>
    </div>
  );
}
