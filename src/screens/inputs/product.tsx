// Inputs of one product: what a unit costs landed, line by line; how it is packed; how it is made; what is there already.
// Worked example: 1.10 for goods and 1,800 of freight for 6,000 units land a unit at 1.40.
import type { VNode } from 'preact';
import { addCostLine, removeCostLine } from '../../app/commands/items.ts';
import type { Item } from '../../domain/plan/index.ts';
import { getAt } from '../../domain/plan/path.ts';
import { Button, Disclosure, Figure, SelectField, SwitchField } from '../../widgets/index.ts';
import { FieldFor, PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { Fields, Places, Trouble } from './fields.tsx';
import { choice, count, type FieldSpec, money, share } from './specs.ts';

type CostLine = Item['costLines'][number];

const RULES: Record<CostLine['rule']['by'], string> = {
  unit: 'a unit',
  case: 'a case',
  pallet: 'a pallet',
  shipment: 'a shipment',
  share: 'a share of other lines',
};

export function CostSection({ base, item }: { base: string; item: Item }): VNode {
  const session = useSession();
  const add = () => {
    const costLine: CostLine = {
      id: session.newId(),
      label: 'Cost',
      family: 'freight',
      rule: { by: 'unit', amount: '0' },
    };
    session.run(addCostLine, { itemId: item.id, costLine }, `${base}/costLines`);
  };
  return (
    <>
      <LandedFigure item={item} />
      {item.costLines.map((line, index) => (
        <LineFields
          key={line.id}
          base={base}
          item={item}
          line={line}
          earlier={item.costLines.slice(0, index)}
        />
      ))}
      <Trouble path={`${base}/costLines`} />
      <Button onPress={add}>Add a cost line</Button>
      <Fields base={base} specs={[share('lossRate', 'Lost before it can be sold')]} />
    </>
  );
}

function LandedFigure({ item }: { item: Item }): VNode | null {
  const session = useSession();
  const shown = useShown();
  const say = useSay();
  const ladder = shown?.results.ladders.find(({ itemId }) => itemId === item.id);
  if (!ladder || !shown) return null;
  const first = item.costLines[0]?.id;
  return (
    <Figure
      label="Landed, a unit"
      value={say.priceExact(ladder.landed.unit)}
      older={shown.older}
      whereFrom={
        first === undefined
          ? undefined
          : () => session.openSheet(`why:listing/${ladder.accountId}/${item.id}/landed`)
      }
    />
  );
}

interface LineProps {
  base: string;
  item: Item;
  line: CostLine;
  earlier: readonly CostLine[];
}

function LineFields({ base, item, line, earlier }: LineProps): VNode {
  const session = useSession();
  const path = `${base}/costLines/${line.id}`;
  const kinds = (Object.keys(RULES) as CostLine['rule']['by'][]).filter(
    (by) => by !== 'share' || earlier.length > 0,
  );
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">{line.label}</legend>
      <FieldFor path={`${path}/label`} label="Name" kind="text" />
      <SelectField
        label="Stated for"
        value={line.rule.by}
        choices={kinds.map((by) => ({ value: by, label: RULES[by] }))}
        onChoose={(by) => session.setField(`${path}/rule`, ruleOf(by, line, earlier))}
      />
      {line.rule.by === 'share' ? (
        <>
          <Fields base={path} specs={[share('rule/rate', 'Share', { step: 'margin' })]} />
          <Bases path={`${path}/rule/of`} chosen={line.rule.of} earlier={earlier} />
        </>
      ) : (
        <Fields base={path} specs={[money('rule/amount', 'Amount', { unit: RULES[line.rule.by] })]} />
      )}
      <Fields base={path} specs={[FAMILY]} />
      {item.costLines.length > 1 && (
        <Button
          kind="quiet"
          label={`Take out ${line.label}`}
          onPress={() =>
            session.run(removeCostLine, { itemId: item.id, costLineId: line.id }, `${base}/costLines`)
          }
        >
          Take out
        </Button>
      )}
    </fieldset>
  );
}

const FAMILY: FieldSpec = choice('family', 'Paid', [
  { value: 'goods', label: 'to the maker' },
  { value: 'freight', label: 'as freight' },
  { value: 'duty', label: 'as duty' },
]);

function Bases({
  path,
  chosen,
  earlier,
}: {
  path: string;
  chosen: readonly string[];
  earlier: readonly CostLine[];
}): VNode {
  const session = useSession();
  return (
    <>
      {earlier.map(({ id, label }) => (
        <SwitchField
          key={id}
          label={`of ${label}`}
          on={chosen.includes(id)}
          onChange={(on) =>
            session.setField(path, on ? [...chosen, id] : chosen.filter((each) => each !== id))
          }
        />
      ))}
      <Trouble path={path} />
    </>
  );
}

