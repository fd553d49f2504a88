// The Ladder: does the shelf price leave every hand its share, and us ours? The picture with the chosen rung in the middle,
// what a unit costs and who stands between on one side, what we give back down to what we keep on the other.
// Worked example: at #/p/spring/ladder/corner/tea the shelf price of 4.99 is drawn down to a landed cost of 1.10.
import type { VNode } from 'preact';
import { useWide } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { Part, Whole } from '../shared/parts.tsx';
import { View } from '../shared/view.tsx';
import { AllowancesEditor } from './allowances-editor.tsx';
import { CostLines } from './cost-lines.tsx';
import { NoChain } from './empty.tsx';
import { HandsEditor } from './hands-editor.tsx';
import { LadderPickers } from './pickers.tsx';
import { LadderAndStrip } from './picture.tsx';
import { type ShownLadder, useLadder } from './place.ts';
import { PricePoints } from './price-points.tsx';
import { ShelfTax } from './shelf-tax.tsx';
import { StepsTable } from './steps-table.tsx';
import './ladder.css';

export function LadderScreen(): VNode {
  const shown = useLadder();
  return (
    <View title="Ladder" verdict="ladder" leftOut={shown === null ? '' : pickedWords(shown)}>
      {shown === null ? (
        <NoChain sentence="No chain yet. Add one to see what its shelf price leaves." />
      ) : (
        <Whole older={shown.older}>
          <LadderParts shown={shown} />
        </Whole>
      )}
    </View>
  );
}

/** Which ladder the verdict speaks of, as its sentence puts it, where the pickers show that very one. */
function pickedWords({ plan, account, item, results }: ShownLadder): string {
  const { accountId, itemId } = results.verdicts.ladder;
  if (accountId !== account.id || itemId !== item.id) return '';
  const ofItem = account.listings.length > 1 ? ` on ${item.name}` : '';
  return plan.accounts.length > 1 ? `${ofItem} at ${account.name}` : ofItem;
}

function LadderParts({ shown }: { shown: ShownLadder }): VNode {
  const wide = useWide();
  const key = `${shown.account.id}/${shown.item.id}`;
  const middle = (
    <div class="ff-column ff-column-stays" key="middle">
      <LadderAndStrip key={key} shown={shown} />
    </div>
  );
  const costs = <Costs key={`costs ${key}`} shown={shown} />;
  const steps = <Given key={`steps ${key}`} shown={shown} />;
  return (
    <>
      <LadderPickers shown={shown} />
      <div class="ff-side-by-side">{wide ? [costs, middle, steps] : [middle, steps, costs]}</div>
      <CautionsFor place="ladder" accountId={shown.account.id} />
    </>
  );
}

function Costs({ shown: { item, account } }: { shown: ShownLadder }): VNode {
  return (
    <div class="ff-column">
      <Part title={`What ${item.name} costs`}>
        <CostLines itemId={item.id} />
      </Part>
      <Part title="Hands between us and the shelf">
        <HandsEditor accountId={account.id} />
      </Part>
      <Part title="Price points">
        <PricePoints accountId={account.id} />
      </Part>
      <Part title="Tax on the shelf price">
        <ShelfTax />
      </Part>
    </div>
  );
}

function Given({ shown }: { shown: ShownLadder }): VNode {
  return (
    <div class="ff-column">
      <Part title="From list price to what we keep">
        <StepsTable shown={shown} />
      </Part>
      <Part title={`What ${shown.account.name} takes`}>
        <AllowancesEditor accountId={shown.account.id} />
      </Part>
    </div>
  );
}
