// The Roll-out: when doors open, what they want, and whether production and shelves can follow. Doors and units drawn on
// one time axis, openings of each chain and production of each product to type over, and every unit by week.
// Worked example: 180 doors from week 10 need 2,160 units of fill before the first shopper buys one.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import { SelectField, useWide } from '../../widgets/index.ts';
import { Section } from '../inputs/section.tsx';
import { sectionWords } from '../inputs/section-words.ts';
import { NoChain } from '../ladder/empty.tsx';
import { isWeek, useKept } from '../ladder/kept.ts';
import { Fold, Part, Whole } from '../ladder/parts.tsx';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { doorsWords } from './axis-chains.ts';
import { DoorsPicture } from './doors-picture.tsx';
import { Openings } from './openings.tsx';
import { Shelves } from './shelves.tsx';
import { RollOutAxis } from './time-axis.tsx';
import { UnitsPicture } from './units-picture.tsx';
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
  const wide = useWide();
  const { plan, results, older } = shown;
  const [item, setItem] = useState<number | null>(null);
  const chosen = plan.items.length === 1 ? 0 : item;
  const [keptWeek, setWeek] = useKept('week', isWeek);
  const week = Math.min(keptWeek ?? results.reading.firstOpeningWeek ?? 0, results.pass.weeks - 1);
  const pictures = (
    <Pictures key="pictures" shown={shown} item={chosen} onItem={setItem} week={week} onWeek={setWeek} />
  );
  const shelves = (
    <Part key="shelves" title="On the shelf">
      <Shelves plan={plan} results={results} older={older} />
    </Part>
  );
  const inputs = (
    <div class="ff-column" key="inputs">
      <OpeningsParts plan={plan} />
      <ProductionParts plan={plan} />
    </div>
  );
  const left = (
    <div class="ff-column" key="left">
      {pictures}
      {shelves}
    </div>
  );
  return (
    <>
      <RollOutAxis shown={shown} week={week} onWeek={setWeek} />
      {wide ? <div class="ff-roll-out">{[left, inputs]}</div> : [pictures, shelves, inputs]}
      <Fold label="Every unit by week">
        <UnitsTable key={chosen ?? 'all'} pass={results.pass} item={chosen} name={nameOf(plan, chosen)} />
      </Fold>
      <CautionsFor place="rollOut" accountId={null} />
    </>
  );
}

interface PicturesProps {
  shown: Shown;
  item: number | null;
  onItem: (item: number | null) => void;
  week: number;
  onWeek: (week: number) => void;
}

function Pictures({ shown, item, onItem, week, onWeek }: PicturesProps): VNode {
  const { plan, results } = shown;
  const { pass, compiled } = results;
  return (
    <div class="ff-column">
      <Part title="Doors">
        <DoorsPicture plan={plan} pass={pass} week={week} heightRem={9} />
      </Part>
      <Part title="Units">
        {plan.items.length > 1 && (
          <SelectField
            label="Product"
            value={String(item ?? '')}
            choices={[
              { value: '', label: 'All products' },
              ...plan.items.map(({ name }, index) => ({ value: String(index), label: name })),
            ]}
            onChoose={(value) => onItem(value === '' ? null : Number(value))}
          />
        )}
        <UnitsPicture
          compiled={compiled}
          pass={pass}
          item={item}
          name={nameOf(plan, item)}
          week={week}
          heightRem={13}
          onWeek={onWeek}
        />
      </Part>
    </div>
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

function nameOf(plan: Plan, item: number | null): string {
  return item === null ? 'All products' : (plan.items[item]?.name ?? '');
}
