// The Roll-out: when doors open, what they want, and whether production and shelves can follow. All of it on one time axis
// to drag on, pictures by week below, openings of each chain and production of each product to type over, every unit.
// Worked example: 180 doors from week 10 need 2,160 units of fill before the first shopper buys one.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { PassResult } from '../../domain/rollout/types.ts';
import { SelectField } from '../../widgets/index.ts';
import { Section } from '../inputs/section.tsx';
import { sectionWords } from '../inputs/section-words.ts';
import { NoChain } from '../ladder/empty.tsx';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { isWeek, useKept } from '../shared/kept.ts';
import { Fold, Part, Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { doorsWords } from './axis-chains.ts';
import { Openings } from './openings.tsx';
import { Pictures } from './pictures.tsx';
import { Shelves } from './shelves.tsx';
import { RollOutAxis } from './time-axis.tsx';
import { UnitsTable } from './units-table.tsx';
import './roll-out.css';

export function RollOutScreen(): VNode {
  const shown = useShown();
  const empty = shown === null || shown.plan.accounts.length === 0;
  return (
    <View title="Roll-out" verdict={null}>
      {empty ? (
        <NoChain sentence="No chain yet. Add one, and its openings, to see what they need." />
      ) : (
        <Whole older={shown.older}>
          <RollOutParts shown={shown} />
        </Whole>
      )}
    </View>
  );
}

function RollOutParts({ shown }: { shown: Shown }): VNode {
  const { plan, results, older } = shown;
  const [keptWeek, setWeek] = useKept('week', isWeek);
  const week = Math.min(keptWeek ?? results.reading.firstOpeningWeek ?? 0, results.pass.weeks - 1);
  return (
    <>
      <RollOutAxis shown={shown} week={week} onWeek={setWeek} />
      <Pictures shown={shown} week={week} onWeek={setWeek}>
        <Part title="On the shelf">
          <Shelves plan={plan} results={results} older={older} />
        </Part>
      </Pictures>
      <div class="ff-side-by-side">
        <OpeningsParts plan={plan} />
        <ProductionParts plan={plan} />
      </div>
      <Fold label="Every unit by week">
        <UnitsByItem plan={plan} pass={results.pass} />
      </Fold>
      <CautionsFor place="rollOut" accountId={null} />
    </>
  );
}

function OpeningsParts({ plan }: { plan: Plan }): VNode {
  const say = useSay();
  return (
    <Part title="Openings">
      <div>
        {plan.accounts.map((account) => (
          <Fold
            key={account.id}
            label={account.name}
            value={doorsWords(account, say)}
            open={plan.accounts.length === 1}
          >
            <Openings account={account} />
          </Fold>
        ))}
      </div>
    </Part>
  );
}

function ProductionParts({ plan }: { plan: Plan }): VNode {
  const say = useSay();
  return (
    <Part title="Production">
      <div>
        {plan.items.map(({ id, name }) => {
          const place = { of: 'product', section: 'supply', id } as const;
          return (
            <Fold
              key={id}
              label={name}
              value={sectionWords(place, { plan, results: null, say })}
              open={plan.items.length === 1}
            >
              <Section place={place} />
            </Fold>
          );
        })}
      </div>
    </Part>
  );
}

/** Every series of all products or one, chosen in place. */
function UnitsByItem({ plan, pass }: { plan: Plan; pass: PassResult }): VNode {
  const [item, setItem] = useState<number | null>(null);
  const one = plan.items.length === 1 ? 0 : item;
  const name = one === null ? 'All products' : (plan.items[one]?.name ?? '');
  return (
    <>
      {plan.items.length > 1 && (
        <SelectField
          label="Product"
          value={String(one ?? '')}
          choices={[
            { value: '', label: 'All products' },
            ...plan.items.map((each, index) => ({ value: String(index), label: each.name })),
          ]}
          onChoose={(value) => setItem(value === '' ? null : Number(value))}
        />
      )}
      <UnitsTable key={one ?? 'all'} pass={pass} item={one} name={name} />
    </>
  );
}