/** Another way of stating a line keeps its amount where it has one. */
function ruleOf(by: string, line: CostLine, earlier: readonly CostLine[]): CostLine['rule'] {
  const amount = line.rule.by === 'share' ? '0' : line.rule.amount;
  if (by === 'share') return { by, rate: '0', of: earlier.slice(0, 1).map(({ id }) => id) };
  return { by: by as Exclude<CostLine['rule']['by'], 'share'>, amount };
}

const PACK: readonly FieldSpec[] = [
  count('caseUnits', 'Units in a case', '', { step: 'one', least: 1 }),
  count('palletCases', 'Cases on a pallet', '', { least: 1 }),
  count('shipmentUnits', 'Units in a standard shipment', '', {
    hint: 'Costs stated for a shipment are shared out over these.',
  }),
];

export function PackSection({ base }: { base: string }): VNode {
  return (
    <>
      <FieldFor path={`${base}/name`} label="Product" kind="text" />
      <Fields base={base} specs={PACK} />
    </>
  );
}

const SUPPLY: readonly FieldSpec[] = [
  count('leadWeeks', 'Takes to make', 'weeks', { step: 'one' }),
  count('coverWeeks', 'Made ahead for', 'weeks', { step: 'one' }),
  count('minimumOrderUnits', 'Smallest order', 'units'),
  count('batchUnits', 'Made in batches of', 'units'),
  { ...count('capacityUnitsPerWeek', 'At most a week', 'units'), placeholder: 'no lid' },
  share('depositRate', 'Down with the order', { step: 'depth' }),
  count('supplierDays', 'Rest paid after landing', 'days', { step: 'days' }),
];

export function SupplySection({ base }: { base: string }): VNode {
  const season = getAt(usePlan(), `${base}/seasonFactors`);
  return (
    <>
      <Fields base={`${base}/supply`} specs={SUPPLY} />
      <Places
        listPath={`${base}/supply/capacitySteps`}
        nameOf={(_, index) => `More capacity ${index + 1}`}
        addLabel="Add capacity later on"
        blank={(id) => ({
          id,
          fromWeek: 26,
          unitsPerWeek: 1000,
          capitalAmount: '0',
          leadWeeks: 0,
          lifeWeeks: 260,
        })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('fromWeek', 'From week', ''),
              count('unitsPerWeek', 'At most a week then', 'units'),
              money('capitalAmount', 'Costs', { step: 'sum' }),
              count('leadWeeks', 'Set up in', 'weeks'),
              count('lifeWeeks', 'Lasts', 'weeks'),
            ]}
          />
        )}
      </Places>
      <PartFor
        path={`${base}/seasonFactors`}
        label="Sells by season"
        blank={() => Array.from({ length: 52 }, () => '1')}
      />
      {Array.isArray(season) && <SeasonFields base={`${base}/seasonFactors`} />}
    </>
  );
}

/** 52 factors by ISO week; drawn when opened. */
function SeasonFields({ base }: { base: string }): VNode {
  return (
    <Disclosure summary="Factor for each week of the year (1 is usual)">
      <Fields
        base={base}
        specs={Array.from(
          { length: 52 },
          (_, index): FieldSpec => ({ field: String(index), label: `Week ${index + 1}`, kind: 'factor' }),
        )}
      />
    </Disclosure>
  );
}

export function StockSection({ base }: { base: string }): VNode {
  return (
    <>
      <Fields
        base={`${base}/opening`}
        specs={[count('units', 'Units we hold today', ''), money('stockAmount', 'Their value in the books')]}
      />
      <Places
        listPath={`${base}/opening/onOrder`}
        nameOf={(_, index) => `On order ${index + 1}`}
        addLabel="Add an order under way"
        blank={(id) => ({ id, landsWeek: 2, units: 1000, depositPaidAmount: '0' })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('landsWeek', 'Lands in week', ''),
              count('units', 'Units', ''),
              money('depositPaidAmount', 'Already paid on it'),
            ]}
          />
        )}
      </Places>
      <Places
        listPath={`${base}/removals`}
        nameOf={(_, index) => `Not sold ${index + 1}`}
        addLabel="Add samples or a write-off"
        blank={(id) => ({ id, week: 1, units: 12, reason: 'samples' })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('week', 'In week', ''),
              count('units', 'Units', ''),
              choice('reason', 'As', [
                { value: 'samples', label: 'samples' },
                { value: 'writeOff', label: 'a write-off' },
              ]),
            ]}
          />
        )}
      </Places>
    </>
  );
}
