// Inputs of one product: how it is made, on which line, in which weeks more of it can be, and how long it keeps.
// Worked example: half down with the order and six weeks to make put money out long before a store opens.
import type { VNode } from 'preact';
import { addLineFor } from '../../app/commands/business.ts';
import { addPart } from '../../app/commands/field.ts';
import type { Item } from '../../domain/plan/index.ts';
import { SelectField } from '../../widgets/index.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { Fields, type Guess, notesOf, Part, Places, Trouble } from './fields.tsx';
import { laterThan } from './later-than.ts';
import { blankLine } from './lines.tsx';
import { count, type FieldSpec, money, share, week } from './specs.ts';

const SUPPLY: readonly FieldSpec[] = [
  count('leadWeeks', 'Takes to make', 'weeks', { step: 'one' }),
  count('coverWeeks', 'Made ahead for', 'weeks', { step: 'one' }),
  count('minimumOrderUnits', 'Smallest order', 'units'),
  count('batchUnits', 'Made in batches of', 'units'),
  { ...count('capacityUnitsPerWeek', 'At most a week', 'units'), placeholder: 'no lid' },
  share('depositRate', 'Down with the order', { step: 'depth' }),
  count('supplierDays', 'Rest paid after landing', 'days', { step: 'days' }),
];

const STEP: readonly FieldSpec[] = [
  week('fromWeek', 'From'),
  count('unitsPerWeek', 'At most a week then', 'units'),
  money('capitalAmount', 'Costs', { step: 'sum' }),
  count('leadWeeks', 'Set up in', 'weeks'),
  count('lifeWeeks', 'Lasts', 'weeks'),
];

const ON_LINE: readonly FieldSpec[] = [
  count('unitsPerHour', 'Made an hour', 'units'),
  share('yieldRate', 'Of these, good', { step: 'slowShare' }),
  share('hoursShare', 'Its share of the hours', {
    step: 'depth',
    placeholder: 'the rest',
    hint: 'Left empty, it has what products with a share, and those above it, leave.',
  }),
];

const SHELF_LIFE: readonly FieldSpec[] = [
  count('weeks', 'Keeps for', 'weeks', { step: 'one', least: 1 }),
  count('leastWeeksAtReceipt', 'Least left when a chain takes it in', 'weeks', { step: 'one' }),
];

const SHELF_LIFE_GUESSES: readonly Guess[] = [
  {
    field: 'leastWeeksAtReceipt',
    source: 'Chains ask for part of the life; ask yours',
    low: '8',
    high: '39',
  },
];

export function SupplySection({ base, item }: { base: string; item: Item }): VNode {
  const { horizonWeeks } = usePlan();
  const first = Math.min(26, horizonWeeks - 1);
  return (
    <>
      <Fields base={`${base}/supply`} specs={SUPPLY} />
      <Places
        listPath={`${base}/supply/capacitySteps`}
        nameOf={(_, index) => `More capacity ${index + 1}`}
        addLabel="Add capacity later on"
        blank={(id) => ({
          id,
          fromWeek: laterThan(item.supply.capacitySteps, first, horizonWeeks),
          unitsPerWeek: 1000,
          capitalAmount: '0',
          leadWeeks: 0,
          lifeWeeks: 260,
        })}
      >
        {(path) => <Fields base={path} specs={STEP} />}
      </Places>
      <MadeOn base={base} item={item} />
      <Part
        path={`${base}/supply/shelfLife`}
        label="a shelf life"
        hint="The oldest leaves first; what is too old to be taken in is written off."
        blank={() => ({ weeks: 52, leastWeeksAtReceipt: 26 })}
        guesses={SHELF_LIFE_GUESSES}
      >
        <Fields base={`${base}/supply/shelfLife`} specs={SHELF_LIFE} />
      </Part>
    </>
  );
}

const LINE_GUESSES: readonly Guess[] = [
  {
    field: 'unitsPerHour',
    source: 'As many as make the weekly lid of one shift; measure it',
    low: null,
    high: null,
  },
];

const NONE = '';
const NEW = 'new line';

/** The line it is made on: none of its own, one that is there, or a new one. */
function MadeOn({ base, item }: { base: string; item: Item }): VNode {
  const session = useSession();
  const { lines } = usePlan().business;
  const { line } = item.supply;
  const path = `${base}/supply/line`;
  const choose = (value: string): void => {
    session.endStep();
    if (value === NONE) session.setField(path, null);
    else if (value === NEW) {
      const made = blankLine(session.newId(), lines.length);
      const place = placeOn(made, item);
      const notes = notesOf(path, LINE_GUESSES);
      session.run(addLineFor, { line: made, itemId: item.id, place, notes }, path);
    } else {
      const chosen = lines.find(({ id }) => id === value);
      if (chosen === undefined) return;
      const onIt = { ...(line ?? placeOn(chosen, item)), lineId: value };
      session.run(
        addPart,
        { path, value: onIt, notes: line === null ? notesOf(path, LINE_GUESSES) : [] },
        path,
      );
    }
    session.endStep();
  };
  return (
    <>
      <SelectField
        label="Made on"
        hint="Products share the hours of a line. Its shifts stand under Business, “Production lines”."
        value={line?.lineId ?? NONE}
        choices={[
          { value: NONE, label: 'no line shared with others' },
          ...lines.map(({ id, name }) => ({ value: id, label: name })),
          { value: NEW, label: 'a new line' },
        ]}
        onChoose={choose}
      />
      <Trouble path={path} />
      {line !== null && <Fields base={path} specs={ON_LINE} />}
    </>
  );
}

/** Alone on one shift of the line it makes what its own lid allows; 1,000 an hour where it has none. */
function placeOn({ hoursPerShift }: { hoursPerShift: number }, { supply }: Item) {
  const lid = supply.capacityUnitsPerWeek;
  const unitsPerHour = lid === null ? 1000 : Math.min(1_000_000, Math.ceil(lid / hoursPerShift));
  return { unitsPerHour, yieldRate: '1', hoursShare: null };
}
