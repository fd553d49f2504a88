// Doors, units, stock and capacity by week, of the whole plan, one product or one chain, with the figures of the week at
// hand. A chain's stock is not told apart by product, so a chain has doors and units only, and says so.
// Worked example: "Almersfeld" shows its 260 doors and what they sell; "Lemonade" shows where its stock stands.
import type { ComponentChildren, VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { PassResult } from '../../domain/rollout/types.ts';
import { SelectField } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { DoorsPicture } from './doors-picture.tsx';
import { lineHours } from './line-hours.ts';
import { unitSeries } from './unit-words.ts';
import { CapacityPicture, LinePicture, SoldPicture, StockPicture } from './units-picture.tsx';
import { WeekFigures } from './week-figures.tsx';

/** What the pictures are of. */
export type PictureOf =
  | { of: 'all' }
  | { of: 'item'; index: number; name: string }
  | { of: 'account'; index: number; name: string };

export interface PicturesProps {
  shown: Shown;
  week: number;
  onWeek: (week: number) => void;
  /** A part that stands in the same grid, after the pictures. */
  children: ComponentChildren;
}

export function Pictures({ shown, week, onWeek, children }: PicturesProps): VNode {
  const say = useSay();
  const { plan, results } = shown;
  const { pass, compiled } = results;
  const [choice, setChoice] = useState('all');
  const looked = lookedAt(plan, choice);
  const name = looked.of === 'all' ? allName(plan) : looked.name;
  const accounts = accountsOf(plan, looked);
  const item = looked.of === 'item' ? looked.index : null;
  const { sold, lost } = soldOf(pass, looked);
  const heightRem = 10;
  return (
    <div class="ff-roll-out-pictures">
      <Part title="Doors">
        {plan.items.length + plan.accounts.length > 2 && (
          <SelectField
            label="Shown for"
            value={choiceOf(looked, plan)}
            choices={choicesOf(plan)}
            onChoose={setChoice}
          />
        )}
        <DoorsPicture plan={plan} pass={pass} accounts={accounts} week={week} heightRem={9} onWeek={onWeek} />
      </Part>
      <Part title={weekTitle(say.week(week), looked)}>
        <WeekFigures shown={shown} looked={looked} week={week} />
      </Part>
      <Part title="Units">
        <SoldPicture name={name} sold={sold} lost={lost} week={week} heightRem={heightRem} />
      </Part>
      {looked.of === 'account' ? (
        <p class="ff-quiet">
          Stock and capacity are counted by product: choose a product, or the whole plan.
        </p>
      ) : (
        <>
          <Part title="Stock">
            <StockPicture name={name} pass={pass} item={item} week={week} heightRem={heightRem} />
          </Part>
          <Part title="Capacity">
            <CapacityPicture
              name={name}
              pass={pass}
              compiled={compiled}
              item={item}
              week={week}
              heightRem={heightRem}
            />
          </Part>
          {item === null &&
            lineHours(plan, results).map((hours) => (
              <Part key={hours.line.id} title={`Hours: ${hours.line.name}`}>
                <LinePicture hours={hours} week={week} heightRem={heightRem} />
              </Part>
            ))}
        </>
      )}
      {children}
    </div>
  );
}

/** "Week 14 (Apr 13), Lemonade". */
function weekTitle(week: string, looked: PictureOf): string {
  const capital = `${week.charAt(0).toUpperCase()}${week.slice(1)}`;
  return looked.of === 'all' ? capital : `${capital}, ${looked.name}`;
}

function allName({ items }: Plan): string {
  return items.length === 1 ? (items[0]?.name ?? '') : 'All products';
}

function choicesOf({ items, accounts }: Plan): { value: string; label: string }[] {
  return [
    { value: 'all', label: 'The whole plan' },
    ...(items.length > 1 ? items : []).map(({ id, name }) => ({
      value: `item/${id}`,
      label: `Product: ${name}`,
    })),
    ...(accounts.length > 1 ? accounts : []).map(({ id, name }) => ({
      value: `account/${id}`,
      label: `Chain: ${name}`,
    })),
  ];
}

/** What a choice names; the whole plan when it is gone. */
function lookedAt({ items, accounts }: Plan, choice: string): PictureOf {
  const item = items.findIndex(({ id }) => choice === `item/${id}`);
  if (item >= 0) return { of: 'item', index: item, name: items[item]?.name ?? '' };
  const account = accounts.findIndex(({ id }) => choice === `account/${id}`);
  if (account >= 0) return { of: 'account', index: account, name: accounts[account]?.name ?? '' };
  return { of: 'all' };
}

function choiceOf(looked: PictureOf, { items, accounts }: Plan): string {
  if (looked.of === 'item') return `item/${items[looked.index]?.id}`;
  return looked.of === 'account' ? `account/${accounts[looked.index]?.id}` : 'all';
}

/** The chains whose doors count: the one, those that list the product, or all. */
function accountsOf({ items, accounts }: Plan, looked: PictureOf): number[] {
  if (looked.of === 'account') return [looked.index];
  const itemId = looked.of === 'item' ? items[looked.index]?.id : null;
  return accounts.flatMap(({ listings }, index) =>
    itemId === null || listings.some((listing) => listing.itemId === itemId) ? [index] : [],
  );
}

function soldOf(pass: PassResult, looked: PictureOf): { sold: Float64Array; lost: Float64Array } {
  if (looked.of === 'account') {
    const own = pass.accounts[looked.index];
    const none = new Float64Array(pass.weeks);
    return { sold: own?.sold ?? none, lost: own?.lost ?? none };
  }
  const item = looked.of === 'item' ? looked.index : null;
  return { sold: unitSeries(pass, item, 'sold'), lost: unitSeries(pass, item, 'lost') };
}
